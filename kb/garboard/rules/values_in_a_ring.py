"""A value is worked out from itself, by way of others.

Why: none of the values in the ring can be computed, and a number left over from before would be
believed.

Fix: give one of them as a measured or assumed number, with its source; the message names every
hop with its place.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "values-in-a-ring"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met while the fences were worked out."""
    yield from book.raised(CODE)
