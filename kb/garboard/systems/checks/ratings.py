"""Parts that can see more than they are rated for, as drawn or with one part failed.

Vessels are left to the question of their relief valves. With three-way valves the searches may say too much;
where it matters, every combination of them is tried.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from garboard.errors import Where
from garboard.systems.enquiry import VESSELS, Enquiry
from garboard.systems.faults import Fails, Fault, faulted, faults_of, risen
from garboard.systems.finding import Level, PathFinding, about
from garboard.systems.line_up import line_up, nodes_of
from garboard.systems.medium import Medium
from garboard.systems.net import Through
from garboard.systems.plant import Plant
from garboard.systems.search import Way
from garboard.systems.sequences import can_settle, highest_over_time
from garboard.systems.settings import Setting
from garboard.systems.telling import Worth, listed, worths_of

__all__ = ["find_over_rating"]

LEVELS = {Fails.JAMS: Level.DANGER, Fails.LEAKS: Level.WARNING}
UNKNOWN: Worth = ("more", "highest")


@dataclass(frozen=True, slots=True)
class _Rated:
    """A part or header with its rating."""

    name: str
    nodes: tuple[int, ...]
    rated: Setting
    where: Where

    def worst(self, at: Mapping[int, float]) -> int:
        """The one of its nodes where most stands."""
        return max(self.nodes, key=lambda node: at.get(node, 0.0))


@dataclass(frozen=True, slots=True)
class _Known:
    """What every finding is told with."""

    worths: Mapping[float, Worth]
    lower: Mapping[float, frozenset[int]]
    """Where the relief valves stand that keep below a rating, by rating."""


@dataclass(frozen=True, slots=True)
class _Excess:
    """More than a rating at a node, and how it gets there."""

    node: int
    pressure: float
    way: Way
    at_fault: tuple[str, ...] = ()
    fails: Fails | None = None
    settled: bool = True
    """False: too many three-way valves to try every line-up with every fault."""


def find_over_rating(enquiry: Enquiry) -> Iterator[PathFinding]:
    """Compare every rating but those of vessels with the most that can stand there."""
    plant = enquiry.plant
    rated = tuple(_rated(plant))
    if not rated:
        return
    lower = {
        limit: frozenset(relief.node for relief in enquiry.reliefs_within(limit))
        for limit in {one.rated.low for one in rated}
    }
    known = _Known(worths_of(plant), lower)
    highest = dict(enumerate(enquiry.relaxed.at))
    if any(highest[one.worst(highest)] > one.rated.low for one in rated):
        highest = dict(enumerate(enquiry.highest))
    sound = []
    for one in rated:
        node = one.worst(highest)
        if highest[node] > one.rated.low:
            way = _way(enquiry, {}, node)
            yield _finding(enquiry, known, one, _Excess(node, highest[node], way))
        else:
            sound.append(one)
    for one, excess in _with_one_fault(enquiry, sound):
        yield _finding(enquiry, known, one, excess)


def _rated(plant: Plant) -> Iterator[_Rated]:
    """Everything that has a pressure rating and is no vessel: parts in file order, then headers."""
    if plant.medium is Medium.CURRENT:
        return
    for part in plant.parts:
        rated = plant.setting(part.tag, "rated")
        if rated and part.kind not in VESSELS and _is_piping(plant, part.nodes):
            yield _Rated(part.tag, part.nodes, rated, plant.components[part.tag].where)
    for name, node in plant.headers.items():
        rated = plant.setting(name, "rated")
        if rated and _is_piping(plant, (node,)):
            yield _Rated(name, (node,), rated, rated.where)


def _is_piping(plant: Plant, nodes: Iterable[int]) -> bool:
    return any(plant.medium_at(node) is not Medium.CURRENT for node in nodes)


def _with_one_fault(enquiry: Enquiry, sound: Sequence[_Rated]) -> Iterator[tuple[_Rated, _Excess]]:
    """What one fault puts over its rating; of the faults of one sort the worst speaks, all are named."""
    found: dict[tuple[int, Fails], _Excess] = {}
    for fault, number, excess in _excesses(enquiry, sound):
        key = (number, fault.fails)
        before = found.get(key)
        if before is None:
            found[key] = excess
            continue
        worse = max(before, excess, key=lambda one: one.pressure)
        at_fault = (*before.at_fault, *excess.at_fault)
        found[key] = replace(worse, at_fault=at_fault)
    for (number, _), excess in sorted(found.items(), key=lambda item: item[0]):
        yield sound[number], excess


def _excesses(enquiry: Enquiry, sound: Sequence[_Rated]) -> Iterator[tuple[Fault, int, _Excess]]:
    """Each fault with each part it puts over its rating, by number among the sound ones."""
    net, caps, before = enquiry.net, enquiry.caps, enquiry.relaxed.at
    rows = net.any_position()
    standing: dict[int, list[int]] = {}
    for number, one in enumerate(sound):
        for node in one.nodes:
            standing.setdefault(node, []).append(number)
    relaxed = dict(enumerate(before))
    unsure = {n for n, one in enumerate(sound) if relaxed[one.worst(relaxed)] > one.rated.low}
    faults = tuple(faults_of(net))
    settled = not net.coupled or can_settle(net, len(faults))
    for fault in faults:
        up = risen(net, rows, caps, before, fault)
        suspects = {
            number
            for node, here in up.at.items()
            for number in standing.get(node, ())
            if here > sound[number].rated.low
        }
        if not suspects | unsure:
            continue
        at = up.at
        if net.coupled and settled:
            reliefs = enquiry.plant.reliefs
            at = dict(enumerate(highest_over_time(faulted(net, fault), enquiry.starts, reliefs)))
        for number in sorted(suspects | unsure):
            one = sound[number]
            node = one.worst(at)
            if at.get(node, 0.0) > one.rated.low:
                way = _way(enquiry, up.came, node)
                tags = (net.parts[fault.number].tag,)
                yield fault, number, _Excess(node, at[node], way, tags, fault.fails, settled)


def _way(enquiry: Enquiry, came: Mapping[int, Through], node: int) -> Way:
    """The way to a node: back along what a fault raised, then along the sound plant."""
    way: list[Through] = []
    step = came.get(node) or enquiry.relaxed.came[node]
    while step is not None and len(way) < enquiry.plant.count:
        way.append(step)
        step = came.get(step[0]) or enquiry.relaxed.came[step[0]]
    return tuple(reversed(way))


def _finding(enquiry: Enquiry, known: _Known, one: _Rated, excess: _Excess) -> PathFinding:
    worth, number = known.worths.get(excess.pressure, UNKNOWN)
    lower = known.lower[one.rated.low]
    lined_up = line_up(enquiry.net, excess.way, excess.node, lower)
    text = f"{one.name} is rated {one.rated.text} and can see {worth}"
    behind = "ahead of it"
    if excess.fails:
        text += f" if {listed(excess.at_fault, 'or')} {excess.fails}"
        behind = f"behind {listed(excess.at_fault)}"
    finding = PathFinding(
        code="over-rating",
        level=LEVELS[excess.fails] if excess.fails else Level.DANGER,
        of=about(enquiry.plant, one.name, one.where),
        text=text,
        help=f"fit a relief valve set to {one.rated.text} or less {behind}, "
        "or correct the rating from its plate",
        line=lined_up,
        at_fault=excess.at_fault,
        nodes=nodes_of(excess.way, excess.node),
        numbers=(f"{one.name} rated {one.rated.text}", number),
    )
    return _with_positions(finding, settled=enquiry.settled and excess.settled)


def _with_positions(finding: PathFinding, *, settled: bool) -> PathFinding:
    """The finding with what it hangs on in its words."""
    text = finding.text + (f", with {finding.line.words}" if finding.line.words else "")
    if not settled:
        text += "; too many three-way valves to try every line-up: check by hand"
    return replace(finding, text=text)
