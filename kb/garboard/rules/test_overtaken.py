"""The newest test of something is older than the last change to it.

Why: it proves how the thing was. After a new pipe, a new setting or a repair it proves nothing
about what is there now.

Fix: plan the test again and name it under `retests` of the change; where the change does not
touch what was tested, take the component out of its `affects`.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.proofs import overtaken

CODE = "test-overtaken"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare every installed change with the newest test of what it touches."""
    for name, change in overtaken(book.records).items():
        test = book.records[name]
        day = getattr(test, "on", None)
        text = f"{name} of {day}, {change.id} of {change.installed}"
        cure = f"plan a re-test, or take what it does not touch out of {change.id}"
        yield Diagnostic(test.place("on"), SEVERITY, text, cure, CODE, name)
