"""What each kind of component does to what flows: its ports, and what passes in which position.

By hand, like the table of kinds it completes. A kind that is not here is a fault of the text and
never a silent pipe; a test holds the two tables together.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

__all__ = ["BEHAVIOURS", "Behaviour", "Passes"]


class Passes(StrEnum):
    """How a component passes what is in it."""

    JOINED = "joined"
    """All its ports, always."""
    CLOSABLE = "closable"
    """Both ways, or nothing."""
    ONE_WAY = "one way"
    STOP_CHECK = "one way, or nothing"
    CAPPED = "one way, no more than its setting"
    POSITIONS = "as its positions say"
    RELIEF = "nothing, until it lifts"
    MACHINE = "a source that may be passed through"
    SOURCE = "a source"
    MARKS = "it marks a place"


@dataclass(frozen=True, slots=True)
class Behaviour:
    """How one kind behaves."""

    passes: Passes
    ports: tuple[str, ...] = ("in", "out")
    """In the order of flow; where there is one, everything is joined there."""
    any_port: bool = False
    """Further ports may be named, all joined."""
    lockable: bool = False
    """Counts as isolation: it can be shut, locked and tagged."""
    flexible: bool = False
    """Does not carry movement."""
    amperes: str = ""
    """Of a fuse or breaker: the number that caps what passes."""
    names: tuple[str, ...] = ("open", "shut")
    """Of what can be shut: its positions, the one that passes first."""


VESSEL = Behaviour(Passes.JOINED, any_port=True)
IN_LINE = Behaviour(Passes.JOINED)
FLEXIBLE = Behaviour(Passes.JOINED, flexible=True)
VALVE = Behaviour(Passes.CLOSABLE, lockable=True)
UNLOCKED = Behaviour(Passes.CLOSABLE)
ONE_WAY = Behaviour(Passes.ONE_WAY)
RELIEF = Behaviour(Passes.RELIEF)
MACHINE = Behaviour(Passes.MACHINE)
SOURCE = Behaviour(Passes.SOURCE, ("out",))
MARK = Behaviour(Passes.MARKS, ("in",))

BEHAVIOURS: Mapping[str, Behaviour] = {
    **dict.fromkeys(("receiver", "tank", "separator", "filter", "strainer", "cooler"), VESSEL),
    **dict.fromkeys(("restrictor", "tee", "bus"), VESSEL),
    **dict.fromkeys(("vented loop", "cable", "measuring shunt"), IN_LINE),
    **dict.fromkeys(("hose", "bellows"), FLEXIBLE),
    **dict.fromkeys(("stop valve", "drain valve", "vent valve", "cock", "test cock"), VALVE),
    **dict.fromkeys(("quick-closing valve", "switch"), VALVE),
    **dict.fromkeys(("plug", "coupling", "solenoid valve"), UNLOCKED),
    "stop-check valve": Behaviour(Passes.STOP_CHECK, lockable=True),
    "three-way valve": Behaviour(Passes.POSITIONS, ("common", "a", "b"), lockable=True),
    "changeover": Behaviour(Passes.POSITIONS, ("common", "a", "b"), lockable=True),
    "check valve": ONE_WAY,
    "diode": ONE_WAY,
    "regulator": Behaviour(Passes.CAPPED),
    "relief valve": RELIEF,
    "bursting disc": RELIEF,
    "compressor": MACHINE,
    "pump": MACHINE,
    **dict.fromkeys(("pressure source", "battery", "alternator"), SOURCE),
    "charger": SOURCE,
    **dict.fromkeys(("gauge", "pressure switch", "level switch", "transmitter"), MARK),
    **dict.fromkeys(("voltmeter", "ammeter", "consumer", "load", "compartment"), MARK),
    "sea": Behaviour(Passes.MARKS, ("out",)),
    "fuse": Behaviour(Passes.CLOSABLE, lockable=True, amperes="rated", names=("in", "pulled")),
    "breaker": Behaviour(Passes.CLOSABLE, lockable=True, amperes="rated"),
}
"""By kind."""
