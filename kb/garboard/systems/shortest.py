"""Reach with some parts taken out, and the way that led there."""

from collections import deque
from collections.abc import Collection, Iterable, Sequence

from garboard.systems.net import Net, Row, Through

__all__ = ["first_ways", "rows_without"]


def rows_without(net: Net, out: Collection[int]) -> list[Row]:
    """Where each node leads, every free part in whatever position passes, some parts taken out.

    Args:
        net: The net.
        out: Numbers of the parts that are taken out.
    """
    return [[step for step in row if step[1] not in out] for row in net.any_position()]


def first_ways(rows: Sequence[Row], starts: Iterable[int]) -> tuple[set[int], list[Through | None]]:
    """Every node that some starts lead to, and the last step of a shortest way to each."""
    came: list[Through | None] = [None] * len(rows)
    seen = set(starts)
    todo = deque(sorted(seen))
    while todo:
        node = todo.popleft()
        for other, number in rows[node]:
            if other not in seen:
                seen.add(other)
                came[other] = (node, other, number)
                todo.append(other)
    return seen, came
