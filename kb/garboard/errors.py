"""What is wrong, where, and what to do about it.

A fault in what somebody wrote is a value, a Diagnostic: all of them are collected, sorted by place
and reported once. An exception means only that the run cannot go on.
"""

from dataclasses import asdict, dataclass
from enum import StrEnum

__all__ = ["Diagnostic", "GarboardError", "OutsideValidity", "Severity", "Where"]


class Severity(StrEnum):
    """How much a fault holds up, gravest first."""

    STOP = "STOP"
    """No edition can be issued."""
    HOLD = "HOLD"
    """An edition may issue; the page says NOT REVIEWED and its card is not printed."""
    WARN = "WARN"
    """On the owner's list."""
    NOTE = "NOTE"
    """Information."""

    @property
    def rank(self) -> int:
        """Place in order of gravity: 0 is the gravest."""
        return list(Severity).index(self)


@dataclass(frozen=True, slots=True, order=True)
class Where:
    """A place in a file; lines and columns count from 1."""

    path: str
    """Relative to the content folder, with forward slashes on every machine."""
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.path}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Diagnostic:
    """One problem, said once."""

    where: Where
    severity: Severity
    text: str
    """What is, with both values as written; lower case, no full stop."""
    help: str
    """Starts with a verb; offers the honest second way out."""
    code: str
    about: str = ""
    """The record id, tag, block name or system code it is about; its system's service status binds it."""
    family: str = ""
    """Which kind of unreadable line: SYNTAX, LIMIT, NAME, UNIT, RANGE, METHOD, CONNECTION ..."""
    fingerprint: str = ""
    """Of a finding of a path: a concession that waives it holds the same, so that it lapses with the layout."""
    conceded_by: str = ""
    """Id of the concession that makes a note of it."""

    def __str__(self) -> str:
        first = f"{self.where}: {self.severity}: {self.text} [{self.code}]"
        return f"{first}\n  help: {self.help}" if self.help else first

    @property
    def in_full(self) -> str:
        """As it is printed where a concession may be asked for: with the fingerprint, where it has one.

        What is merely worth knowing asks for none; what a concession made a note of keeps its own.
        """
        asks = self.fingerprint and (self.severity is not Severity.NOTE or self.conceded_by)
        return f"{self}\n  fingerprint: {self.fingerprint}" if asks else str(self)

    def as_data(self) -> dict[str, object]:
        """As plain data, for `--format json`."""
        flat = asdict(self)
        place = flat.pop("where")
        return {**place, **flat}


class GarboardError(Exception):
    """The run cannot go on; its text is one line for the person who started it."""


class OutsideValidity(GarboardError):  # noqa: N818 - said as the trade says it
    """A method was asked for a value outside the limits in which it holds."""
