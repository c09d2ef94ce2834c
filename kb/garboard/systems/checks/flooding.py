"""Water that can run from the sea, or from one compartment, into another compartment."""

from collections.abc import Iterator

from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import line_up, nodes_of
from garboard.systems.medium import Medium
from garboard.systems.net import Net
from garboard.systems.plant import Part
from garboard.systems.search import Way, fewest_barriers, two_nearest, way_to
from garboard.systems.telling import listed

__all__ = ["find_back_flooding"]

ENOUGH = 2
"""Self-acting barriers on every way."""


def find_back_flooding(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Count the fewest self-acting barriers on the way into each compartment, every valve free."""
    plant, net = enquiry.plant, enquiry.unlocked
    dry = plant.of_kind("compartment")
    if not dry or plant.medium is not Medium.LIQUID:
        return
    seas = {part.nodes[0]: part.tag for part in plant.of_kind("sea")}
    cost = _Cost(net)
    from_sea = fewest_barriers(net, seas, cost)
    between = two_nearest(net, {part.tag: part.nodes[0] for part in dry}, cost)
    for part in dry:
        node = part.nodes[0]
        sea = from_sea.count[node]
        others = [(count, tag) for count, tag in between[node] if tag != part.tag]
        if sea is not None and sea < ENOUGH and not (others and others[0][0] < sea):
            way = way_to(from_sea.came, node)
            begins = f"the sea at {seas[nodes_of(way, node)[0]]}"
            yield _finding(enquiry, cost, part, begins, way)
        elif others and others[0][0] < ENOUGH:
            begins = others[0][1]
            here = fewest_barriers(net, [plant.node(begins)], cost)
            yield _finding(enquiry, cost, part, begins, way_to(here.came, node))


class _Cost:
    """What a part counts against water: 1 backwards through what shuts by itself."""

    def __init__(self, net: Net) -> None:
        self.net = net

    def __call__(self, number: int, along: bool) -> int | None:  # noqa: FBT001 - a Cost
        """Barriers of a part passed along its flow or against it; None: nothing passes."""
        if along:
            return 0
        return 1 if self.net.parts[number].one_way else None

    def barriers(self, way: Way) -> tuple[str, ...]:
        """The self-acting parts that a way passes backwards."""
        parts = self.net.parts
        return tuple(parts[n].tag for u, v, n in way if (u, v) not in self.net.arcs(n))


def _finding(enquiry: Enquiry, cost: _Cost, part: Part, begins: str, way: Way) -> PathFinding:
    plant, node = enquiry.plant, part.nodes[0]
    only = cost.barriers(way)
    lined_up = line_up(enquiry.unlocked, way, node)
    name = plant.components[part.tag].name
    place = f"{part.tag} ({name})" if name else part.tag
    through = [tag for tag in lined_up.tags if tag not in only]
    valves = f", through {listed(through)}" if through else ""
    if only:
        text = f"only {listed(only)} keeps water from running from {begins} into {place}{valves}"
        cure = "fit a second valve that shuts by itself, or have the surveyor accept one"
    else:
        text = f"water can run from {begins} into {place}{valves}, and nothing shuts by itself"
        cure = "fit a stop-check valve in the suction, or part the two suctions"
    return PathFinding(
        code="back-flooding",
        level=Level.WARNING if only else Level.DANGER,
        of=about(plant, part.tag),
        text=text,
        help=cure,
        line=lined_up,
        at_fault=only,
        endangers=(part.tag,),
        nodes=nodes_of(way, node),
    )
