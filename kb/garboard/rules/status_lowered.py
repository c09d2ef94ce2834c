"""A system's service status was set back since the last edition, and nobody in charge signed that.

Why: an earlier status switches rules off. Who wants peace from a message could take a system out of
service on paper while it goes on running.

Fix: have whoever is in charge sign the way back under `signed` of the system, or put the status back.
Until then the status of the edition goes on binding, whatever stands in the file.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "status-lowered"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = False

UNREAD = "unreadable-record"


def check(book: Book) -> Iterator[Diagnostic]:
    """Say which status binds in spite of what is written."""
    unread = {one.where.path for one in book.raised(UNREAD)}
    for code, was in book.held.items():
        system = book.systems[code]
        if "status" not in system.places and system.where.path in unread:
            continue
        number = book.edition.number if book.edition else 0
        text = f"{code} is set back to {system.status}, in edition {number} it was {was}"
        text += f"; {was} goes on binding"
        cure = (
            f"have it signed in charge, to {system.status}, after that edition; or put {was} back"
        )
        yield Diagnostic(system.place("status"), SEVERITY, text, cure, CODE, code)
