"""A plant made ready for searching: plain lists of arcs, sorted by how freely a part can be moved."""

from collections.abc import Collection, Mapping, Sequence
from functools import cached_property

from garboard.systems.plant import Arc, Part, Plant

__all__ = ["Net", "Through", "adjacency", "net_of"]

Through = tuple[int, int, int]
"""From node, to node, number of the part."""
Row = list[tuple[int, int]]
"""Where one node leads: node and number of the part."""


class Net:
    """Parts between numbered nodes, some held in one position."""

    def __init__(
        self,
        count: int,
        parts: Sequence[Part],
        held: Mapping[int, int],
        vented: Collection[int] = (),
    ) -> None:
        """Sort the arcs.

        Args:
            count: Nodes are numbered from 0 to count - 1.
            parts: The parts.
            held: Position in which a part stays, by its number: locked valves, points of an isolation.
            vented: Nodes where no pressure can stand.
        """
        self.count = count
        self.parts = parts
        self.held = held
        self.vented = vented
        self.fixed: list[Through] = []
        """Arcs that are always there."""
        self.closable: list[Through] = []
        """Arcs that one valve opens and shuts."""
        self.coupled: list[int] = []
        """Numbers of parts that open one way as they shut another."""
        for number, part in enumerate(parts):
            at = held.get(number, None if part.movable else 0)
            if at is not None:
                self.fixed += [(u, v, number) for u, v in part.positions[at]]
            elif part.coupled:
                self.coupled.append(number)
            else:
                arcs = part.positions[0] or part.positions[1]
                self.closable += [(u, v, number) for u, v in arcs]

    def is_free(self, number: int) -> bool:
        """Whether a part can be moved."""
        return self.parts[number].movable and number not in self.held

    def arcs(self, number: int) -> tuple[Arc, ...]:
        """What a part may pass in any position it can take, each arc once."""
        part = self.parts[number]
        if number in self.held:
            return part.positions[self.held[number]]
        return tuple(dict.fromkeys(arc for arcs in part.positions for arc in arcs))

    def any_position(self, *, back: bool = False) -> list[Row]:
        """Where each node leads when every part takes whatever position passes; laid out once.

        Args:
            back: What leads to it instead.
        """
        return self._backward if back else self._forward

    @cached_property
    def _forward(self) -> list[Row]:
        return adjacency(self.count, self._relaxed)

    @cached_property
    def _backward(self) -> list[Row]:
        return adjacency(self.count, self._relaxed, back=True)

    @cached_property
    def _relaxed(self) -> tuple[Through, ...]:
        turned = [(u, v, number) for number in self.coupled for u, v in self.arcs(number)]
        return (*self.fixed, *self.closable, *turned)

    def with_held(self, held: Mapping[int, int]) -> "Net":
        """The same with further parts held."""
        return Net(self.count, self.parts, {**self.held, **held}, self.vented)


def adjacency(count: int, arcs: Collection[Through], *, back: bool = False) -> list[Row]:
    """Where each node leads; `back`: what leads to it."""
    rows: list[Row] = [[] for _ in range(count)]
    for u, v, number in arcs:
        if back:
            rows[v].append((u, number))
        else:
            rows[u].append((v, number))
    return rows


def net_of(plant: Plant, *, locks: bool = True) -> Net:
    """A plant made ready for searching.

    Args:
        plant: The plant.
        locks: Whether secured locked valves stay as they are locked.
    """
    held = {n: part.locked for n, part in enumerate(plant.parts) if part.locked is not None}
    return Net(plant.count, plant.parts, held if locks else {}, plant.vented)
