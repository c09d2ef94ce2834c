"""The field of an opened input: its number, its tolerance, how far it may go, and its slider.

What cannot be, such as a pressure under a vacuum, is refused in the page. A slider ends where a
method ends, or at twice the number of the handbook; that is a habit of ours and no limit.
"""

import math
from fractions import Fraction

from garboard.calc.kinds import PRESSURE, TEMPERATURE, Kind
from garboard.calc.ledger import Formula
from garboard.calc.show import Towards, show_number
from garboard.calc.syntax import Tolerance
from garboard.calc.what_if import Opened

__all__ = ["Bounds", "open_input", "steps_of"]

Bounds = tuple[float | None, float | None]
"""The least and the most, in SI; None for neither."""

POSITIONS = 80
"""So many steps of a slider at least."""
WARMER = 20.0
"""Kelvin to either side on the slider of a thermometer reading."""


def open_input(
    formula: Formula, tolerance: Tolerance | None, atmosphere: float, bounds: Bounds
) -> Opened:
    """An opened input.

    Args:
        formula: The given number.
        tolerance: As its line states it.
        atmosphere: Of the vessel, in Pa(a).
        bounds: Where methods that it is handed to as it is hold no longer, in SI.
    """
    unit = formula.unit
    lowest, highest = limits_of(formula, atmosphere)
    said = tolerance.shown if tolerance else ""
    share = float(Fraction(said.split()[0]) / 100) if said.endswith("%") else 0.0
    return Opened(
        formula.told.name,
        formula.told.label,
        (unit.text, unit.scale, unit.shift),
        formula.text.partition(" ")[0],
        formula.si,
        said,
        tolerance.width if tolerance else 0.0,
        share,
        formula.whole,
        lowest,
        highest,
        shown(formula, lowest, Towards.UP),
        shown(formula, highest, Towards.DOWN),
        slider_of(formula, lowest, highest, bounds),
    )


def limits_of(formula: Formula, atmosphere: float) -> Bounds:
    """What cannot be passed, in SI: nothing, a vacuum, the sign of the handbook, the whole of a share."""
    kind, unit = formula.node.type, formula.unit
    if kind.kind is Kind.READING:
        return (-atmosphere if kind.dimension == PRESSURE else 0.0), None
    if kind.kind is Kind.ABSOLUTE:
        return 0.0, None
    if kind.dimension in (PRESSURE, TEMPERATURE) or formula.si <= 0:
        return None, None
    return 0.0, (1.0 if unit.text == "%" and formula.si <= 1 else None)


def shown(formula: Formula, si: float | None, towards: Towards) -> str:
    """A limit with its unit."""
    if si is None:
        return ""
    return show_number(formula.unit.from_si(si), 3, formula.unit.text, towards=towards)


def slider_of(
    formula: Formula, lowest: float | None, highest: float | None, bounds: Bounds
) -> tuple[float, ...]:
    """From, to and step of the slider, in the unit as shown; none where the number is 0 or less."""
    unit = formula.unit
    here = unit.from_si(formula.si)
    low, high = (None if end is None else unit.from_si(end) for end in bounds)
    start, end = 0.0, 2 * here
    if unit.shift:
        start, end = here - WARMER / unit.scale, here + WARMER / unit.scale
    elif here <= 0:
        return ()
    if low is not None and low <= here:
        start = low
    if high is not None and high >= here:
        end = high
    if lowest is not None:
        start = max(start, unit.from_si(lowest))
    if highest is not None:
        end = min(end, unit.from_si(highest))
    step = steps_of(end - start)
    if formula.whole:
        step = max(1.0, step)
    return (tidy(math.floor(start / step) * step), tidy(math.ceil(end / step) * step), step)


def steps_of(width: float) -> float:
    """The largest of 1, 2 or 5 times a power of ten that gives a slider enough positions.

    >>> steps_of(40.0), steps_of(100.0), steps_of(2.4)
    (0.5, 1.0, 0.02)
    """
    most = width / POSITIONS * (1 + 1e-9)
    power = 10.0 ** math.floor(math.log10(most))
    return tidy(max(part * power for part in (1, 2, 5) if part * power <= most))


def tidy(value: float) -> float:
    """A number without the last figures of a float."""
    return float(f"{value:.12g}")
