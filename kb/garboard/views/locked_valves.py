"""Locked valves: how each is held, on which round it is looked at, and what would be there without it."""

from collections.abc import Iterator
from datetime import date

from garboard.book import Book
from garboard.records.change import Concession
from garboard.records.component import Component
from garboard.records.inspection import Test
from garboard.records.proofs import is_proof
from garboard.records.standing import has_left, refused
from garboard.records.work import MaintenanceTask
from garboard.views.draft import Draft
from garboard.views.inline import cell, day
from garboard.views.page import Cell, Column, Link, Paragraph, Plate, Row, Run, Table

__all__ = ["locked_valves"]

TITLES = (
    "valve",
    "locked",
    "how secured",
    "key",
    "round",
    "what hangs on it",
    "concession",
    "last seen",
)
NOT_HELD = "nothing: it counts as free"


def locked_valves(draft: Draft) -> None:
    """Every valve that is called locked."""
    book = draft.book
    draft.add(
        Paragraph(
            (
                "A lock counts as one only where it is said how it is secured and on which round it is looked"
                " at. What hangs on it is what the search of the layout finds once the valve is free.",
            )
        )
    )
    rows = tuple(
        Row(_row(book, tag, part), tag) for tag, part in book.components.items() if part.locked
    )
    columns = tuple(map(Column, TITLES))
    draft.add(Table("Locked valves", columns, rows, "no valve is locked", across=True))


def _row(book: Book, tag: str, part: Component) -> tuple[Cell, ...]:
    surveyed = book.surveys.get(part.system)
    seen = surveyed.plant.part(tag) if surveyed else None
    place = f", {part.place}" if part.place else ", place not recorded"
    return (
        (Plate(tag), f" {part.name or part.kind}{place}"),
        (str(part.locked),),
        cell(book, part.secured) or ("not recorded",),
        cell(book, part.key) or ("not recorded",),
        _rounds(book, tag, part),
        _hanging(book, tag, part) if seen and seen.locked is not None else (NOT_HELD,),
        _conceded(book, tag, part),
        _last_looked_at(book, tag),
    )


def _rounds(book: Book, tag: str, part: Component) -> Cell:
    """The rounds that stop at it, linked; the one it names, where none does."""
    system = book.systems.get(part.system)
    found = [
        name
        for name, walked in ((system.rounds if system else None) or {}).items()
        if any(stop.tag == tag for stop in walked.order)
    ]
    if not found or system is None:
        return (f"{part.round}: it stops elsewhere",) if part.round else ("none",)
    key = f"{system.folder.rsplit('/', 1)[-1]}/watch-rounds"
    return tuple(Link(key, name) for name in found)


def _conceded(book: Book, tag: str, part: Component) -> Cell:
    """The concessions for it, or for what hangs on it, that still stand, with the day they run out."""
    runs: list[Run] = []
    surveyed = book.surveys.get(part.system)
    hanging = {one.fingerprint for one in surveyed.hanging_on(tag)} if surveyed else set()
    for one in book.of_kind(Concession):
        about_it = tag in one.where_ or one.fingerprint in hanging
        if about_it and not has_left(one) and not refused(one):
            runs += ["; "] if runs else []
            runs += [Link(str(one.id), str(one.id)), f" {book.state(one)}, until {day(one.until)}"]
    return tuple(runs) or ("none",)


def _hanging(book: Book, tag: str, part: Component) -> Cell:
    runs: list[Run] = []
    for found in book.surveys[part.system].hanging_on(tag):
        runs += ["; "] if runs else []
        link = Link(f"registers/path-findings#{found.fingerprint}", found.code)
        runs += [link, " of ", *cell(book, found.about)]
    return tuple(runs) or ("nothing was found to",)


def _last_looked_at(book: Book, tag: str) -> Cell:
    """The newest day on which a test or a task of maintenance says that it was looked at."""
    looks = sorted(_looks(book, tag))
    if not looks:
        return ("not recorded",)
    on, record = looks[-1]
    return (f"{day(on)}, ", Link(record, record))


def _looks(book: Book, tag: str) -> Iterator[tuple[date, str]]:
    for test in book.of_kind(Test):
        if test.on and is_proof(test) and any(item.tag == tag for item in test.tested):
            yield test.on, str(test.id)
    for task in book.of_kind(MaintenanceTask):
        if task.tag == tag:
            yield from ((done.on, str(task.id)) for done in task.done)
