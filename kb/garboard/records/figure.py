"""A figure as a record writes it: a quantity, an address, or words that begin with either."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from garboard.calc.fault import CalcFault
from garboard.calc.kinds import Type
from garboard.calc.quantity import read_quantity
from garboard.calc.units import Unit
from garboard.calc.value import Value
from garboard.errors import Where
from garboard.names import ADDRESS

__all__ = ["Figure", "figure_of", "half_step", "within_tolerance"]

NUMBER_AND_UNIT = re.compile(r"-?\d[\d.]*(?: [^\s,;]+)?")
DECIMALS = re.compile(r"-?\d+(?:\.(\d+))?")


@dataclass(frozen=True, slots=True)
class Figure:
    """A number in a record, worked out as far as it says."""

    si: float
    type: Type
    text: str
    """As written; of an address, the value as shown."""
    step: float = 0.0
    """Half of its last figure, in SI: how far it was read."""
    address: str = ""
    """Where it is drawn from; empty where it was typed."""


def figure_of(values: Mapping[str, Value], text: str) -> Figure | None:
    """The figure that a text is or begins with; None where it begins with words.

    Args:
        values: What an address in it stands for.
        text: As written: `49.5 bar(g) held 30 min`, `SA-AR-001.test held 30 min`, `9 starts`.
    """
    found = ADDRESS.match(text)
    if found and (value := values.get(found[0])):
        return (
            None if value.si is None else Figure(value.si, value.type, value.text, address=found[0])
        )
    number = NUMBER_AND_UNIT.match(text)
    for written in (number[0], number[0].partition(" ")[0]) if number else ():
        try:
            quantity = read_quantity(written, Where(""))
        except CalcFault:
            continue
        return Figure(quantity.si, quantity.type, written, half_step(written, quantity.unit))
    return None


def half_step(shown: str, unit: Unit) -> float:
    """Half the last figure of a number, in SI: how far it says anything.

    `33 bar(g)` is good to half a bar, `49.5 bar(g)` to a twentieth.
    """
    found = DECIMALS.match(shown)
    decimals = len(found[1] or "") if found else 0
    return float(unit.factor) * 0.5 * 10.0**-decimals


def within_tolerance(value: Value, figure: Figure) -> bool:
    """Whether a figure lies within a value's tolerance.

    Where none is stated, as near as the last figure says of the one that says less.
    """
    if value.low is None or value.high is None:
        return True
    free = max(half_step(value.text, value.unit), figure.step) if value.low == value.high else 0.0
    hair = 1e-9 * max(abs(value.low), abs(value.high))
    return value.low - free - hair <= figure.si <= value.high + free + hair
