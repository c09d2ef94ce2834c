"""Pressure can be shut in, and no single movement lets it out.

Question: with every valve shut, where does pressure stay that no one valve would let out to the
open air?

Why: who opens such a piece finds out with both hands on it. 29 CFR 1910.147(d)(5) asks that stored
energy be relieved, 29 CFR 1915.163(a) it of ship's piping; HSE HSG253 grades isolation (all read in
secondary copies: verify before citing). What may stay is 0.5 bar of a gas and 10 bar of a liquid,
common practice, no source; the vessel's own limits are `site.trapped_gas` and `site.trapped_liquid`
in handbook.yml. A plug or a coupling is no bleed: it cannot be opened under pressure. A receiver,
separator, tank or hose in the piece makes it a STOP; instruments and stop valves alone a warning.

Bad: `CP-001 > NV-001 > middle line > HV-001 > AR-001`: with HV-001 shut the middle line stays full.

Good: the same, and `middle line > HV-002 > bilge`: opening HV-002 empties it.

Fix: fit a bleed or drain to the piece, or take out one of the valves that shut it in.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "trapped-pressure"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Report what was found in every layout."""
    yield from path_diagnostics(book, CODE)
