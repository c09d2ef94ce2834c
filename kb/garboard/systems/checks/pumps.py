"""Machines that run against a shut outlet."""

from collections.abc import Iterable, Iterator

from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import LineUp, line_up
from garboard.systems.medium import Medium
from garboard.systems.net import adjacency
from garboard.systems.plant import Plant, Source
from garboard.systems.search import always_reaches, way_to
from garboard.systems.settings import NO_LIMIT
from garboard.systems.shortest import first_ways
from garboard.systems.telling import listed

__all__ = ["find_dead_head"]

SINKS = ("consumer", "tank", "sea", "receiver")
"""What takes what a centrifugal pump delivers, beside relief valves and the open air."""
MAY_CHOKE = ("filter", "strainer", "restrictor", "check valve", "stop-check valve")
"""Through these an open end is no sure way out for a machine that goes on pushing."""


def find_dead_head(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Ask every machine whether its outlet always reaches what keeps it from harm."""
    plant = enquiry.plant
    if plant.medium is Medium.CURRENT:
        return
    reliefs = {relief.node for relief in plant.reliefs}
    sinks = reliefs | set(plant.open_air)
    sinks.update(node for part in plant.of_kind(*SINKS) for node in part.nodes)
    soft = {plant.numbers[part.tag] for part in plant.of_kind(*MAY_CHOKE)}
    freed = enquiry.always(reliefs) | always_reaches(enquiry.net, plant.open_air, out=soft)
    for source in plant.sources:
        if not source.machine or not plant.owns(source.tag):
            continue
        if source.displacement:
            if source.node not in freed:
                yield _no_relief(enquiry, source, reliefs)
        elif source.node not in enquiry.always(sinks):
            yield _shut_in(enquiry, source, sinks)


def _no_relief(enquiry: Enquiry, source: Source, reliefs: Iterable[int]) -> PathFinding:
    """A displacement machine that can be parted from every relief valve."""
    plant = enquiry.plant
    targets = set(reliefs) or _anything_else(plant, source)
    lined_up = line_up(enquiry.net, (), source.node, targets)
    makes = plant.setting(source.tag, "makes")
    text = f"{source.tag} can run against a shut outlet without a relief valve"
    text += _positions(lined_up)
    chokes = _may_choke(enquiry, source.node)
    text += f"; its way into the open can choke at {listed(chokes, 'or')}" if chokes else ""
    if makes is None:
        text += "; what it makes is not recorded"
    else:
        text += f"; it makes {makes.text}" if makes.high < NO_LIMIT else "; nothing limits it"
    return PathFinding(
        code="dead-head",
        level=Level.WARNING if chokes else Level.DANGER,
        of=about(plant, source.tag),
        text=text,
        help="fit a relief valve before the first valve of its outlet, or take that valve out",
        line=lined_up,
        at_fault=chokes,
        nodes=(source.node,),
        numbers=(f"{source.tag} makes {makes.text}",) if makes else (),
    )


def _positions(lined_up: LineUp) -> str:
    said = f", {listed(lined_up.shut)} shut" if lined_up.shut else ""
    return said + "".join(f", {tag} turned to {position}" for tag, position in lined_up.turned)


def _may_choke(enquiry: Enquiry, node: int) -> tuple[str, ...]:
    """What may choke on the shortest open way out of a machine; none where valves shut it in as well."""
    parts = enquiry.net.parts
    if node not in enquiry.always(enquiry.plant.open_air):
        return ()
    reached, came = first_ways(adjacency(enquiry.net.count, enquiry.net.fixed), [node])
    open_air = sorted(reached & enquiry.plant.open_air)
    ways = [way_to(came, end) for end in open_air]
    on = min(ways, key=len) if ways else ()
    return tuple(parts[n].tag for _, _, n in on if parts[n].kind in MAY_CHOKE)


def _shut_in(enquiry: Enquiry, source: Source, sinks: Iterable[int]) -> PathFinding:
    """A centrifugal machine that can be shut in."""
    plant = enquiry.plant
    lined_up = line_up(enquiry.net, (), source.node, sinks)
    text = f"{source.tag} can run against a shut outlet"
    text += _positions(lined_up)
    text += "; a centrifugal machine then only heats what is in it"
    return PathFinding(
        code="dead-head",
        level=Level.NOTE,
        of=about(plant, source.tag),
        text=text,
        help="say in its procedure that it is stopped first, or fit a small by-pass back to its suction",
        line=lined_up,
        nodes=(source.node,),
    )


def _anything_else(plant: Plant, source: Source) -> set[int]:
    """Every place but the machine's own, where no relief valve is: so that its nearest valves are named."""
    own = set(plant.parts[plant.numbers[source.tag]].nodes)
    return {node for node in range(plant.count) if node not in own}
