"""Pipes as they are drawn: pieces between junctions, with arrows, dots and hops."""

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise

from garboard.schematic.nets import Net
from garboard.schematic.place import Place
from garboard.schematic.route import Path, Routes
from garboard.schematic.sheet import STEP, Bar, Heading, Line, Point

__all__ = ["bars_of", "dots_of", "lines_of"]

LONG = 4
"""Steps of a straight pipe that has an arrow."""


def lines_of(place: Place, routes: Routes) -> tuple[Line, ...]:
    """Every piece of pipe, in drawing units."""
    return tuple(line for net in place.circuit.nets for line in _of_net(place, routes, net))


def _of_net(place: Place, routes: Routes, net: Net) -> Iterator[Line]:
    crossed = set(routes.crossings)
    joints = _joints(place, routes, net)
    bar = place.bars.get(net)
    if bar and not net.headers:
        yield _line(net, net.service, [*_between(*bar)], crossed, flows=False)
    for path in routes.paths[net]:
        for piece in _pieces(path, joints):
            yield _line(net, path.end.service, piece, crossed, flows=True)


def _joints(place: Place, routes: Routes, net: Net) -> Counter[Point]:
    """How many pieces of pipe of a net meet at each point."""
    edges: set[tuple[Point, Point]] = set()
    runs = [path.points for path in routes.paths[net]]
    if net in place.bars:
        runs.append(tuple(_between(*place.bars[net])))
    for run in runs:
        edges.update((min(pair), max(pair)) for pair in pairwise(run))
    return Counter(point for edge in edges for point in edge)


def _between(start: Point, end: Point) -> Iterator[Point]:
    (x, y), (x_2, y_2) = start, end
    for one in range(x, x_2 + 1):
        for other in range(y, y_2 + 1):
            yield one, other


def _pieces(path: Path, joints: Counter[Point]) -> Iterator[list[Point]]:
    """A path in the direction of its flow, cut where others join it."""
    points = list(path.points if path.end.leaves else reversed(path.points))
    start = 0
    for at in range(1, len(points)):
        if joints[points[at]] > 2 or at == len(points) - 1:
            yield points[start : at + 1]
            start = at


def _line(net: Net, service: str, points: list[Point], crossed: set[Point], *, flows: bool) -> Line:
    corners = [points[0]]
    hops: list[Point] = []
    for before, here, after in zip(points, points[1:], points[2:], strict=False):
        if here[0] - before[0] != after[0] - here[0] or here[1] - before[1] != after[1] - here[1]:
            corners.append(here)
        elif here in crossed and before[1] == after[1]:
            hops.append(here)
    corners.append(points[-1])
    arrow = _arrow(corners) if flows else None
    return Line(
        node=net.node,
        service=service,
        points=tuple(_units(point) for point in corners),
        arrow=arrow,
        hops=tuple(_units(point) for point in hops),
    )


def _arrow(corners: list[Point]) -> tuple[Point, Heading] | None:
    """In the middle of the longest straight piece, where it is long."""
    runs = [
        (abs(a[0] - b[0]) + abs(a[1] - b[1]), number)
        for number, (a, b) in enumerate(pairwise(corners))
    ]
    length, number = max(runs, key=lambda run: (run[0], -run[1]))
    if length < LONG:
        return None
    (x, y), (x_2, y_2) = corners[number], corners[number + 1]
    if y == y_2:
        heading = Heading.RIGHT if x_2 > x else Heading.LEFT
    else:
        heading = Heading.DOWN if y_2 > y else Heading.UP
    return ((x + x_2) * STEP // 2, (y + y_2) * STEP // 2), heading


def bars_of(place: Place) -> tuple[Bar, ...]:
    """Every header that stands across rows."""
    return tuple(
        Bar(net.headers[0], net.node, net.service, _units(start), _units(end))
        for net, (start, end) in place.bars.items()
        if net.headers
    )


def dots_of(place: Place, routes: Routes) -> tuple[Point, ...]:
    """Every point where three pieces of pipe or more meet."""
    found: dict[Point, None] = {}
    for net in place.circuit.nets:
        for point, meeting in _joints(place, routes, net).items():
            if meeting > 2:
                found[_units(point)] = None
    return tuple(sorted(found))


def _units(point: Point) -> Point:
    return point[0] * STEP, point[1] * STEP
