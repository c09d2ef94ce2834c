"""Where a switch stops and starts its machine, against the relief valves and receivers it is joined to."""

from collections.abc import Iterator

from garboard.systems.checks.switching import PRESSURE_SENSES, stopping
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.joined import first_joined
from garboard.systems.line_up import LineUp
from garboard.systems.net import Through, adjacency
from garboard.systems.plant import Part, Plant, Relief
from garboard.systems.search import reach
from garboard.systems.settings import NO_LIMIT, Setting
from garboard.systems.telling import listed

__all__ = ["crossed_cut_outs", "find_early_restart", "find_set_points_crossed"]

CROSSED = "set-points-crossed"
RESTART = "early-restart"
STOPS_AT = {"cuts_out": "cut-out", "trip": "trip"}
"""The numbers at which a switch stops its machine, as a person says them."""
Crossed = tuple[Part, str, Relief, Setting]
"""The switch, the name of its number, the relief valve and its setting."""


def crossed_cut_outs(enquiry: Enquiry) -> Iterator[Crossed]:
    """The switches that stop a machine at or above the relief valve that opens first of those always joined."""
    plant = enquiry.plant
    known = [each for each in plant.reliefs if each.opens < NO_LIMIT]
    reliefs = sorted(known, key=lambda each: each.opens)
    joined = first_joined(enquiry.net, [each.node for each in reliefs])
    switches = {part.tag: part for parts in stopping(plant).values() for part in parts}
    for part in switches.values():
        place = joined[plant.node(part.tag)]
        for name in STOPS_AT if place is not None else ():
            stop, relief = plant.setting(part.tag, name), reliefs[place or 0]
            if stop and stop.high >= relief.opens:
                yield part, name, relief, plant.settings[relief.tag]["set"]


def find_set_points_crossed(enquiry: Enquiry) -> Iterator[PathFinding]:
    """The switches that stop a machine only when a relief valve they are always joined to has opened."""
    plant = enquiry.plant
    for part, name, relief, lift in crossed_cut_outs(enquiry):
        stop, word = plant.settings[part.tag][name], STOPS_AT[name]
        yield PathFinding(
            code=CROSSED,
            level=Level.WARNING,
            of=about(plant, part.tag, stop.where),
            text=f"{word} of {part.tag} is {stop.text}, setting of {relief.tag}, always joined to it, "
            f"is {lift.text}",
            help=f"put the {word} below the setting, or correct the one that is written wrong",
            at_fault=(relief.tag,),
            nodes=(plant.node(part.tag), relief.node),
            numbers=(f"{part.tag} {name} {stop.text}", f"{relief.tag} set {lift.text}"),
        )


def find_early_restart(enquiry: Enquiry) -> Iterator[PathFinding]:
    """The switches that start a machine again by the pressure of a piece of pipe that no receiver keeps up."""
    plant = enquiry.plant
    usual = _usual(enquiry)
    stores = [
        plant.node(part.tag) for part in plant.of_kind("receiver", "tank") if _holds(plant, part)
    ]
    kept = reach(adjacency(plant.count, usual), stores)
    for part in plant.of_kind(*PRESSURE_SENSES):
        starts = plant.setting(part.tag, "cuts_in")
        if starts is not None and plant.node(part.tag) not in kept:
            yield _restarts(enquiry, part, starts, (usual, stores))


def _holds(plant: Plant, part: Part) -> bool:
    """Whether it stores pressure: a receiver, or a tank that is not open to the air."""
    return part.kind == "receiver" or plant.node(part.tag) not in plant.open_air


def _usual(enquiry: Enquiry) -> list[Through]:
    """What passes in the usual positions."""
    net = enquiry.net
    return [
        (u, v, number)
        for number, part in enumerate(net.parts)
        for u, v in part.positions[net.held.get(number, part.usual)]
    ]


def _restarts(
    enquiry: Enquiry, part: Part, starts: Setting, kept: tuple[list[Through], list[int]]
) -> PathFinding:
    plant, net, (usual, stores) = enquiry.plant, enquiry.net, kept
    node = plant.node(part.tag)
    feeds = reach(adjacency(plant.count, usual, back=True), [node])
    every = [(u, v, n) for n in range(len(net.parts)) for u, v in net.arcs(n)]
    outside = [(u, v, n) for u, v, n in every if u not in feeds and v not in feeds]
    held = reach(adjacency(plant.count, outside), stores)
    shut = {n for u, v, n in every if u in held and v in feeds}
    against = {n for u, v, n in every if u in feeds and v in held and net.parts[n].one_way}
    usually = tuple(plant.parts[n].tag for n in sorted(shut) if not net.parts[n].coupled)
    turned = [(plant.parts[n], plant.parts[n].usual) for n in sorted(shut) if net.parts[n].coupled]
    wrong = tuple(plant.parts[n].tag for n in sorted(against - shut))
    text = f"as the valves usually stand no receiver is joined to {part.tag}, which cuts in at {starts.text}"
    causes = [f"{listed(usually)} shut"] if usually else []
    causes += [f"{one.tag} turned to {one.names[usual_]}" for one, usual_ in turned]
    causes += [f"{listed(wrong)} between them"] if wrong else []
    text += f" ({'; '.join(causes)})" if causes else ""
    text += ": it starts again as soon as a short piece of pipe has leaked down"
    return PathFinding(
        code=RESTART,
        level=Level.WARNING,
        of=about(plant, part.tag),
        text=text,
        help=f"join {part.tag} on the receiver's side, or correct how the valves usually stand",
        line=LineUp(
            shut=usually, turned=tuple((one.tag, one.names[usual_]) for one, usual_ in turned)
        ),
        at_fault=wrong,
        nodes=(node,),
        numbers=(f"{part.tag} cuts_in {starts.text}",),
    )
