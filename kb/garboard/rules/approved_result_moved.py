"""A result left the band in which it was approved, and a live record rests on it.

Why: somebody built, set or decided by the number as it was.

Fix: have the calculation checked again; then look at each record that rests on it, and keep it,
change it or supersede it.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.calculation import Calculation
from garboard.records.signoff import Capacity
from garboard.records.standing import has_left, is_live
from garboard.rules.signed import Line, lines

CODE = "approved-result-moved"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the results of calculations whose approval has lapsed."""
    for line in lines(book):
        approved = line.weighed.counts and line.weighed.line.capacity is Capacity.APPROVER
        if not approved or not isinstance(line.thing, Calculation) or has_left(line.thing):
            continue
        for moved in line.weighed.moved:
            value = book.values.get(moved.what)
            if value is None or value.given or not moved.before or not _own(book, line, moved.what):
                continue
            users = _users(book, line.key, moved.what)
            if users:
                text = (
                    f"{moved.what} was approved at {moved.before} and is {value.text}; "
                    f"{', '.join(users[:3])} rests on it"
                )
                cure = f"have {line.key} checked again, then look at {users[0]}"
                yield Diagnostic(line.where, SEVERITY, text, cure, CODE, line.key)


def _own(book: Book, line: Line, address: str) -> bool:
    sheet = book.network.sheets.get(address.partition(".")[0])
    return sheet is not None and sheet.owner == line.key


def _users(book: Book, key: str, address: str) -> list[str]:
    """Live records that quote or use a value, other than the one that sets it."""
    users = {
        other
        for other, reviewed in book.reviews.items()
        if address in reviewed.cover.values and other != key
    }
    return sorted(user for user in users if user in book.records and is_live(book.records[user]))
