"""Which copy of the handbook a page belongs to, in words that nobody can mistake for the other.

An issued edition and a working copy look alike but for these words. They stand on the screen, on
paper, in the title of the tab and in the files of numbers, and no colour is needed to read them.
"""

from dataclasses import dataclass
from datetime import date

from garboard.records.edition import Edition

__all__ = ["WORKING", "Copy", "issued_copy", "working_copy"]

NOT_AT_SEA = "WORKING COPY, not an edition. Not for use at sea."
AFTERWARDS = (
    "After that day ask for the next edition. Until it is here, do not rely on set values, due dates or"
    " temporary arrangements without asking the person in charge."
)


@dataclass(frozen=True, slots=True)
class Copy:
    """An issued edition, or a working copy."""

    number: int = 0
    """Of the edition; 0 in a working copy."""
    issued: str = ""
    """The day it was issued, `2031-09-15`."""
    valid_until: str = ""
    """The last day it may be relied on; the reader's own clock says when it has passed."""
    ends: str = ""
    """Why on that day."""
    holders_have: str = ""
    """Of a working copy: `edition 2 of 2031-09-15`; empty where none was ever issued."""

    @property
    def name(self) -> str:
        """Short, for a tab or the edge of a sheet: `EDITION 2` or `WORKING COPY`."""
        return f"EDITION {self.number}" if self.number else "WORKING COPY"

    @property
    def line(self) -> str:
        """On one line: `EDITION 2 - VALID UNTIL 2032-09-15`, `WORKING COPY - NOT FOR USE AT SEA`."""
        more = f"VALID UNTIL {self.valid_until}" if self.number else "NOT FOR USE AT SEA"
        return f"{self.name} - {more}"

    @property
    def words(self) -> str:
        """For the head of a page: until when it holds, or that it is no edition."""
        return f"{self.line}." if self.number else NOT_AT_SEA

    @property
    def beside(self) -> str:
        """Of a working copy, which edition is out, as a sentence."""
        have = self.holders_have
        return f"{have[0].upper()}{have[1:]} is what holders have." if have else ""

    @property
    def no_card(self) -> str:
        """Why no card is printed from this copy; empty in an edition."""
        return "" if self.number else "No card is printed from a working copy."

    @property
    def afterwards(self) -> str:
        """For the foot: why it ends on that day, and what to do then; empty in a working copy."""
        why = f": {self.ends}" if self.ends else ""
        return f"Valid to the end of {self.valid_until}{why}. {AFTERWARDS}" if self.number else ""


WORKING = Copy()
"""A working copy of a handbook that was never issued."""


def issued_copy(edition: Edition) -> Copy:
    """The copy that an edition is."""
    issued, until = (day.isoformat() for day in (edition.issued, edition.valid_until))
    return Copy(edition.number, issued, until, edition.ends)


def working_copy(last: Edition | None, today: date) -> Copy:
    """A working copy beside the edition that holders have.

    Args:
        last: The edition issued last; None where there is none.
        today: The day by which time is judged.
    """
    if last is None:
        return WORKING
    past = f", which ran out on {last.valid_until}," if last.valid_until < today else ""
    return Copy(holders_have=f"edition {last.number} of {last.issued}{past}")
