"""Something that was rigged for a time is past its day, or has none.

Why: the hose across a wasted elbow becomes the pipe, and nobody remembers that it was to be for a
month. NRC IP 71152 asks the same of plants that have more people to remember.

Fix: take it out and restore what was there; or renew it with an approver, a day and a check on
the rounds. An event in place of a day is left to a person.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import date_of
from garboard.records.change import TemporaryModification
from garboard.records.standing import state_of

CODE = "temporary-overdue"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = True

STANDS = ("fitted", "emergency", "expired", "lapsed")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the day of everything that is written as rigged; past its day it counts as expired."""
    for record in book.of_kind(TemporaryModification):
        if state_of(record) not in STANDS:
            continue
        until, about = date_of(record.until), str(record.id)
        cure = "remove it, or renew it with an approver"
        if not record.until:
            text = f"{about} is {record.state} and has no day on which it ends"
            where = record.place("state")
            yield Diagnostic(where, Severity.STOP, text, cure, CODE, about)
        elif until and until < book.today:
            text = f"{about} ran out {until}"
            yield Diagnostic(record.place("until"), SEVERITY, text, cure, CODE, about)
