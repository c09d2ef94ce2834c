"""The steps of a procedure, before and after: what went, came, was reworded or stands elsewhere.

What guards a step (its message, its second look, what is seen, what is done if not, its hold) is told
apart from its words, because taking it away reads like nothing and matters most.
"""

from collections.abc import Iterator
from typing import NamedTuple

from garboard.book import Book
from garboard.changes.comparison import Caution, Sort, StepChange, Strength
from garboard.changes.sequences import Pair, pair_up
from garboard.changes.wording import spoken
from garboard.records.procedure import Procedure, Second, See, Step

__all__ = ["guards_moved", "steps_moved"]

OF_THE_STEP = ("what is seen", "what is done if it is not seen")
"""Guards that go and come with their step without being missed."""


class Held(NamedTuple):
    """One procedure in two books."""

    old: Book
    new: Book
    before: Procedure
    after: Procedure

    @property
    def pairs(self) -> tuple[Pair, ...]:
        """Its steps, paired by what is done, to what, into which position."""
        return pair_up(
            *([_action(step) for step in one.steps] for one in (self.before, self.after))
        )

    def steps(self, pair: Pair) -> tuple[Step | None, Step | None]:
        """A step before and after."""
        return (
            None if pair.before is None else self.before.steps[pair.before],
            None if pair.after is None else self.after.steps[pair.after],
        )


def steps_moved(held: Held) -> Iterator[StepChange]:
    """Every step that is not as it was, in the order of the newer procedure, the removed ones first."""
    for pair in held.pairs:
        before, after = held.steps(pair)
        texts = _words(held.old, before), _words(held.new, after)
        if pair.moved:
            sort = Sort.MOVED
        elif before is None:
            sort = Sort.NEW
        elif after is None:
            sort = Sort.GONE
        elif texts[0] != texts[1]:
            sort = Sort.CHANGED
        else:
            continue
        yield StepChange(
            procedure=str(held.after.id),
            title=held.after.title,
            sort=sort,
            number_before=0 if pair.before is None else pair.before + 1,
            number_after=0 if pair.after is None else pair.after + 1,
            before=texts[0],
            after=texts[1],
        )


def guards_moved(held: Held) -> Iterator[Caution]:
    """What guards a step and is not as it was; of a step that went or came, all of it."""
    for pair in held.pairs:
        before, after = held.steps(pair)
        number = pair.after + 1 if pair.after is not None else (pair.before or 0) + 1
        where = f"step {number}" if after else f"step {number}, which is gone"
        if before is None:
            where = f"step {number}, which is new"
        guards = zip(_guards(held.old, before), _guards(held.new, after), strict=True)
        for (name, old, rank), (_, new, other) in guards:
            if old == new or (name in OF_THE_STEP and (before is None or after is None)):
                continue
            strength = Strength.CHANGED
            if rank != other:
                strength = Strength.STRENGTHENED if other > rank else Strength.WEAKENED
            yield Caution(
                about=str(held.after.id),
                title=held.after.title,
                weight=str(held.after.weight),
                strength=strength,
                what=f"{name} at {where}",
                before=old,
                after=new,
            )


def _guards(book: Book, step: Step | None) -> tuple[tuple[str, str, int], ...]:
    """What guards a step: name, words, and how much it is worth."""
    second = (step.second if step else None) or Second.NONE
    told = "" if second is Second.NONE else str(second)
    message = str(step.message) if step and step.message else ""
    seen = _seen(book, step.see) if step and step.see else ""
    if_not = spoken(book, step.if_not) if step else ""
    hold = str(step.hold) if step and step.hold else ""
    return (
        ("safety message", message, bool(message)),
        ("hold point", hold, bool(hold)),
        ("look of a second person", told, int(second is not Second.NONE)),
        ("what is seen", seen, bool(seen)),
        ("what is done if it is not seen", if_not, bool(if_not)),
    )


def _seen(book: Book, see: See) -> str:
    parts = (
        see.tag,
        spoken(book, see.value),
        f"within {spoken(book, see.within)}" if see.within else "",
    )
    return " ".join(str(part) for part in parts if part)


def _action(step: Step) -> str:
    return " ".join(str(part) for part in (step.do, step.tag, step.to) if part)


def _words(book: Book, step: Step | None) -> str:
    """A step in one line, without what guards it."""
    if step is None:
        return ""
    place = f"({spoken(book, step.at)})" if step.at else ""
    parts = (spoken(book, step.do), step.tag, f"to {step.to}" if step.to else "", place)
    return " ".join(str(part) for part in parts if part)
