"""A relief valve may blow while nothing is wrong.

Question: with every machine run up to its cut-out, or to what is `normal` for it, with every reducing
valve holding its setting and the valves standing anyhow, does any relief valve see its setting? The
highest a switch may cut out at is held against the lowest a relief valve may open at. A machine of which
neither is recorded is left out.

Why: a relief valve that blows every day wears its seat, leaks, and in the end is screwed down or plugged
by somebody who wants quiet. Common practice, no source.

Bad: a reducing valve set to 9 bar(g) with 0.3 bar of tolerance before a relief valve set to 9 bar(g).

Good: the reducing valve at 8 bar(g), the relief valve at 9 bar(g), each with its tolerance.

Fix: put the cut-out or the setting of the reducing valve lower; or set the relief valve higher as far as
the ratings allow.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "relief-blows"
SEVERITY = Severity.HOLD
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Tell what the search of every system found."""
    yield from path_diagnostics(book, CODE)
