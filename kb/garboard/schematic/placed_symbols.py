"""A symbol at its place on a sheet: turned so that its ports lie where the pipes end, its letters upright."""

from html import escape

from garboard.schematic.pipe_strokes import TURNS
from garboard.schematic.shapes import SHAPES, Shape
from garboard.schematic.sheet import STEP, Box, Placed, Point
from garboard.schematic.symbol import Look
from garboard.schematic.symbols import draw_symbol

__all__ = ["draw_placed", "turned"]

WAYS = tuple((quarter, mirrored) for mirrored in (False, True) for quarter in range(4))


def draw_placed(one: Placed, look: Look, *, covers: bool = False) -> str:
    """A symbol at its place.

    Args:
        one: Which, and where.
        look: How it stands.
        covers: It is drawn over itself as it stands otherwise: what was there is wiped out first.
    """
    if one.kind == "bus":
        return _bus(one)
    drawn = draw_symbol(one.kind, look)
    quarter, mirrored = _way(one)
    x, y = one.at
    moved = f"translate({x},{y})"
    if quarter:
        moved += f" rotate({90 * quarter})"
    if mirrored:
        moved += " scale(1,-1)"
    dx, dy = turned(drawn.lettered, quarter, mirrored)
    first = y + dy + 5 - LETTER_LINE * (len(drawn.letters) - 1) // 2
    letters = "".join(
        _letters((x + dx, first + LETTER_LINE * number), words)
        for number, words in enumerate(drawn.letters)
    )
    wiped = _wiped(one) if covers and one.kind in WIPED else ""
    return f'{wiped}<g transform="{moved}">{drawn.strokes}</g>{letters}'


LETTER_LINE = 16
"""From one line of letters to the next, in drawing units."""
WIPED = ("switch", "breaker", "changeover", "fuse", "coupling")
"""Kinds whose two positions do not cover each other."""


def _bus(one: Placed) -> str:
    """A bus is as long as its room."""
    (x, y), box = one.at, one.box
    upright = box.bottom - box.top >= box.right - box.left
    path = f"M{x},{box.top}V{box.bottom}" if upright else f"M{box.left},{y}H{box.right}"
    return f'<path stroke-width="7" d="{path}"/>'


def _wiped(one: Placed) -> str:
    box = Box(one.at[0] - 15, one.at[1] - 13, one.at[0] + 15, one.at[1] + 13)
    return (
        f'<rect class="o" fill="#ffffff" stroke="none" x="{box.left}" y="{box.top}"'
        f' width="{box.right - box.left}" height="{box.bottom - box.top}"/>'
    )


def _letters(at: Point, words: str) -> str:
    return (
        f'<text x="{at[0]}" y="{at[1]}" text-anchor="middle"'
        f' font-weight="700" fill="currentColor" stroke="none">{escape(words)}</text>'
    )


def _way(one: Placed) -> tuple[int, bool]:
    """How a symbol is turned, and whether it is mirrored: as its ports lie; else as it heads."""
    shape = SHAPES[one.kind]
    if shape.vessel:
        return 0, False
    placed = {name: (x - one.at[0], y - one.at[1]) for name, (x, y) in one.ports}
    by_heading = TURNS[one.heading] // 90
    first = sorted(WAYS, key=lambda way: (way[1], way[0] != by_heading))
    fits = (way for way in first if _lies_so(shape, placed, *way))
    return next(fits, (by_heading, False))


def _lies_so(shape: Shape, placed: dict[str, Point], quarter: int, mirrored: bool) -> bool:  # noqa: FBT001
    known = {name: at for name, at in placed.items() if name in shape.ports}
    return bool(known) and all(
        turned((STEP * shape.ports[name][0], STEP * shape.ports[name][1]), quarter, mirrored) == at
        for name, at in known.items()
    )


def turned(point: Point, quarter: int, mirrored: bool) -> Point:  # noqa: FBT001
    """A place of a symbol as it lies when the symbol is mirrored and then turned.

    >>> turned((24, 0), 1, False), turned((0, 24), 0, True)
    ((0, 24), (0, -24))
    """
    x, y = point
    if mirrored:
        y = -y
    for _ in range(quarter):
        x, y = -y, x
    return x, y
