"""How much stands between a piece of work and what is live: the way it would come, and the blocks on it."""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import permutations

from garboard.systems.leaks import Held, Leaks
from garboard.systems.net import Net
from garboard.systems.plant import Part
from garboard.systems.search import fewest_barriers
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
    net = Net(
        leaks.plant.count, [_at_once(n, one, held) for n, one in enumerate(leaks.plant.parts)], {}
    )
    starts = leaks.nodes_of(work)
    found = fewest_barriers(net, starts, lambda number, _: int(number in held))
    touched = leaks.spread(starts, held=held)
    for store in stores:
        met = [(count, node) for node in store.nodes if (count := found.count[node]) is not None]
        if met:
            count, step = min(met)[0], found.came[min(met)[1]]
            way: list[str] = []
            while step is not None:
                way += [leaks.plant.parts[step[2]].tag] if step[2] in held else []
                step = found.came[step[0]]
            points = tuple(dict.fromkeys(reversed(way)))
            yield Blocks(store, count, _needed(leaks, store, held, touched), points)


def _at_once(number: int, part: Part, held: Held) -> Part:
    """A valve that turns, where it is a point, with all its ports side by side: it is one block and not two."""
    if number not in held or not part.coupled:
        return part
    return replace(part, positions=(tuple(permutations(part.nodes, 2)), ()))


def _needed(leaks: Leaks, store: Store, held: Held, touched: Collection[int]) -> int:
    """How many blocks are asked for: the most of any service the store feeds or the work is in, else one."""
    fed = leaks.spread(store.nodes, held=held)
    asked = {leaks.plant.services[node] for node in (*fed, *touched)}
    services = leaks.plant.system.services or {}
    return max((services[name].blocks or 1 for name in asked if name in services), default=1)
