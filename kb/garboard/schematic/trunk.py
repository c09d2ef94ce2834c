"""The trunk of a drawing: what runs from left to right, the bars it branches at, and its strands.

A strand is a straight row of parts, each joined to the next. Strands meet at bars (headers, buses,
junctions of three pipes or more) and at vessels with more than one pipe on a side.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field

from garboard.schematic.nets import Circuit, End, Net, Piece
from garboard.schematic.sheet import Heading, Point
from garboard.schematic.towers import Tower, find_towers

__all__ = [
    "Arc",
    "Strand",
    "Trunk",
    "Vertex",
    "as_piece",
    "is_upright",
    "port_of",
    "trunk_of",
    "turned",
]

Vertex = Piece | Net
"""What has a place from left to right: a piece, or a net that is a bar."""
TURNS = {Heading.RIGHT: 0, Heading.DOWN: 1, Heading.LEFT: 2, Heading.UP: 3}


@dataclass(frozen=True, slots=True, eq=False)
class Arc:
    """One vertex stands to the left of another."""

    left: Vertex
    right: Vertex
    net: Net
    left_end: End | None
    """None: a bar."""
    right_end: End | None


@dataclass(slots=True, eq=False)
class Strand:
    """A straight row of pieces."""

    pieces: list[Piece]
    before: Arc | None = None
    """What it starts at, where that is not its own."""
    after: list[Arc] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Trunk:
    """The trunk of one sheet."""

    towers: tuple[Tower, ...]
    vertices: tuple[Vertex, ...]
    """In the order of the file."""
    arcs: tuple[Arc, ...]
    """Forwards only."""
    strands: tuple[Strand, ...]
    headings: dict[Piece, Heading]
    trunk_ends: dict[Net, list[End]]


def is_upright(vertex: Vertex) -> bool:
    """Whether a vertex is drawn as a standing bar."""
    return isinstance(vertex, Net) or vertex.kind == "bus"


def as_piece(vertex: Vertex) -> Piece:
    """A vertex that is known to be a piece.

    Raises:
        TypeError: It is a net.
    """
    if isinstance(vertex, Net):
        raise TypeError(vertex)
    return vertex


def turned(point: Point, heading: Heading) -> Point:
    """A point of a symbol that heads to the right, when it is turned.

    >>> turned((2, 0), Heading.DOWN)
    (0, 2)
    """
    x, y = point
    for _ in range(TURNS[heading]):
        x, y = -y, x
    return x, y


def port_of(piece: Piece, port: str, heading: Heading) -> Point:
    """Where a port of a turned symbol is, from its middle.

    Raises:
        KeyError: It has no such port of its own: a vessel.
    """
    return turned(piece.shape.ports[port], heading)


def trunk_of(circuit: Circuit) -> Trunk:
    """The trunk of what stands on one sheet."""
    towers = find_towers(circuit)
    hosts: dict[Piece, Net] = {piece: one.net for one in towers for piece in one.pieces}
    ends = {net: [end for end in net.ends if end.piece not in hosts] for net in circuit.nets}
    pieces = [piece for piece in circuit.pieces if piece not in hosts]
    bars = [net for net in circuit.nets if len(ends[net]) > 2]
    arcs = list(_arcs(circuit, ends, hosts, {end: n for n, end in enumerate(_all_ends(circuit))}))
    vertices: list[Vertex] = [*pieces, *bars]
    forwards = _without_rings(vertices, arcs)
    headings = {piece: _heading(piece, forwards) for piece in pieces}
    strands = _strands(pieces, forwards, headings)
    return Trunk(towers, tuple(vertices), tuple(forwards), tuple(strands), headings, ends)


def _all_ends(circuit: Circuit) -> Iterator[End]:
    for net in circuit.nets:
        yield from net.ends


def _arcs(
    circuit: Circuit, ends: dict[Net, list[End]], hosts: dict[Piece, Net], order: dict[End, int]
) -> Iterator[Arc]:
    """What stands to the left of what."""
    for net in circuit.nets:
        own = ends[net]
        if len(own) > 2:
            for end in own:
                if end.leaves:
                    yield Arc(end.piece, net, net, end, None)
                else:
                    yield Arc(net, end.piece, net, None, end)
        elif len(own) == 2:
            one, other = sorted(own, key=lambda end: (not end.leaves, order[end]))
            if one.piece is not other.piece:
                yield Arc(one.piece, other.piece, net, one, other)
        visits = [end for end in net.ends if end.piece in hosts and hosts[end.piece] is not net]
        for visit in visits if own else ():
            stood = [end for end in ends[hosts[visit.piece]] if end.piece is not own[0].piece]
            if stood:
                yield Arc(stood[0].piece, own[0].piece, net, None, None)


def _without_rings(vertices: list[Vertex], arcs: list[Arc]) -> list[Arc]:
    """The arcs less those that run back to where the flow came from, in the order of the file."""
    leaving: dict[Vertex, list[Arc]] = {vertex: [] for vertex in vertices}
    entered: dict[Vertex, int] = dict.fromkeys(vertices, 0)
    for arc in arcs:
        leaving[arc.left].append(arc)
        entered[arc.right] += 1
    back: set[Arc] = set()
    state: dict[Vertex, int] = {}
    for start in sorted(vertices, key=lambda vertex: entered[vertex] > 0):
        if start in state:
            continue
        state[start] = 1
        walk = [(start, iter(leaving[start]))]
        while walk:
            vertex, rest = walk[-1]
            following = next(rest, None)
            if following is None:
                state[vertex] = 2
                walk.pop()
            elif state.get(following.right) == 1:
                back.add(following)
            elif following.right not in state:
                state[following.right] = 1
                walk.append((following.right, iter(leaving[following.right])))
    return [arc for arc in arcs if arc not in back]


def _heading(piece: Piece, arcs: list[Arc]) -> Heading:
    """Which way a piece is turned: so that what comes from the left meets it on its left."""
    ports = piece.shape.ports
    sideways = {name: at[0] for name, at in ports.items() if at[1] == 0}
    score = 0
    for arc in arcs:
        if arc.left_end and arc.left_end.piece is piece:
            score += _sign(sideways.get(arc.left_end.port, 0))
        if arc.right_end and arc.right_end.piece is piece:
            score -= _sign(sideways.get(arc.right_end.port, 0))
    return Heading.LEFT if score < 0 else Heading.RIGHT


def _sign(number: int) -> int:
    return (number > 0) - (number < 0)


def _strands(
    pieces: list[Piece], arcs: list[Arc], headings: dict[Piece, Heading]
) -> Iterator[Strand]:
    """The straight rows, in the order of the file."""
    right: dict[Piece, Arc] = {}
    left: dict[Piece, Arc] = {}
    for arc in sorted(arcs, key=_preference):
        goes_out = _is_free(arc.left, arc.left_end, right, headings, 1)
        comes_in = _is_free(arc.right, arc.right_end, left, headings, -1)
        to_a_bar = is_upright(arc.left) or is_upright(arc.right)
        if goes_out and (comes_in or to_a_bar):
            right[as_piece(arc.left)] = arc
        if comes_in and (goes_out or to_a_bar):
            left[as_piece(arc.right)] = arc
    entering: dict[Piece, Arc] = {}
    for arc in arcs:
        if isinstance(arc.right, Piece):
            entering.setdefault(arc.right, arc)
    for piece in pieces:
        if is_upright(piece) or (piece in left and not is_upright(left[piece].left)):
            continue
        row = [piece]
        while row[-1] in right and not is_upright(right[row[-1]].right):
            row.append(as_piece(right[row[-1]].right))
        after = [right[row[-1]]] if row[-1] in right else []
        yield Strand(row, left.get(piece) or entering.get(piece), after)


def _is_free(
    vertex: Vertex,
    end: End | None,
    taken: dict[Piece, Arc],
    headings: dict[Piece, Heading],
    side: int,
) -> bool:
    """Whether a row can go on straight from a piece on one of its sides."""
    if isinstance(vertex, Net) or is_upright(vertex) or vertex in taken:
        return False
    return _faces(vertex, end, headings, side)


def _preference(arc: Arc) -> int:
    """Ports called in and out are on the straight way through a vessel."""
    ends = (arc.left_end, arc.right_end)
    return sum(1 for end in ends if end and end.port not in ("in", "out", "common", "a", ""))


def _faces(piece: Piece, end: End | None, headings: dict[Piece, Heading], side: int) -> bool:
    """Whether a pipe can leave a piece straight to the right, or to the left."""
    if end is None:
        return False
    if piece.shape.vessel:
        return True
    x, y = port_of(piece, end.port, headings[piece])
    return y == 0 and _sign(x) == side
