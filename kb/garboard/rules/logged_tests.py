"""Channels of logged tests, with the bounds that their criteria set and where they leave them."""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.errors import Where
from garboard.records.criterion import Bound
from garboard.records.inspection import Test
from garboard.records.logged_criterion import channel_bounds, find_strayed

__all__ = ["Astray", "astray"]


@dataclass(frozen=True, slots=True)
class Astray:
    """One channel that did not keep one bound."""

    bound: Bound
    words: str
    """What it read, and when."""
    where: Where
    """The row in the logged file."""


def astray(book: Book, test: Test) -> Iterator[Astray]:
    """Every bound of its criterion that the log of a test does not keep.

    Args:
        book: The book.
        test: A record; one without a log keeps all of them.
    """
    log = book.content.logged.get(str(test.id))
    if log is None:
        return
    for channel in log.channels:
        for bound in channel_bounds(book.values, test, log, channel):
            strayed = find_strayed(test, log, channel, bound)
            if strayed is not None:
                yield Astray(bound, strayed.words, log.place(channel, strayed.row))
