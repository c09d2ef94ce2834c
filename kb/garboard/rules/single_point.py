"""Every way to an essential user runs through one part.

Question: which parts stand on every way from the stores to each essential user?

Why: what has no second way is what spares and get-home measures are for. It is a note, not a fault:
most small vessels have such parts and live with them. Common practice, no source.

Bad: `AR-001 > HV-001 > EN-001` alone.

Good: `AR-001 > HV-001 > EN-001` and `AR-002 > HV-002 > EN-001`.

Fix: keep a spare of each aboard, or write down what is done without it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "single-point"
SEVERITY = Severity.NOTE
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
