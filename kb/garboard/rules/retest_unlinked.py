"""A test was tried again after it failed, and the second record does not follow the first.

Why: a pass beside a failure reads as two opinions. Only the chain says that the fault was seen, that
something was done, and that the same thing was tried again.

Fix: write `follows` into the later record, with the id of the one that failed. Compared are tests of
one plan line, or of one procedure and the same components; only the next one after a failure must
follow it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.inspection import Result, Test
from garboard.records.standing import has_left
from garboard.rules.retests import comes_after, follows, is_again

CODE = "retest-unlinked"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for the next try after every failure."""
    tests = [test for test in book.of_kind(Test) if not has_left(test)]
    for failed in tests:
        if failed.result is not Result.FAIL:
            continue
        later = [test for test in tests if comes_after(test, failed) and is_again(test, failed)]
        again = min(later, key=lambda test: (str(test.on), str(test.id)), default=None)
        if again is not None and not follows(book, again, failed):
            text = f"{failed.id} of {failed.on} failed, {again.id} tries it again and does not follow it"
            cure = f"write follows: {failed.id}, or name the other plan line that it is of"
            where = again.place("follows" if again.follows else "id")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(again.id))
