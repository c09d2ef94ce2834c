"""An objection has no answer, or only its author's own.

Why: the one who objected saw something. Where nobody else has to answer, the best warnings are
outvoted by silence.

Fix: have somebody other than the author answer it, in the record; the objection stays either way.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.decision import Decision
from garboard.records.standing import has_left, refused, state_of

CODE = "objection-unanswered"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the objections of every decision that is past its draft."""
    for decision in book.of_kind(Decision):
        if has_left(decision) or refused(decision) or state_of(decision) == "drafted":
            continue
        for number, objection in enumerate(decision.objections):
            path = f"objections[{number}]"
            if not (objection.answer or "").strip() or objection.answered_by is None:
                text = f"{objection.by}'s objection to {decision.id} stands"
            elif objection.answered_by == decision.author:
                text = f"only {decision.author}, who wrote {decision.id}, answers {objection.by}"
            else:
                continue
            cure = "have someone else answer it, or go back to the draft"
            where = decision.place(path)
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(decision.id))
