"""Who stands for a number of a safety device, and what became of it since the last edition."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.base import Record
from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.signoff import Capacity
from garboard.records.standing import has_left, refused
from garboard.views.inline import day, person
from garboard.views.page import Cell, Link, Run, Strong
from garboard.views.tables import stands

__all__ = ["approved_by", "edition_says", "edition_title"]

NOBODY = "nobody: no decision or change fixes it"


def approved_by(book: Book, address: str) -> Cell:
    """The decisions that fix a number, each with the approval that stands or does not; then what moved it.

    A change that is installed rests on its own authorisation, which a rule of its own asks for.
    """
    runs: list[Run] = []
    for record in _fixing(book, address):
        runs += ["; ", *_approval(book, record)] if runs else _approval(book, record)
    return tuple(runs) or (NOBODY,)


def _fixing(book: Book, address: str) -> Iterator[Record]:
    for decision in book.of_kind(Decision):
        if address in map(str, decision.sets) and not has_left(decision) and not refused(decision):
            yield decision
    for change in book.of_kind(Change):
        if (
            address in map(str, change.values or {})
            and not has_left(change)
            and not refused(change)
        ):
            yield change


def _approval(book: Book, record: Record) -> list[Run]:
    link, reviewed = Link(str(record.id), str(record.id)), book.reviews[str(record.id)]
    if isinstance(record, Change):
        return [link, f": change {stands(book, record)}"]
    standing = reviewed.standing(Capacity.APPROVER)
    if standing:
        line = max(standing, key=lambda each: each.line.on).line
        return [link, f" approved {day(line.on)} by the {person(book, line.by)}"]
    lapsed = any(each.line.capacity is Capacity.APPROVER for each in reviewed.lapsed)
    words = "the approval has lapsed" if lapsed else f"not approved: {stands(book, record)}"
    return [link, " ", Strong(words)]


def edition_title(book: Book) -> str:
    """The head of the column of what the last edition says."""
    return f"edition {book.edition.number} says" if book.edition else "last edition"


def edition_says(book: Book, address: str) -> Cell:
    """What the last edition says of a number, set off where that is not what it is now."""
    if book.edition is None:
        return ("none yet",)
    issued = book.edition.values.get(address)
    if issued is None:
        return (Strong("nothing: it is new"),)
    return ("the same",) if issued.text == book.values[address].text else (Strong(issued.text),)
