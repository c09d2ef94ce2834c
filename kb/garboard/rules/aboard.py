"""Who is aboard, and what each has shown to be able to do."""

from collections.abc import Iterator
from datetime import date

from garboard.book import Book
from garboard.errors import Where
from garboard.records.people import Competence, PersonEntry

__all__ = ["aboard", "competences"]


def aboard(person: PersonEntry, on: date) -> bool:
    """Whether somebody is aboard on a day; who keeps no such dates is taken to be."""
    if not person.aboard:
        return True
    return any(one.from_ <= on and (one.to is None or on <= one.to) for one in person.aboard)


def competences(book: Book) -> Iterator[tuple[PersonEntry, Competence, Where]]:
    """What everybody has shown, each with the place where it is written."""
    for person in book.content.people.values():
        for number, one in enumerate(person.competence):
            yield person, one, person.places.get(f"competence[{number}]", person.where)
