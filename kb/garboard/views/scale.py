"""A ladder to scale, from marks with their height in SI."""

from collections.abc import Iterable
from dataclasses import dataclass

from garboard.calc.units import Unit
from garboard.views.axes import tick_text, ticks
from garboard.views.figures import Ladder, Rung, RungSort, Tick
from garboard.views.runs import Cell

__all__ = ["Height", "ladder_to_scale"]


@dataclass(frozen=True, slots=True)
class Height:
    """One mark, with where it lies."""

    si: float
    word: str
    cell: Cell
    """Its value as shown."""
    about: Cell
    sort: RungSort = RungSort.LIMIT
    strong: bool = True
    band: tuple[float, float] | None = None
    """The ends of its tolerance, in SI."""


MOST_TICKS = 6
"""Numbers beside a scale; a short ladder has room for one more than it has rungs."""


def ladder_to_scale(caption: str, marks: Iterable[Height], unit: Unit) -> Ladder:
    """Put marks on one scale, highest first.

    Args:
        caption: Says of what.
        marks: All of one kind of quantity.
        unit: Of the round numbers beside the scale.
    """
    found = sorted(marks, key=lambda one: -one.si)
    reach = [end for one in found for end in (one.si, *(one.band or ()))]
    low, high = min(reach, default=0.0), max(reach, default=0.0)
    span = high - low

    def height(si: float) -> float:
        return (si - low) / span if span else 0.5

    rungs = tuple(
        Rung(
            one.word,
            one.cell,
            one.about,
            height(one.si),
            one.strong,
            one.sort,
            (height(one.band[0]), height(one.band[1])) if one.band else None,
        )
        for one in found
    )
    most = min(MOST_TICKS, len(found) + 1)
    numbers = ticks(unit.from_si(low), unit.from_si(high), most) if span else ()
    marks_beside = tuple(Tick(height(unit.to_si(one)), tick_text(one, numbers)) for one in numbers)
    return Ladder(caption, rungs, marks_beside)
