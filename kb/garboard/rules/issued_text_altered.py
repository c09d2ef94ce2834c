"""The text of an issued revision is not what was issued under it.

Why: two papers that both say revision 2 must say the same. Else nobody at sea can tell which of
them was checked, and a signature of the one is taken for the other.

Fix: raise the revision by one, or put the text back as it was issued. What may be changed under one
revision: the state and the signatures, fields that are filled later, comments, labels, the layout,
and numbers that are quoted from their one place. A record that stood in its start state in the
edition is a draft and may be written otherwise.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import Record
from garboard.records.edition import IssuedRecord
from garboard.records.kinds import kind_of
from garboard.review.issued import issued_digest

CODE = "issued-text-altered"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold every record against the last edition."""
    for key, issued in book.edition.records.items() if book.edition else ():
        record = book.records.get(key)
        if record is not None and not record.unread:
            yield from _compared(book, record, issued)


def _compared(book: Book, record: Record, issued: IssuedRecord) -> Iterator[Diagnostic]:
    was, now = issued.revision, record.revision
    text = cure = ""
    if now == was and _altered(book, record, issued):
        text = f"revision {was} of {record.id} was issued with other text"
        cure = f"raise it to {was + 1}, or put back the text that was issued"
    elif now < was:
        text = f"{record.id} says revision {now}, edition {_number(book)} has revision {was}"
        cure = f"raise it to {was + 1}, or put back what was issued as {was}"
    elif now > was + 1:
        text = f"{record.id} says revision {now}, edition {_number(book)} has revision {was}"
        cure = f"write {was + 1}: only issued revisions count"
    if text:
        where = record.place("revision")
        yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))


def _altered(book: Book, record: Record, issued: IssuedRecord) -> bool:
    kind = kind_of(record)
    if kind is None or issued.state == kind.machine.start:
        return False
    now = book.reviews[str(record.id)].cover.whole
    return now != issued.digest and now != issued_digest(book.content.editions, issued)


def _number(book: Book) -> int:
    return book.edition.number if book.edition else 0
