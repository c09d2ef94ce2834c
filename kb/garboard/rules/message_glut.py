"""A procedure has more than one safety message in three steps, says one twice, or says one at length.

Why: a frame at every step is a frame at none; what is met all the time is passed over. Four lines of
sixty letters are what is read with a hand on the valve (common practice, no source).

Fix: say once, at the first step that meets it, what holds for all of them; where every step has a
hazard of its own, part the procedure or take the energy away first.
"""

import textwrap
from collections.abc import Iterator
from typing import Final

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.reading.references import VALUE_LINK
from garboard.records.base import bare_id
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left
from garboard.rules.steps import live_procedures

CODE = "message-glut"
SEVERITY = Severity.WARN
BINDS_FROM = "in test"
WAIVABLE = True

STEPS: Final = 3
"""At most one message in so many steps."""
LINES: Final = 4
LETTERS: Final = 60


def check(book: Book) -> Iterator[Diagnostic]:
    """Count the messages of every procedure, and the lines of every message."""
    for procedure in live_procedures(book):
        yield from _crowded(procedure)
    for hazard in book.of_kind(Hazard):
        if hazard.message and not has_left(hazard):
            yield from _long(book, hazard)


def _crowded(procedure: Procedure) -> Iterator[Diagnostic]:
    named = [
        (number, bare_id(step.message))
        for number, step in enumerate(procedure.steps, 1)
        if step.message
    ]
    about, count = str(procedure.id), len(procedure.steps)
    allowed = max(1, count // STEPS)
    if len(named) > allowed:
        text = f"{about} has {len(named)} safety messages in {count} steps"
        cure = "say once what holds for several steps, or part the procedure"
        where = procedure.place(f"steps[{named[allowed][0] - 1}].message")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
    first: dict[str, int] = {}
    for number, name in named:
        if name in first:
            text = f"step {number} says {name} again, step {first[name]} has said it"
            cure = "leave it at the first step that meets it"
            where = procedure.place(f"steps[{number - 1}].message")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
        first.setdefault(name, number)


def _long(book: Book, hazard: Hazard) -> Iterator[Diagnostic]:
    said = hazard.message
    parts = (said.hazard, said.harm, said.avoid) if said else ()
    lines = sum(len(textwrap.wrap(_shown(book, str(part)), LETTERS)) for part in parts if part)
    if lines > LINES:
        text = f"the message of {hazard.id} takes {lines} lines of {LETTERS} letters"
        cure = (
            f"say it in {LINES}: the energy, the harm, what to do; the rest belongs into the text"
        )
        yield Diagnostic(hazard.place("message"), SEVERITY, text, cure, CODE, str(hazard.id))


def _shown(book: Book, written: str) -> str:
    """A part as a page shows it: values in place of their links."""
    return VALUE_LINK.sub(
        lambda found: book.show(found["address"], found["unit"] or "") or found["text"], written
    )
