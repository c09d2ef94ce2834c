"""What a number is: its dimension, and what it is counted from.

A pressure is counted from the atmosphere outside (gauge), from nothing (absolute) or from another
pressure (difference); a thermometer reading, an absolute temperature and a rise differ likewise.
Free air is an amount of gas and has its own base dimension; so have turns, because "radian = 1"
loses a factor of 2 pi.

Absolute pressure and temperature carry a hidden datum exponent through products, so that
p1 * V1 / V2 is still an absolute pressure while rho * g * h, built from p / (R * T), is a
difference.
"""

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from garboard.calc.dimensions import (
    AIR,
    BASES,
    NUMBER,
    PRESSURE,
    TEMPERATURE,
    TIME,
    TURN,
    VOLUME,
    Dimension,
    dimension,
    words_for_dimension,
)

__all__ = [
    "AIR",
    "BASES",
    "NUMBER",
    "PLAIN_NUMBER",
    "PRESSURE",
    "TEMPERATURE",
    "TIME",
    "TURN",
    "VOLUME",
    "Clash",
    "Dimension",
    "Kind",
    "Type",
    "absolute_of",
    "add",
    "difference_of",
    "dimension",
    "divide",
    "has_datum",
    "multiply",
    "power",
    "reading_of",
    "same",
    "settle",
    "subtract",
    "words",
    "words_for_dimension",
]

NONE = Fraction(0)
ONE = Fraction(1)


class Kind(StrEnum):
    """What a quantity is counted from."""

    PLAIN = "plain"
    """From nothing in particular: every difference, and all that is no pressure or temperature."""
    READING = "reading"
    """A gauge pressure (Pa above the atmosphere) or a thermometer reading (held in kelvin)."""
    ABSOLUTE = "absolute"
    """Counted from nothing."""


@dataclass(frozen=True, slots=True)
class Type:
    """Dimension, kind and hidden datum exponents of an expression."""

    dimension: Dimension
    kind: Kind = Kind.PLAIN
    pressure_datum: Fraction = NONE
    temperature_datum: Fraction = NONE
    mark: int = field(init=False, repr=False, compare=False)
    """Its hash, of the numerators alone: hashing eleven fractions would cost more than the algebra."""

    def __post_init__(self) -> None:
        numerators = tuple(part.numerator for part in self.dimension)
        object.__setattr__(self, "mark", hash((numerators, self.kind.value)))

    def __hash__(self) -> int:
        return self.mark


PLAIN_NUMBER = Type(NUMBER)
ABSOLUTE_PRESSURE = Type(PRESSURE, Kind.ABSOLUTE, ONE, NONE)
ABSOLUTE_TEMPERATURE = Type(TEMPERATURE, Kind.ABSOLUTE, NONE, ONE)


class Clash(Exception):  # noqa: N818 - named in words of the trade
    """Two things that cannot meet; says whether the dimension or the datum is why."""

    def __init__(self, text: str, cure: str, *, datum: bool) -> None:
        super().__init__(text)
        self.text = text
        self.cure = cure
        self.datum = datum


def has_datum(measure: Dimension) -> bool:
    """Whether things of this dimension are counted from somewhere."""
    return measure in (PRESSURE, TEMPERATURE)


def absolute_of(measure: Dimension) -> Type:
    """The absolute pressure or temperature."""
    return ABSOLUTE_PRESSURE if measure == PRESSURE else ABSOLUTE_TEMPERATURE


def reading_of(measure: Dimension) -> Type:
    """The gauge pressure or the thermometer reading."""
    return Type(measure, Kind.READING)


def difference_of(measure: Type) -> Type:
    """What a difference of two such things is."""
    return Type(measure.dimension)


@lru_cache(maxsize=4096)
def settle(measure: Dimension, pressure_datum: Fraction, temperature_datum: Fraction) -> Type:
    """Name the kind of a product from its dimension and datum exponents.

    A pressure that holds exactly one absolute pressure is itself absolute, likewise a temperature.
    """
    datums = (pressure_datum, temperature_datum)
    counted = (measure == PRESSURE and datums == (ONE, NONE)) or (
        measure == TEMPERATURE and datums == (NONE, ONE)
    )
    kind = Kind.ABSOLUTE if counted else Kind.PLAIN
    return Type(measure, kind, pressure_datum, temperature_datum)


@lru_cache(maxsize=4096)
def multiply(left: Type, right: Type) -> Type:
    """The type of a product.

    Raises:
        Clash: A reading stands in it and the other side is no plain number, or the reading is a
            thermometer's.
    """
    if Kind.READING in (left.kind, right.kind):
        reading, other = (left, right) if left.kind is Kind.READING else (right, left)
        return scale(reading, other, "a product with")
    measure = tuple(a + b for a, b in zip(left.dimension, right.dimension, strict=True))
    return settle(
        measure,
        left.pressure_datum + right.pressure_datum,
        left.temperature_datum + right.temperature_datum,
    )


@lru_cache(maxsize=4096)
def divide(left: Type, right: Type) -> Type:
    """The type of a ratio.

    Raises:
        Clash: A reading is divided by anything but a plain number, or divides.
    """
    if right.kind is Kind.READING:
        raise no_datum(right, "a ratio with")
    if left.kind is Kind.READING:
        return scale(left, right, "a ratio with")
    measure = tuple(a - b for a, b in zip(left.dimension, right.dimension, strict=True))
    return settle(
        measure,
        left.pressure_datum - right.pressure_datum,
        left.temperature_datum - right.temperature_datum,
    )


def scale(reading: Type, other: Type, what: str) -> Type:
    """A reading by a plain number: 1.5 times the working pressure is still a gauge pressure."""
    if other == PLAIN_NUMBER and reading.dimension == PRESSURE:
        return reading
    raise no_datum(reading, what)


def no_datum(reading: Type, what: str) -> Clash:
    """The refusal of a reading where only something counted from nothing makes sense."""
    if reading.dimension == PRESSURE:
        cure = (
            "say absolute(...) to count it from nothing, or difference(...) for the reading itself"
        )
    else:
        cure = "say absolute(...), or subtract another reading first"
    return Clash(f"{what} {words(reading)} has no meaning", cure, datum=True)


@lru_cache(maxsize=4096)
def power(base: Type, exponent: Fraction) -> Type:
    """The type of a power or root.

    Raises:
        Clash: The base is a reading.
    """
    if base.kind is Kind.READING:
        raise no_datum(base, "a power or root of")
    measure = tuple(part * exponent for part in base.dimension)
    return settle(measure, base.pressure_datum * exponent, base.temperature_datum * exponent)


@lru_cache(maxsize=4096)
def add(left: Type, right: Type) -> Type:
    """The type of a sum.

    Raises:
        Clash: The dimensions differ, or two things counted from different points meet.
    """
    meet(left, right, "add")
    kinds = {left.kind, right.kind}
    if kinds == {Kind.PLAIN}:
        return left if left == right else Type(left.dimension)
    if kinds == {Kind.ABSOLUTE}:
        return left
    if kinds == {Kind.READING}:
        raise Clash(
            f"{words(left)} added to another counts the starting point twice",
            "make one of them a difference: subtract first, or say difference(...)",
            datum=True,
        )
    if Kind.PLAIN in kinds:
        return right if left.kind is Kind.PLAIN else left
    raise mixed(left, right, "add")


@lru_cache(maxsize=4096)
def subtract(left: Type, right: Type) -> Type:
    """The type of a difference.

    Raises:
        Clash: The dimensions differ, or two things counted from different points meet.
    """
    meet(left, right, "subtract")
    if left.kind is right.kind:
        return left if left == right and left.kind is Kind.PLAIN else Type(left.dimension)
    if right.kind is Kind.PLAIN:
        return left
    if left.kind is Kind.PLAIN:
        raise Clash(
            f"{words(right)} cannot be taken from {words(left)}",
            "turn it round, or make both alike with absolute(...), gauge(...), difference(...)",
            datum=True,
        )
    raise mixed(left, right, "subtract")


@lru_cache(maxsize=4096)
def same(left: Type, right: Type, verb: str) -> Type:
    """The type of a choice between two, which must be the same kind of thing.

    Raises:
        Clash: They are not.
    """
    meet(left, right, verb)
    if left.kind is not right.kind:
        raise mixed(left, right, verb)
    return left if left == right else Type(left.dimension, left.kind)


def meet(left: Type, right: Type, verb: str) -> None:
    """Refuse two dimensions that cannot stand side by side."""
    if left.dimension != right.dimension:
        text = f"cannot {verb} {words(left)} and {words(right)}"
        raise Clash(text, "check the units and brackets of both", datum=False)


def mixed(left: Type, right: Type, verb: str) -> Clash:
    """The refusal of two things that are counted from different points."""
    if Kind.PLAIN in (left.kind, right.kind):
        cure = (
            "a difference is counted from nowhere: say absolute(...), gauge(...) or difference(...)"
        )
        cure = f"make both the same: {cure}"
    else:
        cure = "put absolute(...) around the reading, then both are counted from nothing"
    text = f"cannot {verb} {words(left)} and {words(right)}"
    return Clash(text, cure, datum=True)


def words(what: Type) -> str:
    """A type in words of the trade.

    >>> words(Type(PRESSURE, Kind.READING)), words(Type(TEMPERATURE))
    ('a gauge pressure', 'a temperature difference')
    """
    if what.kind is Kind.READING:
        return "a gauge pressure" if what.dimension == PRESSURE else "a thermometer reading"
    if what.kind is Kind.ABSOLUTE:
        noun = "pressure" if what.dimension == PRESSURE else "temperature"
        return f"an absolute {noun}"
    if what.dimension == PRESSURE:
        return "a pressure difference or stress"
    if what.dimension == TEMPERATURE:
        return "a temperature difference"
    return words_for_dimension(what.dimension)
