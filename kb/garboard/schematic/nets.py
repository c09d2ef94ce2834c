"""What a drawing has to join: symbols and open ends as pieces, stretches of pipe as nets.

A net is what one connected stretch of drawn pipe joins. It is a node of the plant, or a part of one:
each pipe of a bus or of a compartment is drawn by itself, though all of them are one node.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from garboard.records.component import Component
from garboard.records.system import Joins
from garboard.schematic.shapes import SHAPES, Shape
from garboard.systems.plant import Joint, Pipe, Plant

__all__ = ["OFF_SHEET", "OUTLET", "Circuit", "End", "Net", "Piece", "circuit_of", "sheet_circuit"]

OUTLET = "outlet"
OFF_SHEET = "off-sheet end"
EACH_PIPE_BY_ITSELF = ("bus", "compartment")
END = Shape(1, 1, {"": (-1, 0)})
"""The room of an open end and of a named end."""


@dataclass(slots=True, eq=False)
class Piece:
    """What stands on a drawing at a place of its own."""

    name: str
    """Full tag of a part; name of an outside place or of a named end."""
    kind: str
    shape: Shape
    ends: list["End"] = field(default_factory=list)
    part: bool = True
    pin: tuple[float, float] | None = None
    """Column and row, where its author gave them."""
    sheet: int = 0
    """Of a named end: where it goes on."""


@dataclass(slots=True, eq=False)
class End:
    """Where a net ends at a piece."""

    piece: Piece
    port: str
    leaves: bool
    """The flow leaves the piece here."""
    service: str


@dataclass(slots=True, eq=False)
class Net:
    """What one connected stretch of pipe joins."""

    node: int
    service: str
    ends: list[End]
    headers: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Circuit:
    """Everything that is drawn of a system, or on one sheet of it."""

    pieces: tuple[Piece, ...]
    nets: tuple[Net, ...]


Key = tuple[Joint, int]


def _key(joint: Joint, number: int, alone: Iterable[str]) -> Key:
    return (joint, number if joint.joins is Joins.PART and joint.name in alone else -1)


def circuit_of(plant: Plant, components: Mapping[str, Component]) -> Circuit:
    """All pieces and nets of a system.

    Args:
        plant: The system.
        components: What is recorded of its parts, by full tag.
    """
    alone = {part.tag for part in plant.parts if part.kind in EACH_PIPE_BY_ITSELF}
    parent: dict[Key, Key] = {}

    def root(key: Key) -> Key:
        parent.setdefault(key, key)
        while parent[key] != key:
            parent[key] = parent[parent[key]]
            key = parent[key]
        return key

    first: dict[Key, tuple[Pipe, bool]] = {}
    for number, pipe in enumerate(plant.pipes):
        a, b = _key(pipe.a, number, alone), _key(pipe.b, number, alone)
        parent[root(b)] = root(a)
        first.setdefault(a, (pipe, True))
        first.setdefault(b, (pipe, False))
    pieces = {
        part.tag: Piece(part.tag, part.kind, SHAPES[part.kind], pin=components[part.tag].at)
        for part in plant.parts
    }
    nets: dict[Key, Net] = {}
    outside: list[Piece] = []
    for key, (pipe, leaves) in first.items():
        net = nets.setdefault(root(key), Net(pipe.node, plant.services[pipe.node], []))
        joint = key[0]
        if joint.joins is Joins.HEADER:
            net.headers = (*net.headers, joint.name)
            continue
        piece = pieces.get(joint.name) if joint.joins is Joins.PART else None
        if piece is None:
            piece = Piece(joint.name, OUTLET, END, part=False)
            outside.append(piece)
        end = End(piece, joint.port if piece.part else "", leaves, pipe.service or net.service)
        piece.ends.append(end)
        net.ends.append(end)
    for piece in pieces.values():
        if components[piece.name].system != plant.system.code and len(piece.ends) < 2:
            _goes_on(piece)
    joined = [piece for piece in (*pieces.values(), *outside) if piece.ends]
    return Circuit(tuple(joined), tuple(nets.values()))


def _goes_on(piece: Piece) -> None:
    """Make of a part of another system the named end that leads there."""
    piece.kind, piece.shape, piece.part = OFF_SHEET, END, False
    for end in piece.ends:
        end.port = ""


def sheet_circuit(circuit: Circuit, sheets: Mapping[Piece, int], number: int) -> Circuit:
    """What stands on one sheet: its own pieces, and a named end for each net that goes on elsewhere.

    Args:
        circuit: The whole system.
        sheets: Number of the sheet of each piece.
        number: Which sheet.
    """
    pieces = [piece for piece in circuit.pieces if sheets[piece] == number]
    nets: list[Net] = []
    for net in circuit.nets:
        here = [end for end in net.ends if sheets[end.piece] == number]
        if not here:
            continue
        numbers = list(dict.fromkeys(sheets[end.piece] for end in net.ends))
        others = numbers[1:] if number == numbers[0] else numbers[:1]
        part = Net(net.node, net.service, list(here), net.headers)
        for other in others:
            leaves = _flows_from(net, sheets, other, number)
            named = Piece(_name_of(net), OFF_SHEET, END, part=False, sheet=other)
            end = End(named, "", leaves, net.service or here[0].service)
            named.ends.append(end)
            part.ends.append(end)
            pieces.append(named)
        nets.append(part)
    return Circuit(tuple(pieces), tuple(nets))


def _flows_from(net: Net, sheets: Mapping[Piece, int], there: int, here: int) -> bool:
    """Whether the flow of a net comes from another sheet."""

    def out_of(number: int) -> int:
        return sum(end.leaves for end in net.ends if sheets[end.piece] == number)

    return out_of(here) == 0 or (out_of(there) > 0 and there < here)


def _name_of(net: Net) -> str:
    """The name of a net that goes on elsewhere: its header, else the part that it leads to."""
    if net.headers:
        return net.headers[0]
    leads_to = [end for end in net.ends if not end.leaves and end.piece.part]
    return (leads_to or net.ends)[0].piece.name
