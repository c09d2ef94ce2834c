"""How a task found its part each time: the newest first, and which way its readings go, in words."""

from collections.abc import Iterator
from itertools import pairwise

from garboard.book import Book
from garboard.records.figure import Figure, figure_of
from garboard.records.work import Done, MaintenanceTask
from garboard.views.fields import line_of
from garboard.views.inline import cell, day, person
from garboard.views.page import Block, Bullets, Cell, Column, Link, Row, Table

__all__ = ["as_found"]

SHOWN = (
    ("on", "on"),
    ("by", "by"),
    ("as found", "as_found"),
    ("as left", "as_left"),
    ("read", "readings"),
    ("finding", "finding"),
)
"""Columns, and the field of each; one that nobody filled is left out."""
ONLY_SHOWN = "A trend is shown and not judged: whether it may go on is for a person to say."


def as_found(book: Book, task: MaintenanceTask) -> Iterator[Block]:
    """The history of a task.

    Args:
        book: The book.
        task: One of its tasks.
    """
    done = sorted(task.done, key=lambda one: one.on)
    filled = [
        (title, field)
        for title, field in SHOWN
        if field in ("on", "by", "as_found") or any(getattr(one, field) for one in done)
    ]
    rows = tuple(
        Row(tuple(_cell(book, one, field) for _, field in filled)) for one in reversed(done)
    )
    columns = tuple(Column(title) for title, _ in filled)
    yield Table(
        f"Done {len(done)} time{'' if len(done) == 1 else 's'}", columns, rows, "it was never done"
    )
    trends = tuple(_trends(book, done))
    if trends:
        yield Bullets((*trends, (ONLY_SHOWN,)))


def _cell(book: Book, one: Done, field: str) -> Cell:
    if field == "on":
        return (day(one.on),)
    if field == "by":
        return (person(book, one.by),)
    if field == "readings":
        read = (f"{item.of} {item.value}" for item in one.readings)
        return cell(book, "; ".join(read))
    if field == "finding" and one.finding:
        return (Link(str(one.finding), str(one.finding)),)
    return line_of(book, one, field)


def _trends(book: Book, done: list[Done]) -> Iterator[Cell]:
    """Of everything that was read more than once: from what to what, and which way."""
    series: dict[str, list[tuple[Done, str, Figure]]] = {}
    for one in done:
        for item in one.readings:
            figure = figure_of(book.values, str(item.value))
            if figure is not None:
                series.setdefault(str(item.of), []).append((one, str(item.value), figure))
    for name, read in series.items():
        alike = [each for each in read if each[2].type == read[0][2].type]
        if len(alike) > 1:
            yield _way(book, name, alike)


def _way(book: Book, name: str, read: list[tuple[Done, str, Figure]]) -> Cell:
    sizes = [figure.si for _, _, figure in read]
    pairs = list(pairwise(sizes))
    if all(later == earlier for earlier, later in pairs):
        way = "it has not moved"
    elif all(later >= earlier for earlier, later in pairs):
        way = "it rises"
    elif all(later <= earlier for earlier, later in pairs):
        way = "it falls"
    else:
        way = "it goes up and down"
    said = ", ".join(f"{text} ({day(one.on)})" for one, text, _ in read)
    return (*cell(book, name), f": {way}: {said}.")
