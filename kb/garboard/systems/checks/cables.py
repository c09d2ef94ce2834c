"""Cables and buses that can be fed above what they carry for good."""

from collections.abc import Iterator, Mapping
from itertools import product
from math import inf, prod

from garboard.systems.current import Circuit, Flow, bounds, conducting
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import LineUp
from garboard.systems.net import Net
from garboard.systems.plant import Part, Plant
from garboard.systems.search import Choice
from garboard.systems.telling import listed

__all__ = ["find_cable_above_fuse"]

BUS = "bus"
CARRIES = ("cable", BUS)
DRIVES = ("battery", "alternator", "charger")
WITHOUT_LIMIT = "battery"
"""It makes no more than its fuse lets through, whatever its plate says."""
FEW = 256
"""Combinations of changeovers that are tried."""


def find_cable_above_fuse(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Compare the ampacity of each cable with the most that can flow into it, every switch made."""
    plant, net = enquiry.plant, enquiry.unlocked
    cables = [part for part in plant.of_kind(*CARRIES) if plant.setting(part.tag, "rated")]
    sources = dict(_sources(plant))
    if not cables or not sources:
        return
    arcs = conducting(net)
    most = bounds(net, arcs, sources)
    relaxed = Circuit(net, arcs, sources)
    for part in cables:
        rated = plant.settings[part.tag]["rated"]
        if max(most[node] for node in part.nodes) <= rated.low:
            continue
        number = plant.numbers[part.tag]
        flow, sure = _into(relaxed, part, number), True
        turned: Choice = {}
        if flow.amperes > rated.low and net.coupled:
            flow, turned, sure = _one_at_a_time(net, part, number, sources)
        if flow.amperes > rated.low:
            yield _finding(enquiry, part, flow, turned, sure=sure)


def _sources(plant: Plant) -> Iterator[tuple[int, float]]:
    """What drives current at which node, and how much at most [A]."""
    for source in plant.sources:
        kind = plant.parts[plant.numbers[source.tag]].kind
        makes = plant.setting(source.tag, "makes")
        if kind in DRIVES:
            yield source.node, inf if makes is None or kind == WITHOUT_LIMIT else makes.high


def _one_at_a_time(
    net: Net, part: Part, number: int, sources: Mapping[int, float]
) -> tuple[Flow, Choice, bool]:
    """The most that flows into a cable with each changeover in one position, where they are few."""
    sizes = [len(net.parts[one].positions) for one in net.coupled]
    if prod(sizes) > FEW:
        return _into(Circuit(net, conducting(net), sources), part, number), {}, False
    choices = [
        dict(zip(net.coupled, positions, strict=True))
        for positions in product(*(range(size) for size in sizes))
    ]
    flows = [
        (_into(Circuit(net, conducting(net, choice), sources), part, number), choice)
        for choice in choices
    ]
    flow, choice = max(flows, key=lambda item: item[0].amperes)
    return flow, choice, True


def _into(circuit: Circuit, part: Part, number: int) -> Flow:
    """The most that can flow into a bus, or along a cable from the worse of its ends.

    What comes in at one end of a cable runs the whole of it; what comes in at the other end does not
    add to it anywhere.
    """
    if part.kind == BUS:
        return circuit.most_into(part.nodes[0])
    flows = (circuit.most_into(end, without=number) for end in part.nodes)
    return max(flows, key=lambda flow: flow.amperes)


def _finding(
    enquiry: Enquiry, part: Part, flow: Flow, turned: Choice, *, sure: bool
) -> PathFinding:
    plant = enquiry.plant
    rated = plant.settings[part.tag]["rated"]
    limits = tuple(plant.parts[number].tag for number in flow.limits)
    numbers = [f"{tag} rated {plant.settings[tag]['rated'].text}" for tag in limits]
    limited = set(flow.sources)
    made = tuple(one.tag for one in plant.sources if one.node in limited) if limited else ()
    numbers += [f"{tag} makes {plant.settings[tag]['makes'].text}" for tag in made]
    carrying = [plant.parts[number] for number in flow.carrying]
    if flow.amperes == inf:
        text = f"{part.tag} is rated {rated.text}, and no fuse or breaker limits what can feed it"
        cure = f"put a fuse of {rated.text} or less where it is fed, as near the source as can be"
    else:
        text = f"{part.tag} is rated {rated.text} and can be fed {flow.amperes:g} A"
        text += f": {listed(numbers)}" if numbers else ""
        cure = f"fit fuses that together let through {rated.text} or less, or a thicker cable"
    switches = tuple(p.tag for p in carrying if p.movable and not p.coupled and p.tag not in limits)
    positions = tuple(
        (p.tag, p.names[turned[plant.numbers[p.tag]]])
        for p in carrying
        if p.coupled and plant.numbers[p.tag] in turned
    )
    words = [f"{listed(switches)} made"] if switches else []
    words += [f"{tag} turned to {position}" for tag, position in positions]
    text += f", with {listed(words)}" if words else ""
    if not sure:
        text += "; too many changeovers to try every position: check by hand"
    return PathFinding(
        code="cable-above-fuse",
        level=Level.DANGER,
        of=about(plant, part.tag),
        text=text,
        help=f"{cure}, or correct the rating of {part.tag}",
        line=LineUp(open=switches, turned=positions),
        at_fault=(*limits, *made),
        nodes=part.nodes,
        numbers=(f"{part.tag} rated {rated.text}", *numbers),
    )
