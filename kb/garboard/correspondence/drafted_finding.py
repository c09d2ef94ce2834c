"""A finding that came by a reply, as the file of a new record: raised, in the reviewer's own words.

What the reviewer wrote stands in fields, in quotes, where nothing is marked up or worked out; only
the quoting of a value, which a field may hold, is taken apart.
"""

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
    left = [f"{name} is declared nowhere" for name in names if name not in raised.known]
    if point.danger is None:
        left.append("no danger is ticked: answer it in the record")
    record = IDENTIFIER.fullmatch(raised.about) is not None
    words = _harmless(point.seen or "no words given")
    title = words if len(words) <= LONGEST_TITLE else f"{words[: LONGEST_TITLE - 3].rstrip()}..."
    at = where or ([raised.about] if record else [])
    lines = [
        f"id: {ident}",
        f"title: {quote(title)}",
        f"system: {raised.system}",
        "state: raised",
        f"author: {quote(raised.by)}",
        f"words: {quote(words)}",
        *([f"where: [{', '.join(at)}]"] if at else []),
        *(
            [f"affects: [{quote(_harmless(point.where))}]"]
            if rest or len(where) < len(names)
            else []
        ),
        f"found: {{by: {quote(raised.by)}, on: {raised.on}, during: {quote(f'review of {raised.about}')}}}",
        *([f"danger: {point.danger}"] if point.danger else []),
        *([f"against: [{raised.about}]"] if record else []),
    ]
    text = "\n".join(("---", *lines, "---", raised.came, ""))
    path = path_for(BY_LETTERS["FN"], raised.folder, ident, f"{ident} {title}", raised.on)
    read = read_markdown(text, path)
    same = isinstance(read.thing, Finding) and read.thing.words == words and not read.diagnostics
    return DraftedFinding(ident, path, text, tuple(left)) if same else None


def _harmless(text: str) -> str:
    """Words in which nothing is filled in, and no end of line stands."""
    return " ".join(text.replace("value:", "value :").split())
