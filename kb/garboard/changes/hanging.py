"""Cards that hang: what they are of, and what has moved since each was printed.

The digest on a card is that of its record's own words. A number that the record quotes is no part of
it, nor is a safety message, nor which steps the card shows and where it hangs; those are held against
the edition that the card was printed from.
"""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import bare_id
from garboard.records.card_shown import ListedCard, shown_otherwise
from garboard.records.edition import Edition
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure
from garboard.records.quick_card import Carded
from garboard.records.vessel import Card
from garboard.review.canonical import SHORT, whole_digest
from garboard.review.issued import issued_cards, issued_record

__all__ = [
    "digest_moved",
    "hangs_at",
    "listed_otherwise",
    "moved_since",
    "printed_from",
    "record_of",
]


def record_of(book: Book, card: Card) -> Carded | None:
    """The record that a card is of; None where no card can be made of it."""
    record = book.records.get(bare_id(card.of))
    return record if isinstance(record, Procedure | Alarm | Fault) else None


def printed_from(book: Book, card: Card) -> Edition | None:
    """The edition that a card says it was printed from; None where it does not say, or is not there."""
    issued = book.content.editions.issued
    return next((one for one in issued if str(one.number) == card.edition), None)


def digest_moved(book: Book, card: Card) -> bool:
    """Whether the record says something else than when the card was printed."""
    record = book.records.get(bare_id(card.of))
    if record is None or card.digest is None:
        return False
    return not whole_digest(record).startswith(card.digest.casefold())


def hangs_at(book: Book, card: Card) -> str:
    """Where the print of a card hangs: the place of which it says so, which the list may have left."""
    edition = printed_from(book, card)
    printed = _listed_in(book, edition).get(card.card) if edition and card.digest else None
    return printed.place if printed else card.place


def moved_since(book: Book, card: Card) -> tuple[str, ...]:
    """What is not as it was when a card was printed, in words.

    Args:
        book: The book as it stands.
        card: A card; one that was never printed has nothing to be held against.
    """
    return tuple(_moved(book, card)) if card.digest else ()


def _moved(book: Book, card: Card) -> Iterator[str]:
    record = book.records.get(bare_id(card.of))
    edition = printed_from(book, card)
    if record is None:
        return
    if digest_moved(book, card):
        yield f"{record.id} says something else: {card.digest}, now {whole_digest(record)[:SHORT]}"
    if edition is None:
        return
    yield from listed_otherwise(book, card, edition)
    reviewed = book.reviews.get(str(record.id))
    if reviewed is None:
        return
    for address in reviewed.cover.values:
        then, now = edition.values.get(address), book.values.get(address)
        if then and now and then.text != now.text:
            yield f"{address} was {then.text}, now {now.text}"
    for key in reviewed.cover.records:
        before, hazard = edition.records.get(key), book.records.get(key)
        if before and isinstance(hazard, Hazard) and before.digest != whole_digest(hazard):
            yield f"the safety message of {key} has changed"


def listed_otherwise(book: Book, card: Card, edition: Edition) -> Iterator[str]:
    """What an edition lists otherwise of a card: what it is of, what it shows, and where it hangs.

    Args:
        book: The book as it stands.
        card: The card as it is listed now.
        edition: What it is held against.
    """
    cards = _listed_in(book, edition)
    before = cards.get(card.card)
    if before is None:
        yield f"edition {edition.number} lists no card {card.card}, so what stands on it is not known"
        return
    old, new = _as_issued(book, edition, bare_id(before.of)), record_of(book, card)
    if bare_id(before.of) != bare_id(card.of):
        yield f"it is of {card.of}, printed of {before.of}"
    elif old and new:
        then = ListedCard(before, old, tuple(cards.values()))
        hanging = (one for one in book.content.vessel.cards if one.removed is None)
        yield from shown_otherwise(then, ListedCard(card, new, tuple(hanging)))
    if before.place != card.place:
        yield f"listed at {card.place}, printed for {before.place}"


def _listed_in(book: Book, edition: Edition) -> Mapping[str, Card]:
    """The cards of an edition, by number."""
    return {one.card: one for one in issued_cards(book.content.editions, edition)}


def _as_issued(book: Book, edition: Edition, key: str) -> Carded | None:
    issued = edition.records.get(key)
    found = issued_record(book.content.editions, issued, edition) if issued else None
    return found if isinstance(found, Procedure | Alarm | Fault) else None
