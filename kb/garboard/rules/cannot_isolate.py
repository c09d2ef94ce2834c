"""No valve that can be locked stands between a part and a live store.

Question: which parts cannot be worked on without first emptying a receiver, tank, battery or the
sea?

Why: 29 CFR 1915.89 and 1915.163(a) ask that live piping be shut off and secured before work; a
check valve, a solenoid valve or a reducing valve secures nothing, HSE HSG253 (verify all three
before citing). It is a note: the store can be emptied first. Valves themselves are not named, nor
relief valves, which must have no valve before them.

Bad: `AR-001.gauge > PI-001`.

Good: `AR-001.gauge > CK-001 > PI-001`, where the layout allows a cock there.

Fix: fit a valve that can be locked, or write into the procedure that the store is emptied first.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "cannot-isolate"
SEVERITY = Severity.NOTE
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
