"""Dimensions: the exponents of nine bases, and what the trade calls them."""

from collections.abc import Iterable, Iterator
from fractions import Fraction

__all__ = [
    "AIR",
    "BASES",
    "NUMBER",
    "PRESSURE",
    "TEMPERATURE",
    "TIME",
    "TURN",
    "VOLUME",
    "Dimension",
    "dimension",
    "tidy",
    "words_for_dimension",
]

Dimension = tuple[Fraction, ...]
"""Exponents of BASES, in that order."""

BASES = (
    "length",
    "mass",
    "time",
    "temperature",
    "current",
    "substance",
    "light",
    "free air",
    "turn",
)


ONE_OF_EACH: dict[Fraction, Fraction] = {}


def tidy(measure: Iterable[Fraction]) -> Dimension:
    """A dimension whose equal exponents are the same objects, so that comparing two is cheap."""
    return tuple(ONE_OF_EACH.setdefault(exponent, exponent) for exponent in measure)


def dimension(**exponents: int) -> Dimension:
    """A dimension from the exponents of its bases; `free_air` stands for free air."""
    return tidy(Fraction(exponents.get(base.replace(" ", "_"), 0)) for base in BASES)


NUMBER = dimension()
PRESSURE = dimension(length=-1, mass=1, time=-2)
TEMPERATURE = dimension(temperature=1)
TIME = dimension(time=1)
VOLUME = dimension(length=3)
AIR = dimension(free_air=1)
TURN = dimension(turn=1)


UNIT_WORDS = (
    "metre",
    "kilogram",
    "second",
    "kelvin",
    "ampere",
    "mole",
    "candela",
    "cubic metre of free air",
    "turn",
)
"""What each of BASES is counted in."""
POWERS = {
    Fraction(1): "{}",
    Fraction(2): "square {}",
    Fraction(3): "cubic {}",
    Fraction(1, 2): "square root of a {}",
    Fraction(3, 2): "square root of a cubic {}",
}


def words_for_dimension(measure: Dimension) -> str:
    """A dimension in words, or by its units where the trade has no word.

    >>> words_for_dimension(dimension(length=3, time=-1)), words_for_dimension(dimension(length=-3))
    ('a volume flow', 'a number per cubic metre')
    >>> words_for_dimension(dimension(mass=2, length=-1, time=-1))
    'what is counted in square kilogram per metre and second'
    """
    if measure in NOUNS:
        return NOUNS[measure]
    over = " times ".join(_counted_in(measure, 1))
    under = " and ".join(_counted_in(measure, -1))
    counted = f"what is counted in {over}" if over else "a number"
    return f"{counted} per {under}" if under else counted


def _counted_in(measure: Dimension, sign: int) -> Iterator[str]:
    """The units above the stroke (1) or below it (-1), each with its power in words."""
    for unit, exponent in zip(UNIT_WORDS, measure, strict=True):
        power = exponent * sign
        if power > 0:
            named = f"({unit})" if " " in unit and power != 1 else unit
            plain = POWERS.get(power, f"{{}} to the power {power}")
            yield plain.format(named)


NOUNS: dict[Dimension, str] = {
    NUMBER: "a plain number",
    PRESSURE: "a pressure",
    TEMPERATURE: "a temperature",
    VOLUME: "a volume",
    AIR: "an amount of free air",
    TIME: "a time",
    TURN: "a number of turns",
    dimension(length=1): "a length",
    dimension(mass=1): "a mass",
    dimension(current=1): "an electric current",
    dimension(substance=1): "an amount of substance",
    dimension(light=1): "a luminous intensity",
    dimension(length=2): "an area",
    dimension(length=1, time=-1): "a speed",
    dimension(length=1, time=-2): "an acceleration",
    dimension(length=3, time=-1): "a volume flow",
    dimension(mass=1, time=-1): "a mass flow",
    dimension(free_air=1, time=-1): "a flow of free air",
    dimension(mass=1, length=-3): "a density",
    dimension(length=1, mass=1, time=-2): "a force",
    dimension(length=2, mass=1, time=-2): "an energy or torque",
    dimension(length=2, mass=1, time=-3): "a power",
    dimension(time=-1): "a rate per time",
    dimension(turn=1, time=-1): "a speed of rotation",
    dimension(current=1, time=1): "an electric charge",
    dimension(length=2, mass=1, time=-3, current=-1): "a voltage",
    dimension(length=2, mass=1, time=-3, current=-2): "an electric resistance",
    dimension(length=3, mass=1, time=-3, current=-2): "a resistivity",
    dimension(length=-1, mass=1, time=-1): "a viscosity",
    dimension(length=2, time=-1): "a kinematic viscosity",
    dimension(length=2, time=-2, temperature=-1): "a specific heat or gas constant",
    dimension(temperature=-1): "a rate per kelvin",
}
