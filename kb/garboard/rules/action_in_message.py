"""A move stands in a safety message and in no step of the procedure that carries it.

Why: a message says how harm is avoided; who has read it does the steps. A valve that only the
message shuts stays open.

Fix: make it a step, before the one that the message guards; or word the message so that it names
what must be seen, not what must be done.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.names import IDENTIFIER
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure
from garboard.rules.line_ups import folded
from garboard.rules.steps import MOVES, end_position, live_procedures, message_of, verb

CODE = "action-in-message"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True

MOVE = re.compile(
    rf"\b(?P<verb>{'|'.join(MOVES)})\s+(?:the\s+)?(?P<tag>{IDENTIFIER.pattern})\b", re.IGNORECASE
)
NOT_DONE = re.compile(r"\b(never|not|don't|no one may|before you|unless you)\s*$", re.IGNORECASE)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for every move of a message among the steps of the procedure that carries it."""
    for procedure in live_procedures(book):
        for number, step in enumerate(procedure.steps):
            hazard = message_of(book, step)
            for said, tag in _moves(hazard) if hazard else ():
                if not _is_step(procedure, said, tag):
                    text = f"the message of step {number + 1} says {said} {tag}, no step does"
                    cure = "make it a step, or say in the message what must be seen"
                    where = procedure.place(f"steps[{number}].message")
                    yield Diagnostic(where, SEVERITY, text, cure, CODE, str(procedure.id))


def _moves(hazard: Hazard) -> Iterator[tuple[str, str]]:
    """The moves that a message orders: verb and tag."""
    avoid = (hazard.message.avoid if hazard.message else None) or ""
    for found in MOVE.finditer(avoid):
        if not NOT_DONE.search(avoid[: found.start()]):
            yield found["verb"].casefold(), found["tag"].upper()


def _is_step(procedure: Procedure, said: str, tag: str) -> bool:
    """Whether a step does it, in the same word or to the same end."""
    for step in procedure.steps:
        if step.tag != tag:
            continue
        same_end = folded(end_position(step)) == folded(said)
        if verb(step.do) == said or (same_end and end_position(step)):
            return True
    return False
