"""Which service each node is drawn as: as written, else as what it leads to, else as what it is joined with.

Only how a pipe is drawn hangs on this. No check asks it.
"""

from collections import deque
from collections.abc import Sequence

from garboard.records.system import Joins
from garboard.systems.plant import Plant

__all__ = ["DRAIN", "SENSING", "services_of"]

SENSING, DRAIN = "sensing", "drain"
LOOKS_ON = ("gauge", "pressure switch", "level switch", "transmitter", "voltmeter", "ammeter")
LETS_OUT = ("drain valve", "vent valve", "test cock", "plug")
PARTS_SERVICES = (*LETS_OUT, "regulator", "compressor", "relief valve", "bursting disc")
"""What runs on the other side of these is another service."""


def services_of(plant: Plant) -> tuple[str, ...]:
    """The service of every node; empty where nothing tells."""
    found = [written or _by_ends(plant, node) for node, written in enumerate(plant.services)]
    rows: list[list[int]] = [[] for _ in range(plant.count)]
    for part in plant.parts:
        if part.kind not in PARTS_SERVICES:
            for node in part.nodes:
                rows[node] += [other for other in part.nodes if other != node]
    _spread(plant, found, rows)
    return tuple(found)


def _by_ends(plant: Plant, node: int) -> str:
    """Sensing where all but one end look on; a drain where it ends in the open after what lets out."""
    joints = plant.joints[node]
    named = (one.name for one in joints if one.joins is Joins.PART)
    kinds = [plant.components[tag].kind for tag in named if tag in plant.components]
    if any(one.joins is Joins.OUTSIDE for one in joints):
        return DRAIN if any(kind in LETS_OUT for kind in kinds) else ""
    looking = [kind for kind in kinds if kind in LOOKS_ON]
    return SENSING if looking and len(joints) - len(looking) == 1 else ""


def _spread(plant: Plant, found: list[str], rows: Sequence[Sequence[int]]) -> None:
    """Carry each written service on to the nearest nodes that have none."""
    todo = deque(node for node in range(plant.count) if plant.services[node])
    while todo:
        node = todo.popleft()
        for other in rows[node]:
            if not found[other] and found[node] not in (SENSING, DRAIN):
                found[other] = found[node]
                todo.append(other)
