"""A decision sets no value, affects nothing, and nothing builds or tests it.

Why: a decision that nothing on the vessel follows from was either not carried out or not written
down to its end; a later change will break it without anybody noticing.

Fix: name the values it sets or the components it affects, or the change that builds it; where
nothing follows from it, withdraw it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.calculation import Calculation
from garboard.records.change import Change, TemporaryModification
from garboard.records.decision import Decision
from garboard.records.inspection import PlanLine, Test
from garboard.records.standing import has_left, refused, state_of
from garboard.records.work import WorkPackage

CODE = "decision-touches-nothing"
SEVERITY = Severity.WARN
BINDS_FROM = "building"
WAIVABLE = True

CARRIES_OUT = (Change, TemporaryModification, WorkPackage, PlanLine, Test, Calculation)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every decision that is past its draft, for what follows from it."""
    for decision in book.of_kind(Decision):
        idle = has_left(decision) or refused(decision) or state_of(decision) == "drafted"
        if idle or decision.sets or decision.affects or _carried_out(book, str(decision.id)):
            continue
        text = f"{decision.id} sets nothing, affects nothing and is built or tested by nothing"
        cure = "name the values it sets or the tags it affects, or withdraw it"
        where = decision.place("chosen")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(decision.id))


def _carried_out(book: Book, decision: str) -> bool:
    """Whether a change, a piece of work, a calculation or a test names it."""
    names = (book.records.get(item.by) for item in book.mentions_of(decision))
    return any(isinstance(record, CARRIES_OUT) for record in names)
