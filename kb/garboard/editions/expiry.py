"""Until when an edition may be relied on, and what ends it first.

An edition is frozen, the plant is not. So it never outlasts the first thing in it that has a day of
its own: a safety device that falls due, a temporary arrangement or a concession that runs out.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from garboard.book import Book
from garboard.records.base import date_of
from garboard.records.change import Concession, TemporaryModification
from garboard.records.life import end_of_life
from garboard.records.safety_device import is_safety_device
from garboard.records.standing import kind_name, state_of

__all__ = ["Limit", "limits", "past", "until"]

RIGGED = ("authorised", "emergency", "fitted", "expired", "lapsed")
CONCEDED = ("granted", "expired", "lapsed")
"""States in which something is in force, or ought to be over."""


@dataclass(frozen=True, slots=True)
class Limit:
    """A day that no edition may outlast, and why."""

    day: date
    words: str
    """`relief valve SA-RV-002 is due 2032-01-14`"""
    about: str = ""
    """The tag or id; empty for the life of the edition itself."""


def limits(book: Book) -> tuple[Limit, ...]:
    """Everything that ends an edition issued today, or should have ended already; the first first."""
    found = (*_life(book), *_devices(book), *_arrangements(book))
    return tuple(sorted(found, key=lambda one: (one.day, one.about)))


def until(book: Book) -> Limit | None:
    """What ends an edition issued today; None where it has no life of its own.

    What is past already does not count, or nothing could ever be issued: it is told at issue.
    """
    if not any(not one.about for one in limits(book)):
        return None
    return next(one for one in limits(book) if one.day >= book.today)


def past(book: Book) -> tuple[Limit, ...]:
    """What should have ended already."""
    return tuple(one for one in limits(book) if one.day < book.today)


def _life(book: Book) -> Iterator[Limit]:
    terms = book.content.vessel.edition
    life = terms.life if terms else None
    last = end_of_life(book.today, life) if life else None
    if last:
        yield Limit(last, f"a life of {life}")


def _devices(book: Book) -> Iterator[Limit]:
    for tag, part in book.components.items():
        due = part.item.due if part.item else None
        if due and is_safety_device(part):
            yield Limit(due, f"{part.kind} {tag} is due {due}", tag)


def _arrangements(book: Book) -> Iterator[Limit]:
    rigged = (one for one in book.of_kind(TemporaryModification) if state_of(one) in RIGGED)
    conceded = (one for one in book.of_kind(Concession) if state_of(one) in CONCEDED)
    found: tuple[TemporaryModification | Concession, ...] = (*rigged, *conceded)
    for record in found:
        day = date_of(record.until)
        if day:
            yield Limit(day, f"{kind_name(record)} {record.id} ends {day}", str(record.id))
