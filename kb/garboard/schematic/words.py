"""A drawing in words: what is joined with what, and what the tool believes of it.

Whoever cannot see the drawing, or does not trust it, reads here. Tags stand in full, so that a page leads from
each to its own. What is believed is only what the connections say: it is right if they are.
"""

from collections.abc import Iterable, Iterator

from garboard.records.system import Joins
from garboard.systems.enquiry import Enquiry
from garboard.systems.medium import Medium
from garboard.systems.plant import Joint, Part, Pipe, Plant, Source
from garboard.systems.search import reach

__all__ = ["believed", "join_words", "joined"]

USERS = ("consumer", "load", "compartment", "sea")
STORES = ("receiver", "separator", "filter", "cooler", "tank")
SWITCHES = ("pressure switch", "transmitter")


def joined(plant: Plant) -> tuple[str, ...]:
    """Every join as a sentence of its own, in the order of the connections: what a comparison compares."""
    return tuple(dict.fromkeys(join_words(plant, pipe) for pipe in plant.pipes))


def join_words(plant: Plant, pipe: Pipe) -> str:
    """One join: `SA-HV-002 to SA-AR-001 (service: start air)`."""
    words = f"{_end(plant, pipe.a, leaving=True)} to {_end(plant, pipe.b, leaving=False)}"
    more = [pipe.service, pipe.size]
    said = ", ".join(one for one in more if one)
    return f"{words} ({said})" if said else words


def _end(plant: Plant, joint: Joint, *, leaving: bool) -> str:
    """An end; its port where it is not the one that flow takes anyhow."""
    if joint.joins is Joins.HEADER:
        return f"the {joint.name}"
    if joint.joins is not Joins.PART:
        return joint.name
    known = plant.behaviours[joint.name].ports
    plain = known[-1] if leaving else known[0]
    return joint.name if joint.port == plain or len(known) == 1 else f"{joint.name}.{joint.port}"


def believed(plant: Plant) -> Iterator[str]:
    """What the tool believes: of each source, each store, each relief valve and each switch.

    Args:
        plant: The system.

    Yields:
        Sentences, without their full stop.
    """
    enquiry = Enquiry(plant)
    rows = enquiry.net.any_position()
    for source in plant.sources:
        yield _source(enquiry, source, reach(rows, [source.node]))
    for relief in plant.reliefs:
        yield _relief(enquiry, relief.tag, relief.node)
    for part in plant.of_kind(*SWITCHES):
        component = plant.components[part.tag]
        if component.stops or component.watches:
            yield _switch(enquiry, part)


def _source(enquiry: Enquiry, source: Source, reached: set[int]) -> str:
    """What a source can reach, what stops it, which relief valve it always reaches."""
    plant = enquiry.plant
    ends = [part.tag for part in plant.of_kind(*STORES, *USERS) if reached & set(part.nodes)]
    ends += dict.fromkeys(
        joint.name
        for node in sorted(reached)
        for joint in plant.joints[node]
        if joint.joins is Joins.OUTSIDE
    )
    clauses = [f"{_said(plant, source.tag, 'makes')} can reach {_listed(ends) or 'nothing'}"]
    if source.machine:
        stops = _listed(
            _said(plant, tag, "cuts_out", "trip", "set", join=" at ")
            for tag, part in plant.components.items()
            if source.tag in map(str, part.stops)
        )
        clauses.append(f"stopped by {stops}" if stops else "no switch stops it")
    if plant.medium is not Medium.CURRENT:
        always = _listed(
            _said(plant, relief.tag, "set", join=" at ")
            for relief in plant.reliefs
            if source.node in enquiry.always([relief.node])
        )
        clauses.append(
            f"always open to {always}" if always else "no relief valve is always open to it"
        )
    return "; ".join(clauses)


def _relief(enquiry: Enquiry, tag: str, node: int) -> str:
    """What a relief valve always guards, and what it is said to protect and can be shut off from."""
    plant = enquiry.plant
    always = _always(enquiry, node, plant.of_kind(*STORES, *USERS))
    words = f"{_said(plant, tag, 'set')} is always open to {_listed(always) or 'nothing'}"
    protects = [str(one) for one in plant.components[tag].protects]
    return words + _shut_off(enquiry, node, [one for one in protects if one in plant.numbers])


def _switch(enquiry: Enquiry, part: Part) -> str:
    """What a switch always feels, and what it should feel and can be shut off from."""
    plant = enquiry.plant
    node = part.nodes[0]
    component = plant.components[part.tag]
    always = _always(enquiry, node, plant.of_kind(*STORES))
    words = _said(plant, part.tag, "cuts_out", "trip", "set")
    words += f" stops {_listed(map(str, component.stops))}; it" if component.stops else ""
    words += f" always feels {_listed(always) or 'nothing'}"
    stores = plant.of_kind("receiver", "tank") if component.stops else ()
    wanted = dict.fromkeys((*map(str, component.watches), *(store.tag for store in stores)))
    return words + _shut_off(enquiry, node, [one for one in wanted if one in plant.numbers])


def _always(enquiry: Enquiry, node: int, parts: Iterable[Part]) -> list[str]:
    """The outlets and parts that reach a node whatever the valves."""
    always = enquiry.always([node])
    machines = (source for source in enquiry.plant.sources if source.machine)
    outlets = [f"the outlet of {source.tag}" for source in machines if source.node in always]
    return [*outlets, *(part.tag for part in parts if set(part.nodes) & always)]


def _shut_off(enquiry: Enquiry, node: int, tags: Iterable[str]) -> str:
    """Which of some parts reach a node in some positions and not in others."""
    always = enquiry.always([node])
    rows = enquiry.net.any_position()
    parts = [enquiry.plant.parts[enquiry.plant.numbers[tag]] for tag in tags]
    loose = [one for one in parts if not set(one.nodes) & always and node in reach(rows, one.nodes)]
    return f"; can be shut off from {_listed(one.tag for one in loose)}" if loose else ""


def _said(plant: Plant, tag: str, *names: str, join: str = "") -> str:
    """A part with the first of some numbers that it has."""
    for name in names:
        setting = plant.setting(tag, name)
        if setting is not None:
            word = name.replace("_", " ")
            return f"{tag}{join}{setting.text}" if join else f"{tag} ({word} {setting.text})"
    return tag


def _listed(names: Iterable[str]) -> str:
    return ", ".join(names)
