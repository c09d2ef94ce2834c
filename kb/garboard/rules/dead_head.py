"""A machine can run against a shut outlet.

Question: can valves shut in the outlet of a pump or compressor so that it reaches no relief valve?

Why: a displacement machine goes on until something gives, and nobody chose what. 46 CFR 56.07-10(b)
asks for a relief valve at the discharge of every pump but a centrifugal one (verify before citing).
What always runs out into the open needs none; with a filter or check valve on the way, which may
choke or stick, it is a HOLD. A centrifugal machine only heats what is in it: a warning, where it can
be shut off from every user, tank, sea, relief valve and the open air.

Bad: `PU-001 > HV-001 > user line`, `user line > RV-001`: HV-001 takes the relief valve away.

Good: `PU-001 > pump line > HV-001 > user line`, `pump line > RV-001`.

Fix: fit a relief valve before the first valve of the outlet, or take that valve out.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "dead-head"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
