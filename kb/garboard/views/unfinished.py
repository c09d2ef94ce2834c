"""Whether something is still owed on a record."""

from garboard.book import Book
from garboard.records.base import Record
from garboard.records.kinds import kind_of
from garboard.records.states import at_rest

__all__ = ["unfinished"]


def unfinished(book: Book, record: Record) -> bool:
    """Whether something is still owed on a record, by the state that it counts as."""
    kind = kind_of(record)
    return kind is not None and not at_rest(kind.name, book.state(record))
