"""What can hurt somebody at work beside it: pressure that is made or kept, a head of liquid, a voltage.

A compressor is stopped, a receiver is emptied; the sea, a bilge and a battery can be neither, so a valve
or a switch that can be locked must stand between them and the work.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from garboard.systems.medium import Medium, medium_of
from garboard.systems.plant import Part, Plant

__all__ = ["ELSEWHERE", "Ends", "Store", "stores_of"]


class Ends(StrEnum):
    """How a store is made harmless where it cannot be shut off."""

    STOPPED = "stopped"
    """A machine: it is stopped, and locked so that nobody starts it."""
    EMPTIED = "emptied"
    """A vessel: it is let out with the rest."""
    NEVER = "never"
    """Nothing aboard empties it."""


KINDS = {
    **dict.fromkeys(("compressor", "pump", "alternator", "charger"), Ends.STOPPED),
    **dict.fromkeys(("receiver", "separator", "filter", "cooler", "tank"), Ends.EMPTIED),
    **dict.fromkeys(("pressure source", "battery", "sea", "compartment"), Ends.NEVER),
}
OF_LIQUID = ("sea", "compartment")
"""A store where a liquid runs; a gas finds open air there."""


ELSEWHERE = "another system"
NOTHING_BEYOND = ("gauge", "pressure switch", "level switch", "transmitter", "voltmeter", "ammeter")


@dataclass(frozen=True, slots=True)
class Store:
    """One of them."""

    tag: str
    kind: str
    """`another system` where it belongs to one: what feeds it there is not seen here."""
    nodes: tuple[int, ...]
    """Where it can be met; of a machine its inlet too."""
    ends: Ends


def stores_of(plant: Plant) -> tuple[Store, ...]:
    """Every store of a plant, in the order of the file."""
    return tuple(_stores(plant))


def _stores(plant: Plant) -> Iterator[Store]:
    for part in plant.parts:
        if plant.components[part.tag].system != plant.system.code:
            if nodes := _unseen(plant, part):
                yield Store(part.tag, ELSEWHERE, nodes, Ends.NEVER)
            continue
        ends = KINDS.get(part.kind)
        open_tank = part.kind == "tank" and plant.components[part.tag].rated is None
        needs_liquid = part.kind in OF_LIQUID or open_tank
        if ends is not None and (_is_liquid(plant, part) or not needs_liquid):
            yield Store(part.tag, part.kind, part.nodes, ends)


def _unseen(plant: Plant, part: Part) -> tuple[int, ...]:
    """Where a part of another system may be fed from over there; a gauge or switch feeds nothing."""
    if part.kind in NOTHING_BEYOND:
        return ()
    piped = {pipe.node for pipe in plant.pipes}
    return tuple(node for node in part.nodes if not part.lockable or node not in piped)


def _is_liquid(plant: Plant, part: Part) -> bool:
    services = [plant.services[node] for node in part.nodes]
    return any(medium_of(plant.system, one) is Medium.LIQUID for one in services)
