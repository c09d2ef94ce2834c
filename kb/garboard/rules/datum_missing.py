"""A pressure, temperature or volume of gas does not say what it is counted from.

Why: 30 bar from the atmosphere and 30 bar from nothing differ by one bar, and the difference is
largest where pressure is lowest: a receiver that seems able to start an engine once more cannot.

Fix: write bar(g) for a gauge reading, bar(a) counted from nothing, bar(d) for a difference; K(a)
or K(d); m3(n) for free air. Between readings say absolute(...), gauge(...) or difference(...).
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "datum-missing"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met in the fences and quantities."""
    yield from book.raised(CODE)
