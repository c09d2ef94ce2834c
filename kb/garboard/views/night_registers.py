"""Registers of the whole vessel that somebody opens in a hurry: alarms and what the crew notices."""

from collections.abc import Iterator, Sequence

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault
from garboard.records.standing import has_left
from garboard.records.vessel import Term
from garboard.views.at_once import WayIn
from garboard.views.draft import Draft
from garboard.views.fields import line_of
from garboard.views.first_actions import first_action, words_of
from garboard.views.page import (
    AgainstIt,
    Column,
    Heading,
    Link,
    Paragraph,
    Row,
    Table,
    Tiles,
    WaysIn,
)
from garboard.views.tables import class_of, stands
from garboard.views.word_index import word_index

__all__ = ["alarm_register", "alarm_settings", "alarm_ways", "symptom_register"]

OTHER_WAYS = (
    (Link("registers/emergencies", "Emergencies"), "by what you see or hear"),
    (Link("registers/symptoms", "What the crew notices"), "from symptom to fault"),
)


def alarm_ways(book: Book, alarms: Sequence[Alarm]) -> WaysIn:
    """A tile for each alarm: the panel's words, the first action, where it is felt, its priority.

    Args:
        book: Where parts and systems are looked up.
        alarms: In any order; the tiles stand from A to Z by their words.
    """
    live = [one for one in alarms if not has_left(one)]
    return WaysIn(
        tuple(
            _alarm_way(book, one) for one in sorted(live, key=lambda one: words_of(one).casefold())
        )
    )


def _alarm_way(book: Book, alarm: Alarm) -> WayIn:
    about = (
        f"{_system(book, alarm.system)}, {_felt_at(book, alarm)}",
        f"alarm priority: {alarm.priority or 'not recorded'}",
    )
    return WayIn(Link(str(alarm.id), words_of(alarm)), first_action(book, alarm), about)


def _felt_at(book: Book, alarm: Alarm) -> str:
    if not alarm.tag:
        return "raised by: not recorded"
    part = book.components.get(alarm.tag)
    place = (part.place if part else None) or "place not recorded"
    return f"{alarm.tag}: {place}"


def alarm_settings(book: Book, alarms: Sequence[Alarm]) -> Table:
    """What raises each alarm and at which value, by the words of the panel as the list of ways is."""
    titles = ("the panel says", "record", "tag", "set", "priority", "class", "state")
    rows = tuple(
        Row(
            (
                (words_of(one),),
                (Link(str(one.id), str(one.id)),),
                line_of(book, one, "tag"),
                (f"{one.direction}, " if one.direction else "", *line_of(book, one, "set")),
                (one.priority or "not recorded",),
                (class_of(one),),
                (stands(book, one),),
            ),
            str(one.id),
        )
        for one in sorted(alarms, key=lambda one: words_of(one).casefold())
    )
    return Table("Settings", tuple(Column(title) for title in titles), rows)


def alarm_register(draft: Draft) -> None:
    """Every alarm of the vessel, A to Z by its words."""
    book = draft.book
    found = sorted(book.of_kind(Alarm), key=words_of)
    worded = tuple((Link(str(one.id), words_of(one)), "") for one in found)
    draft.add(Tiles(worded, small=True), Tiles(OTHER_WAYS, small=True))
    draft.add(Heading("What to do first"), alarm_ways(book, found))
    draft.add(AgainstIt(), alarm_settings(book, found))


def symptom_register(draft: Draft) -> None:
    """What the crew notices, A to Z in its own words, with what makes it safe first."""
    book = draft.book
    faults = [one for one in book.of_kind(Fault) if not has_left(one)]
    ways = dict(_noticed(book, faults))
    ordered = tuple(ways[key] for key in sorted(ways))
    if ordered:
        draft.add(WaysIn(ordered, close=True))
    else:
        draft.add(Paragraph(("No symptom is recorded.",)))
    jumps, words = word_index(book)
    if words.items:
        said = "One word of what you see, hear or smell, and what it stands in."
        draft.add(Heading("Word by word"), Paragraph((said,)), jumps, words)
    draft.add(
        AgainstIt(),
        Paragraph(("Other words of the crew: ", Link("registers/glossary", "Words"), ".")),
    )


def _noticed(book: Book, faults: Sequence[Fault]) -> Iterator[tuple[tuple[str, str], WayIn]]:
    """The symptoms of each fault, and the crew's other words for them out of the glossary."""
    for fault in faults:
        said = list(fault.symptoms)
        terms = (term for term in book.content.glossary.values() if _about(term, fault))
        said += [word for term in terms for word in (term.key, *term.crew_words)]
        about = (f"{fault.title}. {_system(book, fault.system)}",)
        for words in said:
            way = WayIn(Link(str(fault.id), words), first_action(book, fault), about)
            yield (words.casefold(), str(fault.id)), way


def _about(term: Term, fault: Fault) -> bool:
    """Whether the crew uses one of the words of a term for this fault."""
    words = {term.key.casefold(), *(one.casefold() for one in term.crew_words)}
    symptoms = {one.casefold() for one in fault.symptoms}
    return bool(words & symptoms) or term.key.casefold() in fault.title.casefold().split(", ")


def _system(book: Book, code: str) -> str:
    system = book.systems.get(code)
    return system.title if system else code
