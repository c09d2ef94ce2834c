"""What every way to a place runs through: the dominator tree, after Lengauer and Tarjan (1979).

One tree answers for every place at once, in n log n: the nearest thing that all ways to a place share, the
nearest that all ways to that share, and so on back to the start.
"""

from collections.abc import Sequence

__all__ = ["shared_before"]


def shared_before(rows: Sequence[Sequence[int]], start: int) -> list[int | None]:
    """The nearest place that every way from a start to each place runs through.

    Args:
        rows: Where each place leads.
        start: Where every way begins.

    Returns:
        By place; None for the start itself and for what it does not reach.

    >>> shared_before([[1, 2], [3], [3], [4], []], 0)
    [None, 0, 0, 0, 3]
    """
    return _Tree(rows, start).shared()


class _Tree:
    """One walk through the places, and what was found on it; places go by their number on the walk."""

    def __init__(self, rows: Sequence[Sequence[int]], start: int) -> None:
        self.rows = rows
        self.order: list[int] = []
        """The places, in the order in which they were come to."""
        self.number: dict[int, int] = {}
        self.parent: list[int] = []
        self.walk(start)
        count = len(self.order)
        self.semi = list(range(count))
        self.best = list(range(count))
        self.above: list[int | None] = [None] * count

    def walk(self, start: int) -> None:
        """Number the places depth first."""
        todo = [(start, 0)]
        while todo:
            place, parent = todo.pop()
            if place in self.number:
                continue
            here = self.number[place] = len(self.order)
            self.order.append(place)
            self.parent.append(parent)
            todo += [(other, here) for other in reversed(self.rows[place])]

    def shared(self) -> list[int | None]:
        """The nearest shared place before each place."""
        count = len(self.order)
        before: list[list[int]] = [[] for _ in range(count)]
        for here, place in enumerate(self.order):
            for other in self.rows[place]:
                before[self.number[other]].append(here)
        waiting: list[list[int]] = [[] for _ in range(count)]
        nearest = [0] * count
        for here in range(count - 1, 0, -1):
            self.semi[here] = min(self.semi[self.lowest(other)] for other in before[here])
            waiting[self.semi[here]].append(here)
            parent = self.parent[here]
            self.above[here] = parent
            for other in waiting[parent]:
                low = self.lowest(other)
                nearest[other] = low if self.semi[low] < self.semi[other] else parent
            waiting[parent].clear()
        found: list[int | None] = [None] * len(self.rows)
        for here in range(1, count):
            if nearest[here] != self.semi[here]:
                nearest[here] = nearest[nearest[here]]
            found[self.order[here]] = self.order[nearest[here]]
        return found

    def lowest(self, here: int) -> int:
        """The place with the lowest semi-dominator on the linked way above one, which it shortens."""
        way = []
        node = here
        above = self.above[node]
        while above is not None and self.above[above] is not None:
            way.append(node)
            node, above = above, self.above[above]
        for one in reversed(way):
            upper = self.above[one]
            if upper is not None:
                if self.semi[self.best[upper]] < self.semi[self.best[one]]:
                    self.best[one] = self.best[upper]
                self.above[one] = self.above[upper]
        return self.best[here]
