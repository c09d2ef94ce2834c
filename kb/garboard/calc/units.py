"""Read the name of a unit, and hold its exact factor.

Each whitelisted name is looked up in the units library once, as an exact fraction, and kept; the
library is loaded at the first unit of a run that needs it and never sees an author's text. Compound
units are read here: `kJ/(kg.K)`, `m3(n)/h`, `m/s^2`.

A pressure says what it is counted from, `bar(g)`, `bar(a)`, `bar(d)`; so does the kelvin. In a
compound, and where a unit is a stress such as `N/mm2`, no tag is needed.
"""

from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache, lru_cache
from typing import TYPE_CHECKING

from garboard.calc.dimensions import tidy
from garboard.calc.fault import NOWHERE, Line, Span
from garboard.calc.kinds import AIR, BASES, NUMBER, VOLUME, Dimension, Kind, Type, absolute_of
from garboard.calc.unit_names import FREE_AIR, LIBRARY_NAMES, ROLES, Role
from garboard.calc.unit_reader import UnitRefusal, read_parts
from garboard.errors import Where

if TYPE_CHECKING:
    import pint

__all__ = ["NO_UNIT", "Unit", "as_difference", "read_unit", "read_unit_in"]


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit of measurement, with the kind of thing it measures."""

    text: str
    """As written: `bar(g)`; empty for a plain number."""
    factor: Fraction
    """How many SI units one of it is."""
    offset: Fraction
    """Its zero, in SI units: 273.15 for degC."""
    type: Type
    scale: float = field(init=False, repr=False, compare=False)
    """The factor as a float."""
    shift: float = field(init=False, repr=False, compare=False)
    """The offset as a float."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "scale", float(self.factor))
        object.__setattr__(self, "shift", float(self.offset))

    def to_si(self, value: float) -> float:
        """A number of this unit in SI units."""
        return value * self.scale + self.shift

    def from_si(self, value: float) -> float:
        """A number of SI units in this unit."""
        return (value - self.shift) / self.scale

    def exact(self, number: Fraction) -> float:
        """A number as typed in SI units, rounded once."""
        own = number * self.factor
        return float(own + self.offset if self.offset else own)


NO_UNIT = Unit("", Fraction(1), Fraction(0), Type(NUMBER))
"""The unit of a plain number."""


def read_unit(text: str, where: Where = NOWHERE) -> Unit:
    """Read a unit as written.

    Args:
        text: Without a space inside: `bar(g)`, `kJ/(kg.K)`; empty for a plain number.
        where: The place of its first sign.

    Raises:
        CalcFault: It is no unit of the handbook, or does not say what it is counted from.

    >>> read_unit("kPa(g)").to_si(3.0), read_unit("rpm").factor
    (3000.0, Fraction(1, 60))
    """
    return read_unit_in(Line(text, where), Span(0, len(text)))


def read_unit_in(line: Line, span: Span) -> Unit:
    """Read the unit that stands in a part of a line.

    Raises:
        CalcFault: As `read_unit`.
    """
    try:
        return known(line.text[span.start : span.end])
    except UnitRefusal as refusal:
        part = Span(span.start + refusal.start, span.start + refusal.end)
        raise line.fault(refusal.family, part, refusal.text, refusal.cure) from None


@lru_cache(maxsize=4096)
def known(text: str) -> Unit:
    """The unit, kept once read.

    Raises:
        UnitRefusal: It cannot be read.
    """
    if not text:
        return NO_UNIT
    parts = read_parts(text)
    factor, measure = Fraction(1), NUMBER
    for atom in parts.atoms:
        step, own = resolve(atom.name)
        air = atom.volumes_of_air
        factor *= step**atom.power * (air_factor(atom.tag) ** air if air else 1)
        measure = tidy(
            whole + part * atom.power + air * (gas - space)
            for whole, part, gas, space in zip(measure, own, AIR, VOLUME, strict=True)
        )
    role = parts.atoms[0].role
    reading = parts.kind is Kind.READING and role is Role.THERMOMETER
    offset = zero_point(parts.atoms[0].name) if reading else Fraction(0)
    if parts.kind is Kind.ABSOLUTE:
        return Unit(text, factor, offset, absolute_of(measure))
    return Unit(text, factor, offset, Type(measure, parts.kind))


@cache
def air_factor(tag: str) -> Fraction:
    """From the state a tag names to the reference of free air, 0 degC and 101 325 Pa."""
    pressure, temperature = FREE_AIR[tag]
    normal_pressure, normal_temperature = FREE_AIR["n"]
    return (
        Fraction(pressure, normal_pressure) * Fraction(normal_temperature) / Fraction(temperature)
    )


def as_difference(unit: Unit) -> Unit:
    """The unit in which a difference of two such values is stated.

    >>> as_difference(read_unit("degC")).text, as_difference(read_unit("bar(g)")).text
    ('K(d)', 'bar(d)')
    """
    if unit.type.kind is Kind.PLAIN:
        return unit
    if unit.text == "degC":
        return read_unit("K(d)")
    return read_unit(unit.text.removesuffix("(g)").removesuffix("(a)") + "(d)")


@cache
def registry() -> "pint.UnitRegistry[Fraction]":
    """The units library, with exact fractions; loaded at the first unit that needs it."""
    import pint  # noqa: PLC0415 - half a second, and most runs read their units from here

    return pint.UnitRegistry(non_int_type=Fraction)


RESOLVED: dict[str, tuple[Fraction, Dimension]] = {}
"""Names that were looked up in this run, or recalled from an earlier one."""
ZEROS: dict[str, Fraction] = {}
"""The same of thermometers."""


def resolve(name: str) -> tuple[Fraction, Dimension]:
    """The exact factor and dimension of a whitelisted name; one turn is a base of its own."""
    if name not in RESOLVED:
        RESOLVED[name] = look_up(name)
    return RESOLVED[name]


def look_up(name: str) -> tuple[Fraction, Dimension]:
    """What the units library says of a name."""
    turn = ROLES.get(name) is Role.TURN
    of_library = registry().Quantity(Fraction(1), difference_name(name)).to_base_units()
    factor = fraction(of_library.magnitude)
    bases = {
        str(base).strip("[]"): fraction(exponent)
        for base, exponent in of_library.dimensionality.items()
    }
    bases["light"] = bases.pop("luminosity", Fraction(0))
    if turn:
        factor /= fraction(registry().Quantity(Fraction(1), "turn").to_base_units().magnitude)
        bases["turn"] = Fraction(1)
    return factor, tuple(bases.get(base, Fraction(0)) for base in BASES)


def difference_name(name: str) -> str:
    """The library's name for a difference on a thermometer, and of everything else."""
    own = LIBRARY_NAMES[name]
    return f"delta_{own}" if ROLES.get(name) is Role.THERMOMETER else own


def zero_point(name: str) -> Fraction:
    """Where a thermometer's zero lies, in kelvin."""
    if name not in ZEROS:
        zero = registry().Quantity(Fraction(0), LIBRARY_NAMES[name])
        ZEROS[name] = fraction(zero.to("kelvin").magnitude)
    return ZEROS[name]


def fraction(found: object) -> Fraction:
    """What the units library gives, which is exact.

    Raises:
        TypeError: It is not; a factor must never pass through a float.
    """
    if isinstance(found, Fraction):
        return found
    if isinstance(found, int):
        return Fraction(found)
    raise TypeError(f"a factor came as {type(found).__name__}")
