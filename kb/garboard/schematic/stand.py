"""How a tower stands: where its parts are above or below its foot, and the room it takes across."""

from collections.abc import Mapping
from dataclasses import dataclass

from garboard.schematic.captions import steps_high, steps_wide
from garboard.schematic.nets import OUTLET, Piece
from garboard.schematic.sheet import Heading, Point
from garboard.schematic.towers import RELIEFS, Tower

__all__ = [
    "FOOT_ABOVE",
    "FOOT_BELOW",
    "Captions",
    "Span",
    "Standing",
    "Stood",
    "foot_of",
    "half_size",
    "lifted",
    "standing",
    "words_above",
]

FOOT_ABOVE = 5
"""Steps from a pipe up to what stands on it: there is a label of two lines between."""
FOOT_BELOW = 3
Span = tuple[int, int, int, int]
"""Left, top, right, bottom, in steps."""
Captions = Mapping[Piece, tuple[str, ...]]
"""The words beside each piece."""


@dataclass(frozen=True, slots=True)
class Stood:
    """One part of a tower."""

    piece: Piece
    at: Point
    """Of its middle, from the foot."""
    heading: Heading


@dataclass(frozen=True, slots=True)
class Standing:
    """A tower with its foot at the origin."""

    tower: Tower
    stood: tuple[Stood, ...]
    boxes: tuple[Span, ...]
    """Its symbols, and the room for its labels."""


def half_size(piece: Piece, heading: Heading) -> tuple[int, int]:
    """Half its width and height as it is turned."""
    wide, high = piece.shape.half_width, piece.shape.half_height
    upright = heading in (Heading.UP, Heading.DOWN) and not piece.shape.stands
    return (high, wide) if upright else (wide, high)


def standing(tower: Tower, captions: Captions) -> Standing:
    """Where the parts of a tower stand, from its foot outwards."""
    way = -1 if tower.above else 1
    stood: list[Stood] = []
    boxes: list[Span] = []
    y = 0
    relief = False
    for number, piece in enumerate(tower.pieces):
        last = number == len(tower.pieces) - 1
        if piece.kind == OUTLET and relief:
            side = Stood(piece, (5, y + 2), Heading.RIGHT)
            stood.append(side)
            boxes += [_box(side.at, 1, 1), _words(captions[piece], (5, y + 3), below=True)]
            continue
        heading = Heading.UP if tower.above else Heading.DOWN
        if piece.shape.stands:
            heading = Heading.RIGHT if piece.kind in RELIEFS else heading
        wide, high = half_size(piece, heading)
        relief = piece.kind in RELIEFS
        gap = 1 if number else 0
        middle = y + way * (high + gap)
        stood.append(Stood(piece, (0, middle), heading))
        boxes.append(_box((0, middle), wide, high))
        y = middle + way * high
        lines = captions[piece]
        if relief:
            boxes.append(_box((2, middle), 1, 1))
        if not lines:
            continue
        top = last or relief
        if tower.above and top and piece.kind != OUTLET:
            boxes.append(_words(lines, (0, y), below=False))
        else:
            across = steps_wide(lines)
            half = -(-steps_high(lines) // 2)
            boxes.append((wide, middle - half, wide + across, middle + half))
    return Standing(tower, tuple(stood), tuple(boxes))


def _box(middle: Point, wide: int, high: int) -> Span:
    return (middle[0] - wide, middle[1] - high, middle[0] + wide, middle[1] + high)


def _words(lines: tuple[str, ...], at: Point, *, below: bool) -> Span:
    """Room for words above or below a point, in the middle."""
    half = -(-steps_wide(lines) // 2)
    high = steps_high(lines)
    return (at[0] - half, at[1], at[0] + half, at[1] + high) if below else (
        at[0] - half, at[1] - high, at[0] + half, at[1]
    )  # fmt: skip


def words_above(lines: tuple[str, ...], high: int) -> list[Span]:
    """Room for the words over a symbol of a row, from its middle."""
    if not lines:
        return []
    half = -(-steps_wide(lines) // 2)
    return [(-half, -high - steps_high(lines), half, -high)]


def foot_of(stands: Standing, dx: int, high: int) -> Point:
    """Where the foot of a tower is, from the middle of what it stands on, which is so high."""
    over = max(0, high - 1)
    if stands.tower.above:
        return dx, -FOOT_ABOVE - max(0, over - 1)
    return dx, FOOT_BELOW + over


def lifted(stands: Standing, foot: Point) -> list[Span]:
    """The room of a tower on its foot."""
    x, y = foot
    return [(left + x, top + y, right + x, bottom + y) for left, top, right, bottom in stands.boxes]
