"""An issued edition is not as it was issued, or one of them is missing.

Why: an edition is what people at sea hold in their hands. Who changes its file changes what was
said to them, and everything that is compared with it.

Fix: put back the file that was issued, from the history of the files or from a holder's copy; what
has to be said otherwise goes into the next edition.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "edition-altered"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met while the editions were read."""
    yield from book.raised(CODE)
