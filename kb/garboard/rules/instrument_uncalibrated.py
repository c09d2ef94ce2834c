"""A reading names no instrument, or one that was out of calibration that day.

Why: a gauge that reads three bar high passes a receiver that was never at pressure.

Fix: test again with an instrument in date; or show the certificate that covers the day and write
its dates into `instruments`. Counts and words such as "lamp out" need none.
"""

from collections.abc import Iterator
from datetime import date

from garboard.book import Book
from garboard.calc.kinds import NUMBER
from garboard.errors import Diagnostic, Severity
from garboard.records.inspection import Test
from garboard.records.standing import has_left
from garboard.rules.criterion import read_number

CODE = "instrument-uncalibrated"
SEVERITY = Severity.HOLD
BINDS_FROM = "in test"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the instrument of every reading and of every logged channel."""
    for test in book.of_kind(Test):
        if has_left(test):
            continue
        said: set[str] = set()
        for path, named in _instruments(book, test):
            text, cure = _fault(book, named, test.on)
            if text and text not in said:
                said.add(text)
                where = test.places.get(path, test.place(path.rpartition(".")[0]))
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(test.id))


def _instruments(book: Book, test: Test) -> Iterator[tuple[str, str | None]]:
    """The instrument of each measured reading, with its place; None where none is named."""
    for number, reading in enumerate(test.readings):
        path = f"readings[{number}]"
        value = read_number(book.values, reading.value, test.place(f"{path}.value"))
        if value is not None and value.type.dimension != NUMBER:
            yield f"{path}.instrument", reading.instrument
    for column, channel in (test.log.channels if test.log else {}).items():
        if channel.unit:
            yield f"log.channels.{column}.instrument", channel.instrument


def _fault(book: Book, named: str | None, on: date | None) -> tuple[str, str]:
    """What is wrong with an instrument on a day, and the cure; empty where nothing is."""
    if named is None:
        return "a reading names no instrument", "name it, or say that it was read by eye"
    part = book.components.get(named)
    if part is not None:
        item = part.item
        return _dates(named, item.tested if item else None, item.due if item else None, on)
    known = (book.content.vessel.instruments or {}).get(named)
    if known is None:  # a name that is in no list is another rule's matter
        return "", ""
    return _dates(named, known.calibrated, known.due, on)


def _dates(
    name: str, calibrated: date | None, due: date | None, on: date | None
) -> tuple[str, str]:
    cure = "test again, or show the certificate that covers the day"
    if calibrated is None:
        return f"{name} has no day on which it was calibrated", cure
    if on is not None and due is not None and due < on:
        return f"{name} was due {due}, read {on}", cure
    if on is not None and calibrated > on:
        return f"{name} was first calibrated {calibrated}, read {on}", cure
    return "", ""
