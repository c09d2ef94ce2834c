"""The piped outlet of a relief valve does not always reach open air.

Question: however the valves stand, does what the relief valve lets out get away? An outlet that nothing
is joined to blows free. An outlet of a liquid that leads back to the suction of a pump is a HOLD where a
valve can part it from open air: the liquid goes round and heats up.

Why: a relief valve whose outlet is shut relieves nothing, however well its inlet is joined. 29 CFR
1917.155(b) and ASME VIII division 1, appendix M-5, now Section XIII (both: verify before citing).

Bad: `RV-002.out > HV-001 > deck`: with SA-HV-001 shut the valve lifts into a shut pipe.

Good: `RV-002.out > deck`.

Fix: lead the outlet to open air with nothing in it that shuts; or lock the valve open, write how it is
`secured` and the `round` it is on.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "relief-outlet-cut-off"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Tell what the search of every system found."""
    yield from path_diagnostics(book, CODE)
