"""A page takes more paper than its kind may.

Why: who works by a page in wet gloves turns it over once; what stands on a second sheet is not read, or
is lost. A procedure in hand at night has one sheet of A4 folded to four sides of A5, work that was planned
has two; an alarm has half a side. The rows are reckoned from the words, with a wide face (common
practice, no source).

Fix: shorten the words, or split the task at a place where everything stands safe; a part of it that
others need too is a procedure of its own.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.alarm import Alarm, Fault
from garboard.records.page_rows import (
    Budget,
    alarm_rows,
    budget_of,
    fault_rows,
    procedure_rows,
    round_rows,
    text_rows,
)
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left

CODE = "page-too-long"
SEVERITY = Severity.WARN
BINDS_FROM = "sketch"
WAIVABLE = True
AT_ISSUE = True


@dataclass(frozen=True, slots=True)
class _Page:
    """A page whose rows were reckoned."""

    where: Where
    said: str
    about: str
    rows: int
    budget: Budget | None
    severity: Severity = SEVERITY


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold the rows of everything that has a budget against it."""
    for page in (*_of_records(book), *_of_rounds(book), *_of_written(book)):
        if page.budget and page.rows > page.budget.rows:
            most, over = page.budget.rows, page.rows - page.budget.rows
            text = f"{page.said} takes {page.rows} rows, {most} fit on {page.budget.paper}"
            cure = f"take {over} rows out of it, or split it where everything stands safe"
            yield Diagnostic(page.where, page.severity, text, cure, CODE, page.about)


def _of_records(book: Book) -> Iterator[_Page]:
    for one in book.records.values():
        about, budget = str(one.id), budget_of(one)
        if has_left(one):
            continue
        if isinstance(one, Procedure):
            rows = procedure_rows(one, book.records, book.components)
            yield _Page(one.place("steps"), about, about, rows, budget, Severity.HOLD)
        elif isinstance(one, Alarm):
            yield _Page(one.place("first"), about, about, alarm_rows(one), budget)
        elif isinstance(one, Fault):
            yield _Page(one.place("checks"), about, about, fault_rows(one), budget)


def _of_rounds(book: Book) -> Iterator[_Page]:
    for code, system in book.systems.items():
        for name, walked in (system.rounds or {}).items():
            where = system.place(f"rounds.{name}.order")
            said = f"the round `{name}` of {code}"
            yield _Page(where, said, code, round_rows(walked), budget_of(walked))


def _of_written(book: Book) -> Iterator[_Page]:
    for page in book.content.pages:
        where = Where(page.where.path, page.text_line)
        rows = text_rows(page.text)
        yield _Page(where, page.title, page.where.path, rows, budget_of(page))
