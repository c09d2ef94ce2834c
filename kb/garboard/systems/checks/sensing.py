"""Whether a switch always feels what it acts on.

A machine must not be able to fill any vessel by a way that its switch does not feel, whichever vessel the
switch was put on. Where a cut-out and a trip stop the same machine each is asked for itself: one of them
that is blind leaves the other alone, and neither was put in to be alone.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from garboard.systems.checks.parting import parting
from garboard.systems.checks.switching import stopping
from garboard.systems.checks.watching import watching
from garboard.systems.checks.wording import secure
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import LineUp, line_up, nodes_of
from garboard.systems.plant import Part, Plant
from garboard.systems.search import way_to
from garboard.systems.telling import listed

__all__ = ["find_switch_cut_off"]

CUT_OFF = "switch-cut-off"
Tags = tuple[str, ...]


def find_switch_cut_off(enquiry: Enquiry) -> Iterator[PathFinding]:
    """The switches that do not feel a vessel which their machine fills, or which they watch."""
    filling = tuple(_filling(enquiry))
    blind = [found for found in filling if found.level is not Level.ASIDE]
    said = {(tag, vessel) for one in blind for tag in _switches(one) for vessel in one.endangers}
    watching_too = [
        found
        for found in watching(enquiry)
        if not {(found.about, vessel) for vessel in found.endangers} <= said
    ]
    yield from (*blind, *watching_too)
    about = {found.about for found in (*blind, *watching_too) if found.level is not Level.ASIDE}
    yield from (found for found in filling if found not in blind and found.about not in about)


def _switches(found: PathFinding) -> Tags:
    return found.about, *found.at_fault


@dataclass(frozen=True, slots=True)
class _Unfelt:
    """A vessel that a machine can fill unfelt, and how the valves stand then."""

    machine: str
    vessel: str
    line: LineUp
    nodes: tuple[int, ...]
    between: Tags
    by_others: bool
    """Another switch still feels it and stops the machine."""
    settled: bool


def _filling(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Every machine that switches stop, against every vessel that it can fill."""
    plant = enquiry.plant
    filled = {
        plant.node(part.tag): part
        for part in plant.of_kind("receiver", "tank")
        if _fills(plant, part)
    }
    groups: dict[tuple[Tags, Tags], list[str]] = {}
    for machine, switches in stopping(plant).items():
        for layer, others in _layers(plant, switches):
            groups.setdefault((layer, others), []).append(machine)
    for (layer, others), machines in groups.items():
        unfelt = [
            each for one in machines for each in _unfelt(enquiry, one, (layer, others), filled)
        ]
        yield from _grouped(enquiry, layer, others, unfelt)
        if not unfelt:
            yield from _parted(enquiry, layer, machines, filled)


def _fills(plant: Plant, part: Part) -> bool:
    return part.kind == "receiver" or plant.node(part.tag) not in plant.open_air


def _layers(plant: Plant, switches: Sequence[Part]) -> Iterator[tuple[Tags, Tags]]:
    """The switches that cut a machine out, and those that only trip it, each with the others."""
    trips = tuple(
        part.tag
        for part in switches
        if plant.setting(part.tag, "trip") and not plant.setting(part.tag, "cuts_out")
    )
    others = tuple(part.tag for part in switches if part.tag not in trips)
    if others:
        yield others, trips
    if trips:
        yield trips, others


def _unfelt(
    enquiry: Enquiry, machine: str, switches: tuple[Tags, Tags], filled: Mapping[int, Part]
) -> Iterator[_Unfelt]:
    """What a machine can fill by ways that the first of its switches do not feel."""
    plant, (layer, others) = enquiry.plant, switches
    start = plant.parts[plant.numbers[machine]].ports["out"]
    felt = {plant.node(tag) for tag in layer}
    fed = enquiry.fed_outside([start], felt)
    by_none = enquiry.fed_outside([start], felt | {plant.node(tag) for tag in others})
    for node in sorted(fed.nodes & filled.keys()):
        way = way_to(fed.came, node)
        line = line_up(enquiry.net, way, node, felt)
        yield _Unfelt(
            machine,
            filled[node].tag,
            line,
            nodes_of(way, node),
            () if line.shut else parting(enquiry, node, felt) or (),
            node not in by_none.nodes,
            fed.settled,
        )


def _grouped(
    enquiry: Enquiry, layer: Tags, others: Tags, unfelt: Iterable[_Unfelt]
) -> Iterator[PathFinding]:
    """One finding for what the same valves hide from the same switches."""
    causes: dict[tuple[object, ...], list[_Unfelt]] = {}
    for each in unfelt:
        key = (each.line.shut, each.line.turned, each.between, each.by_others)
        causes.setdefault(key, []).append(each)
    for group in causes.values():
        yield _hidden(enquiry, layer, others if group[0].by_others else (), group)


def _hidden(enquiry: Enquiry, layer: Tags, still: Tags, group: Sequence[_Unfelt]) -> PathFinding:
    plant, first = enquiry.plant, group[0]
    machines = tuple(dict.fromkeys(each.machine for each in group))
    vessels = tuple(dict.fromkeys(each.vessel for each in group))
    opened = tuple(tag for tag in first.line.open if all(tag in each.line.open for each in group))
    line = LineUp(opened, first.line.shut, first.line.turned)
    text = f"{listed(machines)} can fill {listed(vessels)} while {listed(layer)} "
    text += f"{'does' if len(layer) == 1 else 'do'} not feel it"
    text += f", with {line.words}" if line.words else ""
    if first.between:
        text += f": {listed(first.between)} between them lets nothing through that way"
    if still:
        text += f"; only {listed(still)} would stop it"
    if not first.settled:
        text += "; not settled: too many valves turn together, check it by hand"
    tap = f"tap {layer[0]} where every way from {listed(machines)} to a vessel passes, before any stop valve"
    return PathFinding(
        code=CUT_OFF,
        level=Level.DANGER,
        of=about(plant, layer[0]),
        text=text,
        help=f"{tap}, or {secure(enquiry, line)}",
        line=line,
        at_fault=(*layer[1:], *first.between),
        endangers=vessels,
        nodes=first.nodes,
        numbers=tuple(f"{machine} stopped by {listed(layer)}" for machine in machines),
    )


def _next_filled(enquiry: Enquiry, machines: Sequence[str], filled: Mapping[int, Part]) -> set[int]:
    """The vessels that machines can fill without filling another one first."""
    plant, rows = enquiry.plant, enquiry.net.any_position()
    todo = [plant.parts[plant.numbers[machine]].ports["out"] for machine in machines]
    seen = set(todo)
    while todo:
        node = todo.pop()
        for other, _ in rows[node] if node not in filled else ():
            if other not in seen:
                seen.add(other)
                todo.append(other)
    return seen & filled.keys()


def _parted(
    enquiry: Enquiry, layer: Tags, machines: Sequence[str], filled: Mapping[int, Part]
) -> Iterator[PathFinding]:
    """Vessels that valves can part from the switches, where the machine cannot fill them then."""
    plant = enquiry.plant
    always = enquiry.always(plant.node(tag) for tag in layer)
    nodes = _next_filled(enquiry, machines, filled) - always
    vessels = tuple(filled[node].tag for node in sorted(nodes))
    if vessels:
        text = f"valves can part {listed(layer)} from {listed(vessels)}, "
        text += f"but {listed(tuple(machines))} cannot fill what is parted from it"
        yield PathFinding(
            code=CUT_OFF,
            level=Level.ASIDE,
            of=about(plant, layer[0]),
            text=text,
            help=f"leave it so, or tap {layer[0]} where no valve stands between",
            at_fault=layer[1:],
            endangers=vessels,
            nodes=(plant.node(layer[0]),),
        )
