"""The Markdown of a record or page, as far as rules look at it: links, pictures, headings, HTML.

No Markdown library is asked: what a reader of the source takes for a link is one.
"""

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from garboard.errors import Where
from garboard.reading.content import Written
from garboard.rules.prose import Prose, prose_of

__all__ = [
    "HeadRow",
    "Heading",
    "Link",
    "RawTag",
    "find_head_rows",
    "find_headings",
    "find_links",
    "find_raw_tags",
]

WORDS = r"(?:[^\[\]\\]|\\.|\[(?:[^\[\]\\]|\\.)*\](?:\([^()]*\))?)*"
TARGET = r"(?:<[^<>\n]*>|(?:[^()\s\"']|\([^()\s]*\)|(?<=\S) +(?=[^\s\"'()]))*)"
TITLE = r"(?:\s+(?:\"[^\"]*\"|'[^']*'))?"
INLINE = re.compile(
    rf"(?P<bang>!?)\[(?P<text>{WORDS})\]"
    rf"(?:\(\s*(?P<target>{TARGET}){TITLE}\s*\)|\[(?P<label>[^\[\]]*)\])"
)
DEFINED = re.compile(
    r"^ {0,3}\[(?P<label>[^\]^\n][^\]\n]*)\]:[ \t]*<?(?P<target>[^\s<>]+)", re.MULTILINE
)
AUTO = re.compile(r"<(?P<target>[A-Za-z][A-Za-z0-9+.-]*:[^\s<>]*)>")
RAW = re.compile(r"<(?P<tag>[A-Za-z][A-Za-z0-9-]*)(?P<rest>(?:\s[^<>]*|/)?)>")
LEADS = re.compile(
    r"\b(?P<name>href|src)\s*=\s*(?P<quote>[\"']?)(?P<target>[^\"'\s<>]*)", re.IGNORECASE
)
ATX = re.compile(r"^ {0,3}#{1,6}[ \t]+(?P<words>[^\n]+)$", re.MULTILINE)
SETEXT = re.compile(r"^(?P<words>[^\n#>|\s-][^\n|]*)\n(?:=+|-+)[ \t]*$", re.MULTILINE)
RULE = re.compile(r":?-+:?")
CELL_END = re.compile(r"(?<!\\)\|")
LONGEST = 300
"""Of a heading, as far as it is looked at."""
MARKS = re.compile(r"!?\[([^\]]*)\](?:\([^)]*\)|\[[^\]]*\])|[*`]|\b_|_\b")


@dataclass(frozen=True, slots=True)
class Link:
    """A link or picture."""

    target: str
    """Where it leads, as written; empty where a reference names no definition."""
    text: str
    """Between the square brackets."""
    where: Where
    picture: bool = False
    label: str = ""
    """Of a reference without a definition, what it names."""
    raw: bool = False
    """In raw HTML."""


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading, and the anchor it gives."""

    words: str
    anchor: str
    where: Where
    level: int = 1
    """How many `#` it has; underlined with `=` it is 1, with `-` 2."""


@dataclass(frozen=True, slots=True)
class HeadRow:
    """The row above the rule of a table."""

    cells: tuple[str, ...]
    where: Where


@dataclass(frozen=True, slots=True)
class RawTag:
    """An opening HTML tag in the text."""

    name: str
    attributes: str
    where: Where


def find_links(written: Written) -> Iterator[Link]:
    """Every link and picture of a text, those in raw HTML and in angle brackets included."""
    prose = prose_of(written)
    defined = {_folded(found["label"]): found["target"] for found in DEFINED.finditer(prose.text)}
    yield from _inline(prose, prose.text, 0, defined)
    for found in DEFINED.finditer(prose.text):
        yield Link(found["target"], found["label"], prose.place(found.start("target")))
    for found in AUTO.finditer(prose.text):
        yield Link(found["target"], found["target"], prose.place(found.start()))
    for tag in RAW.finditer(prose.text):
        for found in LEADS.finditer(tag["rest"]):
            where = prose.place(tag.start("rest") + found.start("target"))
            yield Link(found["target"], "", where, tag["tag"].lower() == "img", raw=True)


def _inline(prose: Prose, part: str, start: int, defined: Mapping[str, str]) -> Iterator[Link]:
    """The links of a part of a text that starts at a sign of it, those within links included."""
    for found in INLINE.finditer(part):
        at, picture = start + found.start(), bool(found["bang"])
        text = prose.written.text[start + found.start("text") : start + found.end("text")]
        if found["label"] is None:
            yield Link(found["target"].strip("<> "), text, prose.place(at), picture)
        elif (label := found["label"] or text) and _folded(label) not in defined:
            yield Link("", text, prose.place(at), picture, label)
        elif picture:
            yield Link(defined[_folded(label)], text, prose.place(at), picture)
        yield from _inline(prose, found["text"], start + found.start("text"), defined)


def find_headings(written: Written) -> Iterator[Heading]:
    """The headings of a text, in order, with the anchors a page gives them."""
    prose = prose_of(written)
    found = [*ATX.finditer(prose.text), *SETEXT.finditer(prose.text)]
    taken: Counter[str] = Counter()
    for each in sorted(found, key=lambda one: one.start()):
        typed = written.text[slice(*each.span("words"))][:LONGEST].rstrip().rstrip("#").rstrip()
        words = MARKS.sub(r"\1", typed).strip()
        anchor = re.sub(r"[^\w]+", "-", words.casefold()).strip("-")
        if anchor:
            taken[anchor] += 1
            count = f"-{taken[anchor]}" if taken[anchor] > 1 else ""
            yield Heading(words, anchor + count, prose.place(each.start("words")), _level(each[0]))


def _level(written: str) -> int:
    line = written.strip()
    marks = len(line) - len(line.lstrip("#"))
    return marks or (1 if line.endswith("=") else 2)


def find_head_rows(written: Written) -> Iterator[HeadRow]:
    """The head of every table of a text."""
    prose = prose_of(written)
    lines = prose.text.split("\n")
    for number, (head, below) in enumerate(pairwise(lines)):
        if "|" not in head or "|" not in below or set(below) - set("|:- \t"):
            continue
        row, ruled = _cells(head), _cells(below)
        if len(row) == len(ruled) and all(RULE.fullmatch(cell) for cell in ruled):
            yield HeadRow(row, prose.place(prose.starts[number]))


def _cells(row: str) -> tuple[str, ...]:
    inner = row.strip().removeprefix("|")
    inner = inner if inner.endswith("\\|") else inner.removesuffix("|")
    return tuple(cell.strip() for cell in CELL_END.split(inner))


def find_raw_tags(written: Written) -> Iterator[RawTag]:
    """Every opening HTML tag of a text."""
    prose = prose_of(written)
    for found in RAW.finditer(prose.text):
        yield RawTag(found["tag"].lower(), found["rest"].strip(" /"), prose.place(found.start()))


def _folded(label: str) -> str:
    return " ".join(label.split()).casefold()
