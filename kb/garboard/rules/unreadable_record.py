"""A record cannot be read as written: a key twice or unknown, a value of another type.

Why: what the reader guesses at, somebody will one day act on; a key that is dropped in silence is
a limit that nobody sees.

Fix: write what the message says. The file shows as a page of its own with the message until then,
and everything else is still built.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "unreadable-record"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met while the files were read."""
    yield from book.raised(CODE)
