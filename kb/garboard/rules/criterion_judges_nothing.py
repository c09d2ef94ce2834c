"""A test passed though nothing was held against its criterion: no side is said, or the units do not meet.

Why: 49.5 bar(g) may be the least or the most. Where nobody says which, a reading of 44 passes as well,
and the page looks as if it had been compared. So it does where the reading has no unit, or bar without
saying what it is counted from.

Fix: write at least, at most or from one to the other before the number, give it a tolerance, or quote the
value of the part: `SA-AR-001.test held 30 min`. Give each reading the unit of what it is held against.
"""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.calc.kinds import PLAIN_NUMBER, TIME
from garboard.errors import Diagnostic, Severity
from garboard.records.criterion import Bound, find_bounds, find_numbers, read_number
from garboard.records.inspection import Result, Test
from garboard.records.standing import has_left

CODE = "criterion-judges-nothing"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True

DERIVED = (PLAIN_NUMBER.dimension, TIME)
"""A share or how long: worked out of the readings, and none of them."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for passed tests with readings that nothing in their criterion can judge."""
    for test in book.of_kind(Test):
        criterion = test.criterion or ""
        if has_left(test) or test.result is not Result.PASS or not test.readings:
            continue
        where = test.place("criterion")
        numbers = find_numbers(book.values, criterion, where)
        bounds = find_bounds(book.values, criterion, where)
        measured = [one for one in bounds if one.type.dimension not in DERIVED]
        if measured and not test.log and not _comparable(book, test, measured):
            text = f"{test.id} passed by {measured[0].shown}, and no reading of it can be compared with that"
            cure = "give the reading the unit of the criterion, such as bar(g)"
            place = test.place("readings[0].value")
            yield Diagnostic(place, SEVERITY, text, cure, CODE, str(test.id))
        if numbers and not bounds:
            text = f"{test.id} passed by `{numbers[0].shown}`, "
            text += "which does not say whether it is the least or the most"
            cure = f"write at least {numbers[0].shown}, or at most, or quote the value of the part"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(test.id))


def _comparable(book: Book, test: Test, bounds: Iterable[Bound]) -> bool:
    """Whether any reading is of the sort that any bound is of."""
    types = {bound.type for bound in bounds}
    read = (read_number(book.values, one.value, test.place("readings")) for one in test.readings)
    return any(one is not None and one.type in types for one in read)
