"""An essential user loses its supply when power or control air goes.

Question: with every part that fails standing where it fails to, and all else as anybody likes, does
each essential user still have a store?

Why: the engine must start and the pumps must run when the power has gone; that is when they are
wanted. Common practice, no source. Without any store in the system, what makes the supply counts as
one.

Bad: `AR-001 > SV-001 > EN-001`, SV-001 with `fails: shut`.

Good: the same, and `AR-001.hand > HV-003 > EN-001` beside it.

Fix: give the user a way round by hand, fit a part that fails the other way, or take `essential`
from it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "lost-supply"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
