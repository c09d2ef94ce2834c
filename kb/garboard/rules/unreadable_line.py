"""A line of a calculation, or a quantity, is not written in the calculation language.

Why: a line that is skipped leaves an old number standing, or none, and nobody notices. All that
rests on it shows "not computed".

Fix: write what the message says; the place is the first sign that does not fit. In `--format json`
the family says what sort of fault it is: SYNTAX, LIMIT, NAME, UNIT, RANGE or METHOD.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "unreadable-line"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met in the fences and quantities."""
    yield from book.raised(CODE)
