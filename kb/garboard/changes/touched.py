"""What a change reaches: all that follows from a number, a part or a record that moved."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date

from garboard.book import Book
from garboard.names import is_identifier
from garboard.records.alarm import Alarm
from garboard.records.base import bare_id
from garboard.records.inspection import Test
from garboard.records.kinds import kind_of
from garboard.records.standing import has_left
from garboard.records.vessel import Card

__all__ = ["Touched", "touched_by"]

WALKED = ("rounds", "loss", "operating_states")
"""Where a system's own file tells a crew what to do at a part; its connections name every part."""


@dataclass(frozen=True, slots=True)
class Touched:
    """What a change reaches, each in order of its name."""

    values: tuple[str, ...] = ()
    """Addresses: the moved ones, and all that is worked out from them."""
    tags: tuple[str, ...] = ()
    """Parts: the moved ones, and those whose recorded numbers follow."""
    records: tuple[str, ...] = ()
    """Ids of live records that quote, use or set one of the values, rest on or name one of the parts or
    records, or are the alarm or the test of a part."""
    pages: tuple[str, ...] = ()
    """Paths of written pages that do."""
    cards: tuple[Card, ...] = ()
    """Cards that hang and are of one of the records."""
    spares: tuple[str, ...] = ()
    """Part numbers of what fits one of the parts."""
    people: tuple[tuple[str, str], ...] = ()
    """Who has shown to master one of the procedures: key of people.yml, and the procedure."""
    tests: tuple[str, ...] = ()
    """Ids of the records that are a test of one of the parts, made before the change."""
    systems: tuple[str, ...] = ()
    """Codes of systems whose rounds, losses or line-ups name one of the values or parts."""
    because: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """For each record, page and system the values, parts and records that it is reached by."""

    def of_kind(self, book: Book, *kinds: str) -> tuple[str, ...]:
        """The records of some kinds, by the names of these kinds."""
        found = ((key, kind_of(book.records[key])) for key in self.records)
        return tuple(key for key, kind in found if kind and kind.name in kinds)


def touched_by(
    book: Book,
    addresses: Iterable[str] = (),
    names: Iterable[str] = (),
    on: date | None = None,
) -> Touched:
    """What the move of some values, or a change of some parts or records, reaches.

    Args:
        book: The book.
        addresses: Of values that move, `SA-PS-001.set`.
        names: Ids of records and tags of parts that are changed themselves.
        on: The day it became true: tests made later prove it and are not reached. Left out, all are.
    """
    moving = [address for address in addresses if address in book.values]
    moved = _downstream(book, moving)
    named = {bare_id(name) for name in names}
    tags = named & book.components.keys()
    tags |= {owner for owner in map(_owner, moved) if owner in book.components}
    reached: dict[str, set[str]] = defaultdict(set)
    for key, why in (
        *_by_value(book, moved),
        *_by_words(book, named | _written_in(book, moving)),
        *_by_name(book, moved, named),
        *_by_part(book, tags, on),
    ):
        reached[key].add(why)
    for key in named & book.records.keys():
        reached[key].add(key)
    return _sorted(book, moved, tags, reached, on)


def _sorted(
    book: Book, moved: set[str], tags: set[str], reached: Mapping[str, set[str]], on: date | None
) -> Touched:
    content = book.content
    records = sorted(
        key for key in reached if key in book.records and not has_left(book.records[key])
    )
    pages = sorted(page.where.path for page in content.pages if page.where.path in reached)
    systems = sorted(reached.keys() & book.systems.keys())
    numbers = {part.part_no for tag in tags if (part := book.components[tag]).part_no}
    return Touched(
        tuple(sorted(moved)),
        tuple(sorted(tags)),
        tuple(records),
        tuple(pages),
        tuple(
            card
            for card in content.vessel.cards
            if card.removed is None and bare_id(card.of) in reached
        ),
        tuple(
            sorted(
                key
                for key, spare in content.spares.items()
                if tags & set(spare.fits) or numbers & {key, *spare.interchange}
            )
        ),
        tuple(
            (key, str(one.procedure))
            for key, person in content.people.items()
            for one in person.competence
            if bare_id(one.procedure) in records
        ),
        tuple(key for key in records if _is_older_test(book, key, tags, on)),
        tuple(systems),
        {key: tuple(sorted(reached[key])) for key in (*records, *pages, *systems)},
    )


def _owner(address: str) -> str:
    return address.partition(".")[0]


def _downstream(book: Book, addresses: Iterable[str]) -> set[str]:
    waiting = [*addresses]
    found = set(waiting)
    while waiting:
        for user in book.network.feeds.get(waiting.pop(), ()):
            if user not in found:
                found.add(user)
                waiting.append(user)
    return found


def _written_in(book: Book, addresses: Iterable[str]) -> set[str]:
    """The parts and records whose own words hold some numbers."""
    owners = {_owner(address) for address in addresses}
    sheets = book.network.sheets
    return {sheets[one].owner if one in sheets else one for one in owners}


def _by_value(book: Book, moved: set[str]) -> Iterator[tuple[str, str]]:
    """Who quotes, sets or works out from a value, or a value that it draws on."""
    for key, reviewed in book.reviews.items():
        for address in moved & reviewed.cover.values.keys():
            yield key, address
    for address in moved:
        sheet = book.network.sheets.get(_owner(address))
        if sheet is not None:
            yield sheet.owner, address


def _by_words(book: Book, changed: set[str]) -> Iterator[tuple[str, str]]:
    """Who rests on the own words of something that is changed."""
    for key, reviewed in book.reviews.items():
        for name in changed & reviewed.cover.records.keys():
            yield key, name


def _by_name(book: Book, moved: set[str], named: set[str]) -> Iterator[tuple[str, str]]:
    """Who names a value, or a part or record that is changed itself."""
    for item in book.mentions:
        to = bare_id(item.to)
        if to not in named and item.to not in moved:
            continue
        if item.by not in book.systems:
            if is_identifier(item.by) or "/" in item.by:
                yield item.by, to
        elif item.to in moved or item.field.startswith(WALKED):
            yield item.by, to


def _by_part(book: Book, tags: set[str], on: date | None) -> Iterator[tuple[str, str]]:
    """The alarms of some parts, and the tests that were made of them."""
    for alarm in book.of_kind(Alarm):
        if alarm.tag in tags:
            yield str(alarm.id), str(alarm.tag)
    for test in book.of_kind(Test):
        if on is None or test.on is None or test.on <= on:
            for item in test.tested:
                if item.tag in tags:
                    yield str(test.id), str(item.tag)


def _is_older_test(book: Book, key: str, tags: set[str], on: date | None) -> bool:
    test = book.records[key]
    if not isinstance(test, Test) or not tags & {item.tag for item in test.tested}:
        return False
    return on is None or test.on is None or test.on <= on
