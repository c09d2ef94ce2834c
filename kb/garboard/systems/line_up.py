"""Which valves a finding names: open or turned along the way, shut towards what is cut off."""

from collections import deque
from collections.abc import Iterable
from dataclasses import dataclass

from garboard.systems.net import Net
from garboard.systems.plant import Arc
from garboard.systems.search import Way

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
    inside = _joined(net, at, on)
    leaving: dict[int, set[Arc]] = {}
    for u in inside:
        for v, n in net.any_position()[u]:
            if v not in inside and n not in on and net.is_free(n):
                leaving.setdefault(n, set()).add((u, v))
    leads: dict[int, bool] = {}
    for n in sorted(leaving):
        for v in {v for _, v in leaving[n]} - leads.keys():
            leads[v] = _leads(net, v, targets - inside, inside)
    towards = {n: {arc for arc in arcs if leads[arc[1]]} for n, arcs in leaving.items()}
    return {n: towards[n] for n in sorted(towards) if towards[n]}


def _joined(net: Net, at: int, on: set[int]) -> set[int]:
    """What a place leads to by parts that never move and by those that are on the way."""
    seen, todo = {at}, [at]
    while todo:
        for v, n in net.any_position()[todo.pop()]:
            if v not in seen and (n in on or not net.is_free(n)):
                seen.add(v)
                todo.append(v)
    return seen


def _leads(net: Net, start: int, targets: set[int], avoided: set[int]) -> bool:
    """Whether a node leads to a target without what is avoided; it stops at the first."""
    seen, todo = {start}, deque([start])
    while todo:
        node = todo.popleft()
        if node in targets:
            return True
        for v, _ in net.any_position()[node]:
            if v not in seen and v not in avoided:
                seen.add(v)
                todo.append(v)
    return False


def nodes_of(way: Way, at: int) -> tuple[int, ...]:
    """The nodes along a way that ends at a node; the node alone where there is no way."""
    return (way[0][0], *(v for _, v, _ in way)) if way else (at,)
