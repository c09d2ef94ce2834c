"""The functions of the language, and what type each makes of its arguments."""

from collections.abc import Callable
from fractions import Fraction

from garboard.calc.kinds import (
    AIR,
    NUMBER,
    PLAIN_NUMBER,
    TIME,
    VOLUME,
    Clash,
    Kind,
    Type,
    power,
    same,
    words,
)

__all__ = ["CASTS", "CONSTANTS", "FUNCTIONS", "type_of_call"]

MANY = 40
FUNCTIONS: dict[str, tuple[int, int]] = {
    "sqrt": (1, 1),
    "abs": (1, 1),
    "floor": (1, 1),
    "ceil": (1, 1),
    "round": (1, 1),
    "exp": (1, 1),
    "log": (1, 1),
    "log10": (1, 1),
    "sin": (1, 1),
    "cos": (1, 1),
    "tan": (1, 1),
    "min": (2, MANY),
    "max": (2, MANY),
    "interpolate": (5, MANY),
    "absolute": (1, 1),
    "gauge": (1, 1),
    "difference": (1, 1),
    "free_air": (3, 3),
}
"""Name to the least and most arguments. `log` is the natural logarithm; angles are deg or plain."""

CASTS = ("absolute", "gauge", "difference")
CONSTANTS = {"pi": 3.141592653589793}


def type_of_call(function: str, types: tuple[Type, ...]) -> Type:
    """The type of what a function gives; casts and free_air are read elsewhere.

    Raises:
        Clash: It cannot take such arguments.
    """
    return RULES[function](function, types)


def root(_: str, types: tuple[Type, ...]) -> Type:
    """A square root halves every exponent."""
    return power(types[0], Fraction(1, 2))


def magnitude(function: str, types: tuple[Type, ...]) -> Type:
    """The size of a difference; a reading has none that means anything."""
    if types[0].kind is Kind.READING:
        text = f"{function}() of {words(types[0])} has no meaning"
        raise Clash(text, "say absolute(...) or difference(...)", datum=True)
    return types[0]


def number_only(function: str, types: tuple[Type, ...]) -> Type:
    """A function of a plain number."""
    if types[0].dimension == NUMBER:
        return PLAIN_NUMBER
    cure = f"divide by one of its unit first, such as {function}(x / (1 m))"
    if function in ("sin", "cos", "tan"):
        cure = "give an angle in deg, or a plain number of radians"
    text = f"{function}() takes a plain number, this is {words(types[0])}"
    raise Clash(text, cure, datum=False)


def alike(_: str, types: tuple[Type, ...]) -> Type:
    """The least or greatest of things of the same kind."""
    found = types[0]
    for other in types[1:]:
        found = same(found, other, "choose between")
    return found


def between(_: str, types: tuple[Type, ...]) -> Type:
    """`interpolate(x, x1, y1, x2, y2, ...)`."""
    if len(types) % 2 == 0:
        cure = "write interpolate(x, x1, y1, x2, y2, ...)"
        raise Clash("interpolate() has a point without its value", cure, datum=False)
    for point in types[1::2]:
        same(types[0], point, "look up")
    return alike("", types[2::2])


def free_air_type(volume: Type) -> Type:
    """The amount of gas in a volume, or its flow.

    Raises:
        Clash: It is neither a volume nor a volume flow.
    """
    flow = tuple(a - b for a, b in zip(VOLUME, TIME, strict=True))
    if volume.dimension == VOLUME:
        return Type(AIR)
    if volume.dimension == flow:
        return Type(tuple(a - b for a, b in zip(AIR, TIME, strict=True)))
    text = f"free_air() takes a volume or its flow, this is {words(volume)}"
    raise Clash(text, "write free_air(volume, pressure, temperature)", datum=False)


RULES: dict[str, Callable[[str, tuple[Type, ...]], Type]] = {
    "sqrt": root,
    "abs": magnitude,
    **dict.fromkeys(("floor", "ceil", "round", "exp", "log", "log10"), number_only),
    **dict.fromkeys(("sin", "cos", "tan"), number_only),
    **dict.fromkeys(("min", "max"), alike),
    "interpolate": between,
}
