"""Listed copper conductors by two standards, and how one is laid.

The same number is not the same copper: 12 AWG has 6530 circular mils, 12 SAE has 5833. An SAE
conductor is given the current of the thickest AWG row that has no more copper than it has.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from garboard.errors import OutsideValidity
from garboard.methods.cable_current import allowed_current, refuse_thin
from garboard.methods.figures import NEAR, Figure

__all__ = ["AREAS_CMIL", "Conductor", "Laying", "smallest"]

_AWG: Final[Mapping[str, int]] = {
    "18": 1624,
    "16": 2583,
    "14": 4107,
    "12": 6530,
    "10": 10383,
    "8": 16510,
    "6": 26251,
    "4": 41741,
    "2": 66371,
    "1": 83693,
    "0": 105535,
    "00": 133077,
    "000": 167806,
    "0000": 211600,
}
_SAE: Final[Mapping[str, int]] = {"18": 1537, "16": 2336, "14": 3702, "12": 5833, "10": 9343}
AREAS_CMIL: Final = {"AWG": _AWG, "SAE": _SAE}
"""Standard, size, circular mils, from thin to thick."""


@dataclass(frozen=True, slots=True)
class Conductor:
    """One listed conductor."""

    standard: str
    size: str

    @property
    def cmil(self) -> int:
        """Copper as it is listed, in circular mils."""
        return AREAS_CMIL[self.standard][self.size]

    @property
    def area(self) -> float:
        """Copper [m2]."""
        return Figure(self.cmil, "cmil").si

    @property
    def row(self) -> str:
        """The thickest AWG row that has no more copper; empty where there is none."""
        rows = [size for size, cmil in _AWG.items() if cmil <= self.cmil]
        return rows[-1] if rows else ""

    def __str__(self) -> str:
        return f"{self.size} {self.standard}"


@dataclass(frozen=True, slots=True)
class Laying:
    """How a conductor is laid, which is half of its current limit."""

    rating: float
    """Insulation temperature rating [K(a)]."""
    engine_space: bool
    separate: bool

    def carries(self, wire: Conductor) -> float:
        """The current limit of a conductor.

        Returns:
            Amperes; 0 where the conductor is below the smallest size allowed.

        Raises:
            OutsideValidity: No column or factor is held for this insulation.
        """
        if not wire.row:
            return 0.0
        current = allowed_current(wire.row, self.rating, engine_space=self.engine_space)
        try:
            refuse_thin(wire.row, separate=self.separate)
        except OutsideValidity:
            return 0.0
        return current

    def __str__(self) -> str:
        reading = self.rating - Figure(0, "degC").si
        where = "in the engine space" if self.engine_space else "outside the engine space"
        return f"insulation {reading:g} degC, {where}"


def smallest(standard: str, area: float, current: float, laid: Laying) -> tuple[Conductor, ...]:
    """The smallest listed conductor for the drop, that for the current, and the larger of them.

    Args:
        standard: AWG or SAE.
        area: Copper that the drop asks for [m2].
        current: What it carries without a break [A].
        laid: How it is laid.

    Raises:
        OutsideValidity: No conductor of the list is thick enough.
    """
    wires = [Conductor(standard, size) for size in AREAS_CMIL[standard]]
    for_drop = [wire for wire in wires if wire.area >= area * (1 - NEAR)]
    for_current = [wire for wire in wires if laid.carries(wire) >= current * (1 - NEAR)]
    for found, wanted in ((for_drop, "the drop"), (for_current, "the current")):
        if not found:
            raise OutsideValidity(f"no {standard} conductor held is thick enough for {wanted}")
    both = for_drop[0], for_current[0]
    return *both, max(both, key=lambda wire: wire.cmil)
