"""One side of a requirement against the input that moves it most, with the limit.

The curve spans the tolerance of that input and enough beside it that the working point stands in the
picture and, if it lies near, the place where the limit is crossed. It never goes past zero to a sign
that the input does not have.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from garboard.calc.corners import Corners, Samples
from garboard.calc.ledger import Formula, Root
from garboard.calc.movers import Movers
from garboard.calc.tree import Reference
from garboard.calc.value import Curve

__all__ = ["find_curve"]

POINTS = 61
REACH = 10.0
"""How far from the working point a crossing is looked for, in widths of the tolerance."""
FINE = 401
"""Points at which it is looked for."""
ROOM = 0.15
"""Of the width shown, left on either side of what must be seen."""

HOLDS: dict[str, Callable[[Samples, float], NDArray[np.bool_]]] = {
    "<": np.less,
    "<=": np.less_equal,
    ">": np.greater,
    ">=": np.greater_equal,
}
TURNED = {"<": ">", "<=": ">=", ">": "<", ">=": "<="}


@dataclass(frozen=True, slots=True)
class Limit:
    """What a side is held against."""

    si: float
    holds: Callable[[Samples, float], NDArray[np.bool_]]


def find_curve(
    sign: str, left: Formula, right: Formula, movers: Movers, together: int = 0
) -> Curve | None:
    """The curve of a requirement.

    Of `require n >= 6` with n = stored / each: n against the input that moves it most, the limit 6.
    Where the limit stands on the left it is the right side that is drawn.

    Args:
        sign: `<`, `<=`, `>` or `>=`.
        left: Its left side, worked out at the values as given.
        right: Its right side.
        movers: What moves the values.
        together: Toleranced inputs of the block, a bit each.

    Returns:
        None where neither side is a value that something moves, or the same input moves the other
        side too.
    """
    for side, limit, holds in ((left, right, HOLDS[sign]), (right, left, HOLDS[TURNED[sign]])):
        node = side.node
        if not isinstance(node, Reference) or node.slot not in movers.ledger.addresses:
            continue
        likely = movers.of(node, together=together)
        if not likely.movers:
            continue
        bit = 1 << movers.ledger.inputs[likely.inputs[0].slot]
        if movers.ledger.upstream[limit.slot] & bit:
            continue
        return draw(node, likely.inputs[0], Limit(limit.si, holds), movers)
    return None


def draw(node: Reference, root: Root, limit: Limit, movers: Movers) -> Curve:
    """Work the curve out."""
    ledger, shared = movers.ledger, movers.spread.shared
    bit = 1 << ledger.inputs[root.slot]

    def values_at(places: Samples) -> Samples:
        return Corners(shared, bit, {root.slot: places}).read((node,))[0]

    here = ledger.slots[root.slot]
    low, high = find_span(root, here, values_at, limit)
    places = np.linspace(low, high, POINTS)
    points = tuple(
        (float(place), float(value) if np.isfinite(value) else None)
        for place, value in zip(places, values_at(places), strict=True)
    )
    return Curve(
        ledger.addresses[node.slot],
        ledger.address_of(root.slot),
        points,
        (here, ledger.slots[node.slot]),
        limit.si,
    )


def find_span(
    root: Root, here: float, values_at: Callable[[Samples], Samples], limit: Limit
) -> tuple[float, float]:
    """From where to where the input is drawn, in SI.

    Of an input of 30 +/- 0.5 whose limit is crossed at 27: from 26.5, a little beside the crossing,
    to 31.0, a little beside the tolerance. With no crossing within 10 widths of the tolerance, the
    tolerance and as much again on both sides.
    """
    width = root.high - root.low
    reach = np.linspace(here - REACH * width, here + REACH * width, FINE)
    places = reach[(reach >= 0.0) if root.low >= 0.0 else np.isfinite(reach)]
    places = places[(places <= 0.0) if root.high <= 0.0 else np.isfinite(places)]
    low, high = min(root.low, here), max(root.high, here)
    crossing = find_crossing(places, values_at(places), limit, here)
    if crossing is None:
        low, high = low - width, high + width
    else:
        low, high = min(low, crossing), max(high, crossing)
        room = ROOM * (high - low)
        low, high = low - room, high + room
    if root.low >= 0.0:
        low = max(low, 0.0)
    if root.high <= 0.0:
        high = min(high, 0.0)
    return low, high


def find_crossing(places: Samples, values: Samples, limit: Limit, here: float) -> float | None:
    """The place nearest to the working point at which a value begins or ceases to hold."""
    gaps = values - limit.si
    holds = limit.holds(values, limit.si)
    known = np.isfinite(gaps)
    turns = np.flatnonzero((holds[:-1] != holds[1:]) & known[:-1] & known[1:])
    found = []
    for at in turns:
        share = gaps[at] / (gaps[at] - gaps[at + 1])
        found.append(float(places[at] + share * (places[at + 1] - places[at])))
    return min(found, key=lambda place: abs(place - here), default=None)
