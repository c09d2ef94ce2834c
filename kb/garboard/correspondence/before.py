"""What was before: the book that a reviewer compares with, and in words where it comes from.

It is the last issued edition, one that is named, or another content folder. Where nothing was issued
yet, the numbers that a change itself gives as before are put back into today's book and everything
is worked out again, so that margins before it can be shown all the same.
"""

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from garboard.book import Book, make_book
from garboard.calc.fault import CalcFault
from garboard.calc.value import Given
from garboard.changes.earlier import earlier_book
from garboard.errors import GarboardError
from garboard.handbook import read_book
from garboard.methods import METHODS
from garboard.reading.quantities import read_given
from garboard.reading.scalars import Unfit
from garboard.records.base import Record
from garboard.records.change import Change
from garboard.records.edition import Edition
from garboard.review.covers import Signed

__all__ = ["Before", "find_before"]

NEVER = "Nothing was issued before: no before."


@dataclass(frozen=True, slots=True)
class Before:
    """The state that today's is compared with."""

    book: Book | None
    words: str
    """Which it is, as a sentence."""
    put_back: bool = False
    """It is today's book with the numbers put back that the change gives as before."""


def find_before(
    book: Book, thing: Signed, since: int | None = None, base: Path | None = None
) -> Before:
    """The state to compare with.

    Args:
        book: As it stands today.
        thing: What the pack is about.
        since: Number of an issued edition; left out, the last.
        base: Another content folder; it goes before any edition.

    Raises:
        GarboardError: There is no such edition or folder, or it cannot be laid out.
    """
    if base is not None:
        return Before(read_book(base, book.today), "Compared with another folder of this handbook.")
    editions = book.content.editions
    edition = editions.last if since is None else editions.numbered(since)
    if edition is None and since is not None:
        known = ", ".join(str(one.number) for one in editions.issued) or "none"
        raise GarboardError(f"there is no edition {since}; issued are: {known}")
    if edition is None:
        return _put_back(book, thing, NEVER)
    if since is None and _carried(book, thing, edition):
        return _put_back(book, thing, f"Edition {edition.number} had the change already.")
    old = earlier_book(editions, edition)
    return Before(old, f"Compared with edition {edition.number} of {edition.issued.isoformat()}.")


def _carried(book: Book, thing: Signed, edition: Edition) -> bool:
    """Whether every number that a change moves stood in an edition as it stands today."""
    moved = thing.values if isinstance(thing, Change) else {}
    return bool(moved) and all(
        address in edition.values and book.show(address) == edition.values[address].text
        for address in moved
    )


def _put_back(book: Book, thing: Signed, why: str) -> Before:
    """Today's book with the numbers that a change gives as before."""
    changed = thing.values if isinstance(thing, Change) else {}
    parts = dict(book.components)
    done = []
    for address, shift in changed.items():
        tag, _, name = address.partition(".")
        now = getattr(parts.get(tag), name, None)
        if not isinstance(now, Given):
            continue
        try:
            then = read_given(shift.before, now.where, now.address, tag)
        except (CalcFault, Unfit):
            continue
        if then.type == now.type:
            put: dict[str, Any] = {name: replace(then, label=now.label)}
            parts[tag] = replace(parts[tag], **put)
            done.append(address)
    if not done:
        return Before(None, why)
    old = make_book(replace(book.content, components=parts), METHODS, on=book.today)
    words = f"What the change gives as before was put back and worked out: {', '.join(done)}."
    return Before(old, f"{why} {words}", put_back=True)


def is_new(before: Before, thing: Signed) -> bool:
    """Whether the record or page was not there before."""
    if before.book is None or before.put_back:
        return False
    if isinstance(thing, Record):
        return str(thing.id) not in before.book.records
    return all(page.where.path != thing.where.path for page in before.book.content.pages)
