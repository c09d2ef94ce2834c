"""The parts of a page that draw numbers: a ladder of limits, what moves a result, a drawing.

Each is data with its own words: whoever cannot see the drawn part loses nothing.
"""

from dataclasses import dataclass
from enum import StrEnum

from garboard.schematic.svg import Only
from garboard.views.runs import Cell

__all__ = ["Drawing", "HowSure", "Ladder", "MoverRow", "Rung", "RungSort", "Schematic", "Tick"]


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing made by the core, and the same in sentences beside it."""

    caption: str
    svg: str
    """Trusted, with ids of its own system, `currentColor` for ink, and neither a style element nor a
    style attribute. A link in it is written `href="find:SA-RV-001"`; an adapter says where it leads."""
    sentences: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Schematic:
    """A sheet of the drawing of a system; the page says the same in words. On paper a sheet of its own."""

    caption: str
    svg: str
    """Trusted, as that of a Drawing."""
    ids: tuple[str, ...]
    """Every id in it, its own first: links land there."""
    only: Only = ""
    """Shown on the screen alone, as it is cut for paper; or on paper alone, a piece of it."""


class RungSort(StrEnum):
    """What a mark on a ladder is, which says how it is drawn."""

    LIMIT = "limit"
    """A thick line: a rating, a relief setting, what a calculation demands."""
    DESIGN = "design"
    """A line within the hatched band of its tolerance."""
    MEASURED = "measured"
    """A filled lozenge."""
    OUT = "measured, out"
    """A cross: a reading that contradicts the book."""


@dataclass(frozen=True, slots=True)
class Rung:
    """One mark on a ladder of limits, highest first."""

    word: str
    """rating, relief, trip, high alarm, normal, low alarm, measured."""
    cell: Cell
    about: Cell
    """Which part it belongs to; of a reading the day and what stands against it."""
    height: float
    """0 at the foot, 1 at the head, to scale."""
    strong: bool = True
    sort: RungSort = RungSort.LIMIT
    band: tuple[float, float] | None = None
    """Heights of the ends of its tolerance."""


@dataclass(frozen=True, slots=True)
class Tick:
    """A round number beside the scale."""

    height: float
    text: str


@dataclass(frozen=True, slots=True)
class Ladder:
    """One vertical scale for a quantity, to scale, marked in words."""

    caption: str
    rungs: tuple[Rung, ...]
    ticks: tuple[Tick, ...] = ()


@dataclass(frozen=True, slots=True)
class MoverRow:
    """What one toleranced input does to a result."""

    what: Cell
    """The input, with its value and tolerance."""
    share: str
    """`63 %`, `under 1 %`: its part of the usual range."""
    part: float
    """The same, 0 to 1: the length of the bar."""
    least: str
    """The result at the two ends of this input, everything else as given."""
    most: str


@dataclass(frozen=True, slots=True)
class HowSure:
    """How sure a result is, and what moves it."""

    of: str
    """What the result is called."""
    sentences: tuple[Cell, ...]
    rows: tuple[MoverRow, ...] = ()
    """The greatest first."""
    rest: str = ""
    """`and 3 smaller ones, 2 % together`; empty where the rows are all."""
