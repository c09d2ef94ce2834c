"""What stands first on the page of a record that has left: what took its place, and what differs."""

from collections.abc import Iterator
from dataclasses import fields

from garboard.book import Book
from garboard.records.base import Record
from garboard.records.standing import has_left
from garboard.review.canonical import left_out
from garboard.views.fields import label_of, line_of
from garboard.views.inline import day, heir_of
from garboard.views.page import Block, Cell, Column, Link, Paragraph, Row, Strong, Table

__all__ = ["left_blocks"]

OWN = frozenset("id system author drafted revision supersedes follows effective media text".split())
"""Fields in which two records always differ, or that no line can show."""
IN_TEXT: Cell = ("as it stands on this page",)


def left_blocks(book: Book, record: Record) -> Iterator[Block]:
    """The first lines of a superseded, withdrawn or void record; nothing for any other."""
    if not has_left(record):
        return
    heir = book.records.get(heir_of(book, str(record.id)))
    when = _day(record, heir)
    if heir is None:
        words = f"{str(record.state).capitalize()}{when}."
        yield Paragraph((Strong(words), " It is kept to be read, not to be relied on."))
        return
    yield Paragraph(
        (
            Strong("Superseded by "),
            Link(str(heir.id), str(heir.id)),
            Strong(f"{when}: "),
            f"{heir.title}. This page is kept to be read, not to be relied on.",
        )
    )
    rows = tuple(_differences(book, record, heir))
    if rows:
        columns = (Column("what differs"), Column("here"), Column(f"in {heir.id}"))
        yield Table("What differs", columns, rows)


def _day(record: Record, heir: Record | None) -> str:
    """When it left: as signed, else when what took its place was written."""
    signed = [line.on for line in record.signed if line.to == record.state]
    when = max(signed) if signed else heir.drafted if heir else None
    return f" on {day(when)}" if when else ""


def _differences(book: Book, old: Record, new: Record) -> Iterator[Row]:
    if type(old) is not type(new):
        return
    for item in fields(old):
        hidden = item.metadata.get("beside") or item.name.rstrip("_") in left_out(type(old))  # type: ignore[arg-type]  # a class is hashable
        if hidden or item.name in OWN:
            continue
        before, after = line_of(book, old, item.name), line_of(book, new, item.name)
        if before != after:
            yield Row(((label_of(item.name),), before or ("nothing",), after or ("nothing",)))
    if old.text.split() != new.text.split():
        yield Row((("text",), IN_TEXT, (f"as it stands on the page of {new.id}",)))
