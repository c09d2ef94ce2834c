"""The first action of a record, in words that stand on a tile."""

from garboard.book import Book
from garboard.names import is_identifier
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure, Step
from garboard.views.inline import cell, title_of
from garboard.views.messages import message_of
from garboard.views.runs import plain

__all__ = ["first_action", "words_of"]


def words_of(record: Record) -> str:
    """What one sees or looks for: the wording of an alarm as on the panel, of all else the title."""
    return (record.wording or record.title) if isinstance(record, Alarm) else record.title


def first_action(book: Book, record: Record, *, label: bool = True) -> str:
    """What is done first, in words; says so where nothing is recorded.

    Args:
        book: Where values and names are looked up.
        record: An alarm, a fault, a procedure or a hazard.
        label: Whether it says what these words are: `Do first: ...`.
    """
    if isinstance(record, Procedure):
        return f"Step 1: {_step(book, record.steps[0])}" if record.steps else "No step is recorded."
    if isinstance(record, Hazard):
        named, words = "To keep safe", plain(message_of(book, record).avoid)
    elif isinstance(record, Fault):
        named, words = "Make it safe first", plain(cell(book, record.safe_first))
    else:
        first = record.first[:1] if isinstance(record, Alarm) else ()
        named, words = "Do first", plain(cell(book, "".join(first)))
    if is_identifier(words):
        words = f"{words} {title_of(book, words)}"
    words = words or "not recorded"
    return f"{named}: {words}" if label or words == "not recorded" else words


def _step(book: Book, step: Step) -> str:
    do = plain(cell(book, step.do))
    part = f" {step.tag} {title_of(book, step.tag)}" if step.tag else ""
    said = do.casefold().startswith((step.to or "").casefold())
    to = "" if said or not step.to else f", to {step.to}"
    at = f", {step.at}" if step.at else ""
    return f"{do}{part}{to}{at}"
