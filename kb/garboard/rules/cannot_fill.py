"""A machine reaches nothing, or nothing can fill a store.

Question: is there any way at all from each machine to a store, user, tank or the sea, and from a
machine to each store?

Why: most often a check valve was drawn, or built, the wrong way round. A way through a drain or
vent to the open air is no way. In direct current the same is asked of alternators, chargers and
batteries.

Bad: `filling line > NV-001 > CP-001`.

Good: `CP-001 > NV-001 > filling line`.

Fix: turn round what points the wrong way, or join the part where it belongs.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "cannot-fill"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
