"""Where things are: every place that a part, a pipe, a spare or a card names, and what is there.

Places are the words of whoever wrote them. What stands before the first comma gathers them:
`engine store, drawer 3` stands under `engine store`. They come in the order in which the watch rounds
are walked, as far as a round passes them; the rest from A to Z.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.changes.hanging import hangs_at
from garboard.records.base import bare_id
from garboard.records.walks import round_names, walk_of
from garboard.views.draft import Draft
from garboard.views.inline import title_of
from garboard.views.listing import Jumps, Listed, Listing, slug
from garboard.views.page import Cell, Heading, Link, Paragraph, Plate, Strong

__all__ = ["PLACES", "Place", "Room", "place_register", "rooms"]

PLACES = "registers/places"
NOT_PASSED = 1_000_000
MANY = 3
"""So many things in one place make it a heading of its own."""
OTHERS, OTHERS_AT = "Other places", "other-places"


@dataclass(frozen=True, slots=True)
class Place:
    """One place, and what is there."""

    name: str
    """As it is written."""
    things: tuple[tuple[str, Cell], ...]
    """A tag, part number or card, and the same as a line."""

    @property
    def anchor(self) -> str:
        """Where it stands on the page of places."""
        return slug(self.name)


@dataclass(frozen=True, slots=True)
class Room:
    """What stands before the first comma of a place, and all places that begin with it."""

    name: str
    places: tuple[Place, ...]

    @property
    def anchor(self) -> str:
        """Where it stands on the page of places, where it has a heading."""
        return slug(self.name)

    @property
    def has_heading(self) -> bool:
        """Whether it is worth one: more than one place in it, or much in the one."""
        return len(self.places) > 1 or len(self.places[0].things) >= MANY

    @property
    def stands(self) -> tuple[Place, ...]:
        """What of it can be looked up on the page: itself with all that is in it, and its places."""
        if not self.has_heading:
            return self.places
        things = tuple(thing for place in self.places for thing in place.things)
        inside = (place for place in self.places if place.anchor != self.anchor)
        return (Place(self.name, things), *inside)


def rooms(book: Book) -> tuple[Room, ...]:
    """Every place, as the watch rounds pass them, then from A to Z."""
    found: dict[str, dict[str, list[tuple[str, Cell]]]] = {}
    spelt: dict[str, str] = {}
    for place, key, line in _things(book):
        text = " ".join(place.split())
        name = spelt.setdefault(slug(text), text)
        before = name.partition(",")[0].strip() or name
        room = spelt.setdefault(slug(before), before)
        found.setdefault(room, {}).setdefault(name, []).append((key, line))
    passed = _passed(book)
    order = {
        name: min(passed.get(key, NOT_PASSED) for key, _ in things)
        for places in found.values()
        for name, things in places.items()
    }
    made = (
        Room(
            room,
            tuple(
                Place(name, tuple(things))
                for name, things in sorted(
                    places.items(), key=lambda one: (order[one[0]], one[0].casefold())
                )
            ),
        )
        for room, places in found.items()
    )
    return tuple(
        sorted(
            made,
            key=lambda room: (min(order[one.name] for one in room.places), room.name.casefold()),
        )
    )


def _passed(book: Book) -> dict[str, int]:
    """How far along the watch rounds each part is first looked at."""
    ways = book.content.vessel.rounds or {}
    stops = (
        one.stop.tag
        for name, codes in round_names(book.systems).items()
        for one in walk_of(
            name, [book.systems[code] for code in codes], book.components, ways.get(name, ())
        ).stops
    )
    return {str(tag): number for number, tag in reversed(list(enumerate(stops))) if tag}


def _things(book: Book) -> Iterator[tuple[str, str, Cell]]:
    """Everything that says where it is: place, key, and the line for it."""
    for tag, part in sorted(book.components.items()):
        if part.place:
            yield part.place, tag, (Plate(tag), f" {part.name or part.kind}")
    for system in book.systems.values():
        for name, header in (system.headers or {}).items():
            if header.place:
                tag = str(header.tag or "")
                yield header.place, tag or name, (*((Link(tag, tag), " ") if tag else ()), name)
    for number, spare in sorted(book.content.spares.items()):
        if spare.where_:
            line = (Link(f"registers/spares#{number}", number), f" spare: {spare.name}")
            yield spare.where_, number, line
    for card in book.content.vessel.cards:
        if card.place and not card.removed:
            of = bare_id(card.of)
            yield (
                hangs_at(book, card),
                card.card,
                (f"card {card.card}: ", Link(of, title_of(book, of) or of)),
            )


def place_register(draft: Draft) -> None:
    """The page of places."""
    found = rooms(draft.book)
    if not found:
        draft.add(Paragraph(("No record says where anything is.",)))
        return
    own = tuple(room for room in found if room.has_heading)
    others = tuple(place for room in found if not room.has_heading for place in room.places)
    ways = [(room.name, room.anchor) for room in own]
    draft.add(
        Paragraph(
            (
                "What is where: parts, pipes, spares and cards. Places stand in the order in which the"
                " watch rounds pass them, the others from A to Z.",
            )
        ),
        Jumps("Places", (*ways, *(((OTHERS, OTHERS_AT),) if others else ()))),
    )
    for room in own:
        draft.add(Heading(room.name, anchor=room.anchor), Listing(room.name, _items(room)))
    if others:
        items = tuple(_item(place, place.anchor) for place in others)
        draft.add(Heading(OTHERS, anchor=OTHERS_AT), Listing(OTHERS, items))


def _items(room: Room) -> tuple[Listed, ...]:
    """The places of a room; the room itself has its anchor at the heading."""
    return tuple(_item(one, one.anchor if one.anchor != room.anchor else "") for one in room.places)


def _item(place: Place, anchor: str) -> Listed:
    return Listed((Strong(place.name),), tuple(line for _, line in place.things), anchor)
