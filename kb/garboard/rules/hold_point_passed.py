"""Work went past a hold point that nobody released, or it was released without a passed test.

Why: what is closed up, painted or buried cannot be looked at any more, and the one who was to
look has not.

Fix: stop, expose and inspect, and raise a finding; or have the named party release what it has
really seen. Whether a hold was turned into a witness point after it was called is read from the
history.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.inspection import PlanLine, Point
from garboard.records.standing import has_left, state_of
from garboard.records.work import WorkPackage
from garboard.rules.proofs import is_proof

CODE = "hold-point-passed"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

DONE = ("complete", "verified")
BEGUN = ("in hand", *DONE)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every hold as it is written, and at the work it stands in front of.

    Work that went on under a release went on rightly; where the release lapses afterwards, other rules
    say so.
    """
    for line in book.of_kind(PlanLine):
        if line.point is not Point.HOLD or has_left(line):
            continue
        if state_of(line) == "released":
            yield from _unproved(book, line)
        else:
            yield from _passed(book, line)


def _passed(book: Book, line: PlanLine) -> Iterator[Diagnostic]:
    """Work that went on although the hold stands."""
    before = {bare_id(name) for name in line.before}
    for work in book.of_kind(WorkPackage):
        held = str(line.id) in {bare_id(name) for name in work.holds}
        stops = BEGUN if work.id in before else DONE if held else ()
        if state_of(work) in stops:
            text = f"{work.id} is {state_of(work)}, {line.id} is {state_of(line)} and not released"
            cure = "expose and inspect, raise a finding; or have the named party release it"
            where = work.place("state")
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(work.id))


def _unproved(book: Book, line: PlanLine) -> Iterator[Diagnostic]:
    """A release that no passed test stands behind."""
    if any(is_proof(book.records.get(bare_id(name))) for name in line.record):
        return
    named = " and ".join(line.record)
    text = f"{line.id} is released"
    text += f", {named} did not pass" if named else " and names no test"
    cure = "name the test that was passed, or set the line back and inspect"
    where = line.place("record" if named else "state")
    yield Diagnostic(where, SEVERITY, text, cure, CODE, str(line.id))
