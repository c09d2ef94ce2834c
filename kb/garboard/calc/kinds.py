"""What a number is: its dimension, and what it is counted from.

A pressure is counted from the atmosphere outside (gauge), from nothing (absolute) or from another
pressure (difference); a thermometer reading, an absolute temperature and a rise differ likewise.
Free air is an amount of gas and has its own base dimension; so have turns, because "radian = 1"
loses a factor of 2 pi.

Absolute pressure and temperature carry a hidden datum exponent through products, so that
p1 * V1 / V2 is still an absolute pressure while rho * g * h, built from p / (R * T), is a difference.
"""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

__all__ = ["AIR", "BASES", "NUMBER", "PRESSURE", "TEMPERATURE", "TURN", "VOLUME", "Dimension", "Kind", "Type"]

Dimension = tuple[Fraction, ...]
"""Exponents of BASES, in that order."""

BASES = ("length", "mass", "time", "temperature", "current", "substance", "light", "free air", "turn")


def dimension(**exponents: int) -> Dimension:
    """A dimension from the exponents of its bases; `free_air` stands for free air."""
    return tuple(Fraction(exponents.get(base.replace(" ", "_"), 0)) for base in BASES)


NUMBER = dimension()
PRESSURE = dimension(length=-1, mass=1, time=-2)
TEMPERATURE = dimension(temperature=1)
VOLUME = dimension(length=3)
AIR = dimension(free_air=1)
TURN = dimension(turn=1)


class Kind(StrEnum):
    """What a quantity is counted from."""

    PLAIN = "plain"
    """From nothing in particular: every difference, and everything that is no pressure or temperature."""
    READING = "reading"
    """A gauge pressure (Pa above the atmosphere) or a thermometer reading (held in kelvin)."""
    ABSOLUTE = "absolute"
    """Counted from nothing."""


@dataclass(frozen=True, slots=True)
class Type:
    """Dimension, kind and hidden datum exponents of an expression."""

    dimension: Dimension
    kind: Kind = Kind.PLAIN
    pressure_datum: Fraction = Fraction(0)
    temperature_datum: Fraction = Fraction(0)
