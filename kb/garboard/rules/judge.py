"""Run every rule over a book, and weigh what it finds by how far the system has come.

A rule binds from a service status on; before it the same message is a note. A granted concession
that names the rule and the place makes it a note as well, for as long as it stands.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date
from types import ModuleType

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.change import Concession
from garboard.records.signoff import Capacity
from garboard.records.system import ServiceStatus
from garboard.rules.conditions import broken_conditions

__all__ = ["judge"]


def judge(book: Book, rules: Iterable[ModuleType]) -> tuple[Diagnostic, ...]:
    """Every problem of a book, by place.

    Args:
        book: What was read and worked out.
        rules: Modules with CODE, SEVERITY, BINDS_FROM, WAIVABLE and `check`.

    Returns:
        Diagnostics sorted by place, then gravity, each once.
    """
    found = {item for rule in rules for item in _weighed(book, rule)}
    return tuple(
        sorted(found, key=lambda item: (item.where, item.severity.rank, item.code, item.text))
    )


def _weighed(book: Book, rule: ModuleType) -> Iterator[Diagnostic]:
    waivers = (
        [item for item in _granted(book) if item.departs_from == rule.CODE] if rule.WAIVABLE else []
    )
    for item in rule.check(book):
        status = book.status_of(item.about)
        if status.order < ServiceStatus(rule.BINDS_FROM).order:
            yield replace(item, severity=Severity.NOTE)
        elif waiver := next((one for one in waivers if item.about in one.where_), None):
            text = f"{item.text}; conceded by {waiver.id} until {waiver.until}"
            yield replace(item, severity=Severity.NOTE, text=text)
        else:
            yield item


def _granted(book: Book) -> Iterator[Concession]:
    """Concessions that stand today; one that lapsed, ran out or lost a condition concedes nothing."""
    for record in book.of_kind(Concession):
        running = not isinstance(record.until, date) or record.until >= book.today
        by_approver = any(
            line.capacity is Capacity.APPROVER and line.to == "granted" for line in record.signed
        )
        if (
            book.state(record) == "granted"
            and by_approver
            and running
            and not [*broken_conditions(book, record)]
        ):
            yield record
