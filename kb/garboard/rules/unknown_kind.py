"""A component or a record is of a kind that this handbook does not have, or its letters deny it.

Why: the kind of a component says what lets fluid through and what stops it. One that is not known
would be a silent pipe, and every search for what a shut valve cuts off would be wrong around it.
The letters of a tag or id say the kind to whoever reads no more than the label.

Fix: write the nearest kind of the table, and say what is special in `note`; take the letters that
belong to the kind.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "unknown-kind"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met while the systems were read."""
    yield from book.raised(CODE)
