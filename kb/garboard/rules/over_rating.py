"""A part can see more than it is rated for.

Question: what is the most that can stand at each part, over all positions of the valves; and what
with one reducing valve jammed wide open, or one check valve leaking back?

Why: the weakest part decides what a line may carry, 46 CFR 56.07-10(a)(2) (verify before citing).
That a control valve fails open and that a check valve leaks are on the usual lists of single
faults, as in API 521 (verify before citing). Ratings are taken at the low end of their tolerance,
what is made and where relief valves lift at the high end. Vessels are asked for their relief valves
instead. A leaking check valve alone is a HOLD, all else a STOP.

Bad: `AR-001 > RG-001 > low line > PI-001` with 33 bar(g) before RG-001, a gauge for 16 bar(g), and
no relief valve.

Good: the same, and `low line > RV-002` set to 9 bar(g).

Fix: fit a relief valve set to the rating or less, fit a part that stands it, or correct the rating
from its plate.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "over-rating"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
