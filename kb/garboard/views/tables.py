"""Rows that many pages share: a record in a list, a component in a list."""

from collections.abc import Iterable
from typing import TypeVar

from garboard.book import Book
from garboard.records.base import Record
from garboard.records.standing import state_of
from garboard.views.fields import line_of
from garboard.views.page import Cell, Column, Link, Row, Table

__all__ = ["class_of", "newest_first", "record_table", "stands"]

R = TypeVar("R", bound=Record)


def record_table(
    book: Book,
    caption: str,
    records: Iterable[Record],
    *names: str,
    empty: str = "nothing recorded",
) -> Table:
    """A table of records of one kind.

    Args:
        book: Where values and roles are looked up.
        caption: Says what is listed.
        records: In the order of the rows.
        names: Fields that become columns, beside id with title, class and state.
        empty: What is said where there is nothing.
    """
    columns = (
        "record",
        *(name.rstrip("_").replace("_", " ") for name in names),
        "class",
        "state",
    )
    rows = []
    for one in records:
        own: tuple[Cell, ...] = tuple(line_of(book, one, name) for name in names)
        link: Cell = (Link(str(one.id), str(one.id)), f" {one.title}")
        rows.append(Row((link, *own, (class_of(one),), (stands(book, one),)), str(one.id)))
    return Table(caption, tuple(Column(name) for name in columns), tuple(rows), empty)


def class_of(record: Record) -> str:
    """The class of a record as written, and what it counts as where that differs."""
    if record.class_ is None:
        return "none stated"
    counts = "" if record.weight is record.class_ else f", counts as {record.weight}"
    return f"{record.class_}{counts}"


def stands(book: Book, record: Record) -> str:
    """The state of a record: as written, and what it counts as where that is less."""
    written, counts = state_of(record), book.state(record)
    return written if counts == written else f"{counts} (written: {written})"


def newest_first(records: Iterable[R]) -> list[R]:
    """By the day they were drafted, the newest first; undated ones last."""
    return sorted(
        records, key=lambda one: (one.drafted is not None, day_key(one), str(one.id)), reverse=True
    )


def day_key(record: Record) -> str:
    """The day a record was drafted, as text that sorts."""
    return record.drafted.isoformat() if record.drafted else ""
