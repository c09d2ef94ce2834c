"""Show a value as text: given ones as typed, worked ones with three significant digits.

A count is shown plain. What is printed on a card is rounded to the safe side. A rounded number that
looks like its limit gets more digits until it differs. What is shown can be read back by the
language: a decimal point, no thousands, powers of ten as 1.2e-5.
"""

import math
from collections.abc import Callable
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Context, Decimal
from enum import StrEnum

from garboard.calc.arithmetic import HAIR
from garboard.calc.fault import CalcFault
from garboard.calc.kinds import TEMPERATURE, Kind
from garboard.calc.units import NO_UNIT, Unit, read_unit
from garboard.calc.value import Mover, Value

__all__ = [
    "NOT_COMPUTED",
    "Towards",
    "show_against",
    "show_in",
    "show_mover",
    "show_number",
    "show_range",
    "show_usual",
]

NOT_COMPUTED = "not computed"
RANGE_UNKNOWN = "range unknown"
MOST_DIGITS = 12
LARGEST_PLAIN = 7
"""Powers of ten above which a number is written with e."""
SMALLEST_PLAIN = -5


class Towards(StrEnum):
    """Where to round."""

    NEAREST = ROUND_HALF_EVEN
    UP = ROUND_CEILING
    """The safe side of a load."""
    DOWN = ROUND_FLOOR
    """The safe side of a capacity."""


def show_number(
    number: float,
    digits: int = 3,
    unit: str = "",
    *,
    whole: bool = False,
    towards: Towards = Towards.NEAREST,
) -> str:
    """A number with its unit.

    Args:
        number: In that unit.
        digits: Significant digits.
        unit: As written; empty for a plain number.
        whole: It is a count and has no decimals.
        towards: The side to round to.

    >>> show_number(13.4567, 3, "m3(n)"), show_number(9.0, whole=True), show_number(1234.5)
    ('13.5 m3(n)', '9', '1230')
    >>> show_number(13.41, 3, "bar(g)", towards=Towards.UP)
    '13.5 bar(g)'
    """
    if whole and abs(number) < 1e15:
        text = f"{WHOLE[towards](number):d}"
    else:
        text = rounded(number, digits, towards)
    return f"{text} {unit}" if unit else text


def whole_below(number: float) -> int:
    """The whole number below, forgiving the last figures of a float."""
    return math.floor(number + abs(number) * HAIR)


def whole_above(number: float) -> int:
    """The whole number above, forgiving the last figures of a float."""
    return math.ceil(number - abs(number) * HAIR)


WHOLE: dict[Towards, Callable[[float], int]] = {
    Towards.NEAREST: round,
    Towards.DOWN: whole_below,
    Towards.UP: whole_above,
}


def rounded(number: float, digits: int, towards: Towards) -> str:
    """A number with so many significant digits, as text."""
    exact = Decimal(repr(number))
    if towards is not Towards.NEAREST:
        exact = Context(prec=MOST_DIGITS).plus(exact)  # the last figures of a float are no reason
    short = Context(prec=digits, rounding=towards.value).plus(exact)
    if not short:
        return "0"
    power = short.adjusted()
    if not SMALLEST_PLAIN < power < LARGEST_PLAIN:
        mantissa = short.scaleb(-power)
        return f"{mantissa:.{digits - 1}f}e{power}"
    return f"{short:.{max(0, digits - 1 - power)}f}"


def show_against(
    value: float,
    limit: float,
    unit: Unit,
    digits: int = 3,
    whole: tuple[bool, bool] = (False, False),
) -> tuple[str, str]:
    """A value and its limit, with as many digits as it takes to tell them apart.

    Args:
        value: In SI.
        limit: In SI.
        unit: The unit to show both in.
        digits: Significant digits to begin with.
        whole: Whether each is a count.

    >>> show_against(3_301_000, 3_300_000, read_unit("bar(g)"))
    ('33.01 bar(g)', '33.00 bar(g)')
    """
    left, right = unit.from_si(value), unit.from_si(limit)
    same = abs(value - limit) <= HAIR * max(abs(value), abs(limit))
    texts = ("", "")
    for count in range(digits, MOST_DIGITS + 1):
        texts = (
            show_number(left, count, unit.text, whole=whole[0] and not unit.text),
            show_number(right, count, unit.text, whole=whole[1] and not unit.text),
        )
        if same or texts[0] != texts[1]:
            break
    return texts


def show_range(value: Value) -> str:
    """The range of a value when everything is at its worst; empty where nothing is uncertain.

    Both ends are rounded outwards.

    Returns:
        `8 to 10 at worst`, `29.5 to 30.5 bar(g) at worst`, or `range unknown`.
    """
    if value.si is None:
        return ""
    if value.low is None or value.high is None:
        return RANGE_UNKNOWN
    if value.low == value.high:
        return ""
    return f"{show_ends(value, value.low, value.high)} at worst"


def show_usual(value: Value) -> str:
    """What a value usually lies between; empty where that says no more than its range.

    Returns:
        `usually 8 to 10`, `usually 29.6 to 30.4 bar(g)`.
    """
    if value.usual is None or value.usual == (value.low, value.high):
        return ""
    return f"usually {show_ends(value, *value.usual)}"


def show_mover(value: Value, mover: Mover) -> str:
    """What one input does to a value.

    Returns:
        `SA-CP-001.rate, 64 % of the usual range, alone 8 to 10`.
    """
    share = show_number(100 * mover.share, 2, "%")
    ends = show_ends(value, mover.low, mover.high)
    return f"{mover.address}, {share} of the usual range, alone {ends}"


def show_ends(value: Value, first: float, last: float) -> str:
    """Two values in SI as a range, both ends rounded outwards."""
    unit = value.unit
    ends = unit.from_si(first), unit.from_si(last)
    whole = value.whole or (not unit.text and all(end == round(end) for end in ends))
    digits = max(value.digits, 3)
    low = show_number(ends[0], digits, whole=whole, towards=Towards.DOWN)
    high = show_number(ends[1], digits, unit.text, whole=whole, towards=Towards.UP)
    return f"{low} to {high}"


def show_in(value: Value, unit_text: str) -> str | None:
    """A value in another unit of the same kind.

    Args:
        value: The value.
        unit_text: `psi(g)`, `gal_us`.

    Returns:
        The text, `not computed` for a broken value, None where the unit measures something else.
    """
    try:
        unit = read_unit(unit_text)
    except CalcFault:
        return None
    if value.si is None:
        return NOT_COMPUTED
    if unit.type.dimension != value.type.dimension:
        return None
    alike = unit.type.kind is value.type.kind
    warmth = unit.type.dimension == TEMPERATURE and Kind.PLAIN not in (
        unit.type.kind,
        value.type.kind,
    )
    if not alike and not warmth:
        return None
    if unit.text == value.unit.text:
        return value.text
    whole = value.whole and unit is NO_UNIT
    return show_number(unit.from_si(value.si), value.digits, unit.text, whole=whole)
