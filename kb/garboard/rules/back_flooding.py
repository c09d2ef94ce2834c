"""Water can run from the sea, or from one compartment, into another.

Question: with every valve in whatever position, how many parts that shut by themselves stand on the
way?

Why: a suction valve left open has sunk vessels at their berth. 46 CFR 56.50-50 asks that water
cannot run back through the bilge lines, and class rules ask for stop-check valves (verify both
before citing). None on the way is a STOP; one is a HOLD that names it; two are silent. Heights and
vented loops are not looked at.

Bad: `SC-001 > HV-001 > bilge main`, `BW-001 > HV-002 > bilge main`: both open, the sea runs into
BW-001.

Good: `BW-001 > NV-001 > SN-001 > bilge main`: a foot valve and a stop-check valve.

Fix: fit a stop-check valve in the suction, part the two suctions, or have the surveyor accept a
single one.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "back-flooding"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
