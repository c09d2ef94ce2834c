"""What stands between a vessel and what must always see it: the strict view of the list of connections.

Anything that can close counts: stop valves, check valves, couplings, reducing valves. Of all ways
the one that holds the fewest is taken; on it a locked valve or a three-way valve counts for less than any
other, because a named person may judge it. The checks of the layout grade finer.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from enum import StrEnum
from heapq import heappop, heappush

from garboard.systems.enquiry import VESSELS
from garboard.systems.net import Net, Through, net_of
from garboard.systems.plant import Part, Plant
from garboard.systems.search import Way, way_to

__all__ = ["Between", "Strictly", "find_between"]

SEES = ("relief valve", "bursting disc", "pressure switch", "transmitter", "level switch", "gauge")
MACHINES = ("compressor", "pump")
"""Nothing is seen through them."""
MOST = 4
"""Vessels told of one sensor that names none: those that stand equally near."""


class Strictly(StrEnum):
    """What the strict view says of one sensor and one vessel."""

    PASSES = "passes"
    REVIEWER = "a named reviewer decides"
    FAILS = "does not pass"
    APART = "nothing joins them"


@dataclass(frozen=True, slots=True)
class Between:
    """One sensor or relief valve, and one vessel."""

    sensor: str
    vessel: str
    parts: tuple[str, ...]
    """What can close on the way that holds the fewest, from the vessel on; full tags."""
    alone: tuple[str, ...]
    """Those of which each alone cuts it off, whatever way is taken."""
    strictly: Strictly


def find_between(plant: Plant) -> Iterator[Between]:
    """Every sensor and relief valve of a plant against the vessels it names, else against the nearest."""
    net = net_of(plant, locks=False)
    closed = (part for part in plant.of_kind(*VESSELS) if _node(part) not in plant.open_air)
    vessels = {_node(part): part for part in reversed(tuple(closed))}
    for part in plant.of_kind(*SEES):
        component = plant.components[part.tag]
        named = [plant.part(str(tag)) for tag in (*component.watches, *component.protects)]
        wanted = [one for one in named if one is not None]
        nodes = {_node(one) for one in wanted} or vessels.keys()
        found = _ways(net, _node(part), nodes, every=bool(wanted))
        for vessel in wanted or [vessels[node] for node in sorted(found)]:
            yield _between(net, part, vessel, found.get(_node(vessel)))


def _between(net: Net, sensor: Part, vessel: Part, way: Way | None) -> Between:
    if way is None:
        return Between(sensor.tag, vessel.tag, (), (), Strictly.APART)
    numbers = list(dict.fromkeys(n for _, _, n in reversed(way) if _weight(net, n)))
    start, end = _node(sensor), _node(vessel)
    alone = [n for n in numbers if not _ways(net, start, {end}, every=True, without=n)]
    weights = {_weight(net, number) for number in numbers}
    strictly = Strictly.FAILS if _plain(net) in weights else Strictly.REVIEWER
    tags = tuple(net.parts[number].tag for number in numbers)
    return Between(
        sensor.tag,
        vessel.tag,
        tags,
        tuple(net.parts[number].tag for number in alone),
        strictly if tags else Strictly.PASSES,
    )


def _node(part: Part) -> int:
    """Where a part is looked at: a machine at its outlet, a relief valve at its inlet."""
    return part.ports["out"] if part.kind in MACHINES else part.ports.get("in", part.nodes[0])


def _plain(net: Net) -> int:
    """What a part that just closes weighs: more than all that a person may judge."""
    return len(net.parts) + 1


def _weight(net: Net, number: int) -> int:
    """0: it never closes; 1: locked or three-way; else as much as anything that closes."""
    part = net.parts[number]
    if part.coupled or (part.movable and part.locked is not None):
        return 1
    return _plain(net) if part.movable or part.one_way or not part.carries_relief else 0


def _ways(
    net: Net, start: int, targets: Collection[int], *, every: bool, without: int | None = None
) -> dict[int, Way]:
    """The ways with the least on them from a place to others, whichever way a part lets through.

    Args:
        net: The net, every valve free.
        start: Where the sensor stands.
        targets: Where the vessels stand.
        every: All of the targets are wanted; else the nearest, and as many as are equally near.
        without: Number of a part that is taken away.
    """
    came: dict[int, Through | None] = {}
    heap: list[tuple[int, int, Through | None]] = [(0, start, None)]
    found: dict[int, int] = {}
    passes = [part.kind not in MACHINES for part in net.parts]
    while heap and len(found) < (len(targets) if every else MOST):
        weight, node, step = heappop(heap)
        if not every and found and weight > min(found.values()):
            break
        if node in came:
            continue
        came[node] = step
        if node in targets:
            found[node] = weight
        for rows in (net.any_position(), net.any_position(back=True)):
            for other, number in rows[node]:
                if other not in came and number != without and passes[number]:
                    through = node, other, number
                    heappush(heap, (weight + _weight(net, number), other, through))
    return {node: way_to(came, node) for node in found}
