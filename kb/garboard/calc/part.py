"""What one block comes to: its sheet, its values, its requirements."""

from dataclasses import dataclass

from garboard.calc.kinds import Type
from garboard.calc.sheet import Sheet
from garboard.calc.show import NOT_COMPUTED
from garboard.calc.units import Unit
from garboard.calc.value import Given, Requirement, Value
from garboard.errors import Diagnostic

__all__ = ["Part", "Worked", "usual_of", "value_of"]


@dataclass(frozen=True, slots=True)
class Part:
    """One block, worked out."""

    sheet: Sheet | None
    """None: it was taken from the store, where its sheet stands until it is asked for."""
    values: tuple[Value, ...]
    """In the order in which they were worked out."""
    requirements: tuple[Requirement, ...]

    @property
    def sound(self) -> bool:
        """Whether nothing in it is at fault, so that it may be kept."""
        return (
            self.sheet is not None
            and not self.sheet.faults
            and all(value.si is not None for value in self.values)
            and all(line.fault is None for line in self.sheet.lines)
        )


@dataclass(frozen=True, slots=True)
class Worked:
    """A block with what must be known of it where it is used."""

    part: Part
    uncertain: tuple[str, ...]
    """Addresses of its values that rest on a tolerance."""
    air: bool
    """Whether it, or a block that it is worked out together with, uses the atmosphere."""


def value_of(given: Given, found: Diagnostic | None) -> Value:
    """A value that stands outside the fences.

    Args:
        given: As it was written down.
        found: Why it cannot be used.
    """
    return Value(
        given.address,
        given.where,
        given.type,
        given.unit,
        None if found else given.si,
        None if found else given.low,
        None if found else given.high,
        NOT_COMPUTED if found else given.shown,
        given.label,
        given.sources,
        given=True,
        tolerance=given.tolerance,
        fault=found,
        usual=None if found else usual_of(given.low, given.high),
    )


def usual_of(low: float, high: float) -> tuple[float, float] | None:
    """What a value that was written down usually lies between: its tolerance, if it has one."""
    return (low, high) if low != high else None


def same_unit(unit: Unit) -> list[object]:
    """All that tells one unit from another."""
    return [unit.text, str(unit.factor), str(unit.offset), same_type(unit.type)]


def same_type(kind: Type) -> list[str]:
    """All that tells one kind from another."""
    datums = (kind.pressure_datum, kind.temperature_datum)
    return [kind.kind.value, *(str(part) for part in (*kind.dimension, *datums))]
