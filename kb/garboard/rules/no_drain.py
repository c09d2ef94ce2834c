"""An air or steam vessel has no drain valve of its own.

Question: does a drain valve or test cock stand directly at each receiver and separator?

Why: water collects at the bottom, rusts the shell from inside and reaches the engine with the air;
oil with it can burn. State rules for air receivers ask for a drain at the lowest point (Cal. Title
8 section 465; verify before citing).

Bad: `NV-001 > AR-001 > HV-001`, and no other pipe at AR-001.

Good: the same, and `AR-001.drain > HV-002 > bilge`.

Fix: fit a drain valve at the lowest point, or write down which gas without water is in it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "no-drain"
SEVERITY = Severity.HOLD
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
