"""What stands on a pipe and leads nowhere else: relief valves, instruments, drains, one above the other."""

from dataclasses import dataclass

from garboard.schematic.nets import OUTLET, Circuit, End, Net, Piece

__all__ = ["INSTRUMENTS", "RELIEFS", "Tower", "find_towers"]

RELIEFS = ("relief valve", "bursting disc")
INSTRUMENTS = ("gauge", "pressure switch", "level switch", "transmitter", "voltmeter", "ammeter")
ALWAYS = ("drain valve", "vent valve", "test cock", "plug", "cock", "coupling")
"""Stand on their pipe wherever nothing goes on after them."""
BETWEEN = ("stop valve", "solenoid valve", "quick-closing valve", "restrictor", "check valve")
"""Stand on a pipe that goes on past them."""
MOST = 3
"""Parts in a tower."""
UPWARDS = ("atmosphere",)


@dataclass(frozen=True, slots=True, eq=False)
class Tower:
    """Parts and an open end, from their pipe outwards."""

    net: Net
    """What they stand on."""
    foot: End
    pieces: tuple[Piece, ...]
    above: bool


def find_towers(circuit: Circuit) -> tuple[Tower, ...]:
    """Everything that stands on a pipe or vessel of others."""
    net_of = {end: net for net in circuit.nets for end in net.ends}
    found: list[Tower] = []
    for net in circuit.nets:
        for end in net.ends:
            pieces = _chain(end, net_of)
            if pieces and sum(piece.part for piece in pieces) <= MOST:
                found.append(Tower(net, end, tuple(pieces), _is_above(pieces)))
    dead = {tower.foot for tower in found}
    accepted: list[Tower] = []
    inside: set[Piece] = set()
    for tower in sorted(found, key=lambda tower: -len(tower.pieces)):
        others = [end for end in tower.net.ends if end is not tower.foot]
        going_on = sum(1 for end in others if end not in dead)
        if tower.pieces[0].kind in BETWEEN and going_on < 2:
            continue
        taken = inside.union(tower.pieces)
        hosts = (*accepted, tower)
        if inside.isdisjoint(tower.pieces) and all(_stands(host, taken) for host in hosts):
            accepted.append(tower)
            inside = taken
    order = {tower.foot: number for number, tower in enumerate(found)}
    return tuple(sorted(accepted, key=lambda tower: order[tower.foot]))


def _stands(tower: Tower, inside: set[Piece]) -> bool:
    """Whether something is left for a tower to stand on."""
    return any(end.piece not in inside for end in tower.net.ends)


def _chain(end: End, net_of: dict[End, Net]) -> list[Piece]:
    """The parts from an end of a pipe to a dead end; empty where it goes on to something else."""
    piece = end.piece
    if piece.kind in INSTRUMENTS:
        return [piece] if len(piece.ends) == 1 else []
    if piece.kind in RELIEFS:
        return [piece, *_outlet(piece, net_of)] if end.port == "in" else []
    if piece.kind not in (*ALWAYS, *BETWEEN):
        return []
    others = [other for other in piece.ends if other is not end]
    beyond = [far for one in others for far in net_of[one].ends if far is not one]
    if not beyond:
        return [piece] if others or piece.kind in ALWAYS else []
    if len(others) > 1 or len(beyond) > 1:
        return []
    tail = [beyond[0].piece] if beyond[0].piece.kind == OUTLET else _chain(beyond[0], net_of)
    return [piece, *tail] if tail else []


def _outlet(relief: Piece, net_of: dict[End, Net]) -> list[Piece]:
    """The open end that a relief valve is piped to, if that is all it is piped to."""
    for end in relief.ends:
        beyond = [far.piece for far in net_of[end].ends if far is not end]
        if end.port == "out" and len(beyond) == 1 and beyond[0].kind == OUTLET:
            return beyond
    return []


def _is_above(pieces: list[Piece]) -> bool:
    """Relief valves, instruments and what leads to the atmosphere stand up; the rest hangs down."""
    last = pieces[-1]
    if any(piece.kind in (*RELIEFS, *INSTRUMENTS) for piece in pieces):
        return True
    return last.name in UPWARDS or (last.part and last.kind == "vent valve")
