"""A method was asked for a value outside the limits in which it holds.

Why: a formula goes on giving numbers past the point where it stops being true.

Fix: check the input; where it is right, take a method that holds there, or measure. The method is
never clipped to its limits, so nothing is computed from it until then.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "outside-validity"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met while the methods were called."""
    yield from book.raised(CODE)
