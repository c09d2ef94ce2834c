"""What must be true of every drawn sheet, looked for in the drawing alone and held against the plant."""

from collections import Counter, defaultdict
from collections.abc import Hashable, Iterator
from itertools import combinations, pairwise

from garboard.records.system import Joins
from garboard.schematic.sheet import MOST_PARTS, MOST_WIDE, STEP, Box, Placed, Point, Sheet
from garboard.systems.plant import Plant

__all__ = ["sheet_faults"]

Sheets = tuple[Sheet, ...]


def sheet_faults(plant: Plant, sheets: Sheets) -> list[str]:
    """Everything that is wrong with the sheets of a system, in words."""
    faults = [
        f"sheet {sheet.number}: {fault}"
        for sheet in sheets
        for look in (overlaps, off_grid, through_symbols, touching, covered_labels, too_large)
        for fault in look(sheet)
    ]
    return [*faults, *unpaired(sheets), *missing(plant, sheets), *misjoined(plant, sheets)]


def meet(one: Box, other: Box) -> bool:
    across = one.left < other.right and other.left < one.right
    return across and one.top < other.bottom and other.top < one.bottom


def overlaps(sheet: Sheet) -> Iterator[str]:
    """No two symbols stand in each other."""
    for one, other in combinations(sheet.symbols, 2):
        if meet(one.box, other.box):
            yield f"{one.tag} stands in {other.tag}"


def runs(sheet: Sheet) -> Iterator[tuple[int, tuple[Point, ...]]]:
    """Node and corners of everything that is drawn as pipe."""
    for line in sheet.lines:
        yield line.node, line.points
    for bar in sheet.bars:
        yield bar.node, (bar.start, bar.end)


def steps(points: tuple[Point, ...]) -> Iterator[Point]:
    """Every point of the grid along some corners."""
    yield points[0]
    for (x, y), (x_2, y_2) in pairwise(points):
        length = max(abs(x_2 - x), abs(y_2 - y)) // STEP
        for number in range(1, length + 1):
            yield x + (x_2 - x) * number // length, y + (y_2 - y) * number // length


def off_grid(sheet: Sheet) -> Iterator[str]:
    """Every corner is on the grid, and every pipe runs along x or y."""
    for node, points in runs(sheet):
        for x, y in points:
            if x % STEP or y % STEP:
                yield f"a corner of node {node} at {x}, {y} is off the grid"
        for one, other in pairwise(points):
            if one[0] != other[0] and one[1] != other[1]:
                yield f"a pipe of node {node} runs aslant from {one} to {other}"


def through_symbols(sheet: Sheet) -> Iterator[str]:
    """A pipe meets a symbol at a port, with its end."""
    boxes: dict[Point, Placed] = {}
    for symbol in sheet.symbols:
        for x in range(symbol.box.left, symbol.box.right + 1, STEP):
            for y in range(symbol.box.top, symbol.box.bottom + 1, STEP):
                boxes[(x, y)] = symbol
    for node, points in runs(sheet):
        ends = (points[0], points[-1])
        for point in steps(points):
            met = boxes.get(point)
            if met and (point not in ends or point not in {at for _, at in met.ports}):
                yield f"a pipe of node {node} runs through {met.tag} at {point}"


def touching(sheet: Sheet) -> Iterator[str]:
    """Pipes of two nodes share no piece, and no point but where one hops over the other."""
    edges: dict[tuple[Point, Point], int] = {}
    ways: dict[Point, dict[int, set[str]]] = defaultdict(lambda: defaultdict(set))
    hops = {hop for line in sheet.lines for hop in line.hops}
    for node, points in runs(sheet):
        for one, other in pairwise(steps(points)):
            edge = (min(one, other), max(one, other))
            if edges.setdefault(edge, node) != node:
                yield f"nodes {node} and {edges[edge]} lie on each other at {one}"
            for point, sign in ((edge[0], "+"), (edge[1], "-")):
                ways[point][node].add(("x" if one[1] == other[1] else "y") + sign)
    buses = [symbol for symbol in sheet.symbols if symbol.kind == "bus"]
    on_bus = {at for bus in buses for _, at in bus.ports}
    for point, nodes in ways.items():
        if len(nodes) > 1 and point not in on_bus:
            straight = sorted(sorted(way) for way in nodes.values()) == [["x+", "x-"], ["y+", "y-"]]
            if not straight:
                yield f"nodes {sorted(nodes)} touch at {point}"
            elif point not in hops:
                yield f"nodes {sorted(nodes)} cross without a hop at {point}"


def covered_labels(sheet: Sheet) -> Iterator[str]:
    """Words stand on no symbol, pipe, bar, or other words; inside a symbol only its own."""
    for one, other in combinations(sheet.labels, 2):
        if meet(one.box, other.box):
            yield f"the words {one.lines} cover {other.lines}"
    pipes = [(one, other) for _, points in runs(sheet) for one, other in pairwise(points)]
    for label in sheet.labels:
        for symbol in sheet.symbols:
            inside = label.of == symbol.tag and within(label.box, symbol.box)
            if meet(label.box, symbol.box) and not inside:
                yield f"the words {label.lines} cover {symbol.tag}"
        for (x, y), (x_2, y_2) in pipes:
            pipe = Box(min(x, x_2) - 1, min(y, y_2) - 1, max(x, x_2) + 1, max(y, y_2) + 1)
            if meet(label.box, pipe):
                yield f"the words {label.lines} stand on a pipe at {x}, {y}"
        if not within(label.box, Box(0, 0, sheet.width, sheet.height)):
            yield f"the words {label.lines} leave the sheet"


def within(one: Box, other: Box) -> bool:
    across = other.left <= one.left and one.right <= other.right
    return across and other.top <= one.top and one.bottom <= other.bottom


def too_large(sheet: Sheet) -> Iterator[str]:
    """No more parts than a reader can follow, and letters of 9 pt on A4 landscape."""
    if len(sheet.symbols) > MOST_PARTS:
        yield f"{len(sheet.symbols)} parts"
    if sheet.width > MOST_WIDE:
        yield f"{sheet.width} units wide"


def unpaired(sheets: Sheets) -> Iterator[str]:
    """A named end has its like on the sheet it leads to."""
    ends = Counter(
        (end.name, end.node, sheet.number, end.sheet)
        for sheet in sheets
        for end in sheet.off_sheet
        if end.sheet
    )
    for (name, node, here, there), number in ends.items():
        if ends[(name, node, there, here)] != number:
            yield f"{name} leads from sheet {here} to {there}, but not back"


def missing(plant: Plant, sheets: Sheets) -> Iterator[str]:
    """Every part, every end of a pipe and every open end is drawn, and once."""
    drawn = Counter(symbol.tag for sheet in sheets for symbol in sheet.symbols)
    away = {end.name for sheet in sheets for end in sheet.off_sheet if end.sheet == 0}
    for part in plant.parts:
        if drawn[part.tag] != 1 and part.tag not in away:
            yield f"{part.tag} is drawn {drawn[part.tag]} times"
    ports = {
        (symbol.tag, port)
        for sheet in sheets
        for symbol in sheet.symbols
        for port, _ in symbol.ports
    }
    outlets = Counter((end.place, end.node) for sheet in sheets for end in sheet.outlets)
    for pipe in plant.pipes:
        for joint in (pipe.a, pipe.b):
            if joint.joins is Joins.PART and joint.name not in away:
                if (joint.name, joint.port) not in ports:
                    yield f"nothing is drawn at {joint.name}.{joint.port}"
            elif joint.joins is Joins.OUTSIDE and not outlets[(joint.name, pipe.node)]:
                yield f"no open end {joint.name} is drawn"


class Groups:
    """What is joined with what."""

    def __init__(self) -> None:
        self.parent: dict[Hashable, Hashable] = {}

    def root(self, key: Hashable) -> Hashable:
        while self.parent.setdefault(key, key) != key:
            key = self.parent[key]
        return key

    def join(self, one: Hashable, other: Hashable) -> None:
        self.parent[self.root(one)] = self.root(other)


def followed(sheets: Sheets) -> Groups:
    """What the lines of the drawing join, followed point by point; a hop joins nothing."""
    groups = Groups()
    for sheet in sheets:
        hops = {hop for line in sheet.lines for hop in line.hops}
        for _, points in runs(sheet):
            for one, other in pairwise(steps(points)):
                way = one[1] == other[1]
                places = [(sheet.number, at, way if at in hops else None) for at in (one, other)]
                groups.join(*places)
        for symbol in sheet.symbols:
            for port, at in symbol.ports:
                own = (symbol.tag, "bus" if symbol.kind == "bus" else port)
                groups.join((symbol.tag, port), own)
                groups.join(own, (sheet.number, at, None))
        for end in sheet.off_sheet:
            pair = min(sheet.number, end.sheet), max(sheet.number, end.sheet)
            groups.join(("end", end.name, end.node, *pair), (sheet.number, end.at, None))
    return groups


def misjoined(plant: Plant, sheets: Sheets) -> Iterator[str]:
    """What the drawing joins is what the plant joins."""
    groups = followed(sheets)
    buses = {node: bus.tag for bus in plant.of_kind("bus") for node in bus.nodes}
    drawn: dict[Hashable, set[Hashable]] = defaultdict(set)
    nodes: dict[Hashable, set[Hashable]] = defaultdict(set)
    for sheet in sheets:
        found: list[tuple[int, Hashable]] = [
            (plant.parts[plant.numbers[symbol.tag]].ports[port], (symbol.tag, port))
            for symbol in sheet.symbols
            for port, _ in symbol.ports
        ]
        found += [(outlet.node, (sheet.number, outlet.at, None)) for outlet in sheet.outlets]
        for node, key in found:
            name = buses.get(node, node)
            nodes[name].add(groups.root(key))
            drawn[groups.root(key)].add(name)
    for node_name, pieces in nodes.items():
        if len(pieces) > 1:
            yield f"node {node_name} is drawn in {len(pieces)} pieces"
    for joined in drawn.values():
        if len(joined) > 1:
            yield f"nodes {sorted(map(str, joined))} are drawn as one"
