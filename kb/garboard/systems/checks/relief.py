"""Whether every vessel keeps a relief valve that is set low enough, whatever valve is moved.

A vessel is in danger where a source that makes more than its rating can feed it by a way of which no
node is always joined to such a relief valve. Shut in where nothing feeds it, it still warms up: a warning.
A filter is asked at its inlet, because what it holds back stands there.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.systems.checks.below import Below, by_rating
from garboard.systems.checks.wording import secure
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.joined import first_joined
from garboard.systems.line_up import LineUp, line_up, nodes_of
from garboard.systems.plant import Part, Relief
from garboard.systems.search import Way, way_to
from garboard.systems.settings import NO_LIMIT
from garboard.systems.telling import listed

__all__ = ["find_relief_above_rating", "find_relief_cut_off"]

CUT_OFF = "relief-cut-off"
ABOVE_RATING = "relief-above-rating"


def find_relief_above_rating(enquiry: Enquiry) -> Iterator[PathFinding]:
    """The vessels whose own relief valve is set above their rating, and that have no lower one for certain."""
    joined = _Joined(enquiry)
    for below, vessels in by_rating(enquiry):
        for vessel in vessels:
            relief = joined.too_high(below, vessel)
            if relief is not None:
                yield _set_too_high(enquiry, vessel, relief)


def find_relief_cut_off(enquiry: Enquiry) -> Iterator[PathFinding]:
    """The vessels that can lose every relief valve set low enough for them."""
    joined = _Joined(enquiry)
    for below, vessels in by_rating(enquiry):
        for vessel in vessels if below.above else ():
            node = enquiry.plant.node(vessel.tag)
            if node in below.always:
                if vessel.ports.get("in", node) not in below.surely and node in below.reached:
                    yield _through_what_chokes(below, vessel)
            elif joined.too_high(below, vessel) is not None:
                continue
            elif node in below.fed.nodes:
                yield _overfilled(below, vessel)
            elif node in below.reached:
                yield _shut_in(below, vessel)


class _Joined:
    """The relief valve of the lowest setting that each node is joined to by parts that never move."""

    def __init__(self, enquiry: Enquiry) -> None:
        known = (each for each in enquiry.plant.reliefs if each.lifts < NO_LIMIT)
        self.reliefs = sorted(known, key=lambda each: each.lifts)
        nodes = [each.node for each in self.reliefs]
        one_way = {number for number, part in enumerate(enquiry.plant.parts) if part.one_way}
        self.enquiry = enquiry
        self.there = first_joined(enquiry.net, nodes)
        self.both_ways = first_joined(enquiry.net, nodes, out=one_way)

    def too_high(self, below: Below, vessel: Part) -> Relief | None:
        """The relief valve of a vessel where it is set above the rating and no lower one is certain.

        One that stands beyond a check valve belongs to another vessel, unless this one can be overfilled.
        """
        node = self.enquiry.plant.node(vessel.tag)
        if node in below.always:
            return None
        found = self.there[node] if node in below.fed.nodes else self.both_ways[node]
        return None if found is None else self.reliefs[found]


def _set_too_high(enquiry: Enquiry, vessel: Part, relief: Relief) -> PathFinding:
    plant = enquiry.plant
    lift, rated = plant.settings[relief.tag]["set"], plant.settings[vessel.tag]["rated"]
    most = f"{rated.text} or less"
    if "+/-" in lift.text + rated.text:
        most += " at the worst of both tolerances"
    return PathFinding(
        code=ABOVE_RATING,
        level=Level.DANGER,
        of=about(plant, vessel.tag, lift.where),
        text=f"{relief.tag} is set to {lift.text}, {vessel.tag}, always joined to it and to no lower "
        f"one, is rated {rated.text}",
        help=f"set it to {most}, or correct the rating of {vessel.tag} from its plate",
        at_fault=(relief.tag,),
        nodes=(relief.node, plant.node(vessel.tag)),
        numbers=(f"{relief.tag} set {lift.text}", f"{vessel.tag} rated {rated.text}"),
    )


def _overfilled(below: Below, vessel: Part) -> PathFinding:
    """A source above the rating feeds the vessel by nodes that are joined to no relief valve low enough."""
    plant, node = below.enquiry.plant, below.enquiry.plant.node(vessel.tag)
    rated = plant.settings[vessel.tag]["rated"].text
    way = way_to(below.fed.came, node)
    source = next(each for each in below.above if each.node == (way[0][0] if way else node))
    makes = plant.setting(source.tag, "makes")
    made = f"which makes {makes.text}" if makes else "of which no limit is recorded"
    jammed = _jammed(below, way)
    cause = _cause(below, vessel, way)
    text = f"{source.tag}, {made}, can feed {vessel.tag}, rated {rated}, "
    text += "".join(f"through {tag} when that jams open, " for tag in jammed)
    text += f"while no relief valve set to that or less is joined to it{cause.words}"
    if not below.fed.settled:
        text += "; not settled: too many valves turn together, check it by hand"
    return PathFinding(
        code=CUT_OFF,
        level=Level.DANGER,
        of=about(plant, vessel.tag),
        text=text,
        help=cause.help,
        line=cause.line,
        at_fault=(*jammed, *cause.at_fault),
        nodes=nodes_of(way, node),
        numbers=(
            f"{vessel.tag} rated {rated}",
            f"{source.tag} makes {makes.text if makes else 'not recorded'}",
        ),
    )


def _shut_in(below: Below, vessel: Part) -> PathFinding:
    """It can be cut off from them all, but what feeds it is cut off then, or held down elsewhere."""
    plant = below.enquiry.plant
    rated = plant.settings[vessel.tag]["rated"].text
    cause = _cause(below, vessel, ())
    text = f"{vessel.tag}, rated {rated}, can stand full with no relief valve set to that or less "
    text += f"joined to it{cause.words}; nothing that makes more can feed it then, "
    text += "but heat can raise what is in it"
    return PathFinding(
        code=CUT_OFF,
        level=Level.WARNING,
        of=about(plant, vessel.tag),
        text=text,
        help=cause.help,
        line=cause.line,
        at_fault=cause.at_fault,
        nodes=(plant.node(vessel.tag),),
        numbers=(f"{vessel.tag} rated {rated}",),
    )


def _through_what_chokes(below: Below, vessel: Part) -> PathFinding:
    """Joined to one for certain, but by a part that may stick shut or choke."""
    plant = below.enquiry.plant
    rated = plant.settings[vessel.tag]["rated"].text
    node = plant.node(vessel.tag)
    found = below.nearest(below.softest, vessel.ports.get("in", node))
    tags = tuple(plant.parts[number].tag for number in found[1]) if found else ()
    what = listed(tags) or "parts"
    text = f"{vessel.tag}, rated {rated}, reaches a relief valve set to that or less only through "
    text += f"{what}, which can stick or choke"
    cure = f"join a relief valve set to {rated} or less straight to {vessel.tag}, "
    cure += f"or take {what} out of the way to the one there is"
    return PathFinding(
        code=CUT_OFF,
        level=Level.WARNING,
        of=about(plant, vessel.tag),
        text=text,
        help=cure,
        at_fault=tags,
        nodes=(node,),
        numbers=(f"{vessel.tag} rated {rated}",),
    )


@dataclass(frozen=True, slots=True)
class _Cause:
    """What parts a vessel from every relief valve that is set low enough."""

    line: LineUp
    words: str
    """They follow `no relief valve is joined to it`."""
    help: str
    at_fault: tuple[str, ...] = ()


def _cause(below: Below, vessel: Part, way: Way) -> _Cause:
    """A valve that is shut, a part that passes nothing on that way, or that there is none."""
    plant, net, node = below.enquiry.plant, below.enquiry.net, below.enquiry.plant.node(vessel.tag)
    rated = plant.settings[vessel.tag]["rated"].text
    own = f"join a relief valve set to {rated} or less to {vessel.tag} with nothing between that shuts"
    found = below.nearest(below.barriers, node)
    if found and not found[1]:
        line = line_up(net, way, node, below.nodes)
        return _Cause(line, _with(line), f"{own}, or {secure(below.enquiry, line)}")
    line = line_up(net, way, node)
    unset = _not_recorded(below, node)
    if unset:
        words = f"{_with(line)}; {unset} is, but its setting is not recorded"
        return _Cause(
            line, words, f"record the setting of {unset} from its plate, or {own}", (unset,)
        )
    if found is None:
        return _Cause(line, _with(line), f"{own}, or correct its rating from the plate")
    relief, between = found
    tags = tuple(plant.parts[number].tag for number in between)
    turns = all(plant.parts[number].carries_relief for number in between)
    other = f"correct the drawing if {listed(tags)} stands the other way round"
    other = other if turns else "correct its rating from the plate"
    passes = "lets nothing through that way" if turns else "relieves nothing"
    words = f"{_with(line)}: {listed(tags)} between it and {relief.tag} {passes}"
    return _Cause(line, words, f"{own}, or {other}", tags)


def _with(line: LineUp) -> str:
    return f", with {line.words}" if line.words else ""


def _jammed(below: Below, way: Way) -> tuple[str, ...]:
    """The reducing valves along a way that hold the pressure below the rating while they work."""
    parts = below.enquiry.plant.parts
    tags = (parts[number].tag for _, _, number in way if parts[number].cap <= below.limit)
    return tuple(dict.fromkeys(tags))


def _not_recorded(below: Below, node: int) -> str:
    """A relief valve that is always joined but has no setting, so that it cannot be counted; else empty."""
    enquiry = below.enquiry
    for relief in enquiry.plant.reliefs:
        if relief.lifts == NO_LIMIT and node in enquiry.always([relief.node]):
            return relief.tag
    return ""
