"""A finding is written as closed, and what closed it has gone or failed.

Why: the cure was the action, the decision or the test that the closing rested on. Where that was
superseded, made void or did not hold, the fault may be back and nobody looks for it.

Fix: reopen the finding and have it evaluated again; or name in `actions`, or under `evidence` of the
action, the record that took its place and does the same.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.finding import Finding

CODE = "closing-record-replaced"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every finding that is written as closed and counts as reopened."""
    for finding in book.of_kind(Finding):
        setback = book.setbacks.get(str(finding.id))
        for reason in setback.reasons if setback else ():
            text = f"{finding.id} is closed, {reason.text}"
            cure = "reopen it, or name the record that took its place"
            where = finding.place(reason.path)
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(finding.id))
