"""A work package is offered as ready while something it needs is not there.

Why: five people turn out on Saturday for a job that cannot begin.

Fix: finish what is needed first, or set the package back to `defined` until it is.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Record, bare_id
from garboard.records.inspection import PlanLine, Point
from garboard.records.kinds import kind_of
from garboard.records.standing import has_left, kind_name, refused, state_of
from garboard.records.states import at_rest
from garboard.records.work import WorkPackage
from garboard.rules.proofs import is_proof

CODE = "offered-not-ready"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

THERE = {
    "work package": ("complete", "verified"),
    "decision": ("approved", "implemented", "confirmed"),
    "change": ("installed", "proved", "closed"),
    "procedure": ("approved", "issued"),
    "plan line": ("released", "waived", "not attended"),
    "action": ("done", "verified", "effective"),
    "temporary modification": ("fitted",),
}
"""States in which a need is met, by kind; of the others, at rest."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the needs of every package that is offered."""
    holds = [
        line
        for line in book.of_kind(PlanLine)
        if line.point is Point.HOLD and not has_left(line) and state_of(line) != "released"
    ]
    for work in book.of_kind(WorkPackage):
        if state_of(work) != "ready":
            continue
        about, lacks = str(work.id), list(_lacks(book, work))
        lacks += [
            ("state", f"{line.id} in front of it is {state_of(line)}", f"release {line.id} first")
            for line in holds
            if about in {bare_id(name) for name in line.before}
        ]
        for path, what, first in lacks:
            text = f"{about} is ready, {what}"
            cure = f"{first}, or set it back to defined"
            yield Diagnostic(work.place(path), SEVERITY, text, cure, CODE, about)


def _lacks(book: Book, work: WorkPackage) -> Iterator[tuple[str, str, str]]:
    """What is not there: place, what is, what to do."""
    named = [(f"needs[{number}]", str(need)) for number, need in enumerate(work.needs)]
    if work.isolation:
        named.append(("isolation", str(work.isolation)))
    for path, name in named:
        record = book.records.get(bare_id(name))
        if record is not None and not _is_there(record):
            gone = has_left(record) or refused(record)
            first = "name what takes its place" if gone else f"finish {record.id} first"
            yield path, f"{record.id} is {state_of(record)}", first
    if work.not_before and work.not_before > book.today:
        what = f"not before {work.not_before}"
        yield "not_before", what, f"wait for {work.not_before}"


def _is_there(record: Record) -> bool:
    if has_left(record) or refused(record):
        return False
    kind = kind_of(record)
    if is_proof(record) or kind is None:
        return True
    states = THERE.get(kind_name(record))
    return state_of(record) in states if states else at_rest(kind.name, state_of(record))
