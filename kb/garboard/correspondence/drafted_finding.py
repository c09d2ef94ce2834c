"""A finding that came by a reply, as the file of a new record: raised, in the reviewer's own words.

What the reviewer wrote stands in fields, in quotes, where nothing is marked up or worked out; only
the quoting of a value, which a field may hold, is taken apart.
"""

import re
from dataclasses import dataclass
from datetime import date

from garboard.names import IDENTIFIER
from garboard.reading.blank import path_for
from garboard.reading.record_file import read_markdown
from garboard.reading.yaml_refusals import quote
from garboard.records.finding import Finding
from garboard.records.kinds import BY_LETTERS
from garboard.records.reply import Point

__all__ = ["DraftedFinding", "Raised", "drafted_finding"]

LONGEST_TITLE = 60
DIGIT = re.compile(r"\d")
QUOTING = re.compile(r"(\(\s*[A-Za-z]{4,7}|^\[[^\[\]]*\]:\s*value)\s*:")
"""How a value is quoted, or nearly so; its colon becomes a dash."""


@dataclass(frozen=True, slots=True)
class Raised:
    """What all findings of one reply have in common."""

    about: str
    """Id of the record, or path of the written page."""
    system: str
    folder: str
    """Of the system, in the content."""
    by: str
    """Key of the reviewer."""
    on: date
    known: frozenset[str]
    """Every id and tag that is declared."""
    came: str
    """How it came to be written down, in words of ours."""


@dataclass(frozen=True, slots=True)
class DraftedFinding:
    """A new file for the content."""

    ident: str
    path: str
    text: str
    left: tuple[str, ...]
    """What in it could not be taken as it was meant, in words."""


def drafted_finding(point: Point, ident: str, raised: Raised) -> DraftedFinding | None:
    """Draft a finding.

    Args:
        point: As the reviewer wrote it.
        ident: The next free id.
        raised: What it was found in.

    Returns:
        None where the words would not be read back as the same words.
    """
    names = tuple(dict.fromkeys(IDENTIFIER.findall(point.where)))
    where = [name for name in names if name in raised.known]
    rest = IDENTIFIER.sub("", point.where).strip(" ,.;")
    told = bool(rest) and len(where) == len(names) and not DIGIT.search(rest)
    left = [f"{name} is declared nowhere" for name in names if name not in raised.known]
    if rest and not told:
        left.append("where it is stands to the letter in the kept reply only")
    named = dict.fromkeys(IDENTIFIER.findall(point.seen))
    left += [
        f"{name}, in its words, is declared nowhere: garboard check will stop at it"
        for name in named
        if name not in raised.known
    ]
    if point.danger is None:
        left.append("no danger is ticked: answer it in the record")
    record = IDENTIFIER.fullmatch(raised.about) is not None
    words = _harmless(point.seen or "no words given")
    if QUOTING.search(point.seen):
        left.append("a colon in brackets became a dash; the kept reply has the words to the letter")
    title = _title(words, raised.about)
    at = where or ([raised.about] if record else [])
    lines = [
        f"id: {ident}",
        f"title: {quote(title)}",
        f"system: {raised.system}",
        "state: raised",
        f"author: {quote(raised.by)}",
        f"words: {quote(words)}",
        *([f"where: [{', '.join(at)}]"] if at else []),
        *([f"affects: [{quote(_harmless(point.where))}]"] if told else []),
        f"found: {{by: {quote(raised.by)}, on: {raised.on}, during: {quote(f'review of {raised.about}')}}}",
        *([f"danger: {point.danger}"] if point.danger else []),
        *([f"against: [{raised.about}]"] if record else []),
    ]
    text = "\n".join(("---", *lines, "---", raised.came, ""))
    path = path_for(
        BY_LETTERS["FN"], raised.folder, ident, f"{ident} review of {raised.about}", raised.on
    )
    read = read_markdown(text, path)
    same = isinstance(read.thing, Finding) and read.thing.words == words and not read.diagnostics
    return DraftedFinding(ident, path, text, tuple(left)) if same else None


def _title(words: str, about: str) -> str:
    """The first words; where they hold figures, which have no place in a title, what was reviewed."""
    whole = len(words) <= LONGEST_TITLE
    short = words if whole else f"{words[: LONGEST_TITLE - 3].rpartition(' ')[0] or about} ..."
    return short if not DIGIT.search(short) else f"Finding of the review of {about}"


def _harmless(text: str) -> str:
    """Words in which no value is filled in, and no end of line stands."""
    return QUOTING.sub(r"\1 -", " ".join(text.split()))
