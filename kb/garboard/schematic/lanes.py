"""Which row stands above which: few crossings first, then short bars, then the order of the file."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from garboard.schematic.columns import Columns
from garboard.schematic.nets import Piece
from garboard.schematic.trunk import Arc, Strand, Trunk, Vertex, as_piece, is_upright, port_of

__all__ = ["lanes_of"]

CROSSING = 60.0
WRONG_SIDE = 70.0
OUT_OF_ORDER = 0.8
A_LANE = 2.5
APART = 4
"""Least steps between two rows that share a lane."""
AGAIN = 2
"""How often every row is taken out and put in anew."""
FEW = 16
"""Rows up to which several orders are tried."""


@dataclass(frozen=True, slots=True)
class _Upright:
    """Something that stands across the lanes: a bar, or a pipe from one row to another."""

    x: int
    rows: tuple[int, ...]
    bar: bool
    coming: frozenset[int] = frozenset()
    """Rows that come to it from the left."""
    below: tuple[tuple[int, int], ...] = ()
    """Pairs of rows: the first must stand above the second."""


def lanes_of(trunk: Trunk, columns: Columns) -> tuple[tuple[Strand, ...], ...]:
    """The rows of each lane, from the top.

    Args:
        trunk: What is drawn on one sheet.
        columns: Where it stands across.
    """
    count = len(trunk.strands)
    starts = (range(count), range(count - 1, -1, -1), [*range(1, count, 2), *range(0, count, 2)])
    best: tuple[float, tuple[tuple[int, ...], ...]] | None = None
    for start in starts[: len(starts) if count <= FEW else 1]:
        order = _Order(trunk, columns)
        for number in start:
            order.insert(number)
        for _ in range(AGAIN):
            before = order.lanes
            for number in range(count):
                order.take_out(number)
                order.insert(number)
            if order.lanes == before:
                break
        found = (order.total(), tuple(tuple(lane) for lane in order.lanes))
        best = found if best is None or found[0] < best[0] else best
        if not order.faults():
            break
    rows = best[1] if best else ()
    return tuple(tuple(trunk.strands[row] for row in lane) for lane in rows)


class _Order:
    """The lanes while rows are put into them."""

    def __init__(self, trunk: Trunk, columns: Columns) -> None:
        self.trunk = trunk
        self.lanes: list[list[int]] = []
        self.lane: dict[int, float] = {}
        self.row_of: dict[Piece, int] = {
            piece: number for number, one in enumerate(trunk.strands) for piece in one.pieces
        }
        self.spans = [_span(one, columns, trunk) for one in trunk.strands]
        self.uprights = list(_uprights(trunk, columns, self.row_of))
        self.touching: list[list[_Upright]] = [[] for _ in trunk.strands]
        for upright in self.uprights:
            for row in upright.rows:
                self.touching[row].append(upright)

    def take_out(self, row: int) -> None:
        """Take a row out of its lane."""
        self.lanes = [[one for one in lane if one != row] for lane in self.lanes]
        self.lanes = [lane for lane in self.lanes if lane]
        self.number()

    def number(self) -> None:
        """Say of each row in which lane it is."""
        self.lane = {row: float(at) for at, lane in enumerate(self.lanes) for row in lane}

    def total(self) -> float:
        """What the whole order costs."""
        return sum(self.cost(row, self.lane[row]) for row in self.lane) + A_LANE * len(self.lanes)

    def faults(self) -> int:
        """How many rows are crossed or stand on the wrong side."""
        found = 0
        for upright in self.uprights:
            lanes = [self.lane[row] for row in upright.rows]
            if lanes:
                found += self.crossed(upright, min(lanes), max(lanes), -1)
            found += sum(self.lane[one] >= self.lane[other] for one, other in upright.below)
        return found

    def insert(self, row: int) -> None:
        """Put a row where it costs least."""
        best = (self.cost(row, at := -0.5) + A_LANE, at)
        for number, lane in enumerate(self.lanes):
            if all(self.clear(row, other) for other in lane):
                best = min(best, (self.cost(row, float(number)), float(number)))
            best = min(best, (self.cost(row, number + 0.5) + A_LANE, number + 0.5))
        if best[1].is_integer():
            self.lanes[int(best[1])].append(row)
        else:
            self.lanes.insert(int(best[1] + 0.5), [row])
        self.number()

    def clear(self, row: int, other: int) -> bool:
        """Whether two rows can share a lane."""
        (left, right), (left_2, right_2) = self.spans[row], self.spans[other]
        meet = any(other in upright.rows for upright in self.touching[row] if upright.bar)
        apart = 0 if meet else APART
        return right + apart <= left_2 or right_2 + apart <= left

    def cost(self, row: int, lane: float) -> float:
        """What it costs to have a row in a lane, as the others stand now."""
        total = 0.02 * abs(lane)
        left, right = self.spans[row]
        for upright in self.uprights:
            others = [self.lane[one] for one in upright.rows if one in self.lane and one != row]
            if row in upright.rows:
                if not others:
                    continue
                middle = sum(others) / len(others)
                top, bottom = min(*others, lane), max(*others, lane)
                total += (bottom - top) + 0.3 * abs(lane - middle)
                total += CROSSING * self.crossed(upright, top, bottom, row)
                total += self.misplaced(upright, row, lane)
            elif len(others) > 1 and left < upright.x < right:
                total += CROSSING * (min(others) < lane < max(others))
        return total

    def crossed(self, upright: _Upright, top: float, bottom: float, row: int) -> int:
        """How many other rows a bar runs across."""
        return sum(
            1
            for other, lane in self.lane.items()
            if top < lane < bottom
            and other != row
            and other not in upright.rows
            and self.spans[other][0] < upright.x < self.spans[other][1]
        )

    def misplaced(self, upright: _Upright, row: int, lane: float) -> float:
        """What it costs that a row stands on the wrong side of another."""
        total = 0.0
        for above, below in upright.below:
            if row == above and below in self.lane and self.lane[below] <= lane:
                total += WRONG_SIDE
            if row == below and above in self.lane and self.lane[above] >= lane:
                total += WRONG_SIDE
        for other in upright.rows:
            same_side = (other in upright.coming) == (row in upright.coming)
            if other in self.lane and other != row and (same_side or not upright.bar):
                total += OUT_OF_ORDER * ((other < row) != (self.lane[other] < lane))
        return total


def _span(strand: Strand, columns: Columns, trunk: Trunk) -> tuple[int, int]:
    """From where to where a row reaches, with the pipes to what it starts and ends at."""
    first, last = strand.pieces[0], strand.pieces[-1]
    left = columns.x[first] - first.shape.half_width
    right = columns.x[last] + columns.reach[strand]
    for arc in trunk.arcs:
        if arc.right is first and is_upright(arc.left):
            left = min(left, columns.x[arc.left])
        if arc.left is last and is_upright(arc.right):
            right = max(right, columns.x[arc.right])
    return left, right


def _uprights(trunk: Trunk, columns: Columns, row_of: Mapping[Piece, int]) -> Iterator[_Upright]:
    """Every bar, and every pipe from one row to another."""
    bars: dict[Vertex, list[int]] = {}
    coming: dict[Vertex, list[int]] = {}
    for arc in trunk.arcs:
        for bar, other in ((arc.left, arc.right), (arc.right, arc.left)):
            if is_upright(bar):
                rows = bars.setdefault(bar, [])
                if isinstance(other, Piece) and not is_upright(other):
                    rows.append(row_of[other])
                    if bar is arc.right:
                        coming.setdefault(bar, []).append(row_of[other])
        if is_upright(arc.left) or is_upright(arc.right):
            continue
        one, other = as_piece(arc.left), as_piece(arc.right)
        if row_of[one] == row_of[other]:
            continue
        x = columns.x[other] - other.shape.half_width - 2
        rows_2 = (row_of[one], row_of[other])
        yield _Upright(x, rows_2, bar=False, below=tuple(_sides(trunk, arc, rows_2)))
    for bar, rows in bars.items():
        ends = frozenset(coming.get(bar, ()))
        yield _Upright(columns.x[bar], tuple(dict.fromkeys(rows)), bar=True, coming=ends)


def _sides(trunk: Trunk, arc: Arc, rows: tuple[int, int]) -> Iterator[tuple[int, int]]:
    """Which row must stand above: what comes to the third port of a three-way valve."""
    for end, own, other in ((arc.left_end, rows[0], rows[1]), (arc.right_end, rows[1], rows[0])):
        if end is not None and end.port == "b":
            down = port_of(end.piece, "b", trunk.headings[end.piece])[1] > 0
            yield (own, other) if down else (other, own)
