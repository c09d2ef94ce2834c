"""The days of a record stand in an order in which things cannot have happened.

Why: a day is the only thing by which a later reader tells a check from a rubber stamp. Signed before it
was written, approved before it was checked, tested before it was there: one of the two days is wrong, or
the step was not taken.

Fix: correct the day that was mistyped; where the days are right, take the step again in its order and sign
that.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class, Record, bare_id
from garboard.records.change import Change
from garboard.records.inspection import Test
from garboard.records.signoff import Capacity, Verdict
from garboard.records.standing import REFUSED, has_left
from garboard.records.states import LEAVING
from garboard.rules.authorised import put_in

CODE = "dates-out-of-order"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

AGAINST = (Verdict.OBJECT, Verdict.FINDING)
Found = Iterator[tuple[str, str]]
"""Where it stands, and what is."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare the days of every record with one another."""
    for record in book.records.values():
        found = [*_signed(book, record), *_approved(record)]
        if isinstance(record, Test):
            found += _judged(record)
        if isinstance(record, Change) and not has_left(record):
            found += _tested_again(book, record)
        yield from (_said(record, path, text) for path, text in found)
    for one in put_in(book):
        in_time = one.authorised is None or one.installed is None or one.authorised <= one.installed
        if one.record.weight is not Class.A and not in_time and not one.in_emergency:
            text = f"{one.record.id} was put in {one.installed}, authorised {one.authorised}"
            yield _said(one.record, one.path, text)


def _said(record: Record, path: str, text: str) -> Diagnostic:
    cure = "correct the day that is wrong, or take the step again and sign it"
    return Diagnostic(record.place(path), SEVERITY, text, cure, CODE, str(record.id))


def _signed(book: Book, record: Record) -> Found:
    """Signed before it was written, or on a day that has not come."""
    for number, line in enumerate(record.signed):
        said = f"{record.id} is signed {line.on} as {line.capacity}"
        if line.on > book.today:
            yield f"signed[{number}]", f"{said}, today is {book.today}"
        elif record.drafted and line.on < record.drafted:
            yield f"signed[{number}]", f"{said}, drafted {record.drafted}"


def _approved(record: Record) -> Found:
    """Approved before anybody checked it, though somebody did afterwards."""
    checks = [
        line.on
        for line in record.signed
        if line.capacity is Capacity.CHECKER and line.verdict not in AGAINST
    ]
    for number, line in enumerate(record.signed):
        ends = line.to in LEAVING or line.to in REFUSED or line.verdict in AGAINST
        if line.capacity is Capacity.APPROVER and checks and not ends and line.on < min(checks):
            yield f"signed[{number}]", f"{record.id} is approved {line.on}, checked {min(checks)}"


def _judged(test: Test) -> Found:
    """Signed as made or accepted before the day of the test."""
    for number, line in enumerate(test.signed):
        if line.to in ("complete", "checked", "accepted") and test.on and line.on < test.on:
            yield f"signed[{number}]", f"{test.id} is {line.to} {line.on}, tested {test.on}"


def _tested_again(book: Book, change: Change) -> Found:
    """A re-test that was made before the change was there."""
    for number, name in enumerate(change.retests):
        test = book.records.get(bare_id(name))
        day = test.on if isinstance(test, Test) else None
        if day and change.installed and day < change.installed:
            text = f"{name}, re-test of {change.id}, is of {day}, put in {change.installed}"
            yield f"retests[{number}]", text
