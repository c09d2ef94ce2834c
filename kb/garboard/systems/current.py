"""How much current can flow into one place: a maximum flow, because currents add where pressures do not.

Two fuses of 100 A on one bus let 200 A into what hangs on it. Every switch is made; every fuse and breaker
lets through its rating, at the high end of its tolerance.
"""

from collections import deque
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import inf

from garboard.systems.net import Net, Through
from garboard.systems.search import Choice

__all__ = ["Circuit", "Flow", "bounds", "conducting"]

SOURCE = -1
"""Number of the node that feeds all sources, and of the part that leads from it to each."""


@dataclass(frozen=True, slots=True)
class Flow:
    """The most that can flow into a place."""

    amperes: float
    """`inf` where nothing limits it."""
    limits: tuple[int, ...] = ()
    """Numbers of the parts that limit it together, nearest to the place; empty where nothing does."""
    sources: tuple[int, ...] = ()
    """Nodes of the sources that limit it because they make no more."""
    carrying: tuple[int, ...] = ()
    """Numbers of the parts that the current runs through."""


def conducting(net: Net, choice: Choice | None = None) -> list[Through]:
    """Every way for current, all switches made.

    Args:
        net: The net.
        choice: Position of changeovers; those not in it stand in all positions at once.
    """
    arcs = [*net.fixed, *net.closable]
    for number in net.coupled:
        held = (choice or {}).get(number)
        passing = net.arcs(number) if held is None else net.parts[number].positions[held]
        arcs += [(u, v, number) for u, v in passing]
    return arcs


class Circuit:
    """Where current can flow, and how much at most; it does not change as it is asked."""

    def __init__(self, net: Net, arcs: Iterable[Through], sources: Mapping[int, float]) -> None:
        """Start.

        Args:
            net: The net.
            arcs: The ways, as `conducting` gives them.
            sources: The most that is made, by node [A].
        """
        self.room: dict[Through, float] = {}
        self.into: dict[int, list[Through]] = {}
        for node, makes in sources.items():
            self._add((SOURCE, node, SOURCE), makes)
        for arc in arcs:
            self._add(arc, net.parts[arc[2]].cap)

    def _add(self, arc: Through, amperes: float) -> None:
        """One way; and backwards, along which what was sent can be taken back."""
        u, v, number = arc
        for one, here in ((arc, amperes), ((v, u, number), 0.0)):
            if one not in self.room:
                self.room[one] = 0.0
                self.into.setdefault(one[1], []).append(one)
            self.room[one] += here

    def most_into(self, place: int, without: int | None = None) -> Flow:
        """The most that all sources together can drive into a node [A].

        Looked for from the place backwards, so that only what lies within the fuses around it is touched.

        Args:
            place: The node.
            without: Number of a part that is taken out.
        """
        sent: dict[Through, float] = {}
        total = 0.0
        while True:
            on = self._search(place, sent, without)
            if SOURCE not in on:
                break
            way = _way(on, place)
            amperes = min(self.room[arc] - sent.get(arc, 0.0) for arc in way)
            if amperes == inf:
                return Flow(inf, carrying=tuple(n for *_, n in way if n != SOURCE))
            total += amperes
            for u, v, number in way:
                sent[u, v, number] = sent.get((u, v, number), 0.0) + amperes
                sent[v, u, number] = sent.get((v, u, number), 0.0) - amperes
        cut = [arc for node in on for arc in self.into.get(node, ()) if arc[0] not in on]
        cut = [arc for arc in cut if arc[2] != without and self.room[arc] > 0]
        return Flow(
            total,
            tuple(sorted({number for *_, number in cut if number != SOURCE})),
            tuple(sorted(node for _, node, number in cut if number == SOURCE)),
            tuple(sorted({n for (*_, n), here in sent.items() if here > 0 and n != SOURCE})),
        )

    def _search(
        self, place: int, sent: Mapping[Through, float], without: int | None
    ) -> dict[int, Through | None]:
        """The next step from each node towards a place, along what has room; until a source is met."""
        on: dict[int, Through | None] = {place: None}
        todo = deque([place])
        while todo and SOURCE not in on:
            for arc in self.into.get(todo.popleft(), ()):
                free = self.room[arc] - sent.get(arc, 0.0) > 0
                if free and arc[0] not in on and arc[2] != without:
                    on[arc[0]] = arc
                    todo.append(arc[0])
        return on


def _way(on: Mapping[int, Through | None], place: int) -> list[Through]:
    """The way from the sources to a place."""
    way = []
    step = on[SOURCE]
    while step is not None:
        way.append(step)
        step = on[step[1]] if step[1] != place else None
    return way


def bounds(net: Net, arcs: Sequence[Through], sources: Mapping[int, float]) -> list[float]:
    """At most how much can flow into each node: all its zone lets in, in one pass for all nodes [A].

    A zone is what no fuse parts. Never too low, often too high: what it clears needs no search.

    Args:
        net: The net.
        arcs: The ways, as `conducting` gives them.
        sources: The most that is made, by node [A].
    """
    zone = _zones(net, arcs)
    made = [0.0] * net.count
    for node, makes in sources.items():
        made[zone[node]] += makes
    between: dict[int, tuple[int, int]] = {
        number: (zone[u], zone[v])
        for u, v, number in arcs
        if net.parts[number].cap < inf and zone[u] != zone[v]
    }
    edges: dict[int, set[int]] = {}
    for number, ends in between.items():
        for end in ends:
            edges.setdefault(end, set()).add(number)
    dead = deque(end for end, at in edges.items() if len(at) == 1 and not made[end])
    while dead:
        end = dead.popleft()
        for number in edges.pop(end, set()):
            other = sum(between[number]) - end
            edges.get(other, set()).discard(number)
            made[end] += net.parts[number].cap
            if len(edges.get(other, ())) == 1 and not made[other]:
                dead.append(other)
    for end, at in edges.items():
        made[end] += sum(net.parts[number].cap for number in at)
    return [made[zone[node]] for node in range(net.count)]


def _zones(net: Net, arcs: Iterable[Through]) -> list[int]:
    """The zone of each node, by the least of its nodes."""
    zone = list(range(net.count))

    def root(node: int) -> int:
        while zone[node] != node:
            zone[node] = zone[zone[node]]
            node = zone[node]
        return node

    for u, v, number in arcs:
        if net.parts[number].cap == inf:
            one, other = root(u), root(v)
            zone[max(one, other)] = min(one, other)
    return [root(node) for node in range(net.count)]
