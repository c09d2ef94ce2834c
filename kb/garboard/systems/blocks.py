"""How much stands between a piece of work and what is live: the way it would come, and the blocks on it."""

from collections import deque
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass

from garboard.systems.leaks import Held, Leaks
from garboard.systems.stores import Store

__all__ = ["Blocks", "Joined", "blocks_to", "still_joined"]


@dataclass(frozen=True, slots=True)
class Joined:
    """A store that is not cut off."""

    store: Store
    way: tuple[str, ...]
    """What lies between, from the work on: tags of the parts on the shortest way."""


@dataclass(frozen=True, slots=True)
class Blocks:
    """The blocks between a live store and the work."""

    store: Store
    count: int
    needed: int
    points: tuple[str, ...]
    """Which they are, on a way with the fewest, the nearest to the work first."""

    @property
    def enough(self) -> bool:
        """Whether there are as many as its service asks for."""
        return self.count >= self.needed


def still_joined(
    leaks: Leaks, work: Iterable[int], held: Held, stores: Iterable[Store]
) -> Iterator[Joined]:
    """The stores that the work is joined with while some parts are held and all others stand anyhow.

    Args:
        leaks: The plant.
        work: Numbers of the parts that are worked on.
        held: The points, each with its position.
        stores: The stores asked about.
    """
    todo = list(dict.fromkeys(leaks.nodes_of(work)))
    came: dict[int, tuple[str, ...]] = dict.fromkeys(todo, ())
    for node in todo:
        for other, number in leaks.from_node(node, held):
            if other not in came:
                came[other] = (*came[node], leaks.plant.parts[number].tag)
                todo.append(other)
    for store in stores:
        met = [came[node] for node in store.nodes if node in came]
        if met:
            way = dict.fromkeys(tag for tag in min(met, key=len) if tag != store.tag)
            yield Joined(store, tuple(way))


def blocks_to(
    leaks: Leaks, work: Collection[int], held: Held, stores: Iterable[Store]
) -> Iterator[Blocks]:
    """The fewest blocks between the work and each store that some way leads to.

    Args:
        leaks: The plant.
        work: Numbers of the parts that are worked on.
        held: The points, each with its position.
        stores: The live stores.
    """
    starts = leaks.nodes_of(work)
    found = _fewest(leaks, starts, held)
    asked = _Asked(leaks, held)
    own = asked.at(starts)
    for store in stores:
        met = [found[node] for node in store.nodes if node in found]
        if met:
            points = min(met, key=len)
            yield Blocks(store, len(points), max(own, asked.at(store.nodes)), points)


def _fewest(leaks: Leaks, starts: Iterable[int], held: Held) -> dict[int, tuple[str, ...]]:
    """The points on a way with the fewest to each node: a search that goes through them last.

    A valve that turns is one block from any of its ports to any other.
    """
    parts = leaks.plant.parts
    found: dict[int, tuple[str, ...]] = {}
    todo: deque[tuple[int, tuple[str, ...]]] = deque((node, ()) for node in starts)
    while todo:
        node, points = todo.popleft()
        if node in found:
            continue
        found[node] = points
        for other, number in leaks.from_node(node):
            if number not in held:
                todo.appendleft((other, points))
        for number in leaks.at[node]:
            if number in held:
                further = (*points, parts[number].tag)
                todo.extend((other, further) for other in parts[number].nodes if other != node)
    return found


class _Asked:
    """How many blocks services ask for on either side of the points, looked up once for each stretch."""

    def __init__(self, leaks: Leaks, held: Held) -> None:
        self.leaks, self.held = leaks, held
        self.most: dict[int, int] = {}

    def at(self, nodes: Iterable[int]) -> int:
        """The most that any service joined with some nodes asks for; one where nothing is written."""
        return max((self._of(node) for node in nodes), default=1)

    def _of(self, node: int) -> int:
        if node not in self.most:
            joined = self.leaks.spread([node], held=self.held)
            services = self.leaks.plant.system.services or {}
            named = {self.leaks.plant.services[one] for one in joined} & set(services)
            most = max((services[name].blocks or 1 for name in named), default=1)
            self.most |= dict.fromkeys(joined, most)
        return self.most[node]
