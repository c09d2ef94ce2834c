"""A part stands in no connection of its system, or one of its ends leads nowhere.

Question: does every pipe that begins somewhere also end somewhere?

Why: what is not joined is seen by no search. A relief valve that is listed and drawn nowhere guards
nothing, and a line that stops at a valve is either not finished or not written. A drain, vent, test
cock or plug may end in the open air without saying so; a compartment or a level switch may stand alone.

Bad: `AR-001 > HV-002`, and nothing after HV-002.

Good: `AR-001 > HV-002 > EN-001`, or `AR-001 > HV-002 > bilge`.

Fix: write the connection, end the run in a tank, a user or a place outside, or take the part out
of the file.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.paths import laying_faults

CODE = "joined-to-nothing"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Pass on what was met while the systems were laid out."""
    yield from laying_faults(book, CODE)
