"""What each part passes in each position, and what it is besides: a relief valve, a source."""

from collections.abc import Collection, Iterator, Mapping

from garboard.records.component import Component, Fails
from garboard.records.system import Joins
from garboard.systems.behaviour import BEHAVIOURS, Behaviour, Passes
from garboard.systems.medium import Medium
from garboard.systems.plant import Arc, Joint, Part, Relief, Source
from garboard.systems.settings import NO_LIMIT, Setting

__all__ = [
    "OPENS_OUT",
    "open_ends_of",
    "part_of",
    "reliefs_of",
    "sources_of",
    "users_that_exhaust",
]

OPENS_OUT = ("drain valve", "vent valve", "test cock", "plug")
"""Where nothing is drawn after them, they open to the air; usually they are shut."""
CENTRIFUGAL = "centrifugal"
OTHERWISE = {"a": ["common-a"], "b": ["common-b"]}
"""The positions of a three-way valve that names none."""
Settings = Mapping[str, Mapping[str, Setting]]
"""Of every part, by tag and name."""


def _both(u: int, v: int) -> tuple[Arc, ...]:
    return () if u == v else ((u, v), (v, u))


def part_of(
    component: Component,
    ports: Mapping[str, int],
    settings: Mapping[str, Setting],
    joined: Collection[Joint],
    stops: Collection[str],
) -> Part:
    """A component between its nodes.

    Args:
        component: What is recorded of it.
        ports: Node of each of its ports.
        settings: Its numbers, by name.
        joined: Every end that a connection names.
        stops: The parts that the watch rounds stop at.
    """
    behaviour = BEHAVIOURS[component.kind]
    positions, names = _positions(component, behaviour, ports, joined)
    known = dict(zip(names, range(len(names)), strict=True))
    default = 1 if component.kind in OPENS_OUT else 0
    secured = component.locked if component.secured and component.on_round(stops) else None
    fails = str(component.fails) if component.fails and component.fails is not Fails.STAYS else ""
    cap = settings.get("set" if behaviour.passes is Passes.CAPPED else behaviour.amperes)
    limits = behaviour.passes is Passes.CAPPED or behaviour.amperes
    return Part(
        tag=str(component.tag),
        kind=component.kind,
        ports=ports,
        positions=positions,
        names=names,
        usual=known.get(component.usual or "", default if len(names) > 1 else 0),
        locked=known.get(secured or "") if len(names) > 1 else None,
        fails=known.get(fails) if len(names) > 1 else None,
        cap=cap.high if limits and cap else NO_LIMIT,
        carries_relief=behaviour.passes not in (Passes.CAPPED, Passes.MACHINE),
        one_way=_one_way(component, behaviour),
        lockable=behaviour.lockable,
        flexible=behaviour.flexible,
    )


def _one_way(component: Component, behaviour: Behaviour) -> bool:
    if behaviour.passes is Passes.MACHINE:
        return component.type != CENTRIFUGAL
    return behaviour.passes in (Passes.ONE_WAY, Passes.STOP_CHECK)


Positions = tuple[tuple[tuple[Arc, ...], ...], tuple[str, ...]]


def _positions(
    component: Component, behaviour: Behaviour, ports: Mapping[str, int], joined: Collection[Joint]
) -> Positions:
    """What a part passes in each of its positions, and their names."""
    passes = behaviour.passes
    if passes is Passes.JOINED:
        first, *others = dict.fromkeys(ports.values())
        return (tuple(arc for node in others for arc in _both(first, node)),), ("",)
    if passes in (Passes.MARKS, Passes.SOURCE, Passes.RELIEF):
        return ((),), ("",)
    if passes is Passes.POSITIONS:
        return _turned(component, ports)
    u, v = (ports[port] for port in behaviour.ports)
    forward: tuple[Arc, ...] = ((u, v),) if u != v else ()
    if passes is Passes.MACHINE:
        through = Joint(Joins.PART, str(component.tag), "in") in joined
        both = _both(u, v) if component.type == CENTRIFUGAL else forward
        return (both if through else (),), ("",)
    if passes in (Passes.ONE_WAY, Passes.CAPPED):
        return (forward,), ("",)
    passing = forward if passes is Passes.STOP_CHECK else _both(u, v)
    return (passing, ()), behaviour.names


def _turned(component: Component, ports: Mapping[str, int]) -> Positions:
    """What a three-way valve or changeover passes; what is not written joins common to a, or to b."""
    own = component.positions or {}
    written = {name: [str(pair) for pair in pairs] for name, pairs in own.items()} or OTHERWISE
    positions = []
    for pairs in written.values():
        arcs: list[Arc] = []
        for pair in pairs:
            one, _, other = pair.partition("-")
            if one in ports and other in ports:
                arcs += _both(ports[one], ports[other])
        positions.append(tuple(dict.fromkeys(arcs)))
    return tuple(positions), tuple(written)


def reliefs_of(
    parts: tuple[Part, ...], settings: Settings, joined: Collection[Joint]
) -> Iterator[Relief]:
    """The relief valves and bursting discs among some parts, with their settings."""
    for part in parts:
        if BEHAVIOURS[part.kind].passes is Passes.RELIEF:
            lift = settings[part.tag].get("set")
            piped = Joint(Joins.PART, part.tag, "out") in joined
            lifts, opens = (lift.high, lift.low) if lift else (NO_LIMIT, NO_LIMIT)
            outlet = part.ports["out"] if piped else None
            yield Relief(part.tag, part.ports["in"], outlet, lifts, opens)


def sources_of(
    parts: tuple[Part, ...],
    components: Mapping[str, Component],
    settings: Settings,
    medium: Medium,
) -> Iterator[Source]:
    """What makes pressure or drives current among some parts."""
    for part in parts:
        passes = BEHAVIOURS[part.kind].passes
        if passes in (Passes.MACHINE, Passes.SOURCE):
            machine = passes is Passes.MACHINE
            pushes = machine and components[part.tag].type != CENTRIFUGAL
            makes = settings[part.tag].get("makes")
            most = makes.high if makes and medium is not Medium.CURRENT else NO_LIMIT
            yield Source(part.tag, part.ports["out"], most, machine, pushes)


def open_ends_of(
    components: Mapping[str, Component],
    parts: tuple[Part, ...],
    nodes: Mapping[Joint, int],
    joined: Collection[Joint],
) -> Iterator[int]:
    """Nodes that nothing ever shuts off from the air: no pressure stands there."""
    for joint, node in nodes.items():
        if joint.joins is Joins.OUTSIDE:
            yield node
    for part in parts:
        open_tank = part.kind == "tank" and components[part.tag].rated is None
        if open_tank or part.kind == "compartment":
            yield part.nodes[0]
        if part.kind in OPENS_OUT and Joint(Joins.PART, part.tag, "out") not in joined:
            yield part.ports["out"]


def users_that_exhaust(
    components: Mapping[str, Component], parts: tuple[Part, ...]
) -> Iterator[int]:
    """Nodes of users that let out what reaches them."""
    for part in parts:
        if part.kind == "consumer" and components[part.tag].exhausts:
            yield part.nodes[0]
