"""In which order the points of an isolation are shut.

Machines are stopped before any of it. What something flows through comes before what only leaks back, the
outer block before the inner; a fuse is pulled last, when no switch lets current to it any more.
"""

from garboard.systems.isolation import Isolation, Point

__all__ = ["order_of_shutting"]


def order_of_shutting(isolation: Isolation) -> tuple[Point, ...]:
    """The points in the order in which they are shut; they are opened the other way round."""
    return tuple(sorted(isolation.points, key=_place))


def _place(point: Point) -> tuple[bool, bool, bool]:
    return (point.kind == "fuse", not point.supply, not point.outer)
