"""Everything that has a name, from A to Z, as on the last pages of a printed book.

It does what the Find box does where no script runs and on paper: tags, ids, panel wordings, symptoms,
part numbers, names, crew words and places, each with where it leads.
"""

import unicodedata
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault
from garboard.records.kinds import kind_of
from garboard.views.draft import Draft
from garboard.views.listing import Jumps, Listed, Listing, letter_of, slug
from garboard.views.page import AgainstIt, Heading, Link, Paragraph
from garboard.views.places import PLACES, rooms
from garboard.views.word_register import WORDS

__all__ = ["A_TO_Z", "Named", "a_to_z", "must_be_found", "named"]

A_TO_Z = "registers/a-to-z"
NO_NUMBER = ("none", "not recorded", "not readable", "unknown")
"""What is written for a serial or certificate that a part does not have."""


@dataclass(frozen=True, slots=True)
class Named:
    """One thing that is looked up by its name."""

    name: str
    """As it is written on the label, on the panel, or as it is said."""
    what: str
    """What sort of name it is: `alarm on the panel`, `the crew says`."""
    target: str
    """Key of its page, with the place on it."""
    leads_to: str
    """Title of what is found there; empty where it is the name itself."""


def named(book: Book) -> Iterator[Named]:
    """Every name, in no order."""
    yield from _parts(book)
    yield from _records(book)
    for number, spare in book.content.spares.items():
        yield Named(number, "part number", f"registers/spares#{number}", spare.name)
        yield Named(spare.name, "spare", f"registers/spares#{number}", "")
    yield from _words(book)
    for room in rooms(book):
        for place in room.stands:
            yield Named(place.name, "place", f"{PLACES}#{place.anchor}", "")


def _parts(book: Book) -> Iterator[Named]:
    for tag, part in book.components.items():
        called = part.name or part.kind
        yield Named(tag, "part", tag, called)
        yield Named(called, "part", tag, "")
        if part.part_no and part.part_no not in book.content.spares:
            yield Named(part.part_no, "part number", tag, called)
        for number in (part.item.serial, part.item.certificate) if part.item else ():
            if number and number.casefold() not in NO_NUMBER:
                yield Named(number, "plate or certificate", tag, called)
    for system in book.systems.values():
        for name, header in (system.headers or {}).items():
            if header.tag:
                yield Named(str(header.tag), "pipe", str(header.tag), name)
                yield Named(name, "pipe", str(header.tag), "")


def _records(book: Book) -> Iterator[Named]:
    for key, record in book.records.items():
        kind = kind_of(record)
        noun = kind.name if kind else "record"
        yield Named(key, noun, key, record.title)
        yield Named(record.title, noun, key, "")
        if isinstance(record, Alarm) and record.wording:
            yield Named(record.wording, "the panel says", key, record.title)
        if isinstance(record, Fault):
            for symptom in record.symptoms:
                yield Named(symptom, "the crew notices", key, record.title)


def _words(book: Book) -> Iterator[Named]:
    for key, term in book.content.glossary.items():
        target = f"{WORDS}#{slug(key)}"
        yield Named(key, "word", target, term.means)
        for word in term.crew_words:
            yield Named(word, "the crew says", target, key)
        if term.abbreviation:
            yield Named(term.abbreviation, "short for", target, key)


def must_be_found(book: Book) -> tuple[tuple[str, str], ...]:
    """What nobody may look for in vain, each with what sort of name it is.

    Read from the records once more and not from the list above, so that a slip there is seen.

    Args:
        book: The book.
    """
    parts = book.components.values()
    found = [("tag", str(tag)) for tag in book.components]
    found += [("id", str(key)) for key in book.records]
    found += [
        ("tag", str(header.tag))
        for system in book.systems.values()
        for header in (system.headers or {}).values()
        if header.tag
    ]
    found += [("wording", one.wording) for one in book.of_kind(Alarm) if one.wording]
    found += [("symptom", said) for one in book.of_kind(Fault) for said in one.symptoms]
    found += [("part number", number) for number in book.content.spares]
    found += [("part number", part.part_no) for part in parts if part.part_no]
    found += [("name", part.name) for part in parts if part.name]
    found += [("place", part.place) for part in parts if part.place]
    found += [("place", one.where_) for one in book.content.spares.values() if one.where_]
    found += [
        ("crew word", word) for term in book.content.glossary.values() for word in term.crew_words
    ]
    return tuple(dict.fromkeys(found))


def a_to_z(draft: Draft) -> None:
    """The page from A to Z."""
    letters: dict[str, list[Named]] = defaultdict(list)
    for one in dict.fromkeys(named(draft.book)):
        letters[letter_of(one.name)].append(one)
    order = sorted(letters, key=lambda letter: (letter != "0-9", letter))
    draft.add(
        Paragraph(
            (
                "Tags, ids, what the panel says, what the crew notices and says, part numbers and places,"
                " each with where it leads. Numbers with a unit stand in ",
                Link("registers/numbers", "the numbers"),
                ".",
            )
        ),
        Jumps("Letters", tuple((letter, f"letter-{slug(letter)}") for letter in order)),
    )
    for letter in order:
        items = tuple(_item(one) for one in sorted(letters[letter], key=_place_of))
        draft.add(Heading(letter, anchor=f"letter-{slug(letter)}"), Listing(letter, items))
    draft.add(AgainstIt())


def _place_of(one: Named) -> tuple[str, str, str]:
    """Where a name stands in its letter: by its letters and figures, whatever signs are between."""
    even = unicodedata.normalize("NFD", one.name.casefold())
    return "".join(sign for sign in even if sign.isalnum()), one.name, one.target


def _item(one: Named) -> Listed:
    return Listed((Link(one.target, one.name),), ((_beside(one),),))


def _beside(one: Named) -> str:
    return f"{one.what}: {one.leads_to}" if one.leads_to else one.what
