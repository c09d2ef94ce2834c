"""Find the `calc` fences of a text, and those that were meant to be.

A fence may stand set in under a list line, and be of backticks or tildes; one within a longer fence
is an example and is left alone. A misspelt one would turn into plain code that nothing computes.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from functools import lru_cache
from itertools import islice

from garboard.errors import Diagnostic, Severity, Where
from garboard.names import BLOCK
from garboard.reading.strict_yaml import CODE, shorten

__all__ = ["Fence", "FenceLine", "Fences", "find_fences"]

OPENING = re.compile(
    r"(?P<before>[ \t]*(?:(?:>|[-*+]|\d{1,9}[.)])[ \t]+)*)"
    r"(?P<sign>`{3,}(?=[^`]*$)|~{3,})(?P<info>.*)"
)
WORD = "calc"
ALIKE = 0.75
MOST = 500
MOST_LINES = 1000


@dataclass(frozen=True, slots=True)
class FenceLine:
    """One line of a fence, without the indentation of the fence."""

    text: str
    where: Where
    """Of its first sign."""


@dataclass(frozen=True, slots=True)
class Fence:
    """One `calc` fence."""

    name: str
    options_text: str
    """What stands behind the name: `; digits 3; hide working`."""
    lines: tuple[FenceLine, ...]
    where: Where
    """Of the name."""
    span: tuple[int, int]
    """First and last line in its text, counted from 0, its own two fence lines included."""
    owner: str = ""
    """Id of the record, or path of the page, that it stands in."""


@dataclass(frozen=True, slots=True)
class Fences:
    """What was found."""

    fences: tuple[Fence, ...]
    spans: tuple[tuple[int, int], ...]
    """First and last line of every fence, of whatever sort: no prose stands in them."""
    diagnostics: tuple[Diagnostic, ...]


@dataclass(frozen=True, slots=True)
class _Opening:
    """The line that opens a fence."""

    line: int
    sign: str
    info: str
    column: int
    """Where the info starts, counted from 0."""
    before: str

    def closes(self, line: str) -> bool:
        """Whether a line closes this fence."""
        bare = line.strip(" \t>")
        return bare.startswith(self.sign) and not bare.strip(self.sign[0])


def find_fences(text: str, path: str, first_line: int = 1, owner: str = "") -> Fences:
    """Find the fences of a text.

    Args:
        text: Markdown.
        path: Of its file, for places.
        first_line: Line of the file on which the text starts.
        owner: Id of the record, or path of the page.
    """
    lines = text.split("\n")
    fences: list[Fence] = []
    spans: list[tuple[int, int]] = []
    faults: list[Diagnostic] = []
    for opening, last in islice(_blocks(lines), MOST + 1):
        if len(spans) == MOST:
            said = f"more than {MOST} fences in one text"
            faults.append(_fault(Where(path, first_line + opening.line), said, "split it"))
            break
        place = Where(path, first_line + opening.line, opening.column + 1)
        spans.append((opening.line, len(lines) - 1 if last is None else last))
        word = re.split(r"[\s;]", opening.info, maxsplit=1)[0]
        if word != WORD:
            faults += _misspelt(word, place)
        elif last is None:
            text = "a calc fence opens here and is never closed"
            faults.append(_fault(place, text, f"write {opening.sign} on a line below it"))
        else:
            found = _read(opening, lines, last, place, owner)
            (fences if isinstance(found, Fence) else faults).append(found)  # type: ignore[arg-type]
    return Fences(tuple(fences), tuple(spans), tuple(faults))


def _blocks(lines: list[str]) -> Iterator[tuple[_Opening, int | None]]:
    """Each fence with its last line; None where nothing closes it."""
    number = 0
    while number < len(lines):
        found = OPENING.match(lines[number])
        if not found:
            number += 1
            continue
        info = found["info"]
        column = found.start("info") + len(info) - len(info.lstrip())
        opening = _Opening(number, found["sign"], info.strip(), column, found["before"])
        last = next((n for n in range(number + 1, len(lines)) if opening.closes(lines[n])), None)
        yield opening, last
        number = len(lines) if last is None else last + 1


def _read(
    opening: _Opening, lines: list[str], last: int, place: Where, owner: str
) -> Fence | Diagnostic:
    rest = opening.info.removeprefix(WORD)
    name, sign, options = rest.partition(";")
    column = place.column + len(WORD) + len(name) - len(name.lstrip())
    where = Where(place.path, place.line, column)
    name = name.strip()
    if ">" in opening.before:
        return _fault(
            place, "a calc fence stands within a quotation", "move it out, and quote its values"
        )
    if not name:
        return _fault(
            place, "this calc fence has no name", "write calc and a name: calc receiver-sizing"
        )
    if not BLOCK.fullmatch(name):
        text = f"`{shorten(name)}` is no name for a calc fence"
        return _fault(where, text, f"write calc {_block_name(name)}; options stand behind a ;")
    if last - opening.line > MOST_LINES:
        text = f"a calc fence of {last - opening.line - 1} lines, more than {MOST_LINES}"
        return _fault(where, text, "split it")
    indent = len(opening.before)
    first = place.line + 1
    inner = [
        _line(line, indent, Where(place.path, first + number, 1))
        for number, line in enumerate(lines[opening.line + 1 : last])
    ]
    return Fence(name, (sign + options).strip(), tuple(inner), where, (opening.line, last), owner)


def _line(line: str, indent: int, where: Where) -> FenceLine:
    """A line without the indentation of its fence, or as much of it as there is."""
    taken = min(indent, len(line) - len(line.lstrip(" \t")))
    return FenceLine(line[taken:], Where(where.path, where.line, taken + 1))


@lru_cache(maxsize=256)
def _meant(word: str) -> bool:
    """Whether a word was meant to be `calc`."""
    bare = word.strip("{}.=:").casefold()
    alike = SequenceMatcher(None, bare, WORD).ratio() >= ALIKE
    return bare[:1] == "c" and (alike or bare.startswith("calcul"))


def _misspelt(word: str, place: Where) -> Iterator[Diagnostic]:
    """A word that was meant to be `calc`: it would show as code, and nothing would compute it."""
    if _meant(word[:20]):
        text = f"a fence is marked `{shorten(word)}`, so nothing computes it"
        yield _fault(place, text, "write calc, or mark it as text if it is only an example")


def _block_name(name: str) -> str:
    made = re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")
    return shorten(made) if BLOCK.fullmatch(made) else "receiver-sizing"


def _fault(where: Where, text: str, cure: str) -> Diagnostic:
    return Diagnostic(where, Severity.STOP, text, cure, CODE)
