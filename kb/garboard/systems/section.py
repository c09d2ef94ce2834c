"""The stretch that is cut off for a piece of work, and the valves that cut it off.

Outwards from the work, through everything that is no isolation: check valves, solenoid valves, reducing
valves and standing machines. What can be locked ends the stretch. It is a point where anything live
could come from beyond it, by whatever position of all other valves; else it is left as it stands. A valve
that turns is a point only if one of its positions joins the work to nothing live; otherwise it is
passed, and what lies beyond each of its ports is shut.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass

from garboard.systems.leaks import Held, Leaks
from garboard.systems.plant import Arc, Part
from garboard.systems.stores import Store

__all__ = ["Section", "section_of"]


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch with its ends."""

    work: tuple[int, ...]
    """Numbers of the parts that are worked on."""
    nodes: frozenset[int]
    held: Held
    """The points: their numbers, and the position in which they cut off."""
    idle: tuple[int, ...]
    """What can be locked and bounds it, with nothing live beyond: drains, vents, the way to users."""
    passed: frozenset[int]
    """What could be locked and is no end of it: the work itself, valves that turn but cut nothing off."""


def section_of(
    leaks: Leaks, work: Iterable[int], stores: Iterable[Store], passing: Collection[int] = ()
) -> Section:
    """The stretch round a piece of work, up to the first parts that can be locked.

    Args:
        leaks: The plant.
        work: Numbers of the parts that are worked on.
        stores: What counts as live, where it is not inside.
        passing: Numbers of parts that do not end it although they could be locked: for the second
            block, those of the first.
    """
    at_work = tuple(sorted(set(work)))
    parts = leaks.plant.parts
    passed = {*at_work, *passing}
    known = tuple(stores)
    while True:
        nodes = _stretch(leaks, at_work, passed)
        outside = [n for one in known if nodes.isdisjoint(one.nodes) for n in one.nodes]
        live = leaks.spread(outside, closed=nodes)
        ends = {number: _cutting(leaks, number, nodes, outside) for number in _ends(leaks, nodes)}
        through = {number for number, at in ends.items() if at is None} - passed
        if not through:
            crossing = [n for n in ends if n not in passed and _crosses(parts[n], nodes, live)]
            held = {number: at for number in crossing if (at := ends[number]) is not None}
            idle = tuple(number for number in ends if number not in passed and number not in held)
            return Section(at_work, frozenset(nodes), held, idle, frozenset(passed))
        passed |= through


def _stretch(leaks: Leaks, work: Collection[int], passed: Collection[int]) -> set[int]:
    parts = leaks.plant.parts
    return leaks.spread(leaks.nodes_of(work), passes=lambda n: n in passed or not parts[n].lockable)


def _ends(leaks: Leaks, nodes: Collection[int]) -> list[int]:
    """What can be locked and has the stretch on one hand and something else on the other."""
    parts = leaks.plant.parts
    met = sorted({number for node in nodes for number in leaks.at[node]})
    return [n for n in met if parts[n].lockable and not set(parts[n].nodes) <= set(nodes)]


def _crosses(part: Part, nodes: Collection[int], live: Collection[int]) -> bool:
    """Whether any position of a part joins the stretch with something live."""
    return any(_joins(arcs, nodes, live) for arcs in part.positions)


def _cutting(
    leaks: Leaks, number: int, nodes: Collection[int], outside: Collection[int]
) -> int | None:
    """The position in which a part joins a stretch to nothing live; None where it has none.

    Of what shuts: shut. Of what turns: one that joins the stretch with nothing at all, else the usual one if
    it serves.
    """
    part = leaks.plant.parts[number]
    if not part.coupled:
        return part.positions.index(())
    every = range(len(part.positions))
    apart = [
        at for at in every if not any((u in nodes) != (v in nodes) for u, v in part.positions[at])
    ]
    order: list[int] = [*apart, part.usual, *every]
    for at in order:
        live = leaks.spread(outside, held={number: at}, closed=nodes)
        if not _joins(part.positions[at], nodes, live):
            return at
    return None


def _joins(arcs: Iterable[Arc], nodes: Collection[int], live: Collection[int]) -> bool:
    return any((u in nodes and v in live) or (v in nodes and u in live) for u, v in arcs)
