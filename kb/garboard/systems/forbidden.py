"""States that a layout must never be in while its machines run.

A machine fills a vessel that has no relief valve for it, or one that its stop switch does not feel; a machine
that goes on pushing runs against a shut outlet without relief. What stands open is looked at in `opened.py`.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from garboard.systems.enquiry import VESSELS
from garboard.systems.medium import Medium
from garboard.systems.plant import Source
from garboard.systems.settings import NO_LIMIT
from garboard.systems.state import State, position_in
from garboard.systems.ways import Ways

__all__ = ["Fault", "Trouble", "find_forbidden", "gathered"]

TAKES = ("receiver", "tank", "consumer", "compartment", "sea", "relief valve", "bursting disc")
"""What takes what a machine delivers."""
FEW = 4
"""So many valves of unknown position are named."""


class Fault(StrEnum):
    """What is wrong with a state."""

    UNRELIEVED = "fills a vessel without relief"
    UNSEEN = "fills a vessel unseen by its switch"
    SHUT_IN = "runs against a shut outlet"
    REACHED = "pressure can reach what stands open"
    OPENED = "opened while it may hold pressure"


@dataclass(frozen=True, slots=True)
class Trouble:
    """One thing wrong with one state."""

    fault: Fault
    about: str
    """Full tag of the vessel, machine or part in danger."""
    by: str
    """Full tag of the machine; empty where none is the cause."""
    text: str
    """What is, lower case, no full stop: to be said after who did it."""
    unknown: tuple[str, ...] = ()
    """Valves it hangs on that nobody said the position of."""
    open: tuple[str, ...] = ()
    """Valves that stand open on the way, as far as they are known."""

    @property
    def cause(self) -> tuple[Fault, str, str]:
        """What makes it the same trouble in another state, however it is told."""
        return self.fault, self.about, self.by


def find_forbidden(ways: Ways, state: State) -> Iterator[Trouble]:
    """Everything wrong with a settled state.

    Args:
        ways: The layout.
        state: The state, settled.
    """
    for source in ways.live(state) if ways.plant.medium is not Medium.CURRENT else ():
        yield from _unrelieved(ways, state, source)
        if source.machine:
            yield from _unseen(ways, state, source)
        if source.displacement and _shut_in(ways, state, source):
            text = f"{source.tag} runs, and its outlet reaches neither a relief valve nor a way out"
            unknown = _unknown_beside(ways, state, {source.node})
            yield Trouble(Fault.SHUT_IN, source.tag, source.tag, text, unknown)


def gathered(troubles: Iterable[Trouble]) -> Iterator[Trouble]:
    """Troubles as they are told: one for each machine and fault, naming every vessel it is so with."""
    alike: dict[tuple[Fault, str], list[Trouble]] = {}
    for one in troubles:
        alike.setdefault((one.fault, one.by or one.about), []).append(one)
    for first, *others in alike.values():
        unknown = tuple(dict.fromkeys(tag for one in (first, *others) for tag in one.unknown))
        text = first.text
        if others:
            text = f"{text}; so with {', '.join(one.about for one in others)}"
        if unknown and first.fault not in (Fault.OPENED, Fault.REACHED):
            stand = "stand" if len(unknown) > 1 else "stands"
            text = f"{text}; nobody said how {', '.join(unknown)} {stand}"
        yield replace(first, text=text, unknown=unknown)


def _unrelieved(ways: Ways, state: State, source: Source) -> Iterator[Trouble]:
    plant = ways.plant
    outside: dict[float, set[int]] = {}
    for vessel in plant.of_kind(*VESSELS):
        rated = plant.setting(vessel.tag, "rated")
        if rated is None or source.makes <= rated.low:
            continue
        if rated.low not in outside:
            kept = ways.must_reach(state, _reliefs_within(ways, state, rated.low))
            outside[rated.low] = ways.reached_outside(state, source.node, kept)
        if outside[rated.low] & set(vessel.nodes):
            makes = plant.setting(source.tag, "makes")
            most = f" ({makes.text})" if makes and source.makes < NO_LIMIT else ""
            text = (
                f"{source.tag}{most} can fill {vessel.tag}, rated {rated.text}, with no relief"
                " valve at or below that"
            )
            unknown = _unknown_beside(ways, state, set(vessel.nodes))
            yield Trouble(Fault.UNRELIEVED, vessel.tag, source.tag, text, unknown)


def _reliefs_within(ways: Ways, state: State, limit: float) -> set[int]:
    """Where the relief valves stand that lift at or below a pressure, but for those taken out."""
    numbers = ways.plant.numbers
    return {
        relief.node
        for relief in ways.plant.reliefs
        if relief.lifts <= limit and numbers[relief.tag] not in state.opened
    }


def _unseen(ways: Ways, state: State, source: Source) -> Iterator[Trouble]:
    plant = ways.plant
    stopping = [part for part in plant.parts if source.tag in plant.components[part.tag].stops]
    if not stopping:
        return
    feeling = (part for part in stopping if plant.numbers[part.tag] not in state.opened)
    seen = ways.must_reach(state, {node for part in feeling for node in part.nodes})
    outside = ways.reached_outside(state, source.node, seen)
    named = ", ".join(part.tag for part in stopping)
    for vessel in plant.of_kind("receiver"):
        if outside & set(vessel.nodes):
            text = f"{source.tag} fills {vessel.tag}, and {named} does not feel it"
            unknown = _unknown_beside(ways, state, set(vessel.nodes))
            yield Trouble(Fault.UNSEEN, vessel.tag, source.tag, text, unknown)


def _shut_in(ways: Ways, state: State, source: Source) -> bool:
    taking = {
        part.nodes[0]
        for part in ways.plant.of_kind(*TAKES)
        if ways.plant.numbers[part.tag] not in state.opened
    }
    out = {*taking, *ways.air, *ways.open_nodes(state)}
    return source.node not in ways.must_reach(state, out)


def _unknown_beside(ways: Ways, state: State, nodes: set[int]) -> tuple[str, ...]:
    """The valves of unknown position between which some nodes stand."""
    around = ways.must_reach(state, nodes) | nodes
    found = [
        part.tag
        for number, part in enumerate(ways.plant.parts)
        if position_in(state, number) is None and around & set(part.nodes)
    ]
    return tuple(found[:FEW])
