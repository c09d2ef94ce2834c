"""Words of a command line that signs: a word of a list, a key of people.yml, a day."""

from collections.abc import Iterable
from datetime import date
from enum import StrEnum
from typing import TypeVar

from garboard.book import Book
from garboard.errors import GarboardError
from garboard.names import nearest
from garboard.records.base import date_of

__all__ = ["day_of", "one_of", "person_of"]

W = TypeVar("W", bound=StrEnum)


def one_of(known: Iterable[W], word: str, what: str) -> W:
    """The word of a list that somebody typed.

    Raises:
        GarboardError: It is none of them.
    """
    by_name = {str(one): one for one in known}
    if word in by_name:
        return by_name[word]
    near = nearest(word, by_name)
    cure = f"did you mean {near!r}?" if near else f"one of {', '.join(by_name)}"
    raise GarboardError(f"there is no {what} {word!r}; {cure}")


def person_of(book: Book, key: str) -> str:
    """A key of people.yml.

    Raises:
        GarboardError: It is none.
    """
    people = book.content.people
    if key in people:
        return key
    near = nearest(key, people)
    cure = f"did you mean {near!r}?" if near else "add this person there, by a key and a role"
    raise GarboardError(f"people.yml knows nobody by the key {key!r}; {cure}")


def day_of(book: Book, text: str | None) -> date:
    """The day of a signature, today where none is said.

    Raises:
        GarboardError: It is no date, or it is after today.
    """
    if text is None:
        return book.today
    day = date_of(text)
    if day is None:
        raise GarboardError(f"{text!r} is no date; write it as {book.today.isoformat()}")
    if day > book.today:
        raise GarboardError(f"{day} is after today, {book.today}; nobody signs ahead of the day")
    return day
