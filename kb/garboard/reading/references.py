"""Find what a text refers to: bare ids and tags, quoted values, and numbers that were typed.

Code, comments and the targets of links are passed over. Everything found keeps its place in the
file and its place in the text, so that a link can be made of it and a stale number replaced.
"""

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import islice

from garboard.calc.unit_names import LIBRARY_NAMES, TRAPS
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import ADDRESS, IDENTIFIER, nearest
from garboard.reading.scalars import GRAMMARS, Unfit
from garboard.reading.strict_yaml import CODE, shorten
from garboard.records.base import Address

__all__ = [
    "VALUE_LINK",
    "Bare",
    "References",
    "TypedNumber",
    "ValueLink",
    "code_spans",
    "find_references",
]

VALUE_LINK = re.compile(
    r"\[(?P<text>[^\[\]]*)\]"
    r"\(value:(?P<address>[^()\s?]*)(?:\?in=(?P<unit>(?:[^()\s]|\([^()\s]*\))*))?\)"
)
"""A quoted value: `[9 starts](value:receiver-sizing.n?in=L)`."""

LINK = re.compile(
    r"!?\[(?P<text>[^\[\]]*)\]"
    r"(?P<to>\((?:[^()]|\([^()]*\)){0,400}\)|\[[^\[\]]*\])|(?P<auto><[a-z]+:[^<>\s]*>)"
)
NEARLY = re.compile(
    r"(?P<close>\]?[ \t]{0,3}\([ \t]{0,3})(?P<scheme>[A-Za-z]{4,7})[ \t]{0,3}:[ \t]{0,3}"
    r"(?P<to>[^)\n]{0,200})|^ {0,3}\[[^\[\]\n]*\]:[ \t]{0,3}(?P<defined>value):",
    re.MULTILINE,
)
NAME = re.compile(
    rf"(?<![A-Za-z0-9_/.-])(?P<name>{IDENTIFIER.pattern})(?![A-Za-z0-9_-])"
    r"(?:\.(?P<property>[a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)?)(?![A-Za-z0-9_]))?"
)
NUMBER = re.compile(
    r"(?<![A-Za-z0-9_.,:/-])[-+]?\d+(?:[.,]\d+)*(?:/\d+)?[ \u00a0\u202f]?"
    r"(?P<unit>%|(?P<name>[A-Za-z\u00b5\u00b0\u03a9][A-Za-z_]*)"
    r"(?:\d?\((?:g|a|d|n|s|anr)\)|[0-9/.^()\u00b2\u00b3\u00b7A-Za-z_*-]*[A-Za-z0-9\u00b2\u00b3)])?)"
    r"(?![A-Za-z0-9])"
)
WORTH_A_LOOK = re.compile(r"\d|value|\([A-Za-z ]+:")
"""A text without a figure, this word or a scheme refers to nothing."""
COMMENT = re.compile(r"<!--.*?(?:-->|\Z)", re.DOTALL)
ODD_UNITS = (
    "\u00b0C",
    "\u00b0F",
    "\u00b0",
    "\u00b5m",
    "\u03a9",
    "bars",
    "litre",
    "litres",
    "liters",
)
MOST = 2000
"""Of each sort in one text; no record comes near it."""
PROSE = ("a", "in")
"""Words of the language that somebody elsewhere uses as a unit."""
TAGGED = re.compile(r"[A-Za-z0-9]+\((?:g|a|d|n|s|anr)\)")


@dataclass(frozen=True, slots=True)
class ValueLink:
    """A quoted value: `[9 starts](value:receiver-sizing.n?in=L)`."""

    text: str
    """Between the square brackets, as written."""
    address: str
    unit: str
    """After `?in=`; empty where none is asked for."""
    where: Where
    """Of the opening bracket."""
    span: tuple[int, int]
    """Of the whole link in the text it was found in."""

    @property
    def text_where(self) -> Where:
        """Where the text between the brackets starts."""
        return Where(self.where.path, self.where.line, self.where.column + 1)


@dataclass(frozen=True, slots=True)
class Bare:
    """An id or tag that stands in text."""

    name: str
    where: Where
    span: tuple[int, int]
    property: str = ""
    """What follows it behind a dot: of `SA-RV-001.set` the `set`."""
    linkable: bool = True
    """Not within a link already."""


@dataclass(frozen=True, slots=True)
class TypedNumber:
    """A number with a unit that somebody typed instead of quoting it."""

    text: str
    where: Where
    span: tuple[int, int]


@dataclass(frozen=True, slots=True)
class References:
    """What a text refers to."""

    links: tuple[ValueLink, ...] = ()
    names: tuple[Bare, ...] = ()
    numbers: tuple[TypedNumber, ...] = ()
    diagnostics: tuple[Diagnostic, ...] = ()


class _Places:
    """Turns a place in a text into a place in its file."""

    def __init__(self, text: str, where: Where) -> None:
        self.where = where
        self.starts = [0, *(found.end() for found in re.finditer("\n", text))]

    def at(self, offset: int) -> Where:
        line = bisect_right(self.starts, offset) - 1
        column = offset - self.starts[line] + (self.where.column if line == 0 else 1)
        return Where(self.where.path, self.where.line + line, column)


def find_references(
    text: str, where: Where, fenced: Iterable[tuple[int, int]] = (), about: str = ""
) -> References:
    """Find everything a text refers to.

    Args:
        text: As written.
        where: Of its first sign; later lines start in the first column.
        fenced: First and last lines of the fences in it.
        about: The record, tag or page it belongs to.
    """
    if not WORTH_A_LOOK.search(text):
        return References()
    places = _Places(text, where)
    prose = _blank(text, _passed_over(text, places.starts, fenced))
    quoted = list(islice(VALUE_LINK.finditer(prose), MOST))
    links, faults = _value_links(quoted, places, about)
    prose = _blank(prose, (found.span() for found in quoted))
    faults += islice(_nearly_links(prose, places, about), MOST)
    linked = list(LINK.finditer(prose))
    prose = _blank(prose, (part for found in linked for part in _targets(found)))
    names = tuple(islice(_names(prose, places, [found.span() for found in linked]), MOST))
    numbers = tuple(islice(_numbers(prose, places), MOST))
    if max(len(quoted), len(names), len(numbers)) == MOST:
        said = f"{MOST} names, values or numbers in one text, and what follows is not looked at"
        faults.append(Diagnostic(where, Severity.STOP, said, "split it", CODE, about))
    return References(tuple(links), names, numbers, tuple(faults))


def _value_links(
    quoted: list[re.Match[str]], places: _Places, about: str
) -> tuple[list[ValueLink], list[Diagnostic]]:
    """Quoted values, and those whose address is none."""
    links: list[ValueLink] = []
    faults: list[Diagnostic] = []
    for found in quoted:
        try:
            address = GRAMMARS[Address](found["address"])
        except Unfit as unfit:
            to = places.at(found.start("address"))
            faults.append(Diagnostic(to, Severity.STOP, unfit.text, unfit.cure, CODE, about))
        else:
            where = places.at(found.start())
            unit = found["unit"] or ""
            links.append(ValueLink(found["text"], address, unit, where, found.span()))
    return links, faults


def _blank(text: str, spans: Iterable[tuple[int, int]]) -> str:
    """The text with some parts as blanks, every other sign where it was."""
    parts, done = [], 0
    for start, end in sorted(spans):
        first = max(start, done)
        if first < end:
            parts += [text[done:first], re.sub(r"[^\n]", " ", text[first:end])]
            done = end
    return "".join((*parts, text[done:]))


def _passed_over(
    text: str, starts: list[int], fenced: Iterable[tuple[int, int]]
) -> Iterator[tuple[int, int]]:
    """Fences, comments and code."""
    ends = [*starts[1:], len(text)]
    fences = [(starts[first], ends[last]) for first, last in fenced]
    yield from fences
    rest = _blank(text, fences)
    comments = [found.span() for found in COMMENT.finditer(rest)]
    yield from comments
    rest = _blank(rest, comments)
    for start, end in _paragraphs(rest):
        yield from code_spans(rest, start, end)


def _paragraphs(text: str) -> Iterator[tuple[int, int]]:
    """First sign and end of each run of lines that are not blank."""
    start = at = 0
    for line in text.split("\n"):
        end = at + len(line)
        if not line.strip():
            if start < at:
                yield start, at
            start = end + 1
        at = end + 1
    if start < len(text):
        yield start, len(text)


def code_spans(text: str, start: int, end: int) -> Iterator[tuple[int, int]]:
    """Code spans of a paragraph: from a run of backticks to the next run as long."""
    runs = [found.span() for found in re.finditer("`+", text[start:end])]
    later: dict[int, list[int]] = {}
    for number, (left, right) in enumerate(runs):
        later.setdefault(right - left, []).append(number)
    done = 0
    for number, (left, right) in enumerate(runs):
        if number < done:
            continue
        same = later[right - left]
        while same and same[0] <= number:
            same.pop(0)
        if same:
            done = same[0] + 1
            yield start + left, start + runs[same[0]][1]


def _nearly_links(prose: str, places: _Places, about: str) -> Iterator[Diagnostic]:
    """What was meant to quote a value, and would show as plain text."""
    for found in NEARLY.finditer(prose):
        place = places.at(found.start("scheme") if found["scheme"] else found.start("defined"))
        scheme = found["scheme"] or ""
        to = (found["to"] or "").strip()
        addressed = ADDRESS.match(to) is not None
        misspelt = scheme != "value" and nearest(scheme, ["value"]) and "//" not in to
        if found["defined"] or (addressed and (scheme == "value" or misspelt)):
            shown = shorten(found[0].strip("]( \t"))
            text = f"`{shown}` quotes no value as it stands"
            cure = "write [text](value:block.name) in one piece"
            yield Diagnostic(place, Severity.STOP, text, cure, CODE, about)


def _targets(found: re.Match[str]) -> Iterator[tuple[int, int]]:
    """The parts of a link that are no text: where it leads."""
    for part in ("to", "auto"):
        if found[part] is not None:
            yield found.span(part)


def _names(prose: str, places: _Places, within: list[tuple[int, int]]) -> Iterator[Bare]:
    starts = [start for start, _ in within]
    for found in NAME.finditer(prose):
        before = bisect_right(starts, found.start()) - 1
        linkable = before < 0 or within[before][1] <= found.start()
        yield Bare(
            found["name"],
            places.at(found.start()),
            found.span("name"),
            found["property"] or "",
            linkable,
        )


def _numbers(prose: str, places: _Places) -> Iterator[TypedNumber]:
    for found in NUMBER.finditer(prose):
        if found["unit"] == "%" or _is_unit(found["unit"], found["name"]):
            start, end = found.span()
            yield TypedNumber(prose[start:end], places.at(start), (start, end))


def _is_unit(unit: str, name: str) -> bool:
    """Whether a word behind a number is a unit, or one that this book does not take."""
    known = name in LIBRARY_NAMES or (name in TRAPS and name not in PROSE) or name in ODD_UNITS
    return known or TAGGED.fullmatch(unit) is not None
