"""The recorded numbers of a component, and which of two stands above the other.

Two numbers are compared at the ends of their tolerances that are worse, and a gauge reading meets
an absolute pressure through the atmosphere of the vessel's conditions.
"""

from dataclasses import replace

from garboard.book import Book
from garboard.calc.kinds import PRESSURE
from garboard.calc.value import Value
from garboard.errors import Where
from garboard.records import margins
from garboard.records.component import Component

__all__ = ["as_written", "is_pressure", "line_of", "margin", "recorded"]

ATMOSPHERE = "site.atmosphere"


def recorded(book: Book, part: Component, name: str) -> Value | None:
    """A number of a component, with the place where the component has it.

    Args:
        book: Everything read and worked out.
        part: The component.
        name: `set`; of a scale `range.to`.

    Returns:
        The value; None where it is not recorded or not computed.
    """
    value = book.values.get(part.address(name))
    if value is None or value.si is None:
        return None
    return replace(value, where=part.at_place(name))


def as_written(value: Value) -> str:
    """A value with its tolerance, as its author wrote both."""
    return f"{value.text} +/- {value.tolerance}" if value.tolerance else value.text


def is_pressure(value: Value | None) -> bool:
    """Whether there is a value and it is a pressure."""
    return value is not None and value.type.dimension == PRESSURE


def line_of(value: Value, seen_from: Where) -> str:
    """Where a value is written, as short as it can be said in another place."""
    same = value.where.path == seen_from.path
    return f"line {value.where.line}" if same else f"{value.where.path}:{value.where.line}"


def margin(book: Book, lower: Value, upper: Value) -> float | None:
    """How far one number, at its lowest, stands above another at its highest.

    Args:
        book: It holds the atmosphere.
        lower: The number that should be the lower one.
        upper: The number that should be the higher one.

    Returns:
        The distance in SI units, 0 where they are equal, negative where they cross; None where the
        two cannot be compared.
    """
    return margins.margin(lower, upper, book.values.get(ATMOSPHERE))
