"""Words that the findings of several checks share: lists of tags, and where a pressure comes from."""

from collections.abc import Iterable, Mapping

from garboard.systems.plant import Plant
from garboard.systems.settings import NO_LIMIT

__all__ = ["Worth", "listed", "worths_of"]

Worth = tuple[str, str]
"""A number as written, and what it is: `33 bar(g)`, `SA-RV-001 set 33 bar(g)`."""
LIMITING = ("makes", "set")


def listed(names: Iterable[str], last: str = "and") -> str:
    """Names in one phrase.

    >>> listed(["SA-HV-001", "SA-HV-002", "SA-NV-001"])
    'SA-HV-001, SA-HV-002 and SA-NV-001'
    """
    *first, final = [*names] or [""]
    return f"{', '.join(first)} {last} {final}" if first else final


def worths_of(plant: Plant) -> Mapping[float, Worth]:
    """What each highest pressure was written as, by its worth [Pa above the atmosphere].

    The highest pressure at a node is always what some source makes, or what some relief valve or reducing valve
    holds it down to; where several do, the first in the file speaks.
    """
    found: dict[float, Worth] = {NO_LIMIT: ("any pressure", "no limit")}
    for part in plant.parts:
        for name in LIMITING:
            setting = plant.setting(part.tag, name)
            if setting is not None and setting.high not in found:
                found[setting.high] = (setting.text, f"{part.tag} {name} {setting.text}")
    return found
