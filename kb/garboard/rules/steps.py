"""What the steps of a procedure do, as far as rules ask; the words are read in `systems/step_words.py`.

A verb that is not listed moves nothing: a rule that looks at moves is silent about it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.base import bare_id
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure, Step
from garboard.records.standing import has_left
from garboard.systems.step_words import MOVES, RELEASES, end_position, says_zero, verb
from garboard.systems.step_words import opens_up as opens_up_part

__all__ = [
    "MOVES",
    "changes_state",
    "end_position",
    "live_procedures",
    "message_of",
    "opens_up",
    "releases",
    "sees_zero",
    "verb",
]


def changes_state(step: Step) -> bool:
    """Whether a step moves something."""
    return step.to is not None or verb(step.do) in MOVES


def opens_up(book: Book, step: Step) -> bool:
    """Whether a step opens a component that may hold energy; to open a valve is not that."""
    return opens_up_part(book.components.get(step.tag or ""), step)


def releases(book: Book, step: Step) -> bool:
    """Whether a step lets energy out or in, or opens what holds it."""
    return verb(step.do) in RELEASES or opens_up(book, step)


def sees_zero(book: Book, step: Step) -> bool:
    """Whether a step sees that nothing is left: a reading of 0, or that it is dead."""
    if step.see is None or step.see.value is None:
        return False
    value = book.values.get(step.see.value)
    if value is not None:
        return value.si == 0
    return says_zero(step.see.value)


def message_of(book: Book, step: Step) -> Hazard | None:
    """The hazard that a step warns of."""
    record = book.records.get(bare_id(step.message)) if step.message else None
    return record if isinstance(record, Hazard) else None


def live_procedures(book: Book) -> Iterator[Procedure]:
    """Procedures that are not superseded, withdrawn or void."""
    return (record for record in book.of_kind(Procedure) if not has_left(record))
