"""In which order the points of an isolation are shut.

Machines are stopped before any of it, and so is what charges and would lose its battery (`charging.py`). What
charges is switched off before the battery it charges, and put back after it. What something flows through
comes before what only leaks back, the outer block before the inner; a fuse is pulled last, when no switch
lets current to it any more.
"""

from garboard.systems.charging import CHARGES
from garboard.systems.isolation import Isolation, Point

__all__ = ["charging_points", "order_of_shutting"]


def order_of_shutting(isolation: Isolation) -> tuple[Point, ...]:
    """The points in the order in which they are shut; they are opened the other way round."""
    charging = charging_points(isolation)

    def place(point: Point) -> tuple[bool, bool, bool, bool]:
        return (
            point.kind == "fuse",
            point.tag not in charging,
            not point.supply,
            not point.outer,
        )

    return tuple(sorted(isolation.points, key=place))


def charging_points(isolation: Isolation) -> frozenset[str]:
    """Tags of the points that hold back alternators and chargers, and nothing else."""
    charging = {one.store.tag for one in isolation.blocks if one.store.kind in CHARGES}
    return frozenset(
        one.tag for one in isolation.points if one.against and charging.issuperset(one.against)
    )
