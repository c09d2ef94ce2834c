"""A calculation of class A was got by one person in one way; or a second way came out differently.

Why: whoever repeats a calculation repeats its mistake. Only another person on another road meets
the same number for a reason.

Basis: two determinations, DOE-STD-1036-93.

Fix: have another person get it another way, by a test, a table or by hand, and record who, how and
what came out; where the two differ, say in `reconciled` why, and which holds. They agree within the
range of the first, or within 1 % (common practice, no source).
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Value
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class, bare_id
from garboard.records.calculation import Calculation, SecondWay
from garboard.records.figure import Figure, figure_of, within_tolerance
from garboard.records.inspection import Test
from garboard.records.standing import has_left
from garboard.rules.upstream import is_input

CODE = "calculated-once"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True

AGREE = 0.01


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for the second way of every class A calculation, and compare what came out."""
    for record in book.of_kind(Calculation):
        if has_left(record) or record.weight is not Class.A or "second" in record.unread:
            continue
        if said := _fault(book, record):
            where = record.place("second.result" if record.second else "id")
            yield Diagnostic(where, SEVERITY, *said, CODE, str(record.id))


def _fault(book: Book, record: Calculation) -> tuple[str, str] | None:
    second = record.second
    if second is None:
        return f"{record.id} has one determination only", "have another person get it another way"
    if second.by == record.author:
        text = f"{record.id} was got a second time by {second.by}, who wrote it"
        return text, "have another person get it another way"
    for results, figure in _compared(book, record, second):
        alike = [value for value in results if value.type == figure.type]
        if alike and not record.reconciled and not any(_agrees(value, figure) for value in alike):
            first = alike[-1]
            text = f"{first.address} is {first.text}, the second way gave {figure.text}"
            return text, "say in reconciled why they differ and which holds, or do both again"
    return None


def _compared(
    book: Book, record: Calculation, second: SecondWay
) -> Iterator[tuple[list[Value], Figure]]:
    """What the second way came to, with the results of the first that it can be compared with."""
    blocks = {sheet.name for sheet in book.network.sheets.values() if sheet.owner == record.id}
    own = {name: one for name, one in book.values.items() if name.partition(".")[0] in blocks}
    test = book.records.get(bare_id(second.result))
    if not isinstance(test, Test):
        if figure := figure_of(book.values, second.result):
            yield [value for value in own.values() if not is_input(value)], figure
        return
    for reading in test.readings:
        figure = figure_of(book.values, reading.value)
        if figure and reading.of in own:
            yield [own[reading.of]], figure


def _agrees(value: Value, figure: Figure) -> bool:
    if value.si is None:
        return True
    return abs(figure.si - value.si) <= AGREE * abs(value.si) or within_tolerance(value, figure)
