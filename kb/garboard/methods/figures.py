"""A figure as a publication prints it, and how a row of such figures becomes an answer.

A regulation that prints two columns is quoted in both. The figure is kept as printed, with its
own unit; nothing here turns one column into the other.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Final

from garboard.calc.method import Answer, Argument
from garboard.calc.units import read_unit
from garboard.errors import OutsideValidity

__all__ = ["NEAR", "Figure", "Row", "answer", "number", "required", "word"]

NEAR: Final = 1e-9
"""Relative: two lengths closer than this are one length written in two units."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A number and the unit it is printed in; a plain number has no unit."""

    value: float
    unit: str = ""

    @property
    def si(self) -> float:
        """The same in SI, rounded once."""
        return read_unit(self.unit).exact(Fraction(str(self.value)))

    def __str__(self) -> str:
        return f"{self.value:g} {self.unit}".rstrip()


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a rule: when it is read, what it asks for, and its figures by result name."""

    when: str
    asks: str
    source: str
    figures: Mapping[str, Figure] = field(default_factory=dict)

    @property
    def cells(self) -> tuple[str, str, str, str]:
        """The row as it is shown."""
        return self.when, self.asks, ", ".join(map(str, self.figures.values())), self.source


def answer(rows: Iterable[Row], notes: Iterable[str] = (), alarms: Iterable[str] = ()) -> Answer:
    """The figures of the rows that apply together, each as its row prints it."""
    rows = tuple(rows)
    figures = {name: figure for row in rows for name, figure in row.figures.items()}
    return Answer(
        results={name: figure.si for name, figure in figures.items()},
        printed={name: str(figure) for name, figure in figures.items()},
        columns=("when", "asks for", "as printed", "source"),
        rows=tuple(row.cells for row in rows),
        notes=tuple(notes),
        alarms=tuple(alarms),
    )


def number(asked: Mapping[str, Argument], name: str) -> float | None:
    """A quantity that may have been left out, in SI."""
    argument = asked.get(name)
    return None if argument is None else argument.si


def required(asked: Mapping[str, Argument], name: str, reason: str) -> float:
    """A quantity that this row cannot do without, in SI.

    Raises:
        OutsideValidity: it was left out; the reason says why it is needed.
    """
    value = number(asked, name)
    if value is None:
        raise OutsideValidity(reason)
    return value


def word(asked: Mapping[str, Argument], name: str, reason: str) -> str:
    """A word that the table cannot be read without.

    Raises:
        OutsideValidity: it was left out; the reason says why it is needed.
    """
    if name not in asked:
        raise OutsideValidity(reason)
    return asked[name].word
