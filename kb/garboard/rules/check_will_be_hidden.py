"""A work package will close up what somebody is still to look at.

Why: lagging, paint and floor plates go on in an afternoon. Then the hold is released on trust, or
everything comes off again.

Fix: name the hold under `holds` of the package, or the package under `before` of the hold, so that
it waits; or leave out of `hides` what can still be seen. What a hold is about is told from its
criterion, activity, `affects` and tests.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.standing import has_left, refused, state_of
from garboard.records.work import WorkPackage
from garboard.rules.held_parts import hidden

CODE = "check-will-be-hidden"
SEVERITY = Severity.WARN
BINDS_FROM = "building"
WAIVABLE = True

OVER = ("complete", "verified")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at what every package that is not finished will close up."""
    for work in book.of_kind(WorkPackage):
        if has_left(work) or refused(work) or state_of(work) in OVER:
            continue
        for line, tag in hidden(book, work):
            text = f"{work.id} hides {tag}, {line.id} on it is {state_of(line)} and not released"
            cure = f"write {line.id} under holds, or leave {tag} in sight"
            yield Diagnostic(work.place("hides"), SEVERITY, text, cure, CODE, str(work.id))
