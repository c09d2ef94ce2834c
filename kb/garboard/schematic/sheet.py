"""What stands on a sheet: symbols, pipes, labels, each with its place, as plain data.

Placing makes it, drawing takes it; neither knows the other. All lengths are drawing units: a step of
the grid is `STEP` units, a column `COLUMN` and a row `ROW` steps. x grows to the right, y downwards,
and every pipe runs along x or y.
"""

from dataclasses import dataclass
from enum import StrEnum

__all__ = [
    "COLUMN",
    "MOST_HIGH",
    "MOST_PARTS",
    "MOST_WIDE",
    "ROW",
    "STEP",
    "TEXT",
    "Bar",
    "Box",
    "Frame",
    "Heading",
    "Label",
    "Line",
    "OffSheet",
    "Outlet",
    "Placed",
    "Point",
    "Sheet",
]

STEP = 12
COLUMN = 7
ROW = 6
TEXT = 14
"""Height of the letters."""
UNITS_A_MM = TEXT / 9 * 72 / 25.4
"""Drawing units to a millimetre of paper on which the letters are 9 points high."""
MOST_WIDE = int(277 * UNITS_A_MM)
"""Drawing units across a sheet of A4 that lies, between its margins."""
MOST_HIGH = int(160 * UNITS_A_MM)
"""The same from head to foot, under the words above a drawing."""
MOST_PARTS = 60
"""Parts on a sheet; what is more goes to further sheets, joined by named ends."""

Point = tuple[int, int]


class Heading(StrEnum):
    """Which way a symbol is turned: where its outlet points; of an instrument, away from its pipe."""

    RIGHT = "right"
    DOWN = "down"
    LEFT = "left"
    UP = "up"


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle."""

    left: int
    top: int
    right: int
    bottom: int


@dataclass(frozen=True, slots=True)
class Placed:
    """A symbol at its place."""

    tag: str
    kind: str
    at: Point
    """Of its middle."""
    heading: Heading
    box: Box
    """What it covers, without its label."""
    ports: tuple[tuple[str, Point], ...]
    """Where its pipes end, by port."""
    pinned: bool = False
    """The author gave its place."""
    draft: tuple[float, float] = (0.0, 0.0)
    """Column and row, for the author to pin."""


@dataclass(frozen=True, slots=True)
class Line:
    """One piece of pipe of one node."""

    node: int
    service: str
    points: tuple[Point, ...]
    """Corners, ends included, in the author's direction of flow."""
    arrow: tuple[Point, Heading] | None = None
    """Where its arrow of flow stands, on long pieces."""
    hops: tuple[Point, ...] = ()
    """Where it hops over another pipe."""


@dataclass(frozen=True, slots=True)
class Bar:
    """A header drawn as a bar."""

    header: str
    node: int
    service: str
    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Outlet:
    """The open end of a pipe: bilge, deck, overboard, drain tank, atmosphere."""

    place: str
    at: Point
    heading: Heading
    node: int


@dataclass(frozen=True, slots=True)
class OffSheet:
    """A named end where a pipe goes on on another sheet."""

    name: str
    """The same on both sheets: the header or the part it leads to."""
    at: Point
    heading: Heading
    node: int
    sheet: int
    """Where it goes on; 0: in another system."""
    inwards: bool
    """The flow comes from there."""


@dataclass(frozen=True, slots=True)
class Label:
    """Words beside a symbol or along a bar."""

    of: str
    """Tag, header or place."""
    at: Point
    """Of the first line, at its anchor, on the base line."""
    anchor: str
    """start, middle or end, as SVG has it."""
    lines: tuple[str, ...]
    """Tag first, its value under it."""
    box: Box
    upright: bool = False
    """Turned a quarter to the left, along a bar that stands."""
    slanted: bool = False
    """Words about a pipe and not about a part."""


@dataclass(frozen=True, slots=True)
class Frame:
    """A dotted frame round what stands on a mount that moves."""

    mount: str
    words: str
    """`moves: rubber feet`."""
    box: Box
    label_at: Point


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet of the drawing of a system."""

    number: int
    """From 1."""
    of: int
    system: str
    width: int
    height: int
    """Of the picture, without legend and title block."""
    symbols: tuple[Placed, ...]
    lines: tuple[Line, ...]
    bars: tuple[Bar, ...]
    dots: tuple[Point, ...]
    """Junctions."""
    outlets: tuple[Outlet, ...]
    off_sheet: tuple[OffSheet, ...]
    labels: tuple[Label, ...]
    frames: tuple[Frame, ...] = ()
    crossings: int = 0
    """How often a pipe crosses another on this sheet."""
