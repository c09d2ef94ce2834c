"""A change reaches things that its notice neither names nor has had looked at.

Why: a setting is changed in an hour, and stands for years in a round, on a card, in a calculation of
somebody else. What the notice does not name, nobody goes to look at.

Fix: look at each. What must change with it goes into `procedures`, `affects` or `voids`; what needs no
change goes into `looked_at`, with its id, tag, part number, card, system or page. The page of the
change lists them all, each with the reason. A change of class C that is in kind is not asked.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.notice import notice_of
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class
from garboard.records.change import Change
from garboard.records.standing import state_of

CODE = "touched-unconfirmed"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

UNDER_WAY = ("emergency", "in work", "installed", "proved")
MOST_NAMED = 3


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every change that work has begun on."""
    for change in book.of_kind(Change):
        state = state_of(change)
        if state not in (*UNDER_WAY, "closed") or change.weight is Class.C:
            continue
        left = [one.told for one in notice_of(book, change).open]
        if left:
            more = f" and {len(left) - MOST_NAMED} more" if len(left) > MOST_NAMED else ""
            listed = f"{', '.join(left[:MOST_NAMED])}{more}"
            text = f"{change.id}, {state}, reaches {listed}, neither named nor looked at"
            cure = f"look at {left[0]}, then name it under `procedures`, or under `looked_at`"
            grave = SEVERITY if state == "closed" else Severity.WARN
            where = change.place("state")
            yield Diagnostic(where, grave, text, cure, CODE, str(change.id))
