"""Ranges and margins in words. The ends of a range are rounded outwards, a margin downwards."""

import math
from dataclasses import replace

from garboard.calc.show import Towards, show_number, show_range
from garboard.calc.units import as_difference
from garboard.calc.value import Value

__all__ = [
    "UNSTATED",
    "difference",
    "ends",
    "percent_down",
    "spread_words",
    "towards",
    "usual_words",
    "worst_words",
]

AT_WORST = " at worst"
NO_TOLERANCE = "no tolerance stated"
UNSTATED = "No tolerance is stated for anything it rests on, so how far it can be out is not known."
SAME = "the same at every end of the tolerances it rests on"


def ends(value: Value, low: float | None, high: float | None) -> str:
    """Two ends in the unit of a value, rounded outwards: `29.5 to 30.5 bar(g)`.

    Args:
        value: Whose unit, digits and nature are used.
        low: In SI.
        high: In SI.

    Returns:
        The text; empty where the ends are one, `range unknown` where one is missing.
    """
    return show_range(replace(value, low=low, high=high)).removesuffix(AT_WORST)


def difference(value: Value, si: float) -> str:
    """A difference without its sign, to the figures that readings have.

    Args:
        value: In whose unit it is told.
        si: The difference in SI.

    Returns:
        The text, `0.5 bar`; empty where there is no difference.
    """
    unit = as_difference(value.unit)
    number = float(f"{abs(si) / unit.scale:.6g}")
    return f"{number:g} {unit.text}".rstrip() if number else ""


def spread_words(value: Value) -> str:
    """The ends of a value, or why it has none: nothing is uncertain, or nothing that is uncertain moves it.

    A count of starts may well be the same at every end of the tolerances it rests on.
    """
    sure = SAME if value.usual else NO_TOLERANCE
    return ends(value, value.low, value.high) or sure


def worst_words(value: Value) -> str:
    """What a value lies between when everything is at its worst, in words.

    Returns:
        `Between 8 and 10 if everything is at its worst.`
    """
    found = ends(value, value.low, value.high)
    if not found and value.usual:
        return "The same at every end of the tolerances it rests on."
    if not found:
        return UNSTATED
    if value.low is None or value.high is None:
        return "How far it can be out is not known: at some corner it has no answer."
    return f"Between {_and(found)} if everything is at its worst."


def usual_words(value: Value) -> str:
    """What a value usually lies between, in words; empty where that is not worked out."""
    found = ends(value, *value.usual) if value.usual else ""
    return f"Usually between {_and(found)}." if found else ""


def _and(found: str) -> str:
    return " and ".join(found.split(" to ", 1))


def towards(value: Value, si: float, side: Towards) -> str:
    """A number as its value is shown, rounded to one side.

    Args:
        value: Whose unit and digits are used.
        si: In SI.
        side: Where to.
    """
    digits = max(value.digits, 3)
    whole = value.whole and not value.unit.text
    return show_number(value.unit.from_si(si), digits, value.unit.text, whole=whole, towards=side)


MOST_PERCENT = 100_000
"""Past this a margin in per cent says nothing: its limit is next to nothing."""


def percent_down(share: float) -> str:
    """A margin in per cent, never better than it is.

    >>> percent_down(7.9), percent_down(0.4), percent_down(-0.4)
    ('7 %', '0.4 %', '-0.4 %')
    >>> percent_down(33.333333333333336), percent_down(4.9999999999)
    ('33 %', '5 %')
    """
    if abs(share) >= MOST_PERCENT:
        return f"over {MOST_PERCENT} %" if share > 0 else f"under -{MOST_PERCENT} %"
    tidy = round(share, 6)
    down = math.floor(tidy) if abs(tidy) >= 1 else math.floor(tidy * 10) / 10
    return f"{down:g} %"
