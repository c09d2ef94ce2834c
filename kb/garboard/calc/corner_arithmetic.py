"""The number library for many corners at once: every value is an array, one place for each corner.

Where a corner has no answer it holds nan, and what rests on it holds nan there too, as if that corner
had been worked out alone and refused.
"""

import math
from collections.abc import Callable, Sequence
from typing import cast

import numpy as np

from garboard.calc.arithmetic import HAIR, Arithmetic, Closure, Slots
from garboard.errors import OutsideValidity

__all__ = ["CORNERS", "at_every_corner"]


def down(value: float) -> float:
    """The whole number below, forgiving a hair."""
    return cast("float", np.floor(value + np.abs(value) * HAIR))


def up(value: float) -> float:
    """The whole number above, forgiving a hair."""
    return cast("float", np.ceil(value - np.abs(value) * HAIR))


def nearest_whole(value: float) -> float:
    """The nearest whole number; a half goes up."""
    return down(value + 0.5)


def least(*values: float) -> float:
    """The least of several."""
    return fold(np.minimum, values)


def most(*values: float) -> float:
    """The greatest of several."""
    return fold(np.maximum, values)


def fold(step: Callable[..., float], values: Sequence[float]) -> float:
    """Join many by twos."""
    found = values[0]
    for value in values[1:]:
        found = step(found, value)
    return found


def answered(function: Callable[..., float]) -> Callable[..., float]:
    """A function that has no answer where floats would refuse: at infinity."""

    def call(*values: float) -> float:
        found = function(*values)
        finite = np.isfinite(found)
        return found if finite.all() else cast("float", np.where(finite, found, np.nan))

    return call


def read_between(value: float, *table: float) -> float:
    """Read between the points of a table; nan outside it."""
    points, results = table[::2], table[1::2]
    found = np.full(np.broadcast(value, *table).shape, np.nan)
    sound = np.asarray(True)
    for at in range(1, len(points)):
        low, high = points[at - 1], points[at]
        sound = sound & np.less(low, high)
        share = (value - low) / (high - low)
        inside = np.greater_equal(value, low) & np.less_equal(value, high) & np.isnan(found)
        step = results[at - 1] + share * (results[at] - results[at - 1])
        found = np.where(inside, step, found)
    for result in results:
        sound = sound & np.isfinite(result)
    return cast("float", np.where(sound, found, np.nan))


def divide(left: Closure, right: Closure) -> Closure:
    """Their ratio; nan over zero."""

    def ratio(slots: Slots) -> float:
        below = right(slots)
        whole = below.all() if isinstance(below, np.ndarray) else below
        if not whole:
            below = cast("float", np.where(below, below, np.nan))
        return left(slots) / below

    return ratio


def at_most(left: Closure, right: Closure) -> Closure:
    """`<=`, forgiving a hair; nan where a side has no answer."""

    def compare(slots: Slots) -> float:
        a, b = left(slots), right(slots)
        gap = a - b
        holds = gap <= HAIR * np.maximum(np.abs(a), np.abs(b))
        return cast("float", np.where(np.isnan(gap), np.nan, holds))

    return compare


def less(left: Closure, right: Closure) -> Closure:
    """`<`, by more than a hair; nan where a side has no answer."""

    def compare(slots: Slots) -> float:
        a, b = left(slots), right(slots)
        gap = b - a
        holds = gap > HAIR * np.maximum(np.abs(a), np.abs(b))
        return cast("float", np.where(np.isnan(gap), np.nan, holds))

    return compare


def choose(condition: Closure, then: Closure, otherwise: Closure) -> Closure:
    """Each corner takes its own branch."""

    def chosen(slots: Slots) -> float:
        holds = condition(slots)
        found = np.where(holds, then(slots), otherwise(slots))
        return cast("float", np.where(np.isnan(holds), np.nan, found))

    return chosen


def within(condition: Closure, _: str) -> Closure:
    """1 where a condition holds, nan elsewhere."""
    return lambda slots: cast("float", np.where(np.equal(condition(slots), 1.0), 1.0, np.nan))


def hold(value: Closure, limits: tuple[Closure, ...]) -> Closure:
    """A value where all limits hold, nan elsewhere."""

    def held(slots: Slots) -> float:
        found = value(slots)
        for limit in limits:
            found = found * limit(slots)
        return found

    return held


def each(function: Callable[..., float], arguments: tuple[Closure, ...]) -> Closure:
    """A function of plain floats, called at every corner."""
    return lambda slots: at_every_corner(function, [argument(slots) for argument in arguments])


def at_every_corner(function: Callable[..., float], known: Sequence[float]) -> float:
    """What a function of plain floats gives at every corner of its arguments."""
    corners = np.broadcast_arrays(*known)
    points = zip(*map(np.ravel, corners), strict=True)
    found = [answer_or_nan(function, point) for point in points]
    return cast("float", np.array(found).reshape(corners[0].shape))


def answer_or_nan(function: Callable[..., float], point: Sequence[float]) -> float:
    """What a function gives at one corner; nan where it has no answer."""
    try:
        return function(*map(float, point))
    except (OutsideValidity, ArithmeticError, ValueError, LookupError):
        return math.nan


CORNERS = Arithmetic(
    number=np.float64,
    functions={
        "sqrt": np.sqrt,
        "abs": np.abs,
        "floor": down,
        "ceil": up,
        "round": nearest_whole,
        "exp": answered(np.exp),
        "log": answered(np.log),
        "log10": answered(np.log10),
        "sin": np.sin,
        "cos": np.cos,
        "tan": np.tan,
        "min": least,
        "max": most,
        "interpolate": read_between,
    },
    power=answered(np.power),
    divide=divide,
    at_most=at_most,
    less=less,
    choose=choose,
    within=within,
    hold=hold,
    each=each,
)
