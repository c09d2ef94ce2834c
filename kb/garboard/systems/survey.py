"""Ask every check of a plant, once with its secured locks held and once with every valve free.

What only the second finds is one level less grave, hangs on the locks it names, and is a line of the
register of locked valves.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from garboard.systems.checks import CHECKS
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import PathFinding
from garboard.systems.plant import Plant

__all__ = ["NOT_CHECKED", "Survey", "survey"]

NOT_CHECKED = (
    "Not checked: sizes, capacity, flow, time, strength, wear, small leaks, heat, heights and vented loops,"
    " pump suction, two faults at once, and whether the drawing is true. No finding does not mean safe."
)
"""Stands on every page that shows what was or was not found in a layout."""


@dataclass(frozen=True, slots=True)
class Survey:
    """What was found of one plant."""

    plant: Plant
    findings: tuple[PathFinding, ...]
    """The gravest first, then by code and what they are about; one a cause."""
    highest: tuple[float, ...]
    """The most that can stand at each node, locks held [Pa above the atmosphere]; never too low."""
    settled: bool
    """Whether `highest` is exact: without three-way valves."""

    def hanging_on(self, tag: str) -> tuple[PathFinding, ...]:
        """The findings that would be there without one lock."""
        return tuple(found for found in self.findings if tag in found.locks)


def survey(plant: Plant) -> Survey:
    """Ask every check of a plant."""
    held, free = Enquiry(plant), Enquiry(plant, locks=False)
    locked = {part.tag for part in plant.parts if part.locked is not None}
    found: list[PathFinding] = []
    for check, twice in CHECKS:
        first = list(check(held))
        found += first
        if twice and locked:
            found += _only_when_free(first, check(free), locked)
    return Survey(
        plant, tuple(sorted(set(found), key=_order)), tuple(held.relaxed.at), not held.net.coupled
    )


def _only_when_free(
    first: Iterable[PathFinding], second: Iterable[PathFinding], locked: set[str]
) -> Iterator[PathFinding]:
    """What is found only with the locks free: one level less grave, and hanging on them."""
    gravest: dict[tuple[str, str], int] = {}
    for found in first:
        key = (found.code, found.about)
        gravest[key] = min(gravest.get(key, 9), found.level.rank)
    for found in second:
        named = found.line.tags
        locks = tuple(tag for tag in dict.fromkeys(named) if tag in locked) or tuple(sorted(locked))
        if found.level.rank < gravest.get((found.code, found.about), 9):
            said = " and ".join(locks)
            text = f"{found.text}; depends on {said} staying locked"
            yield replace(found, level=found.level.less, text=text, locks=locks)


def _order(found: PathFinding) -> tuple[int, str, str, str]:
    return (found.level.rank, found.code, found.about, found.text)
