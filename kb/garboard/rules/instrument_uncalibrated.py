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
from garboard.records.calibration import calibration_of
from garboard.records.criterion import read_number
from garboard.records.inspection import Test
from garboard.records.standing import has_left

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
            logged = path.startswith("log.")
            text, cure = _fault(book, named, _last_day(book, test) if logged else test.on)
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


def _last_day(book: Book, test: Test) -> date | None:
    """The last day on which a test was read: that of its log, where the file says one."""
    log = book.content.logged.get(str(test.id))
    days = [day for day in (test.on, log.ended.date() if log and log.ended else None) if day]
    return max(days, default=None)


def _fault(book: Book, named: str | None, on: date | None) -> tuple[str, str]:
    """What is wrong with an instrument on a day, and the cure; empty where nothing is."""
    if named is None:
        return "a reading names no instrument", "name it, or say that it was read by eye"
    fitted, kept = book.components, book.content.vessel.instruments or {}
    if named not in fitted and named not in kept:  # a name in no list is another rule's matter
        return "", ""
    why = calibration_of(named, on, kept, fitted).why
    return why, "test again, or show the certificate that covers the day" if why else ""
