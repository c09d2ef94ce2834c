"""Axes of a plot: what they span, and the round numbers beside them."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from garboard.calc.show import show_number

__all__ = ["Axis", "tick_text", "ticks"]

STEPS = (1.0, 2.0, 5.0, 10.0)


def ticks(low: float, high: float, most: int = 5) -> tuple[float, ...]:
    """Round numbers within a range, at most so many.

    >>> ticks(0.0, 9.7), ticks(21.3, 31.0, 4), ticks(-0.02, 0.013)
    ((0.0, 2.0, 4.0, 6.0, 8.0), (25.0, 30.0), (-0.02, -0.01, 0.0, 0.01))
    """
    span = high - low
    if not span > 0 or not math.isfinite(span):
        return (low,)
    power = math.floor(math.log10(span / most))
    for step in (size * 10.0**power for size in STEPS):
        first, last = math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9)
        if last - first < most:
            break
    return tuple(round(at * step, 12 - power) + 0.0 for at in range(first, last + 1))


def tick_text(tick: float, all_of_them: Sequence[float]) -> str:
    """A tick with as many decimals as the others need."""
    step = min((b - a for a, b in pairwise(all_of_them)), default=0.0)
    largest = max(abs(one) for one in all_of_them)
    if largest >= 1e6 or (0 < largest < 1e-4) or not step:
        return show_number(tick, 3)
    return f"{tick:.{max(0, -math.floor(math.log10(step) + 1e-9))}f}"


@dataclass(frozen=True, slots=True)
class Axis:
    """One axis, in the unit it is shown in."""

    low: float
    high: float
    title: str
    """`bar(g), compressor cut-out`."""

    def part(self, number: float) -> float:
        """Where a number lies, 0 to 1; what lies outside is held at the edge."""
        span = self.high - self.low
        return min(1.0, max(0.0, (number - self.low) / span)) if span else 0.5

    @staticmethod
    def around(numbers: Iterable[float], title: str, pad: float = 0.08) -> "Axis":
        """An axis with some room about numbers."""
        known = list(numbers)
        low, high = min(known), max(known)
        room = (high - low) * pad or abs(high) * pad or 1.0
        return Axis(low - room, high + room, title)
