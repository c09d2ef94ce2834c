"""A test passed by a criterion whose numbers do not say on which side, so no reading was held against it.

Why: 49.5 bar(g) may be the least or the most. Where nobody says which, a reading of 44 passes as well,
and the page looks as if it had been compared.

Fix: write at least, at most or from one to the other before the number, give it a tolerance, or quote the
value of the part: `SA-AR-001.test held 30 min`.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.criterion import find_bounds, find_numbers
from garboard.records.inspection import Result, Test
from garboard.records.standing import has_left

CODE = "criterion-judges-nothing"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for passed tests with readings that nothing in their criterion can judge."""
    for test in book.of_kind(Test):
        criterion = test.criterion or ""
        if has_left(test) or test.result is not Result.PASS or not test.readings:
            continue
        where = test.place("criterion")
        numbers = find_numbers(book.values, criterion, where)
        if numbers and not find_bounds(book.values, criterion, where):
            text = f"{test.id} passed by `{numbers[0].shown}`, "
            text += "which does not say whether it is the least or the most"
            cure = f"write at least {numbers[0].shown}, or at most, or quote the value of the part"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(test.id))
