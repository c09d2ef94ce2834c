"""Run every rule over a book, and weigh what it finds by how far the system has come.

A rule binds from a service status on; before it the same message is a note. A granted concession
that names the rule and the place makes it a note as well, for as long as it stands; nothing else
does. A warning that editions have carried for too long holds.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import date, timedelta
from types import ModuleType

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import Class, date_of
from garboard.records.change import Concession
from garboard.records.edition import Fired
from garboard.records.signoff import Capacity
from garboard.records.system import ServiceStatus
from garboard.rules.conditions import broken_conditions
from garboard.rules.misread import slips_of
from garboard.rules.paths import GRADED

__all__ = ["judge"]

PATIENCE = timedelta(days=30)
"""How long a warning may stand after an edition first carried it."""
Carried = Mapping[tuple[str, str], Fired]


def judge(book: Book, rules: Iterable[ModuleType]) -> tuple[Diagnostic, ...]:
    """Every problem of a book.

    Args:
        book: What was read and worked out.
        rules: Modules with CODE, SEVERITY, BINDS_FROM, WAIVABLE and `check`.

    Returns:
        Diagnostics, each once: slips in a layout first, as much else may follow from them; then by
        place and gravity.
    """
    carried, granted = _carried(book), tuple(_granted(book))
    found = {item for rule in rules for item in _weighed(book, rule, granted, carried)}
    slips = {place for places in slips_of(book).values() for place in places}

    def order(item: Diagnostic) -> tuple[bool, Where, int, str, str]:
        return (item.where not in slips, item.where, item.severity.rank, item.code, item.text)

    return tuple(sorted(found, key=order))


def _weighed(
    book: Book, rule: ModuleType, granted: Iterable[Concession], carried: Carried
) -> Iterator[Diagnostic]:
    waivers = [item for item in granted if item.departs_from == rule.CODE]
    for item in rule.check(book):
        status = book.status_of(item.about)
        if status.order < _binds_from(rule, item).order:
            yield replace(item, severity=Severity.NOTE)
        elif waiver := _waiver(rule, item, waivers):
            text = f"{item.text}; conceded by {waiver.id} until {waiver.until}"
            yield replace(item, severity=Severity.NOTE, text=text, conceded_by=str(waiver.id))
        elif rule.SEVERITY is Severity.WARN and item.severity is Severity.WARN:
            yield _aged(item, carried.get((item.code, item.about)), book.today)
        else:
            yield item


def _binds_from(rule: ModuleType, item: Diagnostic) -> ServiceStatus:
    """From which status on a rule binds; one that is graded goes by what it found."""
    if rule.BINDS_FROM != GRADED:
        return ServiceStatus(rule.BINDS_FROM)
    by_gravity = {Severity.STOP: ServiceStatus.SKETCH, Severity.HOLD: ServiceStatus.BUILDING}
    return by_gravity.get(item.severity, ServiceStatus.IN_TEST)


def _waiver(rule: ModuleType, item: Diagnostic, waivers: Iterable[Concession]) -> Concession | None:
    """The concession that waives a finding: one of a path only by its own fingerprint.

    Of a rule that cannot be waived and is graded, only what is less than a STOP can.
    """
    if not rule.WAIVABLE and (rule.BINDS_FROM != GRADED or item.severity is Severity.STOP):
        return None
    for one in waivers:
        if item.about in one.where_ and (one.fingerprint or "") == item.fingerprint:
            return one
    return None


def _carried(book: Book) -> Carried:
    """What the last edition carried and was more than a note, by code and what it is about."""
    fired = book.edition.fired if book.edition else ()
    oldest = sorted(fired, key=lambda one: one.since, reverse=True)
    return {(one.code, one.about): one for one in oldest if one.severity is not Severity.NOTE}


def _aged(item: Diagnostic, carried: Fired | None, today: date) -> Diagnostic:
    """A warning, or the hold that it has become."""
    if carried is None or today - carried.on <= PATIENCE:
        return item
    text = f"{item.text}; a warning since edition {carried.since} of {carried.on}"
    return replace(item, severity=Severity.HOLD, text=text)


def _granted(book: Book) -> Iterator[Concession]:
    """The concessions that stand: granted by an approver whose signature fits, in time and on terms.

    One that lapsed, ran out or lost a condition concedes nothing.
    """
    for record in book.of_kind(Concession):
        reviewed = book.reviews.get(str(record.id))
        by_approver = reviewed is not None and any(
            each.line.to == "granted" and _may_grant(book, record, each.line.by)
            for each in reviewed.standing(Capacity.APPROVER)
        )
        granted = book.state(record) == "granted" and by_approver and _running(book, record)
        if granted and not [*broken_conditions(book, record)]:
            yield record


def _may_grant(book: Book, record: Concession, by: str) -> bool:
    person = book.content.people.get(by)
    lacks = person.lacks(Capacity.APPROVER, record.system, record.weight) if person else "all"
    return not lacks and by != record.author


def _running(book: Book, record: Concession) -> bool:
    """Whether it is in its time: up to a day, or for a lower class up to an event."""
    until = date_of(record.until)
    if until is None:
        return record.until is not None and record.weight is not Class.A
    return until >= book.today
