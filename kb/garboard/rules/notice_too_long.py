"""A notice to holders does not fit into one plain satellite message.

Why: a message that is cut off says half of it, and half a warning may say the opposite. Signs that a
plain message does not know are sent as several, as something else, or not at all.

Fix: say the one thing that must not be done, in plain letters; the reason goes into a finding.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.notice_message import LONGEST, messages, plain_letters, unsendable

CODE = "notice-too-long"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Count the signs of every notice that stands, as it is sent."""
    vessel = book.content.vessel
    for place, (notice, message) in enumerate(messages(vessel, book.content.editions.issued)):
        if notice.withdrawn:
            continue
        where, about = vessel.place(f"notices[{place}].says"), vessel.where.path
        strange = unsendable(message)
        if len(message) > LONGEST:
            text = f"notice {notice.number} is {len(message)} signs as sent, {LONGEST} at most"
            cure = f"take {len(message) - LONGEST} signs off it, or make it two notices"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
        if strange:
            signs = " ".join(strange)
            text = f"notice {notice.number} holds {signs}, which a plain message cannot carry"
            cure = f"write it in plain letters: {plain_letters(notice.says)}"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, about)
