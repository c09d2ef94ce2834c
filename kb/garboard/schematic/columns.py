"""How far to the right everything stands: parts in the order of flow, as close as their words allow."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from garboard.schematic.nets import Net, Piece
from garboard.schematic.sheet import COLUMN
from garboard.schematic.stand import (
    Captions,
    Span,
    Standing,
    foot_of,
    half_size,
    lifted,
    standing,
    words_above,
)
from garboard.schematic.trunk import Arc, Strand, Trunk, Vertex, is_upright, port_of

__all__ = ["Columns", "Hung", "columns_of"]

GAP = 2
"""Least steps between two symbols of a row, and between a symbol and a bar."""
LEAST = 2
"""Least steps along a pipe from a symbol to what stands on the pipe."""
SNAP = 3
"""What hangs nearly under something that stands is moved right under it."""
HEAD = 4
"""Steps above a pipe that words of a row take."""
SLACK = 2 * COLUMN
"""A row that starts freely and has more room than this is moved up to what it leads to."""


@dataclass(frozen=True, slots=True)
class Hung:
    """A tower and the piece it keeps its distance from."""

    standing: Standing
    anchor: Piece
    dx: int
    """From the middle of the anchor."""
    on_vessel: bool


@dataclass(frozen=True, slots=True)
class Columns:
    """Where everything stands across."""

    x: Mapping[Vertex, int]
    hung: tuple[Hung, ...]
    on_bars: Mapping[Vertex, tuple[Standing, ...]]
    """Towers of bars: they stand along them."""
    loose: tuple[tuple[Standing, Piece], ...]
    """Towers on pipes that are in no row, with a piece to stand near."""
    reach: Mapping[Strand, int]
    """How far the last part of a row and what stands after it go to the right of its middle."""


def columns_of(trunk: Trunk, captions: Captions, spread: int) -> Columns:
    """The place across of every piece and bar.

    Args:
        trunk: What is drawn on one sheet.
        captions: The words beside each piece.
        spread: Steps more between neighbours, where a closer drawing had no room.
    """
    rows = _Rows(trunk, captions, spread)
    for strand in trunk.strands:
        rows.lay(strand)
    x = _leftmost(trunk, rows)
    _close_up(trunk, rows, x)
    loose = [
        (stands, trunk.trunk_ends[net][0].piece)
        for net, them in rows.on_net.items()
        for stands in them
    ]
    return Columns(x, tuple(rows.hung), rows.on_bars, tuple(loose), rows.trail)


class _Rows:
    """The rows one by one, each laid as closely as its symbols, towers and words allow."""

    def __init__(self, trunk: Trunk, captions: Captions, spread: int) -> None:
        self.trunk = trunk
        self.captions = captions
        self.gap = GAP + spread
        self.placed: list[Span] = []
        self.apart: dict[Arc, int] = {}
        self.lead: dict[Strand, int] = {}
        self.trail: dict[Strand, int] = {}
        self.hung: list[Hung] = []
        self.on_bars: dict[Vertex, tuple[Standing, ...]] = {}
        self.on_net: dict[Net, list[Standing]] = {}
        for tower in trunk.towers:
            stands = standing(tower, captions)
            own = trunk.trunk_ends[tower.net]
            if len(own) > 2:
                self.on_bars[tower.net] = (*self.on_bars.get(tower.net, ()), stands)
            elif len(own) == 1 and is_upright(own[0].piece):
                bus = own[0].piece
                self.on_bars[bus] = (*self.on_bars.get(bus, ()), stands)
            else:
                self.on_net.setdefault(tower.net, []).append(stands)
        self.inner = {(arc.left, arc.right): arc for arc in trunk.arcs}

    def lay(self, strand: Strand) -> None:
        """Lay one row from left to right, its pipe at height 0 and its first port at 0."""
        self.placed = []
        x = port = 0
        for previous, piece in zip((None, *strand.pieces), strand.pieces, strict=False):
            wide, high = half_size(piece, self.trunk.headings[piece])
            if previous is None:
                towers = self.towers_before(strand)
            else:
                towers = self.on_net.pop(self.inner[(previous, piece)].net, [])
            feet = self.feet(towers, port)
            own = [(-wide, -high, wide, high), *words_above(self.captions[piece], high)]
            here = self.own_towers(piece)
            for stands, dx in here:
                own += lifted(stands, foot_of(stands, dx, piece.shape.half_height))
            after = max((foot for _, foot in feet), default=port - 1)
            if previous is None and not towers:
                at = wide
            else:
                gap = 0 if previous is None else self.gap
                if previous is not None and previous.shape.vessel:
                    gap = max(gap, GAP)
                at = max(port + gap, after + LEAST) + wide
                at = max(at, self.nearest(own))
            if previous is None:
                self.lead[strand] = at + self.gap
                self.hung += [
                    Hung(stands, piece, foot - at, on_vessel=False) for stands, foot in feet
                ]
            else:
                self.apart[self.inner[(previous, piece)]] = at - x
                self.hung += [
                    Hung(stands, previous, foot - x, on_vessel=False) for stands, foot in feet
                ]
            self.hung += [Hung(stands, piece, dx, on_vessel=True) for stands, dx in here]
            self.placed += [(box[0] + at, box[1], box[2] + at, box[3]) for box in own]
            x, port = at, at + wide
        self.lay_after(strand, strand.pieces[-1], x, port)

    def nearest(self, boxes: list[Span]) -> int:
        """The least place to the right where some boxes, placed about 0, touch nothing that is placed."""
        return max(
            (
                other[2] + 1 - left
                for left, top, _, bottom in boxes
                for other in self.placed
                if top < other[3] and other[1] < bottom
            ),
            default=-1000,
        )

    def towers_before(self, strand: Strand) -> list[Standing]:
        """Towers on the pipe that comes to the first part of a row."""
        if strand.before is not None:
            return self.on_net.pop(strand.before.net, [])
        piece = strand.pieces[0]
        for end in piece.ends:
            net = next((one for one in self.on_net if end in one.ends), None)
            if net and not piece.shape.vessel and len(self.trunk.trunk_ends[net]) == 1:
                at = port_of(piece, end.port, self.trunk.headings[piece])
                if at[0] < 0:
                    return self.on_net.pop(net)
        return []

    def lay_after(self, strand: Strand, last: Piece, x: int, port: int) -> None:
        """What stands on the pipe after the last part of a row."""
        reach = port
        for end in last.ends:
            net = next((one for one in self.on_net if end in one.ends), None)
            if net is None or len(self.trunk.trunk_ends[net]) > 1 + len(strand.after):
                continue
            feet = self.feet(self.on_net.pop(net), reach)
            self.hung += [Hung(stands, last, foot - x, on_vessel=False) for stands, foot in feet]
            reach = max([reach, *(foot for _, foot in feet)])
        level = max((box[2] for box in self.placed if box[1] < 0 and box[3] > -HEAD), default=0)
        self.trail[strand] = (
            max(port + self.gap, reach + LEAST if reach > port else 0, level + 1) - x
        )

    def own_towers(self, piece: Piece) -> list[tuple[Standing, int]]:
        """Towers on a vessel, on nets that join nothing else, each with its place from the middle."""
        if not piece.shape.vessel or is_upright(piece):
            return []
        found: list[Standing] = []
        for end in piece.ends:
            for net in [net for net in self.on_net if end in net.ends]:
                if len(self.trunk.trunk_ends[net]) == 1:
                    found += self.on_net.pop(net)
        return [pair for above in (True, False) for pair in _evenly(piece, found, above=above)]

    def feet(self, towers: list[Standing], port: int) -> list[tuple[Standing, int]]:
        """Where towers stand on a pipe to the right of a port."""
        feet: list[tuple[Standing, int]] = []
        at = {True: port, False: port}
        for stands in towers:
            above = stands.tower.above
            low = foot_of(stands, 0, 0)
            boxes = [*lifted(stands, low), (0, min(0, low[1]), 0, max(0, low[1]))]
            foot = max(at[above] + LEAST, self.nearest(boxes))
            opposite = [other for one, other in feet if one.tower.above != above]
            foot = next((other for other in opposite if 0 <= other - foot <= SNAP), foot)
            feet.append((stands, foot))
            at[above] = foot
            self.placed += [(box[0] + foot, box[1], box[2] + foot, box[3]) for box in boxes]
        return feet


def _evenly(piece: Piece, towers: list[Standing], *, above: bool) -> Iterator[tuple[Standing, int]]:
    """Towers along one side of a vessel, so that no two stand in each other."""
    row = [stands for stands in towers if stands.tower.above == above]
    even = 2 * (piece.shape.half_width - 2) // max(1, len(row) - 1)
    at = [0]
    for one, other in pairwise(row):
        close = max(
            (
                a[2] - b[0] + 1
                for a in one.boxes
                for b in other.boxes
                if a[1] < b[3] and b[1] < a[3]
            ),
            default=0,
        )
        at.append(at[-1] + max(close, even))
    yield from ((stands, place - at[-1] // 2) for stands, place in zip(row, at, strict=False))


def _leftmost(trunk: Trunk, rows: _Rows) -> dict[Vertex, int]:
    """Everything as far to the left as what stands before it allows; a pin holds."""
    leaving: dict[Vertex, list[Arc]] = {vertex: [] for vertex in trunk.vertices}
    waiting: dict[Vertex, int] = dict.fromkeys(trunk.vertices, 0)
    for arc in trunk.arcs:
        leaving[arc.left].append(arc)
        waiting[arc.right] += 1
    x: dict[Vertex, int] = {}
    first = {strand.pieces[0]: strand for strand in trunk.strands}
    last = {strand.pieces[-1]: strand for strand in trunk.strands}
    ready = [vertex for vertex in trunk.vertices if waiting[vertex] == 0]
    least: dict[Vertex, int] = {}
    for vertex in ready:
        at = least.get(vertex, 0)
        strand = first.get(vertex) if isinstance(vertex, Piece) else None
        if strand is not None:
            at = max(at, rows.lead[strand] - rows.gap)
        if isinstance(vertex, Piece) and vertex.pin is not None:
            at = round(vertex.pin[0] * COLUMN)
        x[vertex] = at
        for arc in leaving[vertex]:
            least[arc.right] = max(least.get(arc.right, 0), at + _apart(arc, rows, first, last))
            waiting[arc.right] -= 1
            if waiting[arc.right] == 0:
                ready.append(arc.right)
    return x


def _apart(
    arc: Arc, rows: _Rows, first: Mapping[Piece, Strand], last: Mapping[Piece, Strand]
) -> int:
    """The least distance between the middles of two neighbours."""
    if arc in rows.apart:
        return rows.apart[arc]
    right = left = 0
    if isinstance(arc.right, Piece):
        wide = arc.right.shape.half_width
        if arc.right_end and arc.right_end.port == "b":
            wide = 0
        strand = first.get(arc.right)
        right = rows.lead[strand] if strand else wide + rows.gap
        if not is_upright(arc.left):
            right += max(0, GAP - rows.gap)
    if isinstance(arc.left, Piece):
        wide = arc.left.shape.half_width
        strand = last.get(arc.left)
        left = rows.trail[strand] if strand and is_upright(arc.right) else wide
    if is_upright(arc.left) and is_upright(arc.right):
        right += 2 * rows.gap
    return left + right


def _close_up(trunk: Trunk, rows: _Rows, x: dict[Vertex, int]) -> None:
    """Move rows that start freely up to the bar they lead to."""
    for strand in trunk.strands:
        if strand.before or not strand.after or any(piece.pin for piece in strand.pieces):
            continue
        room = min(_slack(trunk, rows, strand, x), default=0)
        if room > SLACK:
            for piece in strand.pieces:
                x[piece] += room


def _slack(trunk: Trunk, rows: _Rows, strand: Strand, x: dict[Vertex, int]) -> Iterator[int]:
    own = set(strand.pieces)
    for arc in trunk.arcs:
        if arc.left in own and arc.right not in own:
            yield x[arc.right] - x[arc.left] - rows.trail[strand]
