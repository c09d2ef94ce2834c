"""How much room each symbol takes and where its pipes end: what placing has to know of drawing.

Half widths and heights in steps, and ports as steps from the middle, all for a symbol that heads to
the right. A vessel has no fixed ports: its pipes end where they meet its outline.
"""

from collections.abc import Mapping
from dataclasses import dataclass

__all__ = ["SHAPES", "Shape"]


@dataclass(frozen=True, slots=True)
class Shape:
    """The room of one symbol."""

    half_width: int
    half_height: int
    ports: Mapping[str, tuple[int, int]]
    vessel: bool = False
    """Its pipes end anywhere on its outline, and it is not turned."""
    stands: bool = False
    """It stands on its pipe: relief valve, instrument."""


IN_LINE = {"in": (-2, 0), "out": (2, 0)}
THREE_WAY = {"common": (-2, 0), "a": (2, 0), "b": (0, 2)}
STANDING = {"in": (0, 2)}
VALVE = Shape(2, 1, IN_LINE)
TALL = Shape(2, 2, IN_LINE)
BOX = Shape(3, 2, {}, vessel=True)

SHAPES: Mapping[str, Shape] = {
    **dict.fromkeys(
        ("stop valve", "drain valve", "vent valve", "cock", "test cock", "plug", "coupling"), VALVE
    ),
    **dict.fromkeys(
        ("quick-closing valve", "solenoid valve", "check valve", "stop-check valve"), TALL
    ),
    **dict.fromkeys(("regulator", "vented loop"), TALL),
    **dict.fromkeys(("restrictor", "hose", "bellows"), VALVE),
    **dict.fromkeys(("fuse", "breaker", "switch", "diode", "cable", "measuring shunt"), VALVE),
    **dict.fromkeys(("three-way valve", "changeover"), Shape(2, 2, THREE_WAY)),
    **dict.fromkeys(
        ("relief valve", "bursting disc"), Shape(1, 2, {"in": (0, 2), "out": (3, 0)}, stands=True)
    ),
    **dict.fromkeys(
        ("gauge", "pressure switch", "level switch", "transmitter"),
        Shape(2, 2, STANDING, stands=True),
    ),
    **dict.fromkeys(("voltmeter", "ammeter"), Shape(2, 2, STANDING, stands=True)),
    **dict.fromkeys(("compressor", "pump"), Shape(2, 2, {"in": (-2, 0), "out": (2, 0)})),
    **dict.fromkeys(
        ("pressure source", "battery", "alternator", "charger"), Shape(3, 2, {"out": (3, 0)})
    ),
    **dict.fromkeys(("consumer", "load"), Shape(5, 2, {"in": (-5, 0)})),
    "sea": Shape(2, 1, {"out": (2, 0)}),
    "compartment": Shape(5, 2, {}, vessel=True),
    "receiver": Shape(7, 3, {}, vessel=True),
    "tank": Shape(5, 3, {}, vessel=True),
    **dict.fromkeys(("separator", "filter", "strainer", "cooler"), Shape(2, 2, {}, vessel=True)),
    "tee": Shape(1, 1, {}, vessel=True),
    "bus": Shape(0, 3, {}, vessel=True),
}
"""By kind; a draft to be measured against the drawn symbols."""
