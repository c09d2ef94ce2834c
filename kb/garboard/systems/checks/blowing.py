"""Whether a relief valve blows in ordinary running.

Machines run up to their cut-out, reducing valves hold, and the valves stand anyhow; no relief valve is
counted on. What a valve sees then must stay below the least it may open at.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.systems.checks.setpoints import crossed_cut_outs
from garboard.systems.checks.switching import Stop, ordinary
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import line_up, nodes_of
from garboard.systems.plant import Relief
from garboard.systems.search import Way, caps_of, highest, way_to
from garboard.systems.sequences import can_settle, highest_over_time

__all__ = ["find_relief_blows"]

BLOWS = "relief-blows"


@dataclass(frozen=True, slots=True)
class _Sees:
    """What a relief valve sees, and by which way from what."""

    relief: Relief
    way: Way
    stop: Stop
    settled: bool


def find_relief_blows(enquiry: Enquiry) -> Iterator[PathFinding]:
    """The relief valves that may see their setting while nothing is wrong.

    Where a switch cuts out above a relief valve that it is always joined to, that has been said.
    """
    said = {(switch.tag, relief.tag) for switch, _, relief, _ in crossed_cut_outs(enquiry)}
    for sees in _seen(enquiry):
        if (sees.stop.tag, sees.relief.tag) not in said:
            yield _found(enquiry, sees)


def _seen(enquiry: Enquiry) -> Iterator[_Sees]:
    plant, net = enquiry.plant, enquiry.net
    running = ordinary(plant)
    starts = [(source.node, stop.setting.high) for source, stop in running]
    relaxed = highest(net, starts, caps_of(net, ()))
    at, settled = relaxed.at, not net.coupled or can_settle(net)
    blowing = [relief for relief in plant.reliefs if relief.opens <= at[relief.node]]
    if blowing and net.coupled and settled:
        at = highest_over_time(net, starts, ())
    for relief in blowing:
        if relief.opens <= at[relief.node]:
            way = way_to(relaxed.came, relief.node)
            start = way[0][0] if way else relief.node
            there = [stop for source, stop in running if source.node == start]
            yield _Sees(relief, way, max(there, key=lambda stop: stop.setting.high), settled)


def _found(enquiry: Enquiry, sees: _Sees) -> PathFinding:
    plant, relief, stop = enquiry.plant, sees.relief, sees.stop
    lift = plant.settings[relief.tag]["set"]
    line = line_up(enquiry.net, sees.way, relief.node)
    lowest = min((plant.parts[n] for _, _, n in sees.way), key=lambda part: part.cap, default=None)
    if lowest is not None and lowest.cap < stop.setting.high:
        what, number = lowest.tag, plant.settings[lowest.tag]["set"].text
        above = f"{what} lets {number} through to it"
        name, cure = "set", f"set {what} lower"
    else:
        what, number, name = stop.tag, stop.setting.text, stop.name
        cut_out = name == "cuts_out"
        above = f"the cut-out of {what}" if cut_out else f"what is normal for {what}"
        above += f", {number}, reaches it"
        cure = f"put the cut-out of {what} lower" if cut_out else f"run {what} at less"
    text = f"{relief.tag}, set to {lift.text}, may blow in ordinary running: {above}"
    if line.words:
        text += f", with {line.words}"
    if not sees.settled:
        text += "; not settled: too many valves turn together, check it by hand"
    return PathFinding(
        code=BLOWS,
        level=Level.WARNING,
        of=about(plant, relief.tag, lift.where),
        text=text,
        help=f"{cure}, or set {relief.tag} higher as far as the ratings allow; compare the worse ends "
        "of both tolerances",
        line=line,
        at_fault=(what,),
        nodes=nodes_of(sees.way, relief.node),
        numbers=(f"{relief.tag} set {lift.text}", f"{what} {name} {number}"),
    )
