"""Parts that no lockable valve parts from a live store."""

from collections.abc import Iterator

from garboard.systems.checks.supply import STORES
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.plant import Part
from garboard.systems.search import two_nearest
from garboard.systems.telling import listed

__all__ = ["find_cannot_isolate"]

NOT_WORKED_ON = ("relief valve", "bursting disc", "tee", "compartment", "sea", "bus")
"""A relief valve must have no valve before it; the others are part of the pipe, or of the sea."""


def find_cannot_isolate(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Name, for each store, the parts that cannot be worked on while it is live."""
    plant, net = enquiry.plant, enquiry.unlocked
    stores = {part.tag: part.nodes[0] for part in plant.of_kind(*STORES)}
    if not stores:
        return
    nearest = two_nearest(net, stores, lambda n, _: 1 if net.parts[n].lockable else 0)
    bare: dict[str, list[Part]] = {}
    for part in plant.parts:
        if part.movable or part.kind in NOT_WORKED_ON:
            continue
        live = {tag for node in part.nodes for count, tag in nearest[node] if count == 0}
        for tag in sorted(live - {part.tag}):
            bare.setdefault(tag, []).append(part)
    for tag in sorted(bare, key=plant.numbers.__getitem__):
        parts = tuple(part.tag for part in bare[tag])
        yield PathFinding(
            code="cannot-isolate",
            level=Level.ASIDE,
            of=about(plant, tag),
            text=f"no valve that can be locked stands between {tag} and {listed(parts)}",
            help=f"empty {tag} before work on any of them, or fit a valve",
            endangers=parts,
            nodes=plant.parts[plant.numbers[tag]].nodes,
        )
