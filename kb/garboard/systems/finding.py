"""What a check of a layout finds: the fault, the valve positions that cause it, the numbers compared.

The fingerprint is a digest of all that decides, and not of the words or of the way that was shown. A
concession that waives a finding holds its fingerprint, so that it lapses when the design changes it.
"""

import hashlib
from dataclasses import dataclass
from enum import StrEnum

from garboard.errors import Severity, Where
from garboard.systems.line_up import LineUp
from garboard.systems.plant import Plant

__all__ = ["GRADED", "About", "Level", "PathFinding", "about"]

GRADED = "graded"
"""`BINDS_FROM` of a rule that binds by the level of what it finds: a danger from a sketch on, a warning from
building, a note from the tests."""
ANYHOW = LineUp()
"""However the valves stand."""


class Level(StrEnum):
    """How grave a finding is, gravest first."""

    DANGER = "danger"
    WARNING = "warning"
    NOTE = "note"
    ASIDE = "aside"
    """Worth knowing, nothing to mend: printed as a note and on nobody's list."""

    @property
    def severity(self) -> Severity:
        """The severity it is reported with."""
        return SEVERITIES[self]

    @property
    def rank(self) -> int:
        """Place in order of gravity: 0 is the gravest."""
        return list(Level).index(self)

    @property
    def less(self) -> "Level":
        """One level less; a note stays one."""
        return {Level.DANGER: Level.WARNING, Level.WARNING: Level.NOTE}.get(self, self)


SEVERITIES = {
    Level.DANGER: Severity.STOP,
    Level.WARNING: Severity.HOLD,
    Level.NOTE: Severity.WARN,
    Level.ASIDE: Severity.NOTE,
}


@dataclass(frozen=True, slots=True)
class About:
    """The part in danger."""

    system: str
    """Its code."""
    name: str
    """Full tag of the part, or the name of a header."""
    where: Where
    """Where it is written, or the setting of it that is wrong."""


def about(plant: Plant, tag: str, where: Where | None = None) -> About:
    """What a finding is about.

    Args:
        plant: The plant.
        tag: Full tag of a part of it; with a place also the name of a header.
        where: The place to point at; that of the part where left out.
    """
    return About(plant.system.code, tag, where or plant.components[tag].where)


@dataclass(frozen=True, slots=True, kw_only=True)
class PathFinding:
    """One finding of one check, about one part or pipe."""

    code: str
    """Of the rule: `relief-cut-off`."""
    level: Level
    of: About
    text: str
    """What is, lower case, no full stop, tags in full."""
    help: str
    """Starts with a verb; offers the honest second way out."""
    line: LineUp = ANYHOW
    """How the valves must stand for it to happen."""
    locks: tuple[str, ...] = ()
    """Locked valves that it hangs on: it cannot happen while they stay."""
    at_fault: tuple[str, ...] = ()
    """Parts that fail, point the wrong way, or alone stand between."""
    endangers: tuple[str, ...] = ()
    """Other parts in danger: the vessels a switch does not feel."""
    nodes: tuple[int, ...] = ()
    """The way in danger, from its source: for the drawing."""
    numbers: tuple[str, ...] = ()
    """The numbers compared, as written, with what they are: `SA-AR-001 rated 33 bar(g)`."""

    @property
    def about(self) -> str:
        """Full tag of the part in danger, or the name of a header."""
        return self.of.name

    @property
    def fingerprint(self) -> str:
        """Sixteen hexadecimal signs over all that decides: not the words, the place or the way."""
        parts = (
            self.code,
            self.level,
            self.of.system,
            self.of.name,
            *("|".join(tags) for tags in (sorted(self.line.shut), sorted(self.line.open))),
            "|".join(f"{tag}={position}" for tag, position in sorted(self.line.turned)),
            *("|".join(sorted(tags)) for tags in (self.locks, self.at_fault, self.endangers)),
            "|".join(sorted(self.numbers)),
        )
        return hashlib.sha256("\n".join(parts).encode()).hexdigest()[:16]
