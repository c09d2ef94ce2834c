"""Move a sheet so that everything on it lies within its edges."""

from collections.abc import Iterator
from dataclasses import replace

from garboard.schematic.captions import PLAIN
from garboard.schematic.sheet import STEP, TEXT, Box, Point, Sheet

__all__ = ["shifted"]

EDGE = STEP
"""Free room along each edge."""


def shifted(sheet: Sheet) -> Sheet:
    """A sheet with its left upper corner at (0, 0), and as large as what stands on it."""
    boxes = list(_boxes(sheet))
    left = min(box.left for box in boxes) - EDGE
    top = min(box.top for box in boxes) - EDGE
    dx, dy = -(left // STEP) * STEP, -(top // STEP) * STEP
    right, bottom = max(box.right for box in boxes), max(box.bottom for box in boxes)

    def moved(point: Point) -> Point:
        return point[0] + dx, point[1] + dy

    def moved_box(box: Box) -> Box:
        return Box(box.left + dx, box.top + dy, box.right + dx, box.bottom + dy)

    return replace(
        sheet,
        width=right + dx + EDGE,
        height=bottom + dy + EDGE,
        symbols=tuple(
            replace(
                one,
                at=moved(one.at),
                box=moved_box(one.box),
                ports=tuple((port, moved(at)) for port, at in one.ports),
            )
            for one in sheet.symbols
        ),
        lines=tuple(
            replace(
                one,
                points=tuple(moved(point) for point in one.points),
                arrow=(moved(one.arrow[0]), one.arrow[1]) if one.arrow else None,
                hops=tuple(moved(point) for point in one.hops),
            )
            for one in sheet.lines
        ),
        bars=tuple(replace(one, start=moved(one.start), end=moved(one.end)) for one in sheet.bars),
        dots=tuple(moved(point) for point in sheet.dots),
        outlets=tuple(replace(one, at=moved(one.at)) for one in sheet.outlets),
        off_sheet=tuple(replace(one, at=moved(one.at)) for one in sheet.off_sheet),
        labels=tuple(
            replace(one, at=moved(one.at), box=moved_box(one.box)) for one in sheet.labels
        ),
        frames=tuple(
            replace(one, box=moved_box(one.box), label_at=moved(one.label_at))
            for one in sheet.frames
        ),
    )


def _boxes(sheet: Sheet) -> Iterator[Box]:
    """Everything that takes room."""
    yield from (one.box for one in sheet.symbols)
    yield from (one.box for one in sheet.labels)
    yield from (one.box for one in sheet.frames)
    for line in sheet.lines:
        yield from (_about(point, 4) for point in line.points)
    for bar in sheet.bars:
        yield from (_about(point, 4) for point in (bar.start, bar.end))
    for at in [*(one.at for one in sheet.outlets), *(one.at for one in sheet.off_sheet)]:
        yield _about(at, 2 * STEP)
    for frame in sheet.frames:
        x, y = frame.label_at
        yield Box(x, y - TEXT, x + int(len(frame.words) * PLAIN * TEXT), y + 4)


def _about(point: Point, room: int) -> Box:
    return Box(point[0] - room, point[1] - room, point[0] + room, point[1] + room)
