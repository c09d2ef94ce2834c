"""What falls due: for the vessel, for one system, and for one task with how it was found each time."""

import re
from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.names import is_tag
from garboard.records.due import (
    Due,
    DueSort,
    due_of_instruments,
    due_of_parts,
    due_of_records,
    due_words,
    task_due,
)
from garboard.records.standing import has_left
from garboard.records.stock import stock_of
from garboard.records.system import System
from garboard.records.work import MaintenanceTask
from garboard.views.as_found import as_found
from garboard.views.draft import Draft
from garboard.views.fields import line_of
from garboard.views.inline import cell, day, link_to, short_day, title_of
from garboard.views.page import (
    Block,
    Cell,
    Column,
    Facts,
    Heading,
    Link,
    Paragraph,
    Plate,
    Row,
    Run,
    Strong,
    Table,
)
from garboard.views.spares import spares_of
from garboard.views.unfinished import unfinished

__all__ = ["due", "maintenance", "task_head"]

TITLES = ("what", "to do", "every", "last", "next", "stands", "parts")
KINDS = (
    ("Tasks", (DueSort.TASK,)),
    ("Certificates, tests, things to replace", (DueSort.CERTIFICATE, DueSort.REPLACE)),
    ("Tests that a change has overtaken", (DueSort.AGAIN,)),
    ("Instruments", (DueSort.CALIBRATION,)),
    ("Arrangements that run out, hazards to look at again", (DueSort.RUNS_OUT, DueSort.LOOKED_AT)),
)
LATEST_FIRST = "Overdue first, then by day. A task by running hours has no day: read the counter."


def due(draft: Draft) -> None:
    """The due list of the vessel."""
    book = draft.book
    found = list(_all_due(book))
    late = [one for one in found if due_words(one, book.today)[1]]
    counted = f"{len(late)} of {len(found)} overdue on {day(book.today)}."
    draft.add(Paragraph((Strong(counted) if late else counted, f" {LATEST_FIRST}")))
    draft.add(*_tables(book, found))


def maintenance(draft: Draft, system: System) -> None:
    """What is done again and again on one system, what falls due, what lies ready for it."""
    book = draft.book
    found = [one for one in _all_due(book) if one.system == system.code]
    draft.add(Paragraph((LATEST_FIRST, " ", Link("registers/due", "Due on the whole vessel"), ".")))
    draft.add(*_tables(book, found))
    draft.add(spares_of(book, system.code))


def _all_due(book: Book) -> Iterator[Due]:
    owed = [one for one in book.records.values() if not has_left(one) and unfinished(book, one)]
    yield from due_of_records(book.records, owed)
    yield from due_of_parts(book.components)
    yield from due_of_instruments(book.content.vessel.instruments or {})


def _tables(book: Book, found: Iterable[Due]) -> Iterator[Block]:
    found = list(found)
    for caption, sorts in KINDS:
        mine = sorted(
            (one for one in found if one.sort in sorts), key=lambda one: _order(book, one)
        )
        if mine or DueSort.TASK in sorts:
            rows = tuple(Row(tuple(_cells(book, one)), one.about) for one in mine)
            columns = tuple(map(Column, _titles(mine)))
            yield Table(caption, columns, tuple(_narrow(rows)), across=len(columns) > 6)


def _titles(mine: list[Due]) -> tuple[str, ...]:
    return TITLES if any(one.every for one in mine) else _without_every(TITLES)


def _without_every(row: tuple[str, ...]) -> tuple[str, ...]:
    return (*row[:2], *row[3:6])


def _narrow(rows: tuple[Row, ...]) -> Iterator[Row]:
    """Rows without the columns that none of them fills."""
    if any(row.cells[2] for row in rows):
        yield from rows
        return
    for row in rows:
        yield Row((*row.cells[:2], *row.cells[3:6]), row.anchor)


def one_of(interval: str) -> str:
    """An interval as it is said.

    >>> one_of("1 weeks"), one_of("12 months"), one_of("250 running h")
    ('1 week', '12 months', '250 running h')
    """
    return re.sub(r"^1 (day|week|month|year)s$", r"1 \1", interval)


def _order(book: Book, one: Due) -> tuple[bool, str, str]:
    """The late before the rest, then by day; what has no day last."""
    _, late = due_words(one, book.today)
    return (not late, str(one.due or ("" if late else "9999")), one.about)


def _cells(book: Book, one: Due) -> Iterator[Cell]:
    words, late = due_words(one, book.today)
    yield (_about(book, one),)
    yield _to_do(book, one)
    yield (one_of(one.every),) if one.every else ()
    yield (short_day(one.last),) if one.last else ("not recorded",)
    yield (short_day(one.due),) if one.due else ("no day",)
    yield (Strong(words),) if late else (words,)
    record = book.records.get(one.about)
    yield _parts_aboard(book, record) if isinstance(record, MaintenanceTask) else ()


def _about(book: Book, one: Due) -> Run:
    return Plate(one.about) if is_tag(one.about) else link_to(book, one.about)


def _to_do(book: Book, one: Due) -> Cell:
    record = book.records.get(one.about)
    if isinstance(record, MaintenanceTask):
        plate: Cell = (" ", Plate(record.tag)) if record.tag else ()
        return (*(cell(book, record.task) or (record.title,)), *plate)
    if one.about in (book.content.vessel.instruments or {}):
        held = (book.content.vessel.instruments or {})[one.about]
        return (f"{one.sort}: {held.what}",)
    return (f"{one.sort}: {title_of(book, one.about)}",)


def _parts_aboard(book: Book, record: MaintenanceTask) -> Cell:
    """The parts that a task wants, and of each spare whether it is aboard."""
    runs: list[Run] = []
    for name in record.parts:
        spare = book.content.spares.get(str(name))
        runs += ["; "] if runs else []
        if spare is None:
            runs += cell(book, name)
            continue
        stock = stock_of(spare)
        runs += [Link(f"registers/spares#{spare.key}", spare.key), f" {spare.name}: "]
        runs.append(Strong(stock.words) if stock.low else stock.words)
    return tuple(runs)


def task_head(draft: Draft, record: MaintenanceTask) -> Iterator[Block]:
    """A task: what is done, when it is due, what it wants, how it was found each time.

    Args:
        draft: Its page.
        record: The task.
    """
    book = draft.book
    one = task_due(record)
    words, late = due_words(one, book.today)
    stands: Cell = (Strong(words),) if late else (words,)
    when: Cell = (f", {day(one.due)}",) if one.due else ()
    yield Paragraph((Strong("Do: "), *(cell(book, record.task) or ("not recorded",))))
    rows: list[tuple[str, Cell]] = [
        ("on", line_of(book, record, "tag")),
        ("every", cell(book, one_of(str(record.every or ""))) or ("not recorded",)),
        ("because of", line_of(book, record, "basis")),
        ("last done", (day(one.last),)),
        ("next", (*stands, *when)),
        ("by procedure", line_of(book, record, "procedure")),
        ("parts", _parts_aboard(book, record)),
        ("how well one must know it", line_of(book, record, "competence")),
        ("stand-by meanwhile", line_of(book, record, "standby")),
    ]
    yield Facts(tuple((label, line) for label, line in rows if line))
    yield Heading("As found, newest first")
    yield from as_found(book, record)
