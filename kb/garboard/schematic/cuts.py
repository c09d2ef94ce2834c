"""How a sheet is cut for paper, where printed whole its letters would be smaller than 9 points.

What an overlay is about, with what stands next to it, is kept; the rest is left out. What is then still
too large is cut again, each piece overlapping the next so far that a symbol stands whole on one of them.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from garboard.schematic.letters import width_of
from garboard.schematic.overlays import Overlay
from garboard.schematic.sheet import (
    MOST_HIGH,
    MOST_WIDE,
    STEP,
    TEXT,
    Box,
    Frame,
    Placed,
    Point,
    Sheet,
)

__all__ = ["LEAST_WIDE", "OVERLAP", "Room", "focus", "meet", "stretches", "within"]

LEAST_WIDE = MOST_WIDE * 9 // 12
"""Less would set the letters larger than the text of the page."""
OVERLAP = 84
"""The least of one piece and the next, in drawing units: a symbol with its label stands whole on one."""
MOST_PIECES = 20


@dataclass(frozen=True, slots=True)
class Room:
    """What the sheets of paper hold of a drawing from head to foot, in drawing units."""

    first: int = MOST_HIGH
    """Less where the head of the page stands above it."""
    foot: int = 0
    """What legend and title block take of the last."""


def stretches(
    low: int, high: int, room: Room, most: int = MOST_HIGH
) -> tuple[tuple[int, int], ...]:
    """A length in as few pieces as go, each about as full as the others.

    Args:
        low: Where it begins.
        high: Where it ends.
        room: What the first and the last piece hold.
        most: What each of the others holds.

    >>> stretches(0, 1000, Room(foot=100), most=700)
    ((0, 586), (502, 1000))
    """
    length = high - low
    for count in range(1, MOST_PIECES):
        rooms = [room.first, *[most] * (count - 1)]
        rooms[-1] -= room.foot
        needed = length + (count - 1) * OVERLAP
        if min(rooms) > 2 * OVERLAP and sum(rooms) >= needed:
            break
        if count == 1 and room.first - room.foot >= length:
            break
    found, at = [], low
    for one in rooms[:-1]:
        end = at - (-one * needed // sum(rooms))
        found.append((at, end))
        at = end - OVERLAP
    return (*found, (at, high))


def focus(sheet: Sheet, overlay: Overlay | None, least: int = LEAST_WIDE) -> Box:
    """What has to be on paper: what an overlay marks, and the parts that stand next to it.

    Args:
        sheet: The sheet.
        overlay: What is laid over it; without one, all of it is kept.
        least: As wide as this [drawing units], where the sheet is.
    """
    if overlay is None:
        return Box(0, 0, sheet.width, sheet.height)
    on, ends = _joined(sheet)
    tags = set(overlay.marks)
    for node in overlay.bands:
        tags |= {one.tag for one in on[node]}
    for one in sheet.symbols:
        if one.tag in overlay.marks:
            tags |= set(_next_to(one, on, ends))
    marked = {at for node in overlay.bands for at in (*ends[node], *_of_bars(sheet, node))}
    boxes = [one.box for one in sheet.symbols if one.tag in tags]
    boxes += [one.box for one in sheet.labels if one.of in tags]
    boxes += [Box(*at, *at) for at in marked]
    if not boxes:
        return Box(0, 0, sheet.width, sheet.height)
    return _unsliced(sheet, _widened(sheet, _with_air(_round(*boxes)), least))


def _joined(sheet: Sheet) -> tuple[Mapping[int, list[Placed]], Mapping[int, set[Point]]]:
    """By node: the symbols on it, and the corners of its pipes."""
    ends: dict[int, set[Point]] = defaultdict(set)
    for line in sheet.lines:
        ends[line.node].update(line.points)
    on: dict[int, list[Placed]] = defaultdict(list)
    for node, corners in ends.items():
        on[node] += [one for one in sheet.symbols if corners & {at for _, at in one.ports}]
    return on, ends


def _of_bars(sheet: Sheet, node: int) -> tuple[Point, ...]:
    return tuple(at for one in sheet.bars if one.node == node for at in (one.start, one.end))


def _next_to(
    part: Placed, on: Mapping[int, list[Placed]], ends: Mapping[int, set[Point]]
) -> Iterator[str]:
    """At each port of a part, the nearest other part on the same pipe: what is alive behind a shut valve."""
    for node, corners in ends.items():
        for _, at in part.ports:
            others = [one for one in on[node] if one.tag != part.tag]
            if at in corners and others:
                yield min(others, key=lambda one: (_far(one.at, at), one.tag)).tag


def _far(one: Point, other: Point) -> int:
    return abs(one[0] - other[0]) + abs(one[1] - other[1])


def _round(*boxes: Box) -> Box:
    return Box(
        min(one.left for one in boxes),
        min(one.top for one in boxes),
        max(one.right for one in boxes),
        max(one.bottom for one in boxes),
    )


def _with_air(box: Box) -> Box:
    return Box(box.left - STEP, box.top - STEP, box.right + STEP, box.bottom + STEP)


def _widened(sheet: Sheet, box: Box, least: int) -> Box:
    lacking = max(0, least - (box.right - box.left))
    left = max(0, min(box.left - lacking // 2, sheet.width - least))
    return _clipped(sheet, Box(left, box.top, max(box.right, left + least), box.bottom))


def _clipped(sheet: Sheet, box: Box) -> Box:
    return Box(
        max(0, box.left),
        max(0, box.top),
        min(sheet.width, box.right),
        min(sheet.height, box.bottom),
    )


def _unsliced(sheet: Sheet, box: Box) -> Box:
    """A box moved outwards by a little, so that its edges go through as few symbols and words as can be."""
    covered = [one.box for one in sheet.symbols] + [one.box for one in sheet.labels]
    covered += [_words_of(one) for one in sheet.frames]
    out = Box(box.left - OVERLAP, box.top - OVERLAP, box.right + OVERLAP, box.bottom + OVERLAP)
    while True:
        sliced = [one for one in covered if meet(one, box) and not within(one, box)]
        wider = _round(box, *(one for one in sliced if within(one, out)))
        if wider == box:
            return _clipped(sheet, box)
        box = wider


def _words_of(frame: Frame) -> Box:
    x, y = frame.label_at
    return Box(x, y - TEXT, x + round(width_of(frame.words)), y + 4)


def meet(one: Box, other: Box) -> bool:
    """Whether two boxes have room in common."""
    across = one.left <= other.right and other.left <= one.right
    return across and one.top <= other.bottom and other.top <= one.bottom


def within(one: Box, other: Box) -> bool:
    """Whether all of one box lies in another."""
    across = other.left <= one.left and one.right <= other.right
    return across and other.top <= one.top and one.bottom <= other.bottom
