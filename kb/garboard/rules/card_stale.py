"""A card hangs that says something else than a new print of it would.

Why: the card is what is read when there is no time, and it goes on saying what was true on the day it
was printed (DOE-STD-1043-93).

Fix: print it anew and write the digest of its foot under `digest` and the number of the edition under
`edition`, or take it down and write the day under `removed`. A card without a digest counts as not printed
yet. Numbers that the record quotes, the steps the card shows, what comes first, its part, its heading and its
place are held against the edition the card was printed from.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.hanging import digest_moved, hangs_at, moved_since
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.review.canonical import SHORT, whole_digest

CODE = "card-stale"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False
AT_ISSUE = True

LEAST = 8
"""Signs of a digest by which a card can be told from another."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold the digest of every hanging card against its record."""
    vessel = book.content.vessel
    for number, card in enumerate(vessel.cards):
        record = book.records.get(bare_id(card.of))
        if card.digest is None or card.removed or record is None:
            continue
        where = vessel.place(f"cards[{number}].digest")
        reprint = _reprint(card.place, hangs_at(book, card))
        if len(card.digest) < LEAST:
            text = f"card {card.card} has the digest `{card.digest}`, too short to tell"
            cure = f"write all of it, {SHORT} signs; or leave it out if none was printed"
        elif digest_moved(book, card):
            now = whole_digest(record)[:SHORT]
            text = f"card {card.card} is of {card.of} as {card.digest}, now {now}"
            cure = reprint
        elif moved := moved_since(book, card):
            said = "; ".join(moved)
            text = (
                f"card {card.card}, printed from edition {card.edition},"
                f" would not be printed so today: {said}"
            )
            cure = reprint
        else:
            continue
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))


def _reprint(place: str, hangs: str) -> str:
    if hangs == place:
        return f"reprint it and hang it at {place}, or take it down there and write removed"
    return f"take it down at {hangs} and write removed, or reprint it and hang it at {place}"
