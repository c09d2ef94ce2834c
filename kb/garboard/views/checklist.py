"""Safety messages and the rows that are ticked: steps, and how everything stands after them."""

from dataclasses import dataclass

from garboard.views.runs import Cell

__all__ = ["Message", "Step", "Steps"]


@dataclass(frozen=True, slots=True)
class Message:
    """A safety message: four parts in order, placed by the page, never inside contributed text."""

    word: str
    """DANGER, WARNING, CAUTION or NOTICE, computed from the hazard."""
    hazard: Cell
    """With its energy."""
    harm: Cell
    """What it does to a body."""
    avoid: Cell
    """Imperative and checkable."""
    source: str = ""
    """The hazard record's id."""


@dataclass(frozen=True, slots=True)
class Step:
    """One action, or one position to look at: a row that is ticked."""

    number: str
    """Empty where nothing is counted: a row of how everything stands."""
    do: str
    item: Cell
    """Plate and name of the part."""
    place: str = ""
    """Where it does not stand over the row already."""
    to: str = ""
    see: Cell = ()
    """The state to see."""
    within: str = ""
    seconds: int = 0
    """The same as a time that a clock can count; 0 where it is none."""
    if_not: Cell = ()
    """Begins with If."""
    message: Message | None = None
    """Directly before the step it guards."""
    second: str = ""
    """How a second person looks at it, in words; on paper they initial it."""
    hold: Cell = ()
    """Hold or witness point in words; on paper it is initialled."""
    note: Cell = ()
    """What else must be known of the part."""
    under: str = ""
    """Heading of the group that begins with it: the place where one stands."""
    anchor: str = ""
    """`step-4`, where links lead to it."""
    ticked: str = ""
    """What its box says to a listener; `step 4 done` where empty."""


@dataclass(frozen=True, slots=True)
class Steps:
    """The keel line: a procedure's steps in order; or rows that are looked at and ticked."""

    steps: tuple[Step, ...]
    end: str = ""
    """`Empty the start header complete.`"""
    numbered: bool = True
    """False for rows without an order: no number, no keel."""
    revision: int = 0
    """Of the procedure; ticks of another revision are not kept."""
