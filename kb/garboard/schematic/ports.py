"""Where pipes meet symbols: at fixed ports, and on the side of a vessel that faces what they lead to."""

from garboard.schematic.nets import OUTLET, End, Net, Piece
from garboard.schematic.place import Place
from garboard.schematic.sheet import Heading, Point
from garboard.schematic.towers import RELIEFS
from garboard.schematic.trunk import is_upright, port_of

__all__ = ["find_ports"]


def find_ports(place: Place) -> None:
    """Give every end of every net its point, and the way a pipe leaves it.

    Args:
        place: The sheet, everything else in place.
    """
    _Ports(place).find_ports()


class _Ports:
    """The ports of a sheet while they are found."""

    def __init__(self, place: Place) -> None:
        self.place = place
        self.net_of = {end: net for net in place.circuit.nets for end in net.ends}

    def find_ports(self) -> None:
        """Say where each end is: of a vessel, where it faces what it leads to."""
        place = self.place
        for piece in place.circuit.pieces:
            if is_upright(piece):
                self.bus_ports(piece)
            elif piece.shape.vessel:
                self.vessel_ports(piece)
            else:
                x, y = place.at[piece]
                for end in piece.ends:
                    dx, dy = _port(piece, end.port, place.headings[piece])
                    place.ports[end] = ((x + dx, y + dy), _way(dx, dy))

    def bus_ports(self, bus: Piece) -> None:
        """Each pipe of a bus ends at the height of what it leads to."""
        x, top, _, bottom = self.place.boxes[bus]
        used: set[tuple[int, Heading]] = set()
        for end in bus.ends:
            far = self.far_end(end)
            if far and self.place.at[far.piece][0] == x:
                over = self.place.at[far.piece][1] < top
                tip = (x, top) if over else (x, bottom)
                self.place.ports[end] = (tip, Heading.UP if over else Heading.DOWN)
                continue
            at = self.place.at[far.piece] if far and far.piece in self.place.at else (x + 1, top)
            if far and not far.piece.shape.vessel and not is_upright(far.piece):
                dx, dy = _port(far.piece, far.port, self.place.headings[far.piece])
                at = at[0] + dx, at[1] + dy
            way = Heading.RIGHT if at[0] > x else Heading.LEFT
            y = min(max(at[1], top), bottom)
            while (y, way) in used and y < bottom:
                y += 1
            used.add((y, way))
            self.place.ports[end] = ((x, y), way)

    def far_end(self, end: End) -> End | None:
        """Another end of the same net: of the trunk, where there is one."""
        net = self.net_of[end]
        others = [one for one in net.ends if one is not end and one.piece is not end.piece]
        trunk = [one for one in others if one in self.place.trunk.trunk_ends[net]]
        return next(iter(trunk or others), None)

    def vessel_ports(self, vessel: Piece) -> None:
        """Ports of a vessel on the side that faces what they lead to, no two at one point."""
        place = self.place
        left, top, right, bottom = place.boxes[vessel]
        x, y = place.at[vessel]
        used: set[Point] = set()
        for end in sorted(vessel.ends, key=lambda end: self.is_straight(vessel, end)):
            net = self.net_of[end]
            at = self.towards(end, net, vessel)
            tower = net in place.feet and len(place.trunk.trunk_ends[net]) == 1
            sideways = not tower and (at[0] > right or at[0] < left)
            if sideways:
                side = right if at[0] > x else left
                way = Heading.RIGHT if at[0] > x else Heading.LEFT
                wish = min(max(at[1], top + 1), bottom - 1)
                steps = sorted(range(top + 1, bottom), key=lambda one: (abs(one - wish), one))
                spots = [(side, one) for one in steps]
            else:
                side, way = (top, Heading.UP) if at[1] < y else (bottom, Heading.DOWN)
                wish = min(max(at[0], left + 1), right - 1)
                steps = sorted(range(left + 1, right), key=lambda one: (abs(one - wish), one))
                spots = [(one, side) for one in steps]
            spot = next((one for one in spots if one not in used), None)
            if spot is None:
                spot, way = self.any_spot(vessel, used)
            used.add(spot)
            place.ports[end] = (spot, way)

    def is_straight(self, vessel: Piece, end: End) -> bool:
        """Whether an end does not lie in a row: those that do are served first."""
        y = self.place.at[vessel][1]
        far = self.far_end(end)
        return not (far and far.piece in self.place.at and self.place.at[far.piece][1] == y)

    def towards(self, end: End, net: Net, vessel: Piece) -> Point:
        """The point that an end of a vessel faces."""
        if net in self.place.bars:
            (x, top), (_, bottom) = self.place.bars[net]
            return x, min(max(self.place.at[vessel][1], top), bottom)
        far = self.far_end(end)
        if far is None:
            return self.place.at[vessel][0], self.place.at[vessel][1] + 1
        return self.place.at[far.piece]

    def any_spot(self, vessel: Piece, used: set[Point]) -> tuple[Point, Heading]:
        """Any point of an outline that is not used yet."""
        left, top, right, bottom = self.place.boxes[vessel]
        for x in range(left, right + 1):
            for y, way in ((top, Heading.UP), (bottom, Heading.DOWN)):
                if (x, y) not in used:
                    return (x, y), way
        for y in range(top, bottom + 1):
            for x, way in ((left, Heading.LEFT), (right, Heading.RIGHT)):
                if (x, y) not in used:
                    return (x, y), way
        return (left, top), Heading.UP


def _port(piece: Piece, port: str, heading: Heading) -> Point:
    """A port from the middle of its piece."""
    if piece.shape.stands and piece.kind not in RELIEFS:
        beside = {
            Heading.UP: (0, 2),
            Heading.DOWN: (0, -2),
            Heading.LEFT: (2, 0),
            Heading.RIGHT: (-2, 0),
        }
        return beside[heading]
    if piece.kind == OUTLET:
        return port_of(piece, "", heading)
    return port_of(piece, port, heading)


def _way(dx: int, dy: int) -> Heading:
    """Which way a pipe leaves a port."""
    if abs(dx) >= abs(dy):
        return Heading.RIGHT if dx > 0 else Heading.LEFT
    return Heading.DOWN if dy > 0 else Heading.UP
