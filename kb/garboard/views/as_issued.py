"""How a record stands against the editions that carried it, in two lines."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.base import Record
from garboard.records.edition import Edition, IssuedRecord
from garboard.records.standing import state_of
from garboard.review.issued import issued_digest
from garboard.views.editions import edition_key
from garboard.views.inline import day
from garboard.views.page import Cell, Link

__all__ = ["as_issued"]


def as_issued(book: Book, record: Record) -> Iterator[tuple[str, Cell]]:
    """Which edition carried it first, and what became of it since the last; nothing before the first."""
    key = str(record.id)
    carried = [one for one in book.content.editions.issued if key in one.records]
    if not carried:
        return
    first, last = carried[0], carried[-1]
    was = first.records[key]
    yield "first issued", (*_named(first), f", revision {was.revision}, {was.state}")
    yield f"since edition {last.number}", (_since(book, record, last.records[key]),)


def _named(edition: Edition) -> Cell:
    link = Link(edition_key(edition.number), f"edition {edition.number}")
    return link, f" of {day(edition.issued)}"


def _since(book: Book, record: Record, issued: IssuedRecord) -> str:
    now = book.reviews[str(record.id)].cover.whole
    same = now == issued.digest or now == issued_digest(book.content.editions, issued)
    words = "its words are as issued" if same else "its words have changed"
    if record.revision != issued.revision:
        words += f", revision {issued.revision} then and {record.revision} now"
    if state_of(record) != issued.state:
        words += f"; it was {issued.state}, and is {state_of(record)}"
    return words
