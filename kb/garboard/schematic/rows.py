"""Rows under each other, each as close to what stands above it as symbols, towers and words allow."""

from collections.abc import Iterator

from garboard.schematic.columns import Columns, Hung
from garboard.schematic.nets import Piece
from garboard.schematic.place import Place
from garboard.schematic.sheet import ROW, Point
from garboard.schematic.stand import Span, Standing, foot_of, half_size, lifted, words_above
from garboard.schematic.trunk import Strand

__all__ = ["stack_rows"]

EACH = 3
"""Steps of a bar for each thing that stands beside it; they stand on both sides."""
LANE = 6
"""Least steps from one row to the next."""


def stack_rows(
    place: Place, columns: Columns, lanes: tuple[tuple[Strand, ...], ...], spread: int
) -> None:
    """Give every row its height.

    Args:
        place: The sheet.
        columns: Where everything stands across.
        lanes: The rows of each lane, from the top.
        spread: Steps more between rows.
    """
    _Stacking(place, columns, spread).stack(lanes)


class _Stacking:
    """The rows of a sheet while they are put under each other."""

    def __init__(self, place: Place, columns: Columns, spread: int) -> None:
        self.place = place
        self.columns = columns
        self.gap = 1 + max(0, spread)
        self.long: dict[int, list[tuple[int, int]]] = {}
        """By lane: a lane above it, and how far at least it is below that one."""
        self.hung: dict[Piece, list[Hung]] = {}
        for hung in columns.hung:
            self.hung.setdefault(hung.anchor, []).append(hung)

    def stack(self, lanes: tuple[tuple[Strand, ...], ...]) -> None:
        """Put the lanes under each other, each as high as what stands above it allows."""
        skyline: dict[int, int] = {}
        before = -LANE
        lane_of = {strand: number for number, lane in enumerate(lanes) for strand in lane}
        tips = self.tips(lane_of)
        ys: list[int] = []
        for number, lane in enumerate(lanes):
            spans = [span for strand in lane for span in self.room(strand)]
            for x, stands in tips.get(number, ()):
                spans += self.on_tip(stands, x, spans)
            top = max(
                (self.gap - top + max(skyline.get(x, -1000) for x in range(left, right + 1)))
                for left, top, right, _ in spans
            )
            y = max(top, before + LANE) if skyline else 0
            y = max([y, *(ys[first] + long for first, long in self.long.get(number, ()))])
            pinned = [piece.pin for one in lane for piece in one.pieces if piece.pin]
            if pinned:
                y = round(pinned[0][1] * ROW)
            before = y
            ys.append(y)
            for left, _, right, bottom in spans:
                for x in range(left, right + 1):
                    skyline[x] = max(skyline.get(x, -1000), bottom + y)
            for strand in lane:
                self.set_down(strand, y)

    def tips(self, lane_of: dict[Strand, int]) -> dict[int, list[tuple[int, Standing]]]:
        """What is to stand on the upper and lower ends of bars, by lane; and how long bars must be."""
        found: dict[int, list[tuple[int, Standing]]] = {}
        row_of = {piece: strand for strand in lane_of for piece in strand.pieces}
        for bar, towers in self.columns.on_bars.items():
            lanes = [
                lane_of[row_of[end]]
                for arc in self.place.trunk.arcs
                for end, other in ((arc.left, arc.right), (arc.right, arc.left))
                if other is bar and isinstance(end, Piece) and end in row_of
            ]
            if not lanes:
                continue
            up = [stands for stands in towers if stands.tower.above]
            down = [stands for stands in towers if not stands.tower.above]
            for row, side in ((min(lanes), up), (max(lanes), down)):
                found.setdefault(row, []).extend((self.columns.x[bar], one) for one in side[:1])
            left = len(up[1:]) + len(down[1:])
            if left and max(lanes) > min(lanes):
                self.long.setdefault(max(lanes), []).append((min(lanes), left * EACH + EACH))
        return found

    def on_tip(self, stands: Standing, x: int, spans: list[Span]) -> list[Span]:
        """The room of a tower on the end of a bar, where its row leaves any."""
        boxes = lifted(stands, foot_of(stands, x, 0))
        clear = not any(
            a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
            for a in boxes
            for b in spans
        )
        return boxes if clear else []

    def room(self, strand: Strand) -> Iterator[Span]:
        """The room of a row, its pipe at height 0."""
        x = self.columns.x
        for piece in strand.pieces:
            wide, high = half_size(piece, self.place.trunk.headings[piece])
            at = x[piece]
            yield (at - wide, -high, at + wide, high)
            for left, top, right, bottom in words_above(self.place.captions[piece], high):
                yield (at + left, top, at + right, bottom)
            for hung in self.hung.get(piece, ()):
                yield from lifted(hung.standing, self.foot(hung, 0))
        first, last = x[strand.pieces[0]], x[strand.pieces[-1]]
        yield (first, 0, last + self.columns.reach[strand], 0)

    def foot(self, hung: Hung, y: int) -> Point:
        """Where a tower of a row begins."""
        high = hung.anchor.shape.half_height if hung.on_vessel else 0
        x, dy = foot_of(hung.standing, self.columns.x[hung.anchor] + hung.dx, high)
        return x, y + dy

    def set_down(self, strand: Strand, y: int) -> None:
        """Give the pieces of a row their places."""
        for piece in strand.pieces:
            heading = self.place.trunk.headings[piece]
            own = round(piece.pin[1] * ROW) if piece.pin else y
            x = self.columns.x[piece]
            self.place.put(piece, (x, own), heading)
            for left, top, right, bottom in words_above(
                self.place.captions[piece], half_size(piece, heading)[1]
            ):
                room = (left + x, top + own, right + x, bottom + own)
                self.place.words.append(room)
                self.place.take(room)
            for hung in self.hung.get(piece, ()):
                self.place.put_tower(hung.standing, self.foot(hung, own))
