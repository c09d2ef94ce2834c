"""A safety message lacks the hazard, the harm to a body, or the way to avoid it.

Why: "Danger" alone warns of everything and so of nothing. ANSI Z535.6 (verify before citing) asks
for the hazard, what it does, and how it is avoided, in that order.

Fix: fill in the part that is missing; where nothing must be said before a step, take the message
out.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.hazard import Hazard
from garboard.records.standing import has_left, state_of
from garboard.rules.steps import live_procedures, message_of

CODE = "message-incomplete"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

PARTS = {
    "hazard": "say which energy it is, and how much",
    "harm": "say what it does to a body",
    "avoid": "say how it is avoided, as an order that can be checked",
}


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the message of every hazard, and at steps whose hazard has none."""
    for hazard in book.of_kind(Hazard):
        if hazard.message is None or has_left(hazard) or state_of(hazard) == "closed":
            continue
        said = {name: (getattr(hazard.message, name) or "").strip() for name in PARTS}
        missing = [name for name, words in said.items() if not words]
        if missing:
            text = f"the message of {hazard.id} lacks {' and '.join(missing)}"
            cure = f"{PARTS[missing[0]]}, or take the message out"
            where = hazard.place("message")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(hazard.id))
    for procedure in live_procedures(book):
        for number, step in enumerate(procedure.steps):
            warned = message_of(book, step)
            if warned is not None and warned.message is None:
                text = f"step {number + 1} warns of {warned.id}, which has no message"
                cure = f"write the message of {warned.id}, or name another hazard"
                where = procedure.place(f"steps[{number}].message")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))
