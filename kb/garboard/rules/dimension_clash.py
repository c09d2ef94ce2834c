"""Quantities meet that cannot: units that do not fit, or a result of another sort than asked for.

Why: litres added to bar give a number all the same, and it looks like any other. A line that does
not fit in its units is wrong, whatever it says.

Fix: check the units and brackets of both sides; what stands after `in` must be a unit
of the result.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "dimension-clash"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met while the fences were worked out."""
    yield from book.raised(CODE)
