"""What somebody aboard has shown is of an older procedure, or has run out.

Why: a person does what they were shown. Where the procedure has moved on, the old way is in the hands,
and no page takes it out again.

Fix: show it again by the procedure as it is and write the day and the revision; or write the day until
which they are aboard.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.base import bare_id
from garboard.records.standing import has_left
from garboard.rules.aboard import aboard, competences

CODE = "skill-outdated"
SEVERITY = Severity.HOLD
BINDS_FROM = "in service"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Hold what everybody aboard has shown against the procedure and the day."""
    for person, one, where in competences(book):
        record = book.records.get(bare_id(one.procedure))
        if record is None or has_left(record) or not aboard(person, book.today):
            continue
        told = []
        if one.revision < record.revision:
            told.append(
                f"{person.key} was shown {record.id} r{one.revision}, it is r{record.revision}"
            )
        if one.until and one.until < book.today:
            told.append(f"what {person.key} has shown of {record.id} ran out {one.until}")
        cure = f"show {record.id} again and write the day, or the day {person.key} leaves"
        for text in told:
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(record.id))
