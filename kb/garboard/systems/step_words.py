"""What the words of a step say: its verb, whether it opens something up, where it leaves a component.

A verb that is not listed moves nothing.
"""

import re
from typing import Final

from garboard.records.component import Component
from garboard.records.component_kinds import COMPONENT_KINDS
from garboard.records.procedure import Step

__all__ = [
    "LOOKS",
    "MOVES",
    "RELEASES",
    "end_position",
    "opens_up",
    "says_zero",
    "verb",
]

TAKES_APART: Final = (
    "open up",
    "remove",
    "take off",
    "take out",
    "take apart",
    "loosen",
    "slacken",
    "unscrew",
    "unbolt",
    "undo",
    "disconnect",
    "uncouple",
    "dismantle",
    "strip",
    "break",
    "cut",
    "crack",
    "replace",
    "renew",
    "work on",
)
POSITIONS: Final = {
    "open": "open",
    "crack": "open",
    "shut": "shut",
    "close": "shut",
    "start": "running",
    "run": "running",
    "stop": "stopped",
    "switch on": "on",
    "switch off": "off",
}
MOVES: Final = (
    *TAKES_APART,
    *POSITIONS,
    "lock",
    "unlock",
    "turn",
    "isolate",
    "drain",
    "vent",
    "bleed",
    "blow",
    "fill",
    "pump",
    "charge",
    "switch",
    "set",
    "reset",
    "refit",
    "fit",
    "connect",
    "press",
    "raise",
    "lower",
    "tighten",
)
RELEASES: Final = ("open", "start", "run", "drain", "vent", "bleed", "blow", "charge", "pump")
LOOKS: Final = (
    "read",
    "look",
    "listen",
    "count",
    "watch",
    "wait",
    "measure",
    "compare",
    "write",
    "note",
    "see",
    "check",
    "call",
    "tell",
    "sign",
    "hang",
    "follow",
    "feel",
    "smell",
    "prove",
    "try",
    "log",
    "photograph",
)
"""Nothing in the plant moves by them."""
ZERO: Final = re.compile(
    r"(?:[<>=~ ]*)-?0(?:\.0+)?(?: \S+)?|dead|zero|at zero|no pressure|no voltage", re.IGNORECASE
)
TAKEN: Final = re.compile(r"(?:take|lift|screw)\b.*\b(off|out|apart)\b", re.IGNORECASE)
ONLY_DRESS: Final = re.compile(
    r"\b(lock|padlock|seal|tag|label|card|guard|gag|insulation|lagging|strap)s?\b", re.IGNORECASE
)
"""Things that come off a part without opening it."""
HOLDS_NOTHING: Final = ("compartment", "sea", "load", "fuse", "breaker", "switch", "changeover")
MOVABLE_BY_HAND: Final = ("coupling", "plug")
"""Made to be parted: what is let out is asked of the isolation, not of the verb."""


def verb(do: str) -> str:
    """The verb that a step begins with, in lower case; its first word where none is known.

    >>> verb("Open up the strainer"), verb("Open"), verb("Read")
    ('open up', 'open', 'read')
    >>> verb("Take the cover off"), verb("Take a reading")
    ('take off', 'take')
    """
    if parted := TAKEN.match(do):
        return f"take {parted[1].casefold()}"
    words = do.casefold().split()
    two, one = " ".join(words[:2]), words[0].strip(".,:") if words else ""
    return two if two in MOVES else one


def opens_up(part: Component | None, step: Step) -> bool:
    """Whether a step opens a component that may hold energy; to open a valve is not that."""
    if part is None or part.kind in HOLDS_NOTHING or ONLY_DRESS.search(step.do):
        return False
    kind = COMPONENT_KINDS.get(part.kind)
    said = verb(step.do)
    moved = kind is not None and ("open" in kind.usual or kind.positions)
    if said in ("open", "crack"):
        open_air = part.kind == "tank" and part.rated is None
        return not moved and not open_air
    if said in ("disconnect", "uncouple") and part.kind in MOVABLE_BY_HAND:
        return False
    return said in TAKES_APART


def end_position(step: Step) -> str | None:
    """Where a step leaves its component, as written; None where it does not say."""
    return step.to or POSITIONS.get(verb(step.do))


def says_zero(reading: str) -> bool:
    """Whether a reading, as written, is one of nothing.

    >>> says_zero("0 bar(g)"), says_zero("dead"), says_zero("30 bar(g)")
    (True, True, False)
    """
    return ZERO.fullmatch(reading.strip()) is not None
