"""A switch can be parted from a vessel that it should feel.

Question: for each machine that a switch stops, and for each vessel that the machine can fill, not only
the one that was meant: is there a line-up of the valves in which the vessel fills and the switch does
not feel it? And for each switch or transmitter that `watches` a vessel: does it always feel the pressure
rise, and fall? Either is a STOP. Where one machine has a switch that cuts it out and another that trips
it, each is asked for itself. A gauge that can be parted from what it watches is a NOTE, and so is a vessel
that cannot be filled while it is parted.

Why: the machine runs on into a vessel that nobody sees, or an empty vessel goes unnoticed until the
engine does not start. Controls must not be able to be defeated: California Title 8 section 465(b)(2)(A)
and WAC 296-155-380 for receivers (verify before citing); for the rest common practice, no source.

Bad: `start header > PS-001` where SA-PS-001 stops the compressor, and both receivers fill from another
line: with the outlet valve of one of them shut it fills unfelt. Tapped on one of the two receivers, it
does not feel the other.

Good: `filling line > PS-001`, before any stop valve, where everything the compressor fills must pass.

Fix: tap the switch where nothing can shut between it and the vessel; or lock the valve open, write how it
is `secured` and the `round` it is on.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "switch-cut-off"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Tell what the search of every system found."""
    yield from path_diagnostics(book, CODE)
