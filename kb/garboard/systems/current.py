"""How much current can flow into one place: a maximum flow, because currents add where pressures do not.

Two fuses of 100 A on one bus let 200 A into what hangs on it. Every switch is made; every fuse and breaker
lets through its rating, at the high end of its tolerance.
"""

from collections import deque
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import inf

from garboard.systems.net import Net, Through
from garboard.systems.search import Choice

__all__ = ["Flow", "bounds", "conducting", "most_into"]

SOURCE = -1
"""Number of the part that a source counts as in a flow, and of the node that feeds them all."""


@dataclass(frozen=True, slots=True)
class Flow:
    """The most that can flow into a place."""

    amperes: float
    """`inf` where nothing limits it."""
    limits: tuple[int, ...] = ()
    """Numbers of the parts that limit it together: the narrowest cut; empty where nothing does."""
    sources: tuple[int, ...] = ()
    """Nodes of the sources that limit it because they make no more."""
    carrying: tuple[int, ...] = ()
    """Numbers of the parts that the current runs through."""


def conducting(net: Net, out: Collection[int] = (), choice: Choice | None = None) -> list[Through]:
    """Every way for current, all switches made.

    Args:
        net: The net.
        out: Numbers of parts that are taken out.
        choice: Position of changeovers; those not in it stand in all positions at once.
    """
    arcs = [arc for arc in (*net.fixed, *net.closable) if arc[2] not in out]
    for number in net.coupled:
        if number in (choice or {}):
            passing = net.parts[number].positions[(choice or {})[number]]
        else:
            passing = net.arcs(number)
        arcs += [(u, v, number) for u, v in passing if number not in out]
    return arcs


def most_into(net: Net, arcs: Iterable[Through], sources: Mapping[int, float], place: int) -> Flow:
    """The most that all sources together can drive into a node [A].

    Args:
        net: The net.
        arcs: The ways, as `conducting` gives them.
        sources: The most that is made, by node [A].
        place: The node.
    """
    return _Flowing(net, arcs, sources).into(place)


class _Flowing:
    """What is left of every way, as current is sent along it."""

    def __init__(self, net: Net, arcs: Iterable[Through], sources: Mapping[int, float]) -> None:
        self.net = net
        self.sources = sources
        self.left: dict[Through, float] = {}
        self.sent: dict[Through, float] = {}
        self.rows: dict[int, list[Through]] = {}
        for node, makes in sources.items():
            self.add((SOURCE, node, SOURCE), makes)
        for arc in arcs:
            self.add(arc, net.parts[arc[2]].cap)
        self.room = dict(self.left)

    def add(self, arc: Through, amperes: float) -> None:
        """One way, and the same backwards for what is sent along it."""
        u, v, number = arc
        for one, here in ((arc, amperes), ((v, u, number), 0.0)):
            if one not in self.left:
                self.left[one] = 0.0
                self.rows.setdefault(one[0], []).append(one)
            self.left[one] += here

    def into(self, place: int) -> Flow:
        """Send along shortest ways until none has room."""
        total = 0.0
        while True:
            came = self.search(place)
            if place not in came:
                break
            way = _way(came, place)
            amperes = min(self.left[arc] for arc in way)
            if amperes == inf:
                return Flow(inf, carrying=tuple(n for *_, n in way if n != SOURCE))
            total += amperes
            for u, v, number in way:
                self.left[u, v, number] -= amperes
                self.left[v, u, number] += amperes
                self.sent[u, v, number] = self.sent.get((u, v, number), 0.0) + amperes
                self.sent[v, u, number] = self.sent.get((v, u, number), 0.0) - amperes
        cut = [arc for arc in self.left if arc[0] in came and arc[1] not in came and self.room[arc]]
        used = {number for (_, _, number), amperes in self.sent.items() if amperes > 0}
        return Flow(
            total,
            tuple(sorted({n for *_, n in cut if n != SOURCE})),
            tuple(sorted(v for _, v, n in cut if n == SOURCE)),
            tuple(sorted(used - {SOURCE})),
        )

    def search(self, place: int) -> dict[int, Through | None]:
        """The last step of a shortest way with room to each node, until a place is reached."""
        came: dict[int, Through | None] = {SOURCE: None}
        todo = deque([SOURCE])
        while todo and place not in came:
            for arc in self.rows.get(todo.popleft(), ()):
                if arc[1] not in came and self.left[arc] > 0:
                    came[arc[1]] = arc
                    todo.append(arc[1])
        return came


def _way(came: Mapping[int, Through | None], place: int) -> list[Through]:
    way = []
    step = came[place]
    while step is not None:
        way.append(step)
        step = came[step[0]]
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
