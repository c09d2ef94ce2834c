"""What a tree needs to be worked out: one set of names for two number libraries, and the floats.

Comparisons, `floor`, `ceil` and `round` forgive the last figures of a float: 0.6 / 0.2 counts as
3, not as 2.9999999999999996, and 1.1 times 30 bar is not above 33 bar. A half rounds up.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import pairwise

__all__ = [
    "FLOATS",
    "HAIR",
    "Arithmetic",
    "Closure",
    "LimitPassed",
    "Slots",
    "Uneven",
    "down",
    "nearest_whole",
    "up",
]

HAIR = 1e-12
"""The share of a value that counts as no difference."""

Slots = list[float]
"""All values of a handbook in SI; with arrays, an array in each place."""
Closure = Callable[[Slots], float]


class Uneven(ValueError):  # noqa: N818 - named in words of the trade
    """A number cannot be worked out, for a reason in words."""


class LimitPassed(ValueError):  # noqa: N818 - named in words of the trade
    """A limit of a method does not hold; its text is the reason."""


@dataclass(frozen=True, slots=True)
class Arithmetic:
    """What a tree needs beyond `+ - * /` and comparisons."""

    number: Callable[[float], float]
    """A number written in a line."""
    functions: Mapping[str, Callable[..., float]]
    power: Callable[[float, float], float]
    divide: Callable[[Closure, Closure], Closure]
    at_most: Callable[[Closure, Closure], Closure]
    """Left is less than right, or no more than a hair above it."""
    less: Callable[[Closure, Closure], Closure]
    """Left is less than right by more than a hair."""
    choose: Callable[[Closure, Closure, Closure], Closure]
    """From a condition and two branches."""
    within: Callable[[Closure, str], Closure]
    """1 while a condition holds."""
    hold: Callable[[Closure, tuple[Closure, ...]], Closure]
    """A value, while the limits hold."""
    each: Callable[[Callable[..., float], tuple[Closure, ...]], Closure]
    """A function of plain floats, such as the reading of a table."""


def down(value: float) -> float:
    """The whole number below, forgiving a hair."""
    return float(math.floor(value + abs(value) * HAIR))


def up(value: float) -> float:
    """The whole number above, forgiving a hair."""
    return float(math.ceil(value - abs(value) * HAIR))


def nearest_whole(value: float) -> float:
    """The nearest whole number; a half goes up."""
    return down(value + 0.5)


def interpolate(value: float, *table: float) -> float:
    """Read between the points of a table.

    Raises:
        Uneven: The points do not rise, or the value lies outside them.

    >>> interpolate(15.0, 10.0, 1.0, 20.0, 3.0)
    2.0
    """
    points, results = table[::2], table[1::2]
    if any(after <= before for before, after in pairwise(points)):
        raise Uneven("the points of the table do not rise")
    if not points[0] <= value <= points[-1]:
        raise Uneven("it lies outside the table, which is not continued past its ends")
    at = next(i for i in range(1, len(points)) if value <= points[i])
    share = (value - points[at - 1]) / (points[at] - points[at - 1])
    return results[at - 1] + share * (results[at] - results[at - 1])


def divide_float(left: Closure, right: Closure) -> Closure:
    """Their ratio."""
    return lambda slots: left(slots) / right(slots)


def at_most_float(left: Closure, right: Closure) -> Closure:
    """`<=`, forgiving a hair."""

    def compare(slots: Slots) -> float:
        a, b = left(slots), right(slots)
        return a <= b or a - b <= HAIR * max(abs(a), abs(b))

    return compare


def less_float(left: Closure, right: Closure) -> Closure:
    """`<`, by more than a hair."""

    def compare(slots: Slots) -> float:
        a, b = left(slots), right(slots)
        return a < b and b - a > HAIR * max(abs(a), abs(b))

    return compare


def choose_float(condition: Closure, then: Closure, otherwise: Closure) -> Closure:
    """Work out one branch only."""
    return lambda slots: then(slots) if condition(slots) else otherwise(slots)


def within_float(condition: Closure, reason: str) -> Closure:
    """Stop the run when the condition does not hold."""

    def check(slots: Slots) -> float:
        if not condition(slots):
            raise LimitPassed(reason)
        return 1.0

    return check


def hold_float(value: Closure, _: tuple[Closure, ...]) -> Closure:
    """The value; a limit that does not hold has stopped the run already."""
    return value


def each_float(function: Callable[..., float], arguments: tuple[Closure, ...]) -> Closure:
    """Call it once."""
    return lambda slots: function(*[argument(slots) for argument in arguments])


FLOATS = Arithmetic(
    number=float,
    functions={
        "sqrt": math.sqrt,
        "abs": abs,
        "floor": down,
        "ceil": up,
        "round": nearest_whole,
        "exp": math.exp,
        "log": math.log,
        "log10": math.log10,
        "sin": math.sin,
        "cos": math.cos,
        "tan": math.tan,
        "min": min,
        "max": max,
        "interpolate": interpolate,
    },
    power=math.pow,
    divide=divide_float,
    at_most=at_most_float,
    less=less_float,
    choose=choose_float,
    within=within_float,
    hold=hold_float,
    each=each_float,
)
