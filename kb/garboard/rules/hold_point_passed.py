"""Work went past a hold point that nobody released, or it was released without its proof or party.

Why: what is closed up, painted or buried cannot be looked at any more, and the one who was to
look has not.

Fix: stop, expose and inspect, and raise a finding; or have the named party release what it has
really seen. Work that is done and hides a component counts as past every hold on it. A hold that was
called stays one: to withdraw it, or to put a lesser point in its place, is to pass it. A line whose
`point` was merely rewritten is told from its signatures, which then no longer fit, and from the edition
that had it as called.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.inspection import PlanLine, Point, Test
from garboard.records.signoff import SignOff
from garboard.records.standing import has_left, state_of
from garboard.records.states import LEAVING
from garboard.records.work import WorkPackage
from garboard.review.kept import POINT
from garboard.rules.held_parts import hidden
from garboard.rules.proofs import is_proof

CODE = "hold-point-passed"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

DONE = ("complete", "verified")
BEGUN = ("in hand", *DONE)
CALLED = ("called", "at hold")
OVER = ("released",)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every hold as it is written, and at the work it stands in front of.

    Work that went on under a release went on rightly; where the release lapses afterwards, other rules
    say so.
    """
    for line in book.of_kind(PlanLine):
        if line.point is not Point.HOLD:
            continue
        if has_left(line):
            yield from _dropped(book, line)
        elif state_of(line) == "released":
            yield from _unproved(book, line)
            yield from _by_another(line)
            yield from _before_its_proof(book, line)
        else:
            yield from _passed(book, line)
    for work in book.of_kind(WorkPackage):
        for line, tag in hidden(book, work) if state_of(work) in DONE else ():
            text = f"{work.id} is {state_of(work)} and hides {tag}, {line.id} on it is not released"
            cure = "expose and inspect, raise a finding; or have the named party release it"
            yield Diagnostic(work.place("hides"), SEVERITY, text, cure, CODE, str(work.id))
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
        elif any(_dropped(book, line)):
            continue  # told already, from its signatures
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


def _release(line: PlanLine) -> SignOff | None:
    """The newest signature that released a line."""
    released = [one for one in line.signed if one.to == "released"]
    return max(released, key=lambda one: one.on, default=None)


def _by_another(line: PlanLine) -> Iterator[Diagnostic]:
    """A release by somebody else than its named party."""
    release = _release(line)
    if release is not None and line.party and release.by != line.party:
        text = f"{line.id} is released by {release.by}, its party is {line.party}"
        cure = f"have {line.party} release it, or name the new party by a decision and call again"
        where = line.place(f"signed[{line.signed.index(release)}]")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(line.id))


def _before_its_proof(book: Book, line: PlanLine) -> Iterator[Diagnostic]:
    """A release that is older than every test behind it."""
    release = _release(line)
    proofs = [book.records.get(bare_id(name)) for name in line.record]
    days = [
        (one.on, str(one.id))
        for one in proofs
        if isinstance(one, Test) and is_proof(one) and one.on
    ]
    if release is not None and days and release.on < min(days)[0]:
        day, name = min(days)
        text = f"{line.id} was released {release.on}, {name} was passed {day}"
        cure = "have it released again, or give the day on which it was really tested"
        where = line.place(f"signed[{line.signed.index(release)}]")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(line.id))


def _dropped(book: Book, line: PlanLine) -> Iterator[Diagnostic]:
    """A hold that was called and then taken away or made less, with no release."""
    if not any(one.to in CALLED for one in line.signed) or _release(line):
        return
    after = [one for one in book.of_kind(PlanLine) if bare_id(one.supersedes or "") == line.id]
    if any(one.point is Point.HOLD for one in after):
        return
    instead = f"{after[0].id} has {after[0].point}" if after else "nothing holds in its place"
    text = f"{line.id} was called as a hold and is {state_of(line)}, {instead}"
    cure = "put the hold back, or have the named party release what it has seen"
    yield Diagnostic(line.place("state"), SEVERITY, text, cure, CODE, str(line.id))
