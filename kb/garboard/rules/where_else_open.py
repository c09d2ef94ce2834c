"""Parts like the one a class A finding is about were looked at by nobody, and nobody says why not.

Why: the same part was fitted by the same hand from the same drawing. NRC IP 92720 asks for the extent
of a condition, and the twin that was not looked at is the next accident.

Fix: look at each and write it under `looked`, and under `found` where it is the same; let an action of
the finding name it; or say under `not_looked` why not: a tag, a kind of part, a system or `all others`,
each with its reason. The page of the finding lists them.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.where_else import where_else
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Class
from garboard.records.finding import Finding
from garboard.records.standing import state_of

CODE = "where-else-open"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

EVALUATED = ("evaluated", "action agreed", "action done", "verified")
MOST_NAMED = 3


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every class A finding that was evaluated."""
    for finding in book.of_kind(Finding):
        state = state_of(finding)
        if finding.weight is not Class.A or state not in (*EVALUATED, "closed"):
            continue
        places = where_else(book, finding)
        left = [one.tag for one in places.open]
        if left:
            more = f" and {len(left) - MOST_NAMED} more" if len(left) > MOST_NAMED else ""
            listed = f"{', '.join(left[:MOST_NAMED])}{more}"
            text = f"{finding.id} is {state}, and nobody looked at {listed}"
            text += f" ({places.looked} of {len(places.places)} looked at)"
            cure = (
                f"look at {left[0]} and write it under `looked`, or say why not under `not_looked`"
            )
            grave = SEVERITY if state == "closed" else Severity.WARN
            where = finding.place("extent.looked" if finding.extent else "state")
            yield Diagnostic(where, grave, text, cure, CODE, str(finding.id))
