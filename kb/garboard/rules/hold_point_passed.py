"""Work went past a hold point that nobody released, or it was released without a passed test.

Why: what is closed up, painted or buried cannot be looked at any more, and the one who was to
look has not.

Fix: stop, expose and inspect, and raise a finding; or have the named party release what it has
really seen. A hold that was called in an issued edition stays a hold: it is not turned into a witness
point, nor dropped before it was released. It may be superseded by another hold.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.inspection import PlanLine, Point
from garboard.records.standing import has_left, state_of
from garboard.records.states import LEAVING
from garboard.records.work import WorkPackage
from garboard.review.kept import POINT
from garboard.rules.proofs import is_proof

CODE = "hold-point-passed"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

DONE = ("complete", "verified")
BEGUN = ("in hand", *DONE)
OVER = ("released",)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every hold, and at the work it stands in front of."""
    for line in book.of_kind(PlanLine):
        if line.point is not Point.HOLD or has_left(line):
            continue
        if state_of(line) == "released":
            yield from _unproved(book, line)
        else:
            yield from _passed(book, line)
    yield from _weakened(book)


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


def _weakened(book: Book) -> Iterator[Diagnostic]:
    """Holds that the last edition had as called, and that hold nothing any more."""
    edition = book.edition
    for key, issued in edition.records.items() if edition else ():
        line = book.records.get(key)
        if edition is None or POINT not in issued.kept or not isinstance(line, PlanLine):
            continue
        called = f"{key} was called as hold point H in edition {edition.number}"
        if line.point is not Point.HOLD and "point" not in line.unread:
            text = f"{called} and is now {line.point or 'without a point'}"
            where, cure = line.place("point"), "make it H again, and have it released"
        elif has_left(line) and issued.state not in (*OVER, *LEAVING) and not _held_on(book, line):
            text = f"{called}, and is {line.state} without having been released"
            where, cure = (
                line.place("state"),
                "put it back, or supersede it by another hold point H",
            )
        else:
            continue
        yield Diagnostic(where, SEVERITY, text, cure, CODE, key)


def _held_on(book: Book, line: PlanLine) -> bool:
    """Whether another hold took its place, however many came between."""
    heirs = {str(one.supersedes): one for one in book.of_kind(PlanLine) if one.supersedes}
    seen = {str(line.id)}
    heir = heirs.get(str(line.id))
    while heir is not None and has_left(heir) and str(heir.id) not in seen:
        seen.add(str(heir.id))
        heir = heirs.get(str(heir.id))
    return (
        line.state == "superseded"
        and heir is not None
        and heir.point is Point.HOLD
        and not has_left(heir)
    )


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
