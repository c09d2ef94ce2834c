"""Steps that stand together: in one place, or under one message, which no step may lose at the end of a sheet.

A message of a few lines heads the next sheet again, whole. A longer one is higher than what a browser
repeats; it is printed once, with the first of its steps, and one line of it goes along with the others.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from garboard.views.page import Cell, Message, Step, Steps
from garboard.views.runs import first_sentence, plain

__all__ = ["Stretch", "stretches"]

MOST_LINES: Final = 5
"""So many lines of a message fit into a quarter of an A5 sheet; a browser repeats nothing higher."""
A_LINE: Final = 38
"""Letters of 14 points in a line of a message on A5, in a wide face and half of them bold."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Steps in a row with what stands over them."""

    steps: tuple[Step, ...]

    @property
    def first(self) -> Step:
        """The step that the message stands right before."""
        return self.steps[0]

    @property
    def message(self) -> Message | None:
        """What guards its steps."""
        return self.first.message

    @property
    def under(self) -> str:
        """The place where one stands; empty where it goes on there."""
        return self.first.under

    @property
    def long(self) -> bool:
        """Whether its message is too high to be said again whole on a small sheet."""
        if not self.message:
            return False
        threat = plain((*self.message.hazard, " ", *self.message.harm))
        lines = (-(-len(one) // A_LINE) for one in (threat, plain(self.message.avoid)))
        return sum(lines) > MOST_LINES

    @property
    def rows(self) -> tuple[tuple[Step, ...], ...]:
        """The steps that stand with the message, and those that its one line goes along with."""
        parts = (self.steps[:1], self.steps[1:]) if self.long else (self.steps,)
        return tuple(filter(None, parts))

    @property
    def avoid_first(self) -> Cell:
        """How to avoid it, in its first sentence."""
        return first_sentence(self.message.avoid) if self.message else ()


def stretches(block: Steps) -> Iterator[Stretch]:
    """The steps of a checklist, parted where one stands elsewhere and where a message stands.

    Args:
        block: The checklist.
    """
    begin = 0
    for number, step in enumerate(block.steps):
        if number and (step.under or step.message):
            yield Stretch(block.steps[begin:number])
            begin = number
    if block.steps:
        yield Stretch(block.steps[begin:])
