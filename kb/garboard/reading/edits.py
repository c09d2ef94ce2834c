"""The only writer into content: it replaces spans of a file, or makes a new file, and nothing else.

A span is replaced only where the file is still the one that was read and the span still says what
it said. Byte order mark, line ends and rights stay as they are; a file is never half written.
"""

import contextlib
import os
import re
import stat
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from garboard.errors import GarboardError, Where
from garboard.reading.text_file import MARK, digest_of, plain_lines

__all__ = ["Edit", "create_file", "replace_spans"]

LINE = re.compile(r"[^\r\n]*(?:\r\n|\r|\n|\Z)")


@dataclass(frozen=True, slots=True)
class Edit:
    """One span, and what takes its place."""

    where: Where
    """Of its first sign."""
    old: str
    """What stands there; empty: the new text is put in."""
    new: str


def replace_spans(folder: Path, path: str, edits: Sequence[Edit], digest: str) -> str:
    """Replace spans of one file.

    Args:
        folder: The content folder.
        path: Of the file, as in the places.
        edits: They must not overlap.
        digest: Of the file when it was read.

    Returns:
        The digest of the file as it now stands.

    Raises:
        GarboardError: The file has changed since, or a span does not say what it should.
    """
    target = _inside(folder, path)
    try:
        data = target.read_bytes()
    except OSError as stop:
        raise GarboardError(f"{path} cannot be opened: {stop.strerror}") from stop
    if digest_of(data) != digest:
        raise GarboardError(f"{path} has changed since it was read; read it again first")
    mark = MARK if data.startswith(MARK) else b""
    text = data.removeprefix(MARK).decode("utf-8")
    lines = [found[0] for found in LINE.finditer(text)]
    starts = [0]
    for line in lines:
        starts.append(starts[-1] + len(line))
    spans = sorted((_span(edit, starts, lines), edit) for edit in edits)
    end = "\r\n" if text.count("\r\n") * 2 > text.count("\n") else "\n"
    parts, done = [], 0
    for (start, stop_), edit in spans:
        if start < done:
            raise GarboardError(f"two edits of {path} overlap on line {edit.where.line}")
        if plain_lines(text[start:stop_]) != edit.old:
            raise GarboardError(f"{edit.where} no longer says `{edit.old}`; read it again first")
        parts += [text[done:start], edit.new.replace("\n", end)]
        done = stop_
    made = mark + "".join((*parts, text[done:])).encode("utf-8")
    _write(target, made, path)
    return digest_of(made)


def create_file(folder: Path, path: str, text: str) -> Path:
    """Make a new file.

    Args:
        folder: The content folder.
        path: Of the file in it, with forward slashes.
        text: What it holds.

    Raises:
        GarboardError: A file of that name is there already, or it cannot be made.
    """
    target = _inside(folder, path)
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        with target.open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except FileExistsError as stop:
        raise GarboardError(f"{path} is there already; nothing was written") from stop
    except OSError as stop:
        raise GarboardError(f"{path} cannot be made: {stop.strerror}") from stop
    return target


def _inside(folder: Path, path: str) -> Path:
    """The file, which must lie in the folder by itself and not by a link.

    Raises:
        GarboardError: It does not.
    """
    parts = PurePosixPath(path).parts
    if not parts or path.startswith("/") or ".." in parts or "\\" in path:
        raise GarboardError(f"{path} is no path inside the content folder")
    target = folder
    for part in parts:
        target /= part
        if target.is_symlink():
            raise GarboardError(f"{path} is reached by a link; nothing was written")
    return target


def _span(edit: Edit, starts: list[int], lines: list[str]) -> tuple[int, int]:
    """First sign and the one past the last, in the text as it stands in the file.

    Raises:
        GarboardError: The file has no such place.
    """
    rows = edit.old.split("\n")
    first, last = edit.where.line - 1, edit.where.line - 1 + len(rows) - 1
    column = edit.where.column - 1
    end = len(rows[-1]) + (column if len(rows) == 1 else 0)
    if last >= len(lines) or column > len(lines[first]) or end > len(lines[last]):
        raise GarboardError(f"{edit.where} is no place in the file any more; read it again first")
    return starts[first] + column, starts[last] + end


def _write(target: Path, data: bytes, path: str) -> None:
    """Write beside the file, then put it in its place in one move.

    Raises:
        GarboardError: It cannot be written.
    """
    aside: str | None = None
    try:
        rights = stat.S_IMODE(target.stat().st_mode)
        handle, aside = tempfile.mkstemp(prefix=".", suffix=".tmp", dir=target.parent)
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(aside).chmod(rights)
        Path(aside).replace(target)
    except OSError as stop:
        if aside is not None:
            with contextlib.suppress(OSError):
                Path(aside).unlink()
        raise GarboardError(f"{path} cannot be written: {stop.strerror}") from stop
