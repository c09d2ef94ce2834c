"""The numbers of parts as the checks compare them: gauge pascal, or ampere, at both ends.

A check takes the end that is worse for it: the highest a relief valve may lift at, the lowest that
a vessel may be rated. An absolute pressure meets a gauge reading through the atmosphere of the vessel's
conditions, again at the worse end.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from garboard.calc.kinds import PRESSURE, Kind, dimension
from garboard.calc.value import Given, Value
from garboard.errors import Where
from garboard.records.component import Component, Unlimited

__all__ = ["NO_LIMIT", "SETTINGS", "Setting", "setting_of", "settings_of"]

NO_LIMIT = math.inf
"""What a source makes that nothing holds back."""
SETTINGS = ("rated", "set", "makes", "cuts_in", "cuts_out", "normal", "trip")
"""The numbers that checks of a layout compare."""
CURRENT = dimension(current=1)
ATMOSPHERE = "site.atmosphere"


@dataclass(frozen=True, slots=True)
class Setting:
    """One number of a part, at both ends of its tolerance."""

    low: float
    """Pa above the atmosphere, or A; `NO_LIMIT` where there is none."""
    high: float
    text: str
    """As its author wrote it, with the tolerance: `33 bar(g) +/- 0.8 bar`."""
    where: Where


def settings_of(part: Component, values: Mapping[str, Value]) -> Mapping[str, Setting]:
    """The numbers of one part that checks compare, by name; what is not recorded or computed is left out.

    Args:
        part: The component.
        values: Values by address; `site.atmosphere` among them where pressures are absolute.
    """
    return dict(_settings(part, values))


def _settings(part: Component, values: Mapping[str, Value]) -> Iterator[tuple[str, Setting]]:
    for name in SETTINGS:
        if name == "makes" and part.makes is Unlimited.NO_LIMIT:
            yield name, Setting(NO_LIMIT, NO_LIMIT, "no limit", part.at_place(name))
            continue
        found = setting_of(values.get(part.address(name)), values, part.at_place(name))
        if found is not None:
            yield name, found


def setting_of(
    number: Value | Given | None, values: Mapping[str, Value], where: Where
) -> Setting | None:
    """One number at both ends; None where it is missing, not computed, or no pressure and no current.

    A difference of pressures is none: what stands on the other side of it is not known.

    Args:
        number: The number, worked out or as written.
        values: Values by address; `site.atmosphere` among them where pressures are absolute.
        where: Where it is written.
    """
    if number is None or number.si is None or number.type.dimension not in (PRESSURE, CURRENT):
        return None
    low = number.si if number.low is None else number.low
    high = number.si if number.high is None else number.high
    if number.type.dimension == PRESSURE and number.type.kind is not Kind.READING:
        air = values.get(ATMOSPHERE)
        if number.type.kind is Kind.PLAIN or air is None or air.low is None or air.high is None:
            return None
        low, high = low - air.high, high - air.low
    text = number.shown if isinstance(number, Given) else number.text
    text = f"{text} +/- {number.tolerance}" if number.tolerance else text
    return Setting(low, high, text, where)
