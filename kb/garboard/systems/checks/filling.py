"""What can be filled, what is drained, and whether start air is kept apart from the machines."""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.records.system import Joins
from garboard.systems.behaviour import BEHAVIOURS, Passes
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import line_up, nodes_of
from garboard.systems.medium import Medium, medium_word
from garboard.systems.net import Through, adjacency
from garboard.systems.passing import OPENS_OUT
from garboard.systems.plant import Part, Plant
from garboard.systems.search import reach, way_to
from garboard.systems.shortest import first_ways, rows_without
from garboard.systems.telling import listed

__all__ = ["find_cannot_fill", "find_no_drain", "find_start_air_not_separate"]

TAKES = ("receiver", "consumer", "tank", "compartment", "sea", "battery", "load")
STORES = ("receiver", "battery")
CHARGES = ("alternator", "charger")
ONE_WAY = (Passes.ONE_WAY, Passes.STOP_CHECK, Passes.CAPPED)
WET = ("air", "steam")
"""Gases that leave water behind."""
DRAINED = ("receiver", "separator")
DRAINS = ("drain valve", "test cock")


@dataclass(frozen=True, slots=True)
class _Words:
    """How a finding speaks of filling."""

    nothing: str
    fill: str
    opened: str


WORDS = {
    False: _Words("no store, user, tank or sea", "fill", "opened"),
    True: _Words("no battery and no load", "charge", "switched on"),
}


def find_cannot_fill(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Ask every machine what it reaches, and every store what reaches it, with any valve in any position."""
    plant = enquiry.plant
    words = WORDS[plant.medium is Medium.CURRENT]
    arcs = tuple(_delivering(enquiry))
    beyond = [node for part in plant.parts if not plant.owns(part.tag) for node in part.nodes]
    takers = [node for part in plant.of_kind(*TAKES) for node in part.nodes] + beyond
    outside = [n for n, them in enumerate(plant.joints) if any(_is_outside(j.joins) for j in them)]
    drains = {number for number, part in enumerate(plant.parts) if part.kind in OPENS_OUT}
    useful = reach(adjacency(plant.count, arcs, back=True), takers)
    dry = [arc for arc in arcs if arc[2] not in drains]
    useful |= reach(adjacency(plant.count, dry, back=True), outside)
    makers = {
        s.tag: s.node for s in plant.sources if s.machine or _part(plant, s.tag).kind in CHARGES
    }
    for tag, node in makers.items():
        if node not in useful and plant.owns(tag):
            text = f"{tag} reaches {words.nothing}, whatever is {words.opened}"
            yield _no_way(enquiry, arcs, tag, node, text)
    fed_by = [s.node for s in plant.sources if _part(plant, s.tag).kind not in STORES]
    fed = reach(adjacency(plant.count, arcs), [*fed_by, *beyond])
    for part in plant.of_kind(*STORES) if fed_by else ():
        if not fed.intersection(part.nodes) and plant.owns(part.tag):
            text = f"nothing can {words.fill} {part.tag}, whatever is {words.opened}"
            yield _no_way(enquiry, arcs, part.tag, part.nodes[0], text)


def _is_outside(joins: Joins) -> bool:
    return joins in (Joins.OUTSIDE, Joins.UNKNOWN)


def _part(plant: Plant, tag: str) -> Part:
    return plant.parts[plant.numbers[tag]]


def _delivering(enquiry: Enquiry) -> Iterator[Through]:
    """Every arc of every position, but none backwards through a machine."""
    net = enquiry.unlocked
    for number, part in enumerate(net.parts):
        back = part.ports.get("out") if _passes(part) is Passes.MACHINE else None
        for u, v in net.arcs(number):
            if u != back:
                yield u, v, number


def _passes(part: Part) -> Passes:
    return BEHAVIOURS[part.kind].passes


def _no_way(
    enquiry: Enquiry, arcs: tuple[Through, ...], tag: str, node: int, text: str
) -> PathFinding:
    """A machine or store without a way, with the one-way parts that point against it."""
    plant = enquiry.plant
    into = plant.parts[plant.numbers[tag]].kind not in STORES
    joined = reach(adjacency(plant.count, arcs, back=not into), [node])
    against = {
        number
        for u, v, number in arcs
        if _passes(plant.parts[number]) in ONE_WAY
        and ((v in joined and u not in joined) if into else (u in joined and v not in joined))
    }
    tags = tuple(plant.parts[number].tag for number in sorted(against))
    cure = f"join {tag} where it belongs, or take it out of the file"
    if tags:
        points = "points" if len(tags) == 1 else "point"
        text += f"; {listed(tags)} {points} the wrong way for it"
        cure = f"turn {listed(tags, 'or')} round, or join {tag} where it belongs"
    return PathFinding(
        code="cannot-fill",
        level=Level.DANGER,
        of=about(plant, tag),
        text=text,
        help=cure,
        at_fault=tags,
        nodes=(node,),
    )


def find_no_drain(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Look at each receiver and separator for air or steam whether a drain valve stands at it."""
    plant = enquiry.plant
    drained = {node for part in plant.of_kind(*DRAINS) for node in part.nodes}
    for part in plant.of_kind(*DRAINED):
        if not drained.intersection(part.nodes) and plant.owns(part.tag) and _is_wet(plant, part):
            yield PathFinding(
                code="no-drain",
                level=Level.WARNING,
                of=about(plant, part.tag),
                text=f"{part.tag} has no drain valve of its own, so water and oil stay in it",
                help="fit a drain valve at its lowest point, or say which gas in it leaves no water",
                nodes=part.nodes,
            )


def _is_wet(plant: Plant, part: Part) -> bool:
    words = (medium_word(plant.system, plant.services[node]).split() for node in part.nodes)
    return any(word[-1] in WET for word in words if word)


def find_start_air_not_separate(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Take the receivers out, and ask whether a compressor still reaches a user of start air."""
    plant = enquiry.plant
    users = [p for p in plant.of_kind("consumer") if plant.components[p.tag].start_air]
    compressors = {s.node: s.tag for s in plant.sources if _part(plant, s.tag).kind == "compressor"}
    if not users or not compressors or plant.medium is not Medium.GAS:
        return
    receivers = {plant.numbers[part.tag] for part in plant.of_kind("receiver")}
    reached, came = first_ways(rows_without(enquiry.unlocked, receivers), compressors)
    for user in users:
        node = user.nodes[0]
        if node not in reached:
            continue
        way = way_to(came, node)
        machine = compressors[nodes_of(way, node)[0]]
        lined_up = line_up(enquiry.unlocked, way, node)
        valves = f" through {listed(lined_up.tags)}" if lined_up.tags else ""
        yield PathFinding(
            code="start-air-not-separate",
            level=Level.DANGER,
            of=about(plant, user.tag),
            text=f"{machine} can blow straight into {user.tag}{valves}, past every receiver",
            help="take the start air from a receiver that the machine fills by another branch, "
            "or shut that way for good",
            line=lined_up,
            at_fault=(machine,),
            nodes=nodes_of(way, node),
        )
