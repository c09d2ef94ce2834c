"""A vessel can be parted from every relief valve that is set low enough for it.

Question: is there any line-up of the valves, usual or not, in which something that makes more than a
vessel is rated for feeds it by a way that is joined to no relief valve set to the rating or less? Then
it is a STOP. Where the vessel can lose its relief valve but nothing can overfill it then, or where the
only way to the valve leads through a check valve, a filter, a strainer or a restrictor, it is a HOLD: a
fire still heats what is shut in, and what can stick or choke is no open way. A locked valve counts as
fixed where its entry says how it is secured and on which round it is looked at; what only freeing it
would bring about is one level less.

Why: the shell gives way where nobody chose. No valve of any kind may stand between an air receiver and
its safety valve: California Title 8 section 465(b)(2)(A), Washington WAC 296-155-380, Oregon
437-004-1505(3), 29 CFR 1910.169(b)(3); 29 CFR 1917.155(b) (all read in copies: verify before citing).
A stop valve in a relief path only as listed and under management: ASME VIII division 1, appendix M-5,
now Section XIII (verify before citing). Closing the most block valves that can be closed must not cut
relief below what is needed: ASME B31.3-2016, 322.6.1 (verify before citing).

Bad: `AR-001.relief > HV-001 > RV-002`: with SA-HV-001 shut the compressor fills a receiver that
nothing relieves.

Good: `AR-001.relief > RV-002`; or two relief valves on a three-way valve which always leaves one of
them joined.

Fix: join a relief valve that is set low enough straight to the vessel; or lock the valve open, write
how it is `secured` and the `round` it is on, and have the warning that is left conceded.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import GRADED, path_diagnostics

CODE = "relief-cut-off"
SEVERITY = Severity.STOP
BINDS_FROM = GRADED
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Tell what the search of every system found."""
    yield from path_diagnostics(book, CODE)
