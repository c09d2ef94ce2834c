"""Pressure that is carried from one line-up to the next by valves which turn.

A volume remembers: a three-way valve can carry stored pressure from one position to another, so one
line-up at a time is too optimistic. The relaxed search of `search.highest` is never too low over any
sequence; only where it reports something are the combinations of the coupled parts tried, each with
what was reached before kept as sources, until nothing grows. That is exact over sequences of any length.
"""

from collections.abc import Collection, Iterable, Sequence
from itertools import product
from math import prod

from garboard.systems.net import Net
from garboard.systems.plant import Relief
from garboard.systems.search import Choice, caps_of, highest

__all__ = ["MOST_COMBINATIONS", "can_settle", "fed_over_time", "highest_over_time"]

MOST_COMBINATIONS = 4096
"""Above it the question is not settled here: in general it is as hard as any in NP."""
MOST_VISITS = 100_000
"""Parts visited, times combinations: a large plant is settled with fewer of them, so that it takes seconds."""
FED = 1.0


def can_settle(net: Net, times: int = 1) -> bool:
    """Whether the combinations of the coupled parts are few enough to be tried, once or several times."""
    combinations = prod(len(net.parts[number].positions) for number in net.coupled)
    visits = combinations * len(net.parts) * times
    return combinations <= MOST_COMBINATIONS and visits <= MOST_VISITS


def highest_over_time(
    net: Net, starts: Sequence[tuple[int, float]], reliefs: Sequence[Relief]
) -> list[float]:
    """The most that can stand at each node over any sequence of line-ups [Pa above the atmosphere].

    Args:
        net: The net; `can_settle` says whether it may be asked.
        starts: Nodes where pressure is made, with how much.
        reliefs: The relief valves.
    """
    choices = [
        dict(zip(net.coupled, positions, strict=True))
        for positions in product(*(range(len(net.parts[n].positions)) for n in net.coupled))
    ]
    caps = [caps_of(net, reliefs, choice) for choice in choices]
    best = [0.0] * net.count
    grown = True
    while grown:
        grown = False
        for choice, cap in zip(choices, caps, strict=True):
            grown |= _raise(net, choice, cap, starts, best)
    return best


def _raise(
    net: Net,
    choice: Choice,
    caps: Sequence[float],
    starts: Iterable[tuple[int, float]],
    best: list[float],
) -> bool:
    kept = [(node, here) for node, here in enumerate(best) if here > 0]
    found = highest(net, [*starts, *kept], caps, choice).at
    grown = False
    for node, here in enumerate(found):
        if here > best[node]:
            best[node] = here
            grown = True
    return grown


def fed_over_time(net: Net, starts: Iterable[int], targets: Collection[int]) -> set[int]:
    """The nodes that can come to be fed while they reach no target, over any sequence of line-ups."""
    guards = [Relief("", node, None, 0.0, 0.0) for node in sorted(targets)]
    best = highest_over_time(net, [(node, FED) for node in starts], guards)
    return {node for node, here in enumerate(best) if here > 0}
