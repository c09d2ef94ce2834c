"""A concession is past its day, or a condition of it no longer holds.

Why: leave to depart from a rule was given for a time and on conditions; past that time nobody has
given it.

Fix: correct what it was for, then have it closed; or ask again, with what has been learned since.
A condition is followed where it is a value and a bound, `SA-RV-001.set at most 30 bar(g)`; all other
words are asked after on the rounds, not here.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import date_of
from garboard.records.change import Concession
from garboard.records.standing import state_of
from garboard.rules.conditions import broken_conditions

CODE = "concession-expired"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every concession that is written as granted, and so still leaned on."""
    for record in book.of_kind(Concession):
        until = date_of(record.until)
        if state_of(record) in ("granted", "expired") and until and until < book.today:
            text = f"{record.id} ran out {until}, it departs from {record.departs_from}"
            cure = "correct it and close the concession, or ask again"
            where = record.place("until")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))
        elif state_of(record) == "granted":
            for said in broken_conditions(book, record):
                text = f"{record.id} was granted on a condition that does not hold: {said}"
                cure = "bring it back within the condition, or ask again"
                where = record.place("conditions")
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))
