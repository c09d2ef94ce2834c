"""What a change notice owes: all that it reaches, and whether the notice says what becomes of it.

A thing is confirmed where the notice names it, or where `looked_at` says that somebody looked and it
needs no change. Only what tells how the plant is can be left behind by a change; what tells what
happened, such as a finding, stays true.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from garboard.book import Book
from garboard.changes.touched import Touched, touched_by
from garboard.names import IDENTIFIER
from garboard.records.base import Record, bare_id
from garboard.records.change import Change, Concession, TemporaryModification
from garboard.records.decision import Decision
from garboard.records.inspection import PlanLine
from garboard.records.standing import describes, is_live, kind_name
from garboard.records.work import WorkPackage

__all__ = ["Notice", "Reached", "Word", "notice_of"]

AT_A_PART = (PlanLine, TemporaryModification, Concession)
"""Beside what describes the plant: what is bound to a part."""
ROUNDS = "rounds and losses"
BY_A_NUMBER = (Decision, WorkPackage)
"""What is reached only by quoting or using a number that moves."""


class Word(StrEnum):
    """What a notice says of something that it reaches."""

    NAMED = "named"
    LOOKED_AT = "looked at, needs no change"
    OPEN = "not yet looked at"


@dataclass(frozen=True, slots=True)
class Reached:
    """One thing that a change reaches."""

    key: str
    """An id, a tag, a part number, the number of a card, a code of a system, the path of a page."""
    sort: str
    """`alarm`, `card`, `spare`."""
    why: tuple[str, ...]
    """The values, parts and records that it is reached by."""
    word: Word
    field: str = ""
    """Where the notice names it: `procedures`."""

    @property
    def told(self) -> str:
        """What it is called in a message."""
        return f"the rounds of {self.key}" if self.sort == ROUNDS else self.key


@dataclass(frozen=True, slots=True)
class Notice:
    """What a change reaches, and what of that nobody has looked at."""

    touched: Touched
    reached: tuple[Reached, ...]

    @property
    def open(self) -> tuple[Reached, ...]:
        """What is neither named nor looked at."""
        return tuple(one for one in self.reached if one.word is Word.OPEN)


def notice_of(book: Book, change: Change) -> Notice:
    """Work out what a change reaches.

    Args:
        book: The book.
        change: Its `values` and `affects` say what moves.
    """
    affected = [bare_id(name) for name in change.affects]
    names = [name for name in affected if name in book.records or name in book.components]
    touched = touched_by(book, change.values, names, change.installed or book.today)
    named = dict(_named(change))
    looked = {" ".join(bare_id(text).split()) for text in change.looked_at}

    def judged(key: str, sort: str, why: tuple[str, ...], through: str = "") -> Reached:
        for name in (key, through):
            if name in named:
                return Reached(key, sort, why, Word.NAMED, named[name])
            if name and name in looked:
                return Reached(key, sort, why, Word.LOOKED_AT, "looked_at")
        return Reached(key, sort, why, Word.OPEN)

    records = dict(_records(book, change, touched))
    found = [
        *(judged(key, kind_name(book.records[key]), why) for key, why in records.items()),
        *(judged(path, "written page", touched.because[path]) for path in touched.pages),
        *(judged(code, ROUNDS, touched.because[code]) for code in touched.systems),
        *(
            judged(card.card, "card", (of,), of)
            for card in touched.cards
            if (of := bare_id(card.of)) in records
        ),
        *(judged(key, "spare", _fits(book, key, touched)) for key in touched.spares),
        *(judged(tag, "part", tuple(_moved_in(touched, tag))) for tag in touched.tags),
    ]
    return Notice(touched, tuple(found))


def _records(book: Book, change: Change, touched: Touched) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The records that a change can leave behind, with what they are reached by."""
    for key in touched.records:
        record, why = book.records[key], touched.because[key]
        if key != change.id and (key in touched.tests or _bound(record, why)):
            yield key, why


def _bound(record: Record, why: tuple[str, ...]) -> bool:
    if describes(record):
        return True
    if isinstance(record, BY_A_NUMBER):
        return is_live(record) and any("." in one for one in why)
    return isinstance(record, AT_A_PART) and is_live(record)


def _named(change: Change) -> Iterator[tuple[str, str]]:
    """Everything that a notice names, and in which field; of two the weightier, which comes later."""
    for address in change.values:
        yield address.partition(".")[0], "values"
    for text, name in ((str(change.basis or ""), "basis"), (str(change.informs or ""), "informs")):
        for found in IDENTIFIER.finditer(text):
            yield found[0], name
        for word in text.replace(",", " ").replace(";", " ").split():
            yield word.strip(".:()"), name
    listed = (
        (change.because, "because"),
        (change.affects, "affects"),
        (change.retests, "retests"),
        (change.voids, "voids"),
        ((), "") if isinstance(change.procedures, str) else (change.procedures or (), "procedures"),
    )
    for names, name in listed:
        for one in names:
            yield bare_id(one), name


def _fits(book: Book, part_no: str, touched: Touched) -> tuple[str, ...]:
    """The touched parts that a spare is for."""
    spare = book.content.spares[part_no]
    numbers = {part_no, *spare.interchange}
    return tuple(
        tag for tag in touched.tags if tag in spare.fits or book.components[tag].part_no in numbers
    )


def _moved_in(touched: Touched, tag: str) -> Iterator[str]:
    """The values of a part that are moved, or the part itself."""
    moved = [one for one in touched.values if one.partition(".")[0] == tag]
    yield from moved or (tag,)
