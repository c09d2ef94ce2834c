"""A signed record rests on one whose own signature has lapsed.

Why: what was signed has not moved, but what it stands on is waiting for somebody to look again.

Fix: have the record that is named checked and signed again; with the same content this one stands
again by itself. It needs no new signature of its own.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.rules.signed import lines

CODE = "rests-on-lapsed"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

MOST_SHOWN = 3


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every record with a signature that stands."""
    seen: set[str] = set()
    for line in lines(book):
        if line.key in seen or not line.weighed.stands or not line.reviewed.rests_on:
            continue
        seen.add(line.key)
        names = line.reviewed.rests_on
        more = f" and {len(names) - MOST_SHOWN} more" if len(names) > MOST_SHOWN else ""
        text = f"rests on {', '.join(names[:MOST_SHOWN])}{more}, signed once and lapsed"
        cure = f"have {names[0]} checked and signed again; nothing is to be done here"
        yield Diagnostic(line.where, SEVERITY, text, cure, CODE, line.key)
