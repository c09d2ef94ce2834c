"""The log of git as commits: which files each one touched, before and after.

Everything in it was written by others. A commit begins with a mark drawn by lot, and the lines of a file
are counted off as the head of each hunk says, so that no text can pass for a head, a path or a commit.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date

from garboard.reading.history import History

__all__ = ["Commit", "Touched", "read_past"]

HUNK = re.compile(rb"@@ -\d+(?:,(\d+))? \+\d+(?:,(\d+))? @@")
ESCAPE = re.compile(rb"\\([0-7]{3}|.)", re.DOTALL)
LETTERS = {
    b"n": b"\n",
    b"t": b"\t",
    b"r": b"\r",
    b"a": b"\a",
    b"b": b"\b",
    b"f": b"\f",
    b"v": b"\v",
}
NOWHERE = b"/dev/null"


@dataclass(slots=True)
class Touched:
    """One file in one commit; None on the side where it is not there."""

    path: str
    """In the content folder, of the side where it is."""
    before: bytes | None
    after: bytes | None


@dataclass(slots=True)
class Commit:
    """One commit that touched the content."""

    name: str
    days: tuple[date, ...]
    """Those of its author and of whoever committed it, as both say; empty where neither is a day."""
    first: bool
    """Nothing is known before it: it has no parent here."""
    files: list[Touched] = field(default_factory=list)

    @property
    def first_day(self) -> date:
        """The earlier of its days; the first that there is where it has none."""
        return min(self.days, default=date.min)

    @property
    def last_day(self) -> date:
        """The later of its days; the last that there is where it has none."""
        return max(self.days, default=date.max)

    def __str__(self) -> str:
        day = f" of {max(self.days)}" if self.days else ""
        return f"commit {self.name[:10]}{day}"


def read_past(history: History) -> Iterator[Commit]:
    """Every commit of a history, newest first; a file that was cut off is left out."""
    lines = iter(history.text.split(b"\n"))
    mark, commit = history.mark.encode(), None
    old = new = b""
    for line in lines:
        if mark and line.startswith(mark):
            if commit is not None:
                yield commit
            commit, old, new = _commit(line), b"", b""
        elif line.startswith(b"diff --git "):
            old = new = b""
        elif line.startswith(b"--- "):
            old = _path(line[4:])
        elif line.startswith(b"+++ "):
            new = _path(line[4:])
        elif commit is not None and (found := HUNK.match(line)):
            counts = [int(one) if one is not None else 1 for one in found.groups()]
            sides = _sides(lines, *counts)
            if sides is not None:
                _keep(commit, old, new, *sides)
    if commit is not None:
        yield commit


def _commit(line: bytes) -> Commit:
    words = line.decode("ascii", "replace").split(" ")
    days = tuple(day for word in words[2:4] if (day := _day(word)))
    return Commit(words[1] if len(words) > 1 else "", days, first=not "".join(words[4:]))


def _day(text: str) -> date | None:
    """The day of a time as whoever was there reckoned it."""
    try:
        return date.fromisoformat(text[:10])
    except ValueError:
        return None


def _path(text: bytes) -> bytes:
    """A path as it is on the disk, with its side in front: quotes, escapes and the tab behind it gone."""
    text = text.removesuffix(b"\t")
    if len(text) > 1 and text.startswith(b'"') and text.endswith(b'"'):
        return ESCAPE.sub(_unescaped, text[1:-1])
    return text


def _unescaped(found: re.Match[bytes]) -> bytes:
    sign = found[1]
    return bytes([int(sign, 8) & 0xFF]) if len(sign) == 3 else LETTERS.get(sign, sign)


def _sides(lines: Iterator[bytes], before: int, after: int) -> tuple[bytes, bytes] | None:
    """The lines of a hunk, by side; None where the log ends within it."""
    old: list[bytes] = []
    new: list[bytes] = []
    while before > 0 or after > 0:
        line = next(lines, None)
        if line is None:
            return None
        sign, text = line[:1], line[1:] + b"\n"
        if sign in (b" ", b"-", b""):
            old.append(text)
            before -= 1
        if sign in (b" ", b"+", b""):
            new.append(text)
            after -= 1
    return b"".join(old), b"".join(new)


def _keep(commit: Commit, old: bytes, new: bytes, before: bytes, after: bytes) -> None:
    """Note a hunk; a second one of the same file is put behind the first."""
    path = (old if new == NOWHERE else new)[2:].decode("utf-8", "replace")
    last = commit.files[-1] if commit.files else None
    if last is not None and last.path == path:
        last.before = None if last.before is None else last.before + before
        last.after = None if last.after is None else last.after + after
        return
    sides = None if old == NOWHERE else before, None if new == NOWHERE else after
    commit.files.append(Touched(path, *sides))
