"""A test is passed with a reading or a log outside its criterion, or before the criterion was written.

Why: a limit that is written after the reading is drawn round it. And a test that fell short and
is called passed is worse than none: it stops everybody from looking again.

Fix: reject it and test again; where the reading was taken down wrongly, void the record and write
a new one. A criterion is compared where it says at least, at most, from to, or quotes a value
with a tolerance or a test pressure; of readings that could mean several things none is judged.
Of a log the way up is not judged, and where the criterion says how long (`held 30 min`) not the way
down either; a criterion with the word `throughout` is asked of every row. Where a log has two
channels of one kind, the criterion names the one it means.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.criterion import Bound, find_bounds, read_number
from garboard.records.inspection import PlanLine, Result, Test
from garboard.records.standing import has_left, state_of
from garboard.rules.logged_tests import astray

CODE = "accepted-outside-criterion"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

ANOTHER_MOMENT = re.compile(
    r"\b(before|after|start|begin|release\w*|reseat\w*|clos\w*|drain\w*|vent\w*|ambient|supply)\b",
    re.IGNORECASE,
)
"""A reading that was not taken while the criterion had to hold."""
ITS_TOLERANCE = re.compile(r"\bwithin\b.*\btolerance\b", re.IGNORECASE)
"""Each reading is held against the value that it names."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare the readings of every test that is passed or accepted with its criterion."""
    for test in book.of_kind(Test):
        accepted = state_of(test) == "accepted"  # as written: a lapsed word was given all the same
        if has_left(test) or not (accepted or test.result is Result.PASS):
            continue
        verdict = "accepted" if accepted else "passed"
        yield from _outside(book, test, verdict)
        for one in astray(book, test):
            text = f"{one.words}, against {one.bound.shown}, {verdict}"
            cure = "reject it and test again, or write how long it had to hold, if the log goes on"
            yield Diagnostic(one.where, SEVERITY, text, cure, CODE, str(test.id))
        line = book.records.get(bare_id(test.line)) if test.line else None
        if not isinstance(line, PlanLine) or line.drafted is None or test.on is None:
            continue
        log = book.content.logged.get(str(test.id))
        read = min(test.on, log.began.date()) if log and log.began else test.on
        if line.drafted > read:
            text = f"{test.id} was read {read}, its criterion in {line.id} written {line.drafted}"
            cure = "test again against it, or give the day on which it was really fixed"
            yield Diagnostic(test.place("on"), SEVERITY, text, cure, CODE, str(test.id))


def _outside(book: Book, test: Test, verdict: str) -> Iterator[Diagnostic]:
    for number, bound, shown in _fallen_short(book, test):
        text = f"{shown} against {bound.shown}, {verdict}"
        where = test.place(f"readings[{number}].value")
        cure = "reject it and test again, or void the record if the reading is wrong"
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(test.id))


def _fallen_short(book: Book, test: Test) -> Iterator[tuple[int, Bound, str]]:
    """Readings outside a bound: place, the bound, the reading as written."""
    criterion = test.criterion or ""
    bounds = find_bounds(book.values, criterion, test.place("criterion"))
    if not bounds and ITS_TOLERANCE.search(criterion):
        for number, reading in enumerate(test.readings):
            for bound in find_bounds(book.values, reading.of, test.place(f"readings[{number}].of")):
                value = read_number(book.values, reading.value, test.place("readings"))
                if value and value.type == bound.type and not bound.holds(value.low):
                    yield number, bound, reading.value
    for bound in bounds:
        alone = sum(one.type == bound.type for one in bounds) == 1
        for number, shown, judged in _judged(book, test, bound, alone=alone):
            if not bound.holds(judged):
                yield number, bound, shown


def _judged(book: Book, test: Test, bound: Bound, *, alone: bool) -> list[tuple[int, str, float]]:
    """The readings that a bound speaks of: place, as written, in SI.

    Of several readings a bound with two sides, or one of several bounds, could mean any one: none.
    """
    found: list[tuple[int, str, float]] = []
    for number, reading in enumerate(test.readings):
        value = read_number(book.values, reading.value, test.place(f"readings[{number}].value"))
        if value is None or value.type != bound.type:
            continue
        if bound.address and reading.of == bound.address:
            return [(number, reading.value, value.low)]
        if not ANOTHER_MOMENT.search(reading.of):
            found.append((number, reading.value, value.low))
    one_sided = bound.low is None or bound.high is None
    return found if len(found) == 1 or (one_sided and alone) else []
