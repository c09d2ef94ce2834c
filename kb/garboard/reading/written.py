"""The texts of a file and what they refer to: the body, and every field that holds free text."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from garboard.errors import Diagnostic, Where
from garboard.names import ADDRESS, IDENTIFIER
from garboard.reading.fields import FieldReader
from garboard.reading.nodes import ScalarNode, Style
from garboard.reading.references import Bare, TypedNumber, ValueLink, find_references

__all__ = ["Written", "body_text", "field_texts"]

NO_TEXT = re.compile(r"(?:signed\b.*|system|state)")
"""Fields that hold words of the book, or what `garboard sign` writes, and no text of an author."""


@dataclass(frozen=True, slots=True)
class Written:
    """A text as written, in the body of a file or in one of its fields, and what was seen in it."""

    owner: str
    """Id of the record, tag, system code, or path of the page."""
    field: str
    """Field path as in `places`; empty for the Markdown under the front matter."""
    where: Where
    text: str
    """As it stands in the file, without the quotes around a field."""
    links: tuple[ValueLink, ...] = ()
    names: tuple[Bare, ...] = ()
    numbers: tuple[TypedNumber, ...] = ()


Found = tuple[tuple[Written, ...], tuple[Diagnostic, ...]]


def body_text(body: str, where: Where, fenced: tuple[tuple[int, int], ...], owner: str) -> Found:
    """The Markdown of a file.

    Args:
        body: As written.
        where: Of its first sign.
        fenced: First and last lines of its fences.
        owner: The record or page.
    """
    found = find_references(body, where, fenced, owner)
    written = Written(owner, "", where, body, found.links, found.names, found.numbers)
    return (written,), found.diagnostics


def field_texts(reader: FieldReader, lines: Sequence[str], owner: str) -> Found:
    """Every free text among the fields.

    Args:
        reader: What has read them.
        lines: The whole file.
        owner: The record, tag, system or page.
    """
    written: list[Written] = []
    faults: list[Diagnostic] = []
    for path, node in reader.texts:
        if NO_TEXT.fullmatch(path):
            continue
        raw, where = _as_written(node, lines)
        found = find_references(raw, where, (), owner)
        whole = IDENTIFIER.fullmatch(raw) or ADDRESS.fullmatch(raw)
        names = () if whole else found.names
        written.append(Written(owner, path, where, raw, found.links, names, found.numbers))
        faults += found.diagnostics
    return tuple(written), tuple(faults)


def _as_written(node: ScalarNode, lines: Sequence[str]) -> tuple[str, Where]:
    """The text as it stands in the file, and its place."""
    first, last = node.where.line - 1, node.end.line - 1
    quoted = int(node.style in (Style.SINGLE, Style.DOUBLE))
    if first == last:
        start, end = node.where.column - 1 + quoted, node.end.column - 1 - quoted
        where = Where(node.where.path, node.where.line, start + 1)
        return lines[first][start:end], where
    start = node.where.column - 1 + quoted
    past = last == len(lines)  # a text set in at the end of the file ends behind it
    ends = "" if past else lines[last][: node.end.column - 1]
    rows = [lines[first][start:], *lines[first + 1 : last], ends]
    return "\n".join(rows), Where(node.where.path, node.where.line, start + 1)
