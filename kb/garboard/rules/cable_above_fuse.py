"""A cable can be fed more than it carries for good.

Question: with every switch made, how much can flow into each cable through all fuses and breakers
together?

Why: a fuse protects its cable, not what hangs on it; where two feed one bus their currents add, and
the cable is what burns. Two fuses of 100 A on one bus let 200 A into a cable behind it. Common
practice, no source. Ratings of fuses are taken at the high end of their tolerance, that of the
cable at the low end. A battery is without limit; an alternator or charger gives what it `makes`. Of
a cable fed from both ends the worse end counts; of a bus all that flows in. How fast a fuse melts,
and how warm the cable lies, is not looked at.

Bad: `BA-001 > FU-001 > BB-001`, `BA-002 > FU-002 > BB-001`, both 100 A, `BB-001 > CW-001` rated 120
A.

Good: the same, with `BB-001 > FU-003 > CW-001`, FU-003 rated 100 A.

Fix: fit a fuse of the rating of the cable or less where it is fed, fit a thicker cable, or correct
its rating.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "cable-above-fuse"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
