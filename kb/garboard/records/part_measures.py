"""What a number of a part must be a measure of: the setting of a relief valve is a pressure.

A number of another sort would answer no question to the layout, and nobody would be told. What is not
listed here may be a measure of anything, such as the low limit of a consumer.
"""

from collections.abc import Mapping

from garboard.calc.dimensions import (
    AIR,
    PRESSURE,
    VOLUME,
    Dimension,
    dimension,
    words_for_dimension,
)
from garboard.calc.kinds import Kind, Type

__all__ = ["fits", "wanted_words"]

LENGTH = dimension(length=1)
HOLDS = (VOLUME, AIR)

PRESSURES = (
    "rated",
    "test",
    "set",
    "makes",
    "cuts_in",
    "cuts_out",
    "trip",
    "alarm_low",
    "alarm_high",
)
"""What the questions to the layout compare with each other."""
UNDER_PRESSURE = (
    "receiver",
    "tank",
    "separator",
    "filter",
    "strainer",
    "cooler",
    "hose",
    "bellows",
    "stop valve",
    "drain valve",
    "vent valve",
    "cock",
    "test cock",
    "plug",
    "coupling",
    "quick-closing valve",
    "stop-check valve",
    "solenoid valve",
    "three-way valve",
    "check valve",
)
"""Kinds whose rating and test are pressures."""
ACTS_AT_PRESSURE = ("relief valve", "bursting disc", "regulator", "pressure switch")
MAKES_PRESSURE = ("compressor", "pump", "pressure source")

BY_KIND: Mapping[str, tuple[str, ...]] = {
    **dict.fromkeys(UNDER_PRESSURE, ("rated", "test")),
    **dict.fromkeys(ACTS_AT_PRESSURE, PRESSURES),
    **dict.fromkeys(MAKES_PRESSURE, ("makes",)),
}
"""Properties of each kind that are pressures."""


def fits(kind: str, name: str, found: Type) -> bool:
    """Whether a number may stand for a property of a part of this kind.

    Args:
        kind: Kind of the part.
        name: The property.
        found: What the number is.

    >>> fits("relief valve", "set", Type(VOLUME)), fits("consumer", "low", Type(VOLUME))
    (False, True)
    """
    if name in BY_KIND.get(kind, ()):
        return found.dimension == PRESSURE and found.kind is not Kind.PLAIN
    wanted = _of_any_kind(name)
    return not wanted or found.dimension in wanted


def wanted_words(kind: str, name: str) -> str:
    """What the property must be, in words.

    >>> wanted_words("relief valve", "set"), wanted_words("receiver", "volume")
    ('a gauge or absolute pressure', 'a volume or an amount of free air')
    """
    if name in BY_KIND.get(kind, ()):
        return "a gauge or absolute pressure"
    return " or ".join(words_for_dimension(one) for one in _of_any_kind(name))


def _of_any_kind(name: str) -> tuple[Dimension, ...]:
    return {"volume": HOLDS, "height": (LENGTH,)}.get(name, ())
