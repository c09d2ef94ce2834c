"""What a change reaches: all that follows from a number, a part or a record that moved."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.names import is_identifier
from garboard.records.base import bare_id
from garboard.records.kinds import kind_of
from garboard.records.standing import has_left
from garboard.records.vessel import Card

__all__ = ["Touched", "touched_by"]


@dataclass(frozen=True, slots=True)
class Touched:
    """What a change reaches, each in order of its name."""

    values: tuple[str, ...] = ()
    """Addresses: the moved ones, and all that is worked out from them."""
    tags: tuple[str, ...] = ()
    """Parts: the moved ones, and those whose recorded numbers follow."""
    records: tuple[str, ...] = ()
    """Ids of live records that quote, use or set one of the values, or name one of the parts or records."""
    pages: tuple[str, ...] = ()
    """Paths of written pages that do."""
    cards: tuple[Card, ...] = ()
    """Cards that hang and are of one of the records."""
    spares: tuple[str, ...] = ()
    """Part numbers of what fits one of the parts."""
    people: tuple[tuple[str, str], ...] = ()
    """Who has shown to master one of the procedures: key of people.yml, and the procedure."""

    def of_kind(self, book: Book, *kinds: str) -> tuple[str, ...]:
        """The records of some kinds, by the names of these kinds."""
        found = ((key, kind_of(book.records[key])) for key in self.records)
        return tuple(key for key, kind in found if kind and kind.name in kinds)


def touched_by(book: Book, addresses: Iterable[str] = (), names: Iterable[str] = ()) -> Touched:
    """What the move of some values, or a change of some parts or records, reaches.

    Args:
        book: The book.
        addresses: Of values that move, `SA-PS-001.set`.
        names: Ids of records and tags of parts that are changed themselves.
    """
    moved = _downstream(book, addresses)
    named = {bare_id(name) for name in names}
    owners = {address.partition(".")[0] for address in moved}
    tags = {one for one in (*named, *owners) if one in book.components}
    records = set(_users(book, moved, named)) | {one for one in named if one in book.records}
    records |= {sheet.owner for one in owners if (sheet := book.network.sheets.get(one))}
    live = {one for one in records if one in book.records and not has_left(book.records[one])}
    pages = {one for one in records if any(page.where.path == one for page in book.content.pages)}
    return Touched(
        tuple(sorted(moved)),
        tuple(sorted(tags)),
        tuple(sorted(live)),
        tuple(sorted(pages)),
        tuple(
            one for one in book.content.vessel.cards if one.removed is None and one.of in records
        ),
        tuple(sorted(key for key, one in book.content.spares.items() if tags & set(one.fits))),
        tuple(
            (key, str(one.procedure))
            for key, person in book.content.people.items()
            for one in person.competence
            if bare_id(one.procedure) in live
        ),
    )


def _downstream(book: Book, addresses: Iterable[str]) -> set[str]:
    waiting = [address for address in addresses if address in book.values]
    found = set(waiting)
    while waiting:
        for user in book.network.feeds.get(waiting.pop(), ()):
            if user not in found:
                found.add(user)
                waiting.append(user)
    return found


def _users(book: Book, moved: set[str], named: set[str]) -> Iterator[str]:
    for key, reviewed in book.reviews.items():
        if moved & reviewed.cover.values.keys():
            yield key
    for item in book.mentions:
        names = bare_id(item.to) in named or item.to in moved
        if names and (is_identifier(item.by) or "/" in item.by):
            yield item.by
