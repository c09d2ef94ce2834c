"""What a step of a procedure does, told from its verb and the kind of its component.

A verb that is not listed moves nothing: a rule that looks at moves is silent about it.
"""

import re
from collections.abc import Iterator
from typing import Final

from garboard.book import Book
from garboard.records.base import bare_id
from garboard.records.component_kinds import COMPONENT_KINDS
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure, Step
from garboard.records.standing import has_left

__all__ = [
    "MOVES",
    "changes_state",
    "end_position",
    "live_procedures",
    "message_of",
    "opens_up",
    "releases",
    "sees_zero",
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
TAKEN: Final = re.compile(r"(?:take|lift|screw)\b.*\b(off|out|apart)\b", re.IGNORECASE)
ONLY_DRESS: Final = re.compile(
    r"\b(lock|padlock|seal|tag|label|card|guard|gag|insulation|lagging|strap)s?\b", re.IGNORECASE
)
"""Things that come off a part without opening it."""
HOLDS_NOTHING: Final = ("compartment", "sea", "load", "fuse", "breaker", "switch", "changeover")
ZERO: Final = re.compile(
    r"(?:[<>=~ ]*)-?0(?:\.0+)?(?: \S+)?|dead|zero|at zero|no pressure|no voltage", re.IGNORECASE
)
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


def changes_state(step: Step) -> bool:
    """Whether a step moves something."""
    return step.to is not None or verb(step.do) in MOVES


def opens_up(book: Book, step: Step) -> bool:
    """Whether a step opens a component that may hold energy; to open a valve is not that."""
    part = book.components.get(step.tag or "")
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


def releases(book: Book, step: Step) -> bool:
    """Whether a step lets energy out or in, or opens what holds it."""
    return verb(step.do) in RELEASES or opens_up(book, step)


def sees_zero(book: Book, step: Step) -> bool:
    """Whether a step sees that nothing is left: a reading of 0, or that it is dead."""
    if step.see is None or step.see.value is None:
        return False
    value = book.values.get(step.see.value)
    if value is not None:
        return value.si == 0
    return ZERO.fullmatch(step.see.value.strip()) is not None


def end_position(step: Step) -> str | None:
    """Where a step leaves its component, as written; None where it does not say."""
    return step.to or POSITIONS.get(verb(step.do))


def message_of(book: Book, step: Step) -> Hazard | None:
    """The hazard that a step warns of."""
    record = book.records.get(bare_id(step.message)) if step.message else None
    return record if isinstance(record, Hazard) else None


def live_procedures(book: Book) -> Iterator[Procedure]:
    """Procedures that are not superseded, withdrawn or void."""
    return (record for record in book.of_kind(Procedure) if not has_left(record))
