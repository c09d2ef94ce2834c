"""A compressor can blow straight into a starting pipe.

Question: with the receivers taken out, does a compressor still reach a user of start air?

Why: hot oily air from a compressor in a starting pipe can explode; the filling and the starting
pipes are kept apart and meet in the receivers only. UK SI 1997/1509 regulation 33, SOLAS II-1
regulation 34 (verify before citing).

Bad: `CP-001 > start header`, `AR-001 > start header > EN-001`.

Good: `CP-001 > filling line > AR-001`, `AR-001.out > start header > EN-001`.

Fix: take the start air from the receiver by a pipe of its own, or take the direct way out.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "start-air-not-separate"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
