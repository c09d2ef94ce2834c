"""What a print of a card shows beside the words of its record: which steps, what is first, which part.

Those stand in handbook.yml, so a digest of the record does not know them; two states of one card are
held against each other here.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.records.procedure import Procedure
from garboard.records.quick_card import Carded, CardPlan, CardRow, plan_of
from garboard.records.vessel import Card

__all__ = ["ListedCard", "shown_otherwise"]


@dataclass(frozen=True, slots=True)
class ListedCard:
    """A card as one state of the handbook lists it."""

    card: Card
    record: Carded
    """What it is of, as it was then."""
    cards: tuple[Card, ...]
    """All cards of that state, to tell which part of its task it is."""

    @property
    def plan(self) -> CardPlan:
        """What stands on it."""
        return plan_of(self.card, self.record, self.cards)


def shown_otherwise(before: ListedCard, after: ListedCard) -> Iterator[str]:
    """What a print shows otherwise than one of today would, in words; its place is no part of it.

    Args:
        before: The card as it was printed.
        after: The card as it stands, of the same record.
    """
    old, new = before.plan, after.plan
    if old.task != new.task:
        yield f"headed `{new.task}`, printed as `{old.task}`"
    if not (isinstance(before.record, Procedure) and isinstance(after.record, Procedure)):
        return
    shown, printed = _steps(new.rows), _steps(old.rows)
    if shown != printed:
        yield f"{shown} shown, printed with {printed}"
    elif len(old.first) != len(new.first):
        yield f"Do first is {_steps(new.first)}, printed as {_steps(old.first)}"
    if (old.part, old.parts) != (new.part, new.parts):
        yield f"{_part(new)}, printed as {_part(old)}"


def _steps(rows: tuple[CardRow, ...]) -> str:
    """Which steps they are, such as `steps 2 to 6`."""
    if not rows:
        return "no step"
    first, last = rows[0].number, rows[-1].number
    return f"step {first}" if first == last else f"steps {first} to {last}"


def _part(plan: CardPlan) -> str:
    return f"part {plan.part} of {plan.parts}" if plan.parts > 1 else "the only card of its task"
