"""Bars across the rows they join, and what stands at their ends or beside them."""

from garboard.schematic.captions import steps_wide
from garboard.schematic.columns import Columns
from garboard.schematic.nets import Net, Piece
from garboard.schematic.place import Pins, Place
from garboard.schematic.sheet import COLUMN, ROW, Heading, Point
from garboard.schematic.stand import FOOT_ABOVE, FOOT_BELOW, Span, Standing, lifted
from garboard.schematic.towers import INSTRUMENTS
from garboard.schematic.trunk import Vertex, is_upright

__all__ = ["stand_bars"]

BESIDE = (2, 5, 8, 12)
"""Steps from a bar to what stands beside it, nearest first."""
LEAST = 4
"""Steps of a bus that joins one row only."""
FURTHER = 80
"""Steps beyond the end of a bar up to which room is looked for."""


def stand_bars(place: Place, columns: Columns, pins: Pins) -> None:
    """Stand every bar of a sheet, with its towers.

    Args:
        place: The sheet, its rows in place.
        columns: Where everything stands across.
        pins: Where authors want their bars.
    """
    standing = _Bars(place, columns)
    standing.stand(pins)


class _Bars:
    """The bars of a sheet while they are put up."""

    def __init__(self, place: Place, columns: Columns) -> None:
        self.place = place
        self.columns = columns

    def stand(self, pins: Pins) -> None:
        """Stand every bar across the rows it joins, and its towers along it."""
        place = self.place
        uprights = [vertex for vertex in place.trunk.vertices if is_upright(vertex)]
        spans = {bar: self.span(bar) for bar in uprights}
        for bar, (top, bottom) in spans.items():
            place.take((self.columns.x[bar] - 1, top, self.columns.x[bar] + 1, bottom))
        self.take_pipes()
        for bar in uprights:
            x = self.columns.x[bar]
            top, bottom = spans[bar]
            for stands in _tips_last(self.columns.on_bars.get(bar, ())):
                top, bottom = self.along(stands, x, top, bottom)
            if isinstance(bar, Net):
                named = next((pins[name] for name in bar.headers if name in pins), None)
                place.bars[bar] = _pinned(named) if named else ((x, top), (x, bottom))
            else:
                place.at[bar] = (x, (top + bottom) // 2)
                place.headings[bar] = Heading.RIGHT
                place.boxes[bar] = (x, top, x, bottom)
        self.drop_hidden()
        for stands, near in self.columns.loose:
            self.anywhere(stands, place.at[near])

    def span(self, bar: Vertex) -> tuple[int, int]:
        """The heights of the first and last row that a bar joins."""
        ys: list[int] = []
        for arc in self.place.trunk.arcs:
            other = arc.right if arc.left is bar else arc.left if arc.right is bar else None
            if isinstance(other, Piece) and other in self.place.at:
                ys.append(self.place.at[other][1])
        top, bottom = min(ys, default=0), max(ys, default=0)
        if isinstance(bar, Piece) and bottom - top < LEAST:
            return top - LEAST // 2, bottom + LEAST // 2
        return top, bottom

    def drop_hidden(self) -> None:
        """Draw no bar that would run through a symbol or along another bar: its pipes find their own way."""
        kept: list[tuple[Point, Point]] = []
        for bar, (start, end) in list(self.place.bars.items()):
            span = (start[0], start[1], end[0], end[1])
            hidden = any(_touch(span, box) for box in self.place.boxes.values())
            if hidden or any(_touch(span, (*one, *other)) for one, other in kept):
                del self.place.bars[bar]
            else:
                kept.append((start, end))

    def take_pipes(self) -> None:
        """The straight pipes of rows are taken too."""
        for strand in self.place.trunk.strands:
            x, y = self.place.at[strand.pieces[0]]
            for before, after in zip(strand.pieces, strand.pieces[1:], strict=False):
                here, there = self.place.at[before], self.place.at[after]
                self.place.take(
                    (here[0], min(here[1], there[1]) - 1, there[0], max(here[1], there[1]) + 1)
                )
            if strand.before and is_upright(strand.before.left):
                self.place.take((self.columns.x[strand.before.left], y - 1, x, y + 1))
            x, y = self.place.at[strand.pieces[-1]]
            for arc in strand.after:
                if is_upright(arc.right):
                    self.place.take((x, y - 1, self.columns.x[arc.right], y + 1))

    def along(self, stands: Standing, x: int, top: int, bottom: int) -> tuple[int, int]:
        """Stand a tower at the end of a bar, or beside it where there is room; say how long the bar is."""
        above = stands.tower.above
        tip = top - FOOT_ABOVE if above else bottom + FOOT_BELOW
        if self.free(stands, (x, tip), (x, min(tip, top), x, max(tip, bottom))):
            self.place.put_tower(stands, (x, tip))
            return top, bottom
        inside = range(top + 2, bottom - 1)
        outside = (
            range(top - 1, top - FURTHER, -1) if above else range(bottom + 1, bottom + FURTHER)
        )
        for heights in (inside, outside):
            for out in BESIDE:
                for y in heights:
                    if not self.can_reach(x, y, top, bottom):
                        break
                    for side in (-1, 1):
                        if self.beside(stands, (x, y), side, out):
                            return min(top, y), max(bottom, y)
        self.anywhere(stands, (x, top if above else bottom))
        return top, bottom

    def anywhere(self, stands: Standing, near: Point) -> None:
        """Stand a tower wherever there is room, as near as can be."""
        for ring in range(4, 4 * FURTHER, 2):
            for dx in range(-ring, ring + 1, 2):
                for dy in (-ring, ring) if abs(dx) < ring else range(-ring, ring + 1, 2):
                    foot = (near[0] + dx, near[1] + dy)
                    air = [(a - 1, b - 1, c + 1, d + 1) for a, b, c, d in lifted(stands, foot)]
                    x, y = foot
                    air.append((x - 1, y - 3, x + 1, y + 3))
                    if all(self.place.is_free(span) for span in air):
                        self.place.put_tower(stands, foot)
                        return

    def can_reach(self, x: int, y: int, top: int, bottom: int) -> bool:
        """Whether a bar can be made so long that it reaches a height."""
        if y < top:
            return self.place.is_free((x - 1, y, x + 1, top - 1))
        return y <= bottom or self.place.is_free((x - 1, bottom + 1, x + 1, y))

    def beside(self, stands: Standing, at: Point, side: int, out: int) -> bool:
        """Stand a tower beside a bar: an instrument looks at it, all else stands up or hangs down."""
        x, y = at
        piece = stands.tower.pieces[0]
        if len(stands.tower.pieces) == 1 and piece.kind in INSTRUMENTS:
            wide = steps_wide(self.place.captions[piece])
            middle = x + side * (out + 2)
            symbol = (middle - 2, y - 2, middle + 2, y + 2)
            words = (middle + 2, y - 2, middle + 2 + wide, y + 2)
            if side < 0:
                words = (middle - 2 - wide, y - 2, middle - 2, y + 2)
            stub = (min(x + side, middle), y - 1, max(x + side, middle), y + 1)
            air = (symbol[0] - 1, symbol[1] - 1, symbol[2] + 1, symbol[3] + 1)
            if not all(self.place.is_free(span) for span in (air, words, stub)):
                return False
            self.place.put(piece, (middle, y), Heading.LEFT if side < 0 else Heading.RIGHT)
            self.place.take(words, (min(x, middle), y, max(x, middle), y))
            self.place.feet.setdefault(stands.tower.net, []).append(stands.tower.foot)
            return True
        foot = (x + side * (out + 1), y + (-2 if stands.tower.above else 2))
        riser = (min(x + side, foot[0]), min(y, foot[1]), max(x + side, foot[0]), max(y, foot[1]))
        if not self.free(stands, foot, riser):
            return False
        self.place.put_tower(stands, foot)
        self.place.take(riser)
        return True

    def free(self, stands: Standing, foot: Point, riser: Span) -> bool:
        """Whether a tower has room, with the pipe to it."""
        spans = lifted(stands, foot)
        upright = riser[0] == riser[2]
        if upright:
            return all(self.place.is_free(span) for span in spans)
        return all(self.place.is_free(span) for span in (*spans, riser))


def _touch(one: Span, other: Span) -> bool:
    """Whether two rooms have a point in common."""
    across = one[0] <= other[2] and other[0] <= one[2]
    return across and one[1] <= other[3] and other[1] <= one[3]


def _tips_last(towers: tuple[Standing, ...]) -> list[Standing]:
    """What stands beside a bar first, as it may make it longer; then the two that stand on its ends."""
    above = [stands for stands in towers if stands.tower.above]
    below = [stands for stands in towers if not stands.tower.above]
    return [*above[1:], *below[1:], *above[:1], *below[:1]]


def _pinned(pin: tuple[tuple[float, float], tuple[float, float]]) -> tuple[Point, Point]:
    """The ends of a bar in steps."""
    (column, row), (column_2, row_2) = pin
    one = (round(column * COLUMN), round(row * ROW))
    other = (round(column_2 * COLUMN), round(row_2 * ROW))
    return min(one, other), max(one, other)
