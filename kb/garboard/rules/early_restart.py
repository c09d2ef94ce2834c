"""A switch that starts a machine again is joined to no receiver as the valves usually stand.

Question: with each valve at its `usual` position, does the pressure of any receiver or closed tank reach
each pressure switch that has a `cuts_in`?

Why: a switch on a short piece of pipe cuts in as soon as that has leaked down. The machine starts and
stops until its motor or its starter burns out. Common practice, no source.

Bad: `CP-001 > discharge line > NV-001 > AR-001` and `discharge line > PS-001`: beyond the check valve
the receiver does not keep the switch up.

Good: `NV-001 > filling line > AR-001` and `filling line > PS-001`.

Fix: join the switch on the receiver's side of the check valve; or correct how the valves usually stand.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "early-restart"
SEVERITY = Severity.HOLD
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Tell what the search of every system found."""
    yield from path_diagnostics(book, CODE)
