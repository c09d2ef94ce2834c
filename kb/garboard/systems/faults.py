"""One part fails at a time: a reducing valve jams wide open, a check valve leaks back.

A fault only adds ways, so nothing falls: from the finished search only what rises is followed, which touches
little and equals a whole search for each fault. Relief valves stay what they were in it: what leaks back
is no way to a relief valve.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from heapq import heappop, heappush

from garboard.systems.behaviour import BEHAVIOURS, Passes
from garboard.systems.net import Net, Row, Through
from garboard.systems.plant import Arc, Part
from garboard.systems.settings import NO_LIMIT

__all__ = ["Fails", "Fault", "Risen", "faulted", "faults_of", "risen"]


class Fails(StrEnum):
    """How a part fails, in words."""

    JAMS = "jams wide open"
    LEAKS = "leaks back"


@dataclass(frozen=True, slots=True)
class Fault:
    """One part that fails."""

    number: int
    """Of the part."""
    fails: Fails
    arcs: tuple[Arc, ...]
    """What it passes through its fault: without its cap, or the wrong way."""


@dataclass(frozen=True, slots=True)
class Risen:
    """What one fault raises."""

    at: Mapping[int, float]
    """By node, where it is more than without the fault [Pa above the atmosphere]."""
    came: Mapping[int, Through]
    """The last step of the way to each of them."""


def faults_of(net: Net) -> Iterator[Fault]:
    """Every fault that is looked at, in file order."""
    for number, part in enumerate(net.parts):
        passes = BEHAVIOURS[part.kind].passes if part.kind in BEHAVIOURS else None
        arcs = net.arcs(number)
        if part.cap < NO_LIMIT and passes is Passes.CAPPED:
            yield Fault(number, Fails.JAMS, arcs)
        elif passes in (Passes.ONE_WAY, Passes.STOP_CHECK):
            yield Fault(number, Fails.LEAKS, tuple((v, u) for u, v in arcs))


def risen(
    net: Net, rows: Sequence[Row], caps: Sequence[float], before: Sequence[float], fault: Fault
) -> Risen:
    """What rises with one fault, all else as it was.

    Where the fault leads from, nothing rises: what came back there would first have left from there.

    Args:
        net: The net.
        rows: Where each node leads, every part in whatever position passes.
        caps: By node, the lowest relief setting it always reaches, without the fault.
        before: By node, the highest pressure without the fault.
        fault: The fault.
    """
    at: dict[int, float] = {}
    came: dict[int, Through] = {}
    heap: list[tuple[float, int]] = []

    def lead(u: int, v: int, number: int, here: float) -> None:
        there = min(here, caps[v])
        if there > at.get(v, before[v]):
            at[v] = there
            came[v] = (u, v, number)
            heappush(heap, (-there, v))

    for u, v in fault.arcs:
        lead(u, v, fault.number, before[u])
    while heap:
        lost, node = heappop(heap)
        if -lost < at[node]:
            continue
        for other, number in rows[node]:
            lead(node, other, number, min(-lost, net.parts[number].cap))
    return Risen(at, came)


def faulted(net: Net, fault: Fault) -> Net:
    """The net with the fault in it, for a whole search over sequences of line-ups."""
    by = net.parts[fault.number]
    leak = Part(by.tag, by.kind, {}, (fault.arcs,), carries_relief=False)
    return Net(net.count, (*net.parts, leak), net.held, net.vented)
