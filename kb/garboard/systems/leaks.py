"""Where everything could get to if every part leaked back: what an isolation is measured against.

A check valve leaks, a solenoid valve moves by itself, a reducing valve creeps, a standing pump lets
through: for somebody at work only what is shut and locked stands between. Made once for a plant.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from enum import IntEnum

from garboard.systems.plant import Plant
from garboard.systems.stores import stores_of

__all__ = ["Held", "Leaks", "Way"]

Held = Mapping[int, int]
"""Position in which a part is held, by its number."""
NOTHING_HELD: Held = {}
Row = dict[tuple[int, int], set[int]]
"""Where one node leads: node and number of the part, with the positions in which it passes."""


class Way(IntEnum):
    """Which way a part is passed."""

    ANY = 0
    """Both ways, as everything leaks."""
    MEANT = 1
    """The way it lets through."""
    BACK = 2
    """Against it: what leads here, the way it is meant."""


class Leaks:
    """The parts of a plant, each passing both ways whatever any of its positions passes."""

    def __init__(self, plant: Plant) -> None:
        """Sort what every part passes by its nodes."""
        self.plant = plant
        self.stores = stores_of(plant)
        self.at: list[list[int]] = [[] for _ in range(plant.count)]
        """Numbers of the parts at each node."""
        self._rows: list[list[Row]] = [[{} for _ in range(plant.count)] for _ in Way]
        for number, part in enumerate(plant.parts):
            for node in part.nodes:
                self.at[node].append(number)
            for position, arcs in enumerate(part.positions):
                for u, v in arcs:
                    for way, here, there in ((Way.MEANT, u, v), (Way.BACK, v, u)):
                        self._rows[way][here].setdefault((there, number), set()).add(position)
                        self._rows[Way.ANY][here].setdefault((there, number), set()).add(position)

    def from_node(
        self, node: int, held: Held = NOTHING_HELD, way: Way = Way.ANY
    ) -> Iterator[tuple[int, int]]:
        """The nodes that one node leads to, each with the number of the part between."""
        for (other, number), positions in self._rows[way][node].items():
            if number not in held or held[number] in positions:
                yield other, number

    def spread(
        self,
        starts: Iterable[int],
        *,
        passes: Callable[[int], bool] | None = None,
        held: Held = NOTHING_HELD,
        closed: Collection[int] = (),
        way: Way = Way.ANY,
    ) -> set[int]:
        """Every node that some starts lead to, themselves included.

        Args:
            starts: Nodes.
            passes: Whether a part is passed at all, by its number; left out, all are.
            held: Parts that stay in one position.
            closed: Nodes that are never entered.
            way: Whether through what leaks back too, or only the way it is meant.
        """
        seen = {node for node in starts if node not in closed}
        todo = list(seen)
        while todo:
            for node, number in self.from_node(todo.pop(), held, way):
                if node not in seen and node not in closed and (passes is None or passes(number)):
                    seen.add(node)
                    todo.append(node)
        return seen

    def nodes_of(self, numbers: Iterable[int]) -> list[int]:
        """The nodes of some parts."""
        return [node for number in numbers for node in self.plant.parts[number].nodes]
