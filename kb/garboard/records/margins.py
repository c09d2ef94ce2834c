"""How far one number stands above another at the worse ends of both."""

from garboard.calc.kinds import PRESSURE, Kind
from garboard.calc.value import Value

__all__ = ["margin"]

NEAR = 1e-9
"""Share of the larger of two numbers below which they count as equal."""


def margin(lower: Value, upper: Value, air: Value | None) -> float | None:
    """How far one number, at its lowest, stands above another at its highest.

    Args:
        lower: The number that should be the lower one.
        upper: The number that should be the higher one.
        air: The atmosphere, through which a gauge reading meets an absolute pressure; None where
            nobody wrote it down.

    Returns:
        The distance in SI units, 0 where they are equal, negative where they cross; None where the
        two cannot be compared.
    """
    if lower.type.dimension != upper.type.dimension or lower.high is None or upper.low is None:
        return None
    distance = upper.low - lower.high
    if lower.type.kind is not upper.type.kind and lower.type.dimension == PRESSURE:
        between = _between(lower, upper, air)
        if between is None:
            return None
        distance += between
    return 0.0 if abs(distance) <= NEAR * max(abs(lower.high), abs(upper.low)) else distance


def _between(lower: Value, upper: Value, air: Value | None) -> float | None:
    """What the atmosphere, at its worse end, adds to the distance from a lower to an upper."""
    if air is None or air.low is None or air.high is None:
        return None
    kinds = (lower.type.kind, upper.type.kind)
    if kinds == (Kind.READING, Kind.ABSOLUTE):
        return -air.high
    return air.low if kinds == (Kind.ABSOLUTE, Kind.READING) else None
