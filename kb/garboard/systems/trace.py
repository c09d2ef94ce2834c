"""The digest of how a system is joined: what two people with a torch could find to be otherwise.

It is taken over which ends stand at one pipe, the ports they stand at, the kind of every part and the
positions of three-way valves. Names, places, sizes, services, notes and the order and cutting of the
runs do not count: a line that was traced stays traced when its words are bettered.
"""

import hashlib
from collections.abc import Iterator

from garboard.records.system import Joins
from garboard.systems.plant import Joint, Plant

__all__ = ["connections_digest"]

SHORT = 16


def connections_digest(plant: Plant) -> str:
    """Sixteen hexadecimal signs over the connections of a system; empty where it has none."""
    if not plant.pipes:
        return ""
    lines = sorted((*_parts(plant), *_nodes(plant)))
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()[:SHORT]


def _parts(plant: Plant) -> Iterator[str]:
    for part in plant.parts:
        turned = plant.components[part.tag].positions or {}
        positions = sorted(
            f"{name}={'+'.join(sorted(str(pair) for pair in pairs))}"
            for name, pairs in turned.items()
        )
        yield " ".join(("part", part.tag, part.kind, *positions))


def _nodes(plant: Plant) -> Iterator[str]:
    """Each pipe with all that stands at it; an end that nothing is joined to is none."""
    for joints in plant.joints:
        if len(joints) > 1:
            yield f"joined {', '.join(sorted(_end(plant, joint) for joint in joints))}"


def _end(plant: Plant, joint: Joint) -> str:
    if joint.joins is Joins.PART and joint.name in plant.numbers:
        return f"{joint.name}.{joint.port}"
    if joint.joins is Joins.HEADER:
        header = (plant.system.headers or {}).get(joint.name)
        return f"header {(header.tag if header else None) or joint.name}"
    return f"{joint.joins} {joint.name}"  # its port is the number of its run, which may change
