"""What became weaker or stronger in procedures and safety messages, as sentences.

Only what can be told without understanding the words is told: a message that no longer stands before
its step, a second person who no longer looks, a control that is gone. Other words count as changed.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.records.base import Record
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure, Second, Step
from garboard.records.signal_word import SIGNAL_WORDS, signal_word
from garboard.review.canonical import own_digest

__all__ = ["Shifted", "shifted"]

LOOKS = {None: 0, Second.NONE: 0, Second.CONCURRENT: 1, Second.INDEPENDENT: 2}


@dataclass(frozen=True, slots=True)
class Shifted:
    """How one record differs from before."""

    weaker: tuple[str, ...] = ()
    stronger: tuple[str, ...] = ()
    changed: bool = False
    """Its words are others than before."""
    new: bool = False


def shifted(old: Book | None, record: Record) -> Shifted | None:
    """How a procedure or hazard differs from before; None where nothing is known of before."""
    if old is None:
        return None
    before = old.records.get(str(record.id))
    if before is None:
        return Shifted(new=True)
    lost: tuple[str, ...] = ()
    won: tuple[str, ...] = ()
    if isinstance(record, Procedure) and isinstance(before, Procedure):
        lost, won = tuple(_lost(before, record)), tuple(_lost(record, before))
    elif isinstance(record, Hazard) and isinstance(before, Hazard):
        lost, won = tuple(_lower(before, record)), tuple(_lower(record, before))
    return Shifted(lost, won, own_digest(before) != own_digest(record))


def _lost(first: Procedure, second: Procedure) -> Iterator[str]:
    """What stands in the first procedure and not in the second."""
    steps = {_what(step): step for step in second.steps}
    for number, step in enumerate(first.steps, 1):
        name = f"{step.do} {step.tag or ''}".strip()
        other = steps.get(_what(step))
        if other is None:
            yield f"step {number}, {name}"
            continue
        if step.message and other.message != step.message:
            yield f"the message {step.message} before {name}"
        if LOOKS[step.second] > LOOKS[other.second]:
            yield f"the second person at {name} ({step.second})"
        if step.hold and other.hold != step.hold:
            yield f"the hold {step.hold} at {name}"
        if step.see and not other.see:
            yield f"what is seen after {name}"
        if step.if_not and not other.if_not:
            yield f"what is done if {name} does not work"
    if first.stop_if and not second.stop_if:
        yield "when to stop and call"
    if first.isolation and second.isolation != first.isolation:
        yield f"the isolation {first.isolation}"


def _what(step: Step) -> tuple[str, str, str]:
    return step.do.casefold(), str(step.tag or ""), step.to or ""


def _lower(first: Hazard, second: Hazard) -> Iterator[str]:
    """In what the second hazard is weaker than the first."""
    words = signal_word(first), signal_word(second)
    if SIGNAL_WORDS.index(words[0]) < SIGNAL_WORDS.index(words[1]):
        yield f"{words[0]} rather than {words[1]}"
    if first.severity and second.severity and first.severity < second.severity:
        yield f"severity {first.severity.value} rather than {second.severity.value}"
    kept = {one.what for one in second.controls}
    for control in first.controls:
        if control.what not in kept:
            yield f"the control `{control.what}`"
    if first.message and not second.message:
        yield "its message"
