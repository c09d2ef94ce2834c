"""The difference of two values in the right kind: of two gauge pressures `+3 bar`, never a reading."""

from garboard.calc.kinds import TEMPERATURE, Kind, words
from garboard.calc.show import show_number
from garboard.calc.units import Unit, as_difference
from garboard.calc.value import Value

__all__ = ["change_of", "kinds_differ", "percent_of", "show_change"]

TELLING = 3
"""Significant digits of a change."""
PER_CENT = "%"


def show_change(si: float, unit: Unit, *, whole: bool = False) -> str:
    """A difference with its sign.

    Args:
        si: In SI.
        unit: The unit of the values that it lies between.
        whole: Both are counts.

    >>> from garboard.calc.units import read_unit
    >>> show_change(3e5, read_unit("bar(g)")), show_change(-2.0, read_unit("degC"))
    ('+3 bar', '-2 K')
    >>> show_change(0.05, read_unit("%")), show_change(-2.0, read_unit(""), whole=True)
    ('+5 points', '-2')
    """
    own = as_difference(unit)
    number = si / own.scale
    text = show_number(abs(number), TELLING, whole=whole and number == round(number))
    if "." in text and "e" not in text:
        text = text.rstrip("0").rstrip(".")
    name = "points" if own.text == PER_CENT else own.text.removesuffix("(d)")
    return f"{'-' if number < 0 else '+'}{text} {name}".strip()


def change_of(before: Value, after: Value) -> str:
    """What a value changed by; empty where there is no such difference, or none."""
    if before.si is None or after.si is None or kinds_differ(before, after):
        return ""
    if before.si == after.si:
        return ""
    whole = before.whole and after.whole and not after.unit.text
    return show_change(after.si - before.si, after.unit, whole=whole)


def percent_of(before: Value, after: Value) -> str:
    """The same in per cent of what it was.

    Returns:
        Nothing of readings, whose zero is chosen, of what is itself in per cent, and from zero.
    """
    if before.si is None or after.si is None or kinds_differ(before, after):
        return ""
    reading = Kind.READING in (before.type.kind, after.type.kind)
    warmth = after.type.dimension == TEMPERATURE and after.type.kind is Kind.ABSOLUTE
    shares = PER_CENT in (before.unit.text, after.unit.text)
    if reading or warmth or shares or before.si in (0, after.si):
        return ""
    share = 100 * (after.si - before.si) / abs(before.si)
    text = show_number(abs(share), 2)
    return f"{'-' if share < 0 else '+'}{text} %"


def kinds_differ(before: Value, after: Value) -> str:
    """How two values are counted, where they are not counted alike; else nothing."""
    one, other = words(before.type), words(after.type)
    same = before.type.dimension == after.type.dimension and before.type.kind is after.type.kind
    return "" if same else f"was {one}, is {other}"
