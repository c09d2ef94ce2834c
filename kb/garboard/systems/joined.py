"""What each node is joined to by parts that never move."""

from collections.abc import Collection, Sequence

from garboard.systems.net import Net

__all__ = ["first_joined"]


def first_joined(
    net: Net, targets: Sequence[int], *, out: Collection[int] = ()
) -> list[int | None]:
    """By node: which of some targets, the first in their order, it reaches by parts that never move.

    One search for all of them. A target that is reached only because each position of a coupled part leads to
    it is left out.

    Args:
        net: The net.
        targets: Nodes.
        out: Numbers of parts that no way may run through.

    Returns:
        By node: the place of the target in `targets`; None where it reaches none.
    """
    back: list[list[int]] = [[] for _ in range(net.count)]
    for u, v, number in net.fixed:
        if net.parts[number].carries_relief and number not in out:
            back[v].append(u)
    found: list[int | None] = [None] * net.count
    for place, target in enumerate(targets):
        todo = [target] if found[target] is None else []
        while todo:
            node = todo.pop()
            if found[node] is None:
                found[node] = place
                todo += back[node]
    return found
