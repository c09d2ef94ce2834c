"""Which valves a finding names: open or turned along the way, shut towards what is cut off."""

from collections.abc import Iterable
from dataclasses import dataclass

from garboard.systems.net import Net, Through, adjacency
from garboard.systems.plant import Arc
from garboard.systems.search import Way, reach

__all__ = ["LineUp", "line_up", "nodes_of"]


@dataclass(frozen=True, slots=True)
class LineUp:
    """Positions of valves, by full tag, each group in file order."""

    open: tuple[str, ...] = ()
    shut: tuple[str, ...] = ()
    turned: tuple[tuple[str, str], ...] = ()

    @property
    def tags(self) -> tuple[str, ...]:
        """Every valve it names."""
        return (*self.open, *self.shut, *(tag for tag, _ in self.turned))

    @property
    def words(self) -> str:
        """As a person says it: `SA-HV-001 shut and SA-HV-003 open`; empty where no valve is named."""
        said = [("shut", self.shut), ("open", self.open)]
        words = [f"{', '.join(tags)} {position}" for position, tags in said if tags]
        words += [f"{tag} turned to {position}" for tag, position in self.turned]
        return " and ".join(words)


def line_up(net: Net, way: Way, at: int, targets: Iterable[int] = ()) -> LineUp:
    """The positions in which a way is open, and a place is cut off from every target.

    Args:
        net: The net.
        way: The way that is open, from its source.
        at: The node at its end.
        targets: What the place is cut off from; empty: only the way is named.
    """
    on = {number for _, _, number in way}
    opened = [n for n in sorted(on) if net.is_free(n) and not net.parts[n].coupled]
    turned = [n for n in sorted(on) if net.is_free(n) and net.parts[n].coupled]
    parts = net.parts
    leaving = _shut_towards(net, way, at, set(targets))
    away = [n for n in leaving if parts[n].coupled]
    positions = [(n, _position(net, n, way)) for n in turned]
    positions += [(n, _turned_away(net, n, leaving[n])) for n in away]
    return LineUp(
        tuple(parts[n].tag for n in opened),
        tuple(parts[n].tag for n in leaving if n not in away),
        tuple((parts[n].tag, name) for n, name in sorted(positions)),
    )


def _position(net: Net, number: int, way: Way) -> str:
    """A position in which the way can pass a coupled part."""
    part = net.parts[number]
    carrying = [set(part.carrying((u, v))) for u, v, by in way if by == number]
    both = set.intersection(*carrying) or carrying[-1]
    return part.names[min(both)]


def _turned_away(net: Net, number: int, leaving: set[Arc]) -> str:
    """A position in which a coupled part passes none of some arcs; else the one that passes fewest."""
    part = net.parts[number]
    passed = [len(leaving.intersection(arcs)) for arcs in part.positions]
    return part.names[passed.index(min(passed))]


def _shut_towards(net: Net, way: Way, at: int, targets: set[int]) -> dict[int, set[Arc]]:
    """The free parts that leave what is joined with the place, towards a target, by what arcs."""
    if not targets:
        return {}
    on = {number for _, _, number in way}
    joined: list[Through] = list(net.fixed)
    joined += [(u, v, n) for n in on if net.is_free(n) for u, v in net.arcs(n)]
    inside = reach(adjacency(net.count, joined), [at])
    every = [(u, v, n) for n in range(len(net.parts)) for u, v in net.arcs(n)]
    outside = [(u, v, n) for u, v, n in every if u not in inside and v not in inside]
    towards = reach(adjacency(net.count, outside, back=True), targets - inside)
    leaving: dict[int, set[Arc]] = {}
    for u, v, n in sorted(every, key=lambda arc: arc[2]):
        if u in inside and v not in inside and v in towards and n not in on and net.is_free(n):
            leaving.setdefault(n, set()).add((u, v))
    return leaving


def nodes_of(way: Way, at: int) -> tuple[int, ...]:
    """The nodes along a way that ends at a node; the node alone where there is no way."""
    return (way[0][0], *(v for _, v, _ in way)) if way else (at,)
