"""The four searches that every check rests on.

A, always reaches: the nodes that reach a target whatever the valves. B, highest: the most that can
stand at each node over all positions. C, fewest barriers. D, reach. What is claimed of them is proved in the
tests by trying every position of thousands of random systems.

A is exact without coupled parts, since all closable parts shut is then the worst state; with
them it never says "always" wrongly (it is over-cautious only where one part is met from two ports). B is exact
without coupled parts: in any state the cap of a node is at most the one used here; and the best way, its valves
open and all others shut, is a state in which nothing else holds it lower.
"""

from collections import deque
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush

from garboard.systems.net import Net, Row, Through, adjacency
from garboard.systems.plant import Arc, Relief
from garboard.systems.settings import NO_LIMIT

__all__ = [
    "Always",
    "Barriers",
    "Highest",
    "Way",
    "always_reaches",
    "caps_of",
    "fed_outside",
    "fewest_barriers",
    "highest",
    "reach",
    "two_nearest",
    "way_to",
]

Way = tuple[Through, ...]
"""A way through the plant: from node, to node, number of the part between."""
_Backward = tuple[
    list[list[int]], list[list[tuple[int, int, int]]], dict[tuple[int, int], set[int]]
]
Choice = Mapping[int, int]
"""Position of each coupled part, by number; empty: free."""


def reach(rows: Sequence[Row], starts: Iterable[int]) -> set[int]:
    """D. Every node that some starts lead to, themselves included."""
    seen = set(starts)
    todo = list(seen)
    while todo:
        for node, _ in rows[todo.pop()]:
            if node not in seen:
                seen.add(node)
                todo.append(node)
    return seen


def always_reaches(
    net: Net,
    targets: Iterable[int],
    *,
    out: Collection[int] = (),
    choice: Choice | None = None,
) -> set[int]:
    """A. The nodes that reach one of some targets whatever the positions of the free parts.

    Backward from the targets: a fixed arc helps; a coupled part helps at a node if every one of its positions
    does; a closable part never does. Only through parts that carry relief.

    Args:
        net: The net.
        targets: Nodes.
        out: Numbers of parts that no way may run through.
        choice: Position of coupled parts that are held for this question.
    """
    return Always(net, out=out, choice=choice).reaches(targets)


class Always:
    """What helps a node to reach, laid out once for any number of targets; a question costs what it finds."""

    def __init__(
        self, net: Net, *, out: Collection[int] = (), choice: Choice | None = None
    ) -> None:
        """Lay it out; the arguments are those of `always_reaches`."""
        self._back, self._turned, self._wanted = _backward(net, out, choice or {})

    def reaches(self, targets: Iterable[int]) -> set[int]:
        """The nodes that reach one of some targets whatever the positions of the free parts."""
        good = set(targets)
        todo = list(good)
        left: dict[tuple[int, int], set[int]] = {}
        while todo:
            node = todo.pop()
            for u in self._back[node]:
                if u not in good:
                    good.add(u)
                    todo.append(u)
            for u, number, position in self._turned[node]:
                key = number, u
                if key not in left:
                    left[key] = set(self._wanted[key])
                left[key].discard(position)
                if not left[key] and u not in good:
                    good.add(u)
                    todo.append(u)
        return good


def _backward(net: Net, out: Collection[int], choice: Choice) -> _Backward:
    """What helps a node: arcs that are always there, and positions of coupled parts still wanted."""
    parts = net.parts
    back: list[list[int]] = [[] for _ in range(net.count)]
    turned: list[list[tuple[int, int, int]]] = [[] for _ in range(net.count)]
    wanted: dict[tuple[int, int], set[int]] = {}
    for u, v, number in net.fixed:
        if parts[number].carries_relief and number not in out:
            back[v].append(u)
    for number in net.coupled:
        positions = parts[number].positions
        if not parts[number].carries_relief or number in out:
            continue
        if number in choice:
            for u, v in positions[choice[number]]:
                back[v].append(u)
            continue
        for position, arcs in enumerate(positions):
            for u, v in arcs:
                turned[v].append((u, number, position))
                wanted.setdefault((number, u), set(range(len(positions))))
    return back, turned, wanted


def caps_of(net: Net, reliefs: Iterable[Relief], choice: Choice | None = None) -> list[float]:
    """The lowest setting of a relief valve that each node always reaches; 0 where it is vented.

    All in Pa above the atmosphere.
    """
    caps = [NO_LIMIT] * net.count
    for node in net.vented:
        caps[node] = 0.0
    by_setting: dict[float, list[int]] = {}
    for relief in reliefs:
        if relief.lifts < NO_LIMIT:
            by_setting.setdefault(relief.lifts, []).append(relief.node)
    targets: list[int] = []
    for setting in sorted(by_setting):
        targets += by_setting[setting]
        for node in always_reaches(net, targets, choice=choice):
            caps[node] = min(caps[node], setting)
    return caps


@dataclass(frozen=True, slots=True)
class Highest:
    """The most that can stand at each node, and how it gets there."""

    at: list[float]
    """By node [Pa above the atmosphere]; 0 where nothing is made."""
    came: list[Through | None]
    """The last step of the way to each node; None where it is made there or nothing comes."""


def highest(
    net: Net,
    starts: Iterable[tuple[int, float]],
    caps: Sequence[float],
    choice: Choice | None = None,
) -> Highest:
    """B. The most that can stand at each node, over all positions of the free parts.

    A widest path: each node is held down by its cap, each part by its own. With coupled parts every position is
    allowed at every visit, which is never too low over any sequence of line-ups.

    Args:
        net: The net.
        starts: Nodes where pressure is made or held, with how much [Pa above the atmosphere].
        caps: By node, as `caps_of` gives them.
        choice: Position of coupled parts that are held for this question.
    """
    rows = _rows(net, choice)
    at = [0.0] * net.count
    came: list[Through | None] = [None] * net.count
    heap: list[tuple[float, int]] = []
    for node, makes in starts:
        here = min(makes, caps[node])
        if here > at[node]:
            at[node] = here
            heappush(heap, (-here, node))
    parts = net.parts
    while heap:
        lost, node = heappop(heap)
        here = -lost
        if here < at[node]:
            continue
        for other, number in rows[node]:
            there = min(here, parts[number].cap, caps[other])
            if there > at[other]:
                at[other] = there
                came[other] = (node, other, number)
                heappush(heap, (-there, other))
    return Highest(at, came)


def way_to(came: Sequence[Through | None] | Mapping[int, Through | None], node: int) -> Way:
    """The way that led to a node, from its source on."""
    way: list[Through] = []
    step = came[node]
    while step is not None:
        way.append(step)
        step = came[step[0]]
    return tuple(reversed(way))


def fed_outside(
    net: Net, starts: Iterable[int], avoided: Collection[int], choice: Choice | None = None
) -> tuple[set[int], list[Through | None]]:
    """Path avoidance: the nodes that starts feed by ways which touch no avoided node.

    With `avoided` what always reaches a relief valve, a node that comes out can be fed while it reaches none;
    exact where no coupled part is free. A vented node passes nothing on.

    Returns:
        The nodes, and the last step of the way to each.
    """
    rows = _rows(net, choice)
    came: list[Through | None] = [None] * net.count
    avoided = {*avoided, *net.vented}
    seen = {node for node in starts if node not in avoided}
    todo = deque(sorted(seen))
    while todo:
        node = todo.popleft()
        for other, number in rows[node]:
            if other not in seen and other not in avoided:
                seen.add(other)
                came[other] = (node, other, number)
                todo.append(other)
    return seen, came


Cost = Callable[[int, bool], int | None]
"""Number of a part, and whether it is passed the way it lets through: 0, 1, or None for never."""


@dataclass(frozen=True, slots=True)
class Barriers:
    """The fewest barriers on any way to each node."""

    count: list[int | None]
    """By node; None where no way leads."""
    came: list[Through | None]

    def between(self, node: int) -> tuple[int, ...]:
        """Numbers of the parts that are the barriers on the way to a node, from its start on."""
        way = way_to(self.came, node)
        barriers = (number for u, v, number in way if self.count[u] != self.count[v])
        return tuple(dict.fromkeys(barriers))


def fewest_barriers(net: Net, starts: Iterable[int], cost: Cost) -> Barriers:
    """C. The fewest barriers between some starts and every node, every valve free: a 0-1 search.

    Of the ways with as few barriers it shows one of the fewest parts.
    """
    rows = _costed(net, cost)
    count: list[int | None] = [None] * net.count
    came: list[Through | None] = [None] * net.count
    todo = deque(sorted(set(starts)))
    for node in todo:
        count[node] = 0
    here = 0
    beyond: list[int] = []
    while todo:
        node = todo.popleft()
        for other, number, price in rows[node] if count[node] == here else ():
            so_far = count[other]
            if so_far is None or here + price < so_far:
                count[other] = here + price
                came[other] = (node, other, number)
                (beyond if price else todo).append(other)
        if not todo:
            todo.extend(beyond)
            here, beyond = here + 1, []
    return Barriers(count, came)


def two_nearest(
    net: Net, starts: Mapping[str, int], cost: Cost
) -> list[tuple[tuple[int, str], ...]]:
    """The two nearest different starts of every node, by barriers: one search for all of them.

    So "from any other store" is answered for every store at once.

    Returns:
        By node: up to two pairs of barriers and name of the start, the nearest first.
    """
    rows = _costed(net, cost)
    found: list[dict[str, int]] = [{} for _ in range(net.count)]
    todo = deque((0, name, node) for name, node in sorted(starts.items()))
    while todo:
        here, name, node = todo.popleft()
        mine = found[node]
        if name in mine or len(mine) == 2:
            continue
        mine[name] = here
        for other, _, price in rows[node]:
            if name not in found[other] and len(found[other]) < 2:
                (todo.append if price else todo.appendleft)((here + price, name, other))
    return [tuple(sorted((count, name) for name, count in mine.items())) for mine in found]


def _rows(net: Net, choice: Choice | None) -> list[Row]:
    if not choice:
        return net.any_position()
    arcs = list(net.fixed) + list(net.closable)
    for number in net.coupled:
        part = net.parts[number]
        passing = part.positions[choice[number]] if number in choice else net.arcs(number)
        arcs += [(u, v, number) for u, v in passing]
    return adjacency(net.count, arcs)


def _costed(net: Net, cost: Cost) -> list[list[tuple[int, int, int]]]:
    rows: list[list[tuple[int, int, int]]] = [[] for _ in range(net.count)]
    for number in range(len(net.parts)):
        arcs = _ways_through(net, number)
        there, back = cost(number, True), cost(number, False)
        for u, v in arcs:
            if there is not None:
                rows[u].append((v, number, there))
            if back is not None and (v, u) not in arcs:
                rows[v].append((u, number, back))
    return rows


def _ways_through(net: Net, number: int) -> Collection[Arc]:
    """Every way through a part; from one port to another by a third it is still one part that was passed."""
    arcs = dict.fromkeys(net.arcs(number))
    for by in net.parts[number].nodes if net.parts[number].coupled else ():
        before, after = ([u for u, v in arcs if v == by], [v for u, v in arcs if u == by])
        arcs.update(dict.fromkeys((u, v) for u in before for v in after if u != v))
    return arcs
