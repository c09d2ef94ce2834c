"""A safety device is past the day its test is due.

Why: a relief valve that has not lifted for five years may not lift; nothing in daily use shows
it.

Fix: test it and write the new day under `item`; or take the system out of service until it is
done. It warns from thirty days before.
"""

from collections.abc import Iterator
from datetime import timedelta

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.safety_device import is_safety_device

CODE = "safety-test-overdue"
SEVERITY = Severity.HOLD
BINDS_FROM = "in service"
WAIVABLE = True

WARNS = timedelta(days=30)


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the due day of every safety device."""
    for part in book.components.values():
        due = part.item.due if part.item else None
        if due is None or not is_safety_device(part):
            continue
        where = part.at_place("item.due")
        if due < book.today:
            text = f"{part.tag} was due {due}"
            cure = "test it, or take it out of service"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, part.tag)
        elif due <= book.today + WARNS:
            text = f"{part.tag} is due {due}"
            cure = "plan its test, or show the later certificate"
            yield Diagnostic(where, Severity.WARN, text, cure, CODE, part.tag)
