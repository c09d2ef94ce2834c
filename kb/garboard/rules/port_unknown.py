"""A connection names a port that such a part does not have, or none where it has more than two.

Question: does every run say by which end it enters and leaves each part?

Why: a pipe on the wrong end of a check valve or of a three-way valve is another plant, and what was
asked of the layout was asked of that one. A vessel takes any name of a port; all else has the ports
of its kind.

Bad: `AR-001 > TV-001 > EN-001`, where TV-001 is a three-way valve: it may leave by a or by b.

Good: `AR-001 > TV-001.common` and `TV-001.a > EN-001`.

Fix: write one of the ports that the message lists, or correct the kind of the part.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import laying_faults

CODE = "port-unknown"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met while the systems were laid out."""
    yield from laying_faults(book, CODE)
