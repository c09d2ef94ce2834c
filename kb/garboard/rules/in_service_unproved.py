"""A system is in service with a finding of class A open, a hold standing, or a change unreviewed.

Why: "in service" is the word that others lean on when they turn the key. 30 CFR 250.1917 asks for
the review before new or changed plant is started.

Fix: close what is open and walk the review, or set the system back to `in test`.
"""

from collections.abc import Iterator
from datetime import date

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class
from garboard.records.change import Change
from garboard.records.finding import Finding
from garboard.records.inspection import PlanLine, Point, Review
from garboard.records.standing import has_left, refused
from garboard.records.system import ServiceStatus

CODE = "in-service-unproved"
SEVERITY = Severity.STOP
BINDS_FROM = "in service"
WAIVABLE = False

PASSED = ("passed", "limited")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for what stands against each system in service, as it counts today."""
    for code, system in book.systems.items():
        if book.status_of(code) is not ServiceStatus.IN_SERVICE:
            continue
        against = [*_open(book, code), *_unreviewed(book, code)]
        for what, cure in against:
            text = f"{code} is in service, {what}"
            yield Diagnostic(system.place("status"), SEVERITY, text, cure, CODE, code)


def _open(book: Book, code: str) -> Iterator[tuple[str, str]]:
    """Findings and holds that are open: what is, what to do."""
    for finding in book.of_kind(Finding):
        if finding.system == code and finding.weight is Class.A and book.is_live(finding):
            yield f"{finding.id} open", "close it, or take the system out of service"
    for line in book.of_kind(PlanLine):
        mine = line.system == code and line.point is Point.HOLD and not has_left(line)
        if mine and book.state(line) != "released":
            yield f"{line.id} not released", "release it, or take the system out of service"


def _unreviewed(book: Book, code: str) -> list[tuple[str, str]]:
    """Whether the last class A change came after the last review that was passed."""
    changes = [
        (change.installed, str(change.id))
        for change in book.of_kind(Change)
        if change.system == code
        and change.installed
        and change.weight is Class.A
        and not has_left(change)
        and not refused(change)
    ]
    if not changes:
        return []
    installed, name = max(changes)
    reviews = [day for review in book.of_kind(Review) if (day := _passed_on(book, review, code))]
    if reviews and max(reviews) >= installed:
        return []
    what = f"no review passed since {name} of {installed}"
    return [(what, "walk the review, or take the system out of service")]


def _passed_on(book: Book, review: Review, code: str) -> date | None:
    """The day a review of a system was passed; of one that lapsed, none."""
    if review.system != code or book.state(review) not in PASSED:
        return None
    return max((line.on for line in review.signed if line.to in PASSED), default=review.drafted)
