"""Put values in an order in which each can be worked out, and find those that go in a ring."""

from collections.abc import Iterator, Mapping, Sequence

__all__ = ["find_ring", "sort_groups"]


def sort_groups(needs: Mapping[str, Sequence[str]]) -> list[tuple[str, ...]]:
    """Sort names so that each comes after what it needs.

    Args:
        needs: Name to the names it needs; needs outside the mapping are left aside.

    Returns:
        Groups in order. A group of several, or of one that needs itself, cannot be worked out.

    >>> sort_groups({"a": ["b"], "b": [], "c": ["d"], "d": ["c"]})
    [('b',), ('a',), ('c', 'd')]
    """
    index: dict[str, int] = {}
    low: dict[str, int] = {}
    stack: list[str] = []
    on_stack: set[str] = set()
    groups: list[tuple[str, ...]] = []
    for root in needs:
        if root in index:
            continue
        walk: list[tuple[str, Iterator[str]]] = [(root, iter(needs[root]))]
        index[root] = low[root] = len(index)
        stack.append(root)
        on_stack.add(root)
        while walk:
            name, waiting = walk[-1]
            for other in waiting:
                if other not in needs:
                    continue
                if other not in index:
                    index[other] = low[other] = len(index)
                    stack.append(other)
                    on_stack.add(other)
                    walk.append((other, iter(needs[other])))
                    break
                if other in on_stack:
                    low[name] = min(low[name], index[other])
            else:
                walk.pop()
                if walk:
                    low[walk[-1][0]] = min(low[walk[-1][0]], low[name])
                if low[name] == index[name]:
                    groups.append(take_group(name, stack, on_stack))
    return groups


def take_group(name: str, stack: list[str], on_stack: set[str]) -> tuple[str, ...]:
    """Take the names from the top of a stack down to one of them."""
    group = [stack.pop()]
    while group[-1] != name:
        group.append(stack.pop())
    on_stack.difference_update(group)
    return tuple(reversed(group))


def find_ring(group: Sequence[str], needs: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """The shortest way round from the first of a group back to itself.

    Returns:
        Names in the order in which each needs the next; the last needs the first. Empty where the
        group is a single name that does not need itself.

    >>> find_ring(("a", "b"), {"a": ["b"], "b": ["a"]})
    ('a', 'b')
    """
    start, inside = group[0], set(group)
    came: dict[str, str] = {}
    waiting = [start]
    for name in waiting:
        for other in needs[name]:
            if other == start:
                back = [name]
                while back[-1] != start:
                    back.append(came[back[-1]])
                return tuple(reversed(back))
            if other in inside and other not in came:
                came[other] = name
                waiting.append(other)
    return ()
