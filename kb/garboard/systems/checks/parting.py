"""What parts a place from others however the valves stand: what passes the other way only, or nothing on."""

from collections import deque
from collections.abc import Collection

from garboard.systems.enquiry import Enquiry
from garboard.systems.net import Net, Through
from garboard.systems.search import Way, way_to

__all__ = ["parting"]


def parting(enquiry: Enquiry, node: int, targets: Collection[int]) -> tuple[str, ...] | None:
    """The parts that never let the pressure of a place through to the nearest of some others.

    Args:
        enquiry: The plant that is asked.
        node: The place.
        targets: The others.

    Returns:
        Full tags, from the place on; empty where valves can stand so that it gets there; None where
        nothing joins the two at all.
    """
    net = enquiry.net
    way = _nearest(net, node, frozenset(targets))
    if way is None:
        return None
    between = (n for u, v, n in way if _bars(net, n, (u, v) in net.arcs(n)))
    return tuple(dict.fromkeys(net.parts[n].tag for n in between))


def _bars(net: Net, number: int, along: bool) -> bool:  # noqa: FBT001  one word of a search
    """Whether a part lets no pressure through that way, in whatever position."""
    return not (along and net.parts[number].carries_relief)


def _nearest(net: Net, node: int, targets: frozenset[int]) -> Way | None:
    """The way to a target with the fewest parts that bar it; the search ends at the first."""
    came: dict[int, Through | None] = {node: None}
    todo: deque[tuple[int, Through | None]] = deque([(node, None)])
    done: set[int] = set()
    while todo:
        here, step = todo.popleft()
        if here in done:
            continue
        done.add(here)
        came[here] = step
        if here in targets:
            return way_to(came, here)
        for along, rows in ((True, net.any_position()), (False, net.any_position(back=True))):
            for other, number in rows[here]:
                there = other, (here, other, number)
                (todo.append if _bars(net, number, along) else todo.appendleft)(there)
    return None
