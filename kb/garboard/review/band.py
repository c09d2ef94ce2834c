"""Whether a value still is what somebody signed.

It is compared with the value as it was signed, not with the last edition, so that ten small steps
in one direction are caught. It may move by the largest of: the band that the signer allowed, half of
the last figure that was shown, and the noise of the arithmetic.
"""

import math
import re
from typing import Final

from garboard.calc.fault import CalcFault
from garboard.calc.quantity import Quantity, read_quantity
from garboard.calc.value import Value
from garboard.errors import Where

__all__ = ["BAND", "has_moved", "read_band"]

NOISE: Final = 1e-9
"""Of the value; what different machines may make of one sum, and far below what anybody reads."""
BAND: Final = re.compile(r"(?P<number>\d+(?:\.\d+)?) ?%")
"""How a band is written: `1 %`."""
NUMBER: Final = re.compile(r"-?(?P<whole>\d+)(?:\.(?P<decimals>\d+))?(?:e(?P<exponent>[+-]?\d+))?")


def read_band(text: str | None) -> float:
    """The part of its value that a signature lets a value move by.

    Args:
        text: `1 %`; None for no band.

    Returns:
        0.01 for `1 %`; 0 where there is none or it cannot be read.

    >>> read_band("1 %"), read_band(None)
    (0.01, 0.0)
    """
    found = BAND.fullmatch(text.strip()) if text else None
    return float(found["number"]) / 100 if found else 0.0


def has_moved(signed: str, value: Value | None, band: float = 0.0) -> bool:
    """Whether a value left the band around what was signed.

    Args:
        signed: As it was shown to the signer: `18 bar(g)`, `9`, `not computed`.
        value: As it stands now; None where there is no such value any more.
        band: The part of its value that it may move by.
    """
    if value is None:
        return True
    before = _quantity(signed)
    if before is None or value.si is None:
        return " ".join(signed.split()) != value.text
    if before.type != value.type:
        return True
    figures = 0 if value.given or value.whole else value.digits
    half = half_of_the_last_figure(before, figures)
    share = (
        0.0 if before.unit.shift else band * abs(before.si)
    )  # of a thermometer it has no meaning
    allowed = max(share, half, NOISE * abs(before.si)) * (1 + NOISE)
    if not abs(value.si - before.si) <= allowed:
        return True
    return value.given and not _as_sure(before, value)


def _as_sure(before: Quantity, value: Value) -> bool:
    """Whether the tolerance of a value that somebody wrote down is as it was, in whatever unit."""
    if before.tolerance == value.tolerance:
        return True
    if value.si is None or value.high is None:
        return False
    then, now = before.high - before.si, value.high - value.si
    return abs(now - then) <= NOISE * max(abs(before.si), then)


def half_of_the_last_figure(quantity: Quantity, figures: int = 0) -> float:
    """Half of one in the last figure that is shown, in SI.

    Args:
        quantity: As it was shown.
        figures: Significant figures that a worked value is shown with, so that the noughts of
            `12300` are known to be rounded; 0 for a number that is written out, or a count.

    >>> found = read_quantity("18.4 bar(g)", Where(""))
    >>> round(half_of_the_last_figure(found))
    5000
    >>> half_of_the_last_figure(read_quantity("12300", Where("")), 3)
    50.0
    """
    found = NUMBER.match(quantity.shown)
    if found is None:
        return 0.0
    power = int(found["exponent"] or 0) - len(found["decimals"] or "")
    if figures and not found["decimals"]:
        told = max(figures, len(found["whole"].rstrip("0")))
        power += max(0, len(found["whole"]) - told)
    step = math.pow(10.0, power)
    unit = quantity.unit
    return abs(unit.to_si(step / 2) - unit.to_si(0.0))


def _quantity(text: str) -> Quantity | None:
    try:
        return read_quantity(text, Where(""))
    except CalcFault:
        return None
