"""Rigid pipe joins what moves with what does not.

Question: with the hoses and bellows taken out, does one rigid piece hold two mounts, one of which
moves?

Why: a pipe between a machine on rubber feet and the hull works until it cracks, mostly at a thread.
A rigid by-pass round a hose is found as well. Common practice, no source. Cables are taken to be
laid in a loop.

Bad: `CP-001 > NV-001 > AR-001`, CP-001 on a frame that `moves: always`, AR-001 on the hull.

Good: `CP-001 > HS-001 > NV-001 > AR-001`.

Fix: fit a hose or bellows between the two, or correct what stands on which mount.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "no-flexible"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
