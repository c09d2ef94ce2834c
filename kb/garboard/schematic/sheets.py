"""The sheets of every system, each laid out when it is first asked for: most commands never draw."""

from collections.abc import Iterator, Mapping

from garboard.schematic.layout import lay_out_sheets
from garboard.schematic.sheet import Sheet
from garboard.systems.plant import Plant

__all__ = ["Sheets"]


class Sheets(Mapping[str, tuple[Sheet, ...]]):
    """Sheets by code of the system; a system without connections has none."""

    def __init__(self, plants: Mapping[str, Plant]) -> None:
        self._plants = plants
        self._made: dict[str, tuple[Sheet, ...]] = {}

    def __getitem__(self, code: str) -> tuple[Sheet, ...]:
        """The sheets of a system.

        Args:
            code: Its two letters.

        Raises:
            KeyError: There is no such system.
        """
        if code not in self._made:
            plant = self._plants[code]
            self._made[code] = lay_out_sheets(plant, plant.components) if plant.pipes else ()
        return self._made[code]

    def __iter__(self) -> Iterator[str]:
        """The codes."""
        return iter(self._plants)

    def __len__(self) -> int:
        """How many systems there are."""
        return len(self._plants)
