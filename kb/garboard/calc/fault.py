"""Say what is wrong with a line of a calculation, and at which sign.

Inside `calc` a fault is an exception, because a line that cannot be read has no value to go on
with. It always carries a Diagnostic, and it never leaves the network: one line, one fault, and the
lines beside it are still worked out.
"""

from dataclasses import dataclass
from enum import StrEnum

from garboard.errors import Diagnostic, Severity, Where

__all__ = ["NOWHERE", "CalcFault", "Family", "Line", "Span", "fault"]

NOWHERE = Where("", 1, 1)
"""The place of a text that stands in no file, such as a unit asked for on a command line."""


class Family(StrEnum):
    """What kind of fault it is; a family of unreadable lines, or a code of its own."""

    SYNTAX = "SYNTAX"
    LIMIT = "LIMIT"
    NAME = "NAME"
    UNIT = "UNIT"
    RANGE = "RANGE"
    METHOD = "METHOD"
    REFERENCE = "REFERENCE"
    """A block, tag or condition of the vessel that nothing declares."""
    DIMENSION = "DIMENSION"
    DATUM = "DATUM"
    """It does not say, or clashes in, what it is counted from."""
    VALIDITY = "VALIDITY"
    """A method was asked for a value outside the limits in which it holds."""
    CYCLE = "CYCLE"

    @property
    def code(self) -> str:
        """The code of the rule that such a fault is reported under."""
        return CODES.get(self, "unreadable-line")


CODES = {
    Family.REFERENCE: "reference-to-nothing",
    Family.DIMENSION: "dimension-clash",
    Family.DATUM: "datum-missing",
    Family.VALIDITY: "outside-validity",
    Family.CYCLE: "values-in-a-ring",
}


class CalcFault(Exception):  # noqa: N818 - named in words of the trade
    """One line cannot be read or worked out."""

    def __init__(self, diagnostic: Diagnostic) -> None:
        super().__init__(str(diagnostic))
        self.diagnostic = diagnostic


def fault(family: Family, where: Where, text: str, cure: str, about: str = "") -> CalcFault:
    """Make the exception for one fault.

    >>> print(fault(Family.UNIT, Where("a.md", 3, 9), "`bra` is no unit", "write bar").diagnostic)
    a.md:3:9: STOP: `bra` is no unit [unreadable-line]
      help: write bar
    """
    severity = Severity.HOLD if family is Family.VALIDITY else Severity.STOP
    return CalcFault(Diagnostic(where, severity, text, cure, family.code, about, family.value))


@dataclass(frozen=True, slots=True)
class Span:
    """A part of a line: its first sign and the one past its last, counted from 0."""

    start: int
    end: int

    def to(self, other: "Span") -> "Span":
        """From the first sign of this part to the last of another."""
        return Span(self.start, other.end)


@dataclass(frozen=True, slots=True)
class Line:
    """One line of text and the place of its first sign, so that every part of it has a place."""

    text: str
    where: Where
    about: str = ""
    """The block it stands in."""

    def at(self, span: Span) -> Where:
        """The place of a part of the line."""
        where = self.where
        return Where(where.path, where.line, where.column + span.start)

    def quote(self, span: Span) -> str:
        """A part of the line as written, cut when it is long."""
        part = self.text[span.start : span.end].strip()
        return part if len(part) <= 60 else part[:57] + "..."

    def fault(self, family: Family, span: Span, text: str, cure: str) -> CalcFault:
        """The fault of a part of the line."""
        return fault(family, self.at(span), text, cure, self.about)
