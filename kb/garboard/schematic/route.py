"""Pipes from end to end: bars first, then what runs straight, then short ways before long ones."""

from dataclasses import dataclass

from garboard.schematic.grid import WAYS, Grid, Window
from garboard.schematic.nets import End, Net
from garboard.schematic.place import Place
from garboard.schematic.sheet import Point
from garboard.schematic.trunk import is_upright

__all__ = ["Path", "Routes", "route"]

MARGIN = 6
"""Steps of free room round a sheet, for pipes that go round it."""
NEAR = 7
"""Steps round an end and its goal that are looked at first."""
AGAIN = 1
"""How often all pipes are laid anew, those that found no way first."""
EVERY_SIDE = 15


@dataclass(frozen=True, slots=True)
class Path:
    """A pipe from an end to the pipe of its net."""

    end: End
    points: tuple[Point, ...]
    """Every point of the grid on it."""


@dataclass(frozen=True, slots=True)
class Routes:
    """All pipes of a sheet."""

    paths: dict[Net, tuple[Path, ...]]
    crossings: tuple[Point, ...]
    missed: tuple[End, ...]
    """Ends that no way was found from."""


def route(place: Place) -> Routes:
    """Find a way for every pipe of a sheet.

    Args:
        place: Everything at its place.
    """
    first: tuple[End, ...] = ()
    found = _Routing(place).routes(first)
    for _ in range(AGAIN):
        if not found.missed:
            break
        first = (*found.missed, *(end for end in first if end not in found.missed))
        found = _Routing(place).routes(first)
    return found


class _Routing:
    """A sheet on its way to having pipes."""

    def __init__(self, place: Place) -> None:
        self.place = place
        self.grid = Grid(_window(place))
        self.paths: dict[Net, list[Path]] = {net: [] for net in place.circuit.nets}
        self.goals: dict[Net, dict[int, int]] = {net: {} for net in place.circuit.nets}
        self.number = _numbers(place)
        self.risers: dict[Net, dict[int, int]] = {net: {} for net in place.circuit.nets}
        """What is tapped only where there is no other way."""
        self.missed: list[End] = []
        for piece in place.circuit.pieces:
            self.grid.block(place.boxes[piece])
        for span in place.words:
            self.grid.make_dear(span)
        for point, way in place.ports.values():
            self.grid.keep_front_clear(point, way)

    def routes(self, first: tuple[End, ...]) -> Routes:
        """Every pipe, some ends before all others."""
        for net, (top, bottom) in self.place.bars.items():
            self.lay_bar(net, top, bottom)
        waiting: list[tuple[Net, End]] = []
        for net in self.place.circuit.nets:
            waiting += [(net, end) for end in self.begin(net)]
        feet = {end for ends in self.place.feet.values() for end in ends}
        waiting.sort(key=lambda pair: pair[1] in feet)
        waiting.sort(key=lambda pair: pair[1] not in first)
        for net, end in [pair for pair in waiting if pair[1] in first]:
            if not self.go_round(net, end, foot=end in feet):
                self.missed.append(end)
        waiting = [pair for pair in waiting if pair[1] not in first]
        bent = [pair for pair in waiting if not self.go_straight(*pair, foot=pair[1] in feet)]
        bent.sort(key=lambda pair: (pair[1] in feet, self.far(*pair)))
        for net, end in bent:
            foot = end in feet
            if not self.go_straight(net, end, foot=foot) and not self.go_round(net, end, foot=foot):
                self.goals[net] = self.risers[net] | self.goals[net]
                if not self.go_round(net, end, foot=foot):
                    self.missed.append(end)
        crossed = tuple(self.grid.point(cell) for cell in self.grid.crossings())
        paths = {net: tuple(found) for net, found in self.paths.items()}
        return Routes(paths, crossed, tuple(self.missed))

    def lay_bar(self, net: Net, start: Point, end: Point) -> None:
        """Lay a bar, which may be met anywhere."""
        (x, y), (x_2, y_2) = start, end
        points = [(x, one) for one in range(y, y_2 + 1)] if x == x_2 else []
        points = points or [(one, y) for one in range(x, x_2 + 1)]
        cells = [self.grid.cell(point) for point in points]
        if len(cells) > 1:
            self.grid.lay(self.number[net], cells)
        for cell in cells:
            self.goals[net][cell] = EVERY_SIDE

    def begin(self, net: Net) -> list[End]:
        """The ends of a net that need a way; the first end of the trunk is what they go to."""
        feet = self.place.feet.get(net, [])
        trunk = [end for end in net.ends if end not in feet]
        if net not in self.place.bars and len(net.ends) > 1:
            first = (trunk or feet)[0]
            point, way = self.place.ports[first]
            self.goals[net][self.grid.cell(point)] = 1 << WAYS.index(way)
            return [end for end in (*trunk, *feet) if end is not first]
        return [*trunk, *feet] if net in self.place.bars else []

    def far(self, net: Net, end: End) -> int:
        """How far an end is from what it goes to."""
        x, y = self.place.ports[end][0]
        points = [self.grid.point(cell) for cell in self.goals[net]]
        return min(abs(x - other[0]) + abs(y - other[1]) for other in points)

    def go_straight(self, net: Net, end: End, *, foot: bool) -> bool:
        """Lay a pipe straight ahead, if nothing stands in its way."""
        point, way = self.place.ports[end]
        cell = self.grid.cell(point)
        cells = self.grid.straight(self.number[net], cell, way, self.goals[net])
        if cells:
            self.lay(net, end, cells, foot=foot)
        return bool(cells)

    def go_round(self, net: Net, end: End, *, foot: bool) -> bool:
        """Lay a pipe on the cheapest way, near by first."""
        point, way = self.place.ports[end]
        goals = [self.grid.point(cell) for cell in self.goals[net]]
        near = min(
            goals, key=lambda goal: (abs(goal[0] - point[0]) + abs(goal[1] - point[1]), goal)
        )
        grid = self.grid
        whole = (grid.left, grid.top, grid.left + grid.wide - 1, grid.top + grid.high - 1)
        window = (
            max(min(point[0], near[0]) - NEAR, whole[0]),
            max(min(point[1], near[1]) - NEAR, whole[1]),
            min(max(point[0], near[0]) + NEAR, whole[2]),
            min(max(point[1], near[1]) + NEAR, whole[3]),
        )
        start = grid.cell(point)
        for look in (window, whole):
            cells = grid.search(self.number[net], start, way, self.goals[net], look)
            if cells:
                self.lay(net, end, cells, foot=foot)
                return True
        return False

    def lay(self, net: Net, end: End, cells: list[int], *, foot: bool) -> None:
        """Lay a pipe; what stands on it or leads nowhere is not tapped itself."""
        self.grid.lay(self.number[net], cells)
        self.paths[net].append(Path(end, tuple(self.grid.point(cell) for cell in cells)))
        alone = len(self.place.trunk.trunk_ends[net]) < 2 and len(self.paths[net]) == 1
        tapped = self.goals[net] if not foot or alone else self.risers[net]
        for cell in cells[1:]:
            tapped.setdefault(cell, EVERY_SIDE)
        tapped.setdefault(cells[0], 1 << WAYS.index(self.place.ports[end][1]))


def _numbers(place: Place) -> dict[Net, int]:
    """A number for each net; the pipes on both sides of a bus have one, as they meet at one point."""
    number = {net: count for count, net in enumerate(place.circuit.nets, 1)}
    net_of = {end: net for net in place.circuit.nets for end in net.ends}
    for piece in place.circuit.pieces:
        nets = [net_of[end] for end in piece.ends] if is_upright(piece) else []
        same = {number[net] for net in nets}
        number = {net: min(same) if one in same else one for net, one in number.items()}
    return number


def _window(place: Place) -> Window:
    """The sheet with room round it."""
    spans = list(place.boxes.values())
    points = [point for ends in place.bars.values() for point in ends]
    left = min([span[0] for span in spans] + [point[0] for point in points])
    top = min([span[1] for span in spans] + [point[1] for point in points])
    right = max([span[2] for span in spans] + [point[0] for point in points])
    bottom = max([span[3] for span in spans] + [point[1] for point in points])
    return left - MARGIN, top - MARGIN, right + MARGIN, bottom + MARGIN
