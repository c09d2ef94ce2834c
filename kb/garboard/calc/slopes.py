"""The slope of every operation and function of the language in each of its arguments.

`floor`, `ceil` and `round` count as slope 1. A count has no slope of its own: it stands still and
then jumps. Slope 1 is what it does over many jumps, and serves to rank inputs and to tell which way
the count goes, for nothing else. `min`, `max` and `abs` have the slope of the part that decides,
`interpolate` that of the segment; a table read by a method is differenced over a small step.

Source: the rules of differentiation, any text of calculus.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import cast

import numpy as np

from garboard.calc.arithmetic import HAIR
from garboard.calc.corner_arithmetic import at_every_corner
from garboard.calc.evaluate import FREE_AIR

__all__ = ["FUNCTION_RULES", "OPERATION_RULES", "VARIADIC_RULES", "Rule", "TableSlope"]

SMALL_STEP = 1e-4
"""Of an argument: the step over which a table is differenced."""

Rule = Callable[..., float]
"""The slope of a function in one of its arguments, from all of them."""


@dataclass(frozen=True, slots=True)
class TableSlope:
    """The slopes of a table that a method reads."""

    read: Callable[..., float]

    def in_argument(self, at: int, *known: float) -> float:
        """By a small step up and down; by one of them where the other lies outside the table.

        A table that goes in steps has slope 0 nearly everywhere.
        """
        step = SMALL_STEP * np.where(known[at], np.abs(known[at]), 1.0)
        here = at_every_corner(self.read, known)
        rises, sides = 0.0, 0.0
        for sign in (1.0, -1.0):
            moved = [*known[:at], cast("float", known[at] + sign * step), *known[at + 1 :]]
            there = at_every_corner(self.read, moved)
            answered = np.isfinite(there)
            rises = rises + cast("float", np.where(answered, sign * (there - here), 0.0))
            sides = sides + cast("float", answered.astype(float))
        return cast("float", rises / (step * sides))

    def rises(self, at: int, known: Sequence[float]) -> float:
        """At which places a table rises along one argument; everywhere if it goes one way only."""
        along = known[at]
        if not np.ndim(along):
            return 1.0
        results = np.asarray(at_every_corner(self.read, known))
        order = np.argsort(along, kind="stable")
        steps = np.diff(results[order], append=np.nan)
        hair = HAIR * np.abs(results).max()
        up, down = steps > hair, steps < -hair
        if not up.any() or not down.any():
            return 1.0
        rising = np.zeros(len(order), dtype=bool)
        rising[order] = up
        return cast("float", rising)


def slope_of_root(value: float) -> float:
    """Of a square root."""
    return cast("float", 0.5 / np.sqrt(value))


def slope_of_size(value: float) -> float:
    """Of `abs`."""
    return cast("float", np.where(np.less(value, 0), -1.0, 1.0))


def slope_in_base(base: float, exponent: float) -> float:
    """Of a power, in its base."""
    return cast("float", exponent * np.power(base, exponent - 1.0))


def slope_in_exponent(base: float, exponent: float) -> float:
    """Of a power, in its exponent; a base of 0 stays 0."""
    slope = np.power(base, exponent) * np.log(base)
    return cast("float", np.where(np.equal(base, 0) & np.greater(exponent, 0), 0.0, slope))


def deciding(sign: float) -> Callable[[int], Rule]:
    """The slope of `min` or `max` in each of its arguments: 1 in the first that decides."""

    def slope_in(at: int) -> Rule:
        def rule(*known: float) -> float:
            own = known[at] * sign
            before = [np.less_equal(own, part * sign) for part in known[at + 1 :]]
            after = [np.less(own, part * sign) for part in known[:at]]
            decides = np.asarray(True)
            for each in (*before, *after):
                decides = decides & each
            return cast("float", np.where(decides, 1.0, 0.0))

        return rule

    return slope_in


def slope_between(at: int) -> Rule:
    """The slope of `interpolate` in each of its arguments: the value, then points and results."""

    def rule(value: float, *table: float) -> float:
        points, results = table[::2], table[1::2]
        found: float = 0.0
        done = np.asarray(False)
        for end in range(1, len(points)):
            low, high = points[end - 1], points[end]
            inside = np.greater_equal(value, low) & np.less_equal(value, high) & ~done
            done = done | inside
            width, rise = high - low, results[end] - results[end - 1]
            share = (value - low) / width
            slopes = {
                0: rise / width,
                2 * end - 1: -rise * (1 - share) / width,
                2 * end: 1 - share,
                2 * end + 1: -rise * share / width,
                2 * end + 2: share,
            }
            found = found + cast("float", np.where(inside, slopes.get(at, 0.0), 0.0))
        return found

    return rule


OPERATION_RULES: dict[str, tuple[Rule, Rule]] = {
    "/": (lambda _, right: 1.0 / right, lambda left, right: -left / (right * right)),
    "^": (slope_in_base, slope_in_exponent),
}
FUNCTION_RULES: dict[str, Sequence[Rule]] = {
    "sqrt": (slope_of_root,),
    "abs": (slope_of_size,),
    "floor": (lambda _: 1.0,),
    "ceil": (lambda _: 1.0,),
    "round": (lambda _: 1.0,),
    "exp": (np.exp,),
    "log": (lambda value: 1.0 / value,),
    "log10": (lambda value: 1.0 / (value * math.log(10.0)),),
    "sin": (np.cos,),
    "cos": (lambda value: -np.sin(value),),
    "tan": (lambda value: 1.0 + np.tan(value) ** 2,),
    "free_air": (
        lambda _, pressure, temperature: pressure * FREE_AIR / temperature,
        lambda volume, _, temperature: volume * FREE_AIR / temperature,
        lambda volume, pressure, warmth: -volume * pressure * FREE_AIR / (warmth * warmth),
    ),
}
VARIADIC_RULES: dict[str, Callable[[int], Rule]] = {
    "min": deciding(1.0),
    "max": deciding(-1.0),
    "interpolate": slope_between,
}
