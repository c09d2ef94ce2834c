"""A work package is offered as ready while something it needs is not there.

Why: five people turn out on Saturday for a job that cannot begin.

Fix: finish what is needed first, or set the package back to `defined` until it is.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.readiness import lacks
from garboard.records.standing import state_of
from garboard.records.work import WorkPackage

CODE = "offered-not-ready"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the needs, as they count, of every package that is written as ready."""
    for work in book.of_kind(WorkPackage):
        if state_of(work) != "ready":
            continue
        about = str(work.id)
        for lack in lacks(work, book.records, book.state, book.today):
            text = f"{about} is ready, {lack.text}"
            cure = f"{lack.first}, or set it back to defined"
            yield Diagnostic(work.place(lack.path), SEVERITY, text, cure, CODE, about)
