"""The signatures of a book, each with its place."""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.errors import Where
from garboard.records.base import Record
from garboard.records.pages import WrittenPage
from garboard.review.signoffs import Reviewed, Weighed

__all__ = ["Line", "lines"]


@dataclass(frozen=True, slots=True)
class Line:
    """One line under `signed`."""

    key: str
    """Id of the record, or path of the written page."""
    thing: Record | WrittenPage
    reviewed: Reviewed
    weighed: Weighed

    @property
    def where(self) -> Where:
        """Where the line stands."""
        return self.thing.place(f"signed[{self.weighed.number}]")


def lines(book: Book) -> Iterator[Line]:
    """Every signature of every record and written page."""
    pages = {page.where.path: page for page in book.content.pages}
    for key, reviewed in book.reviews.items():
        thing = book.records.get(key) or pages[key]
        for weighed in reviewed.signatures:
            yield Line(key, thing, reviewed, weighed)
