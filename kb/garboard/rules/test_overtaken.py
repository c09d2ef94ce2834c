"""The newest test of something is older than the last change to it.

Why: it proves how the thing was. After a new pipe, a new setting or a repair it proves nothing
about what is there now.

Fix: plan the test again and name it under `retests` of the change; where the change does not
touch what was tested, take the component out of its `affects`.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.change import Change
from garboard.records.inspection import Test
from garboard.records.standing import has_left, refused
from garboard.rules.proofs import is_proof, proofs_by_tag, tested_again

CODE = "test-overtaken"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare every installed change with the newest test of what it touches."""
    proofs = proofs_by_tag(book)
    said: set[str] = set()
    for change in book.of_kind(Change):
        if change.installed is None or has_left(change) or refused(change):
            continue
        for test in _touched(book, change, proofs):
            later = test.on is not None and test.on < change.installed
            if later and str(test.id) not in said and not tested_again(book, change):
                said.add(str(test.id))
                text = f"{test.id} of {test.on}, {change.id} of {change.installed}"
                cure = f"plan a re-test, or take what it does not touch out of {change.id}"
                yield Diagnostic(test.place("on"), SEVERITY, text, cure, CODE, str(test.id))


def _touched(book: Book, change: Change, proofs: dict[str, list[Test]]) -> Iterator[Test]:
    """The newest proof of each component that a change touches, and every test that it voids."""
    for name in (*change.affects, *change.values):
        newest = proofs.get(name.split(".")[0], [])[-1:]
        yield from newest
    for name in change.voids:
        record = book.records.get(bare_id(name))
        if isinstance(record, Test) and is_proof(record):
            yield record
