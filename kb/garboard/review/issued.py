"""What an edition holds, read again by the tool of today: a record, and the list of cards."""

from functools import cache

from garboard.reading.edition_file import Editions
from garboard.reading.folder import HANDBOOK
from garboard.reading.record_file import read_markdown
from garboard.reading.vessel_files import read_vessel
from garboard.records.base import Record
from garboard.records.edition import Edition, IssuedRecord
from garboard.records.vessel import Card
from garboard.review.canonical import whole_digest

__all__ = ["issued_cards", "issued_digest", "issued_record"]


def issued_record(
    editions: Editions, issued: IssuedRecord, edition: Edition | None = None
) -> Record | None:
    """Read a record from the text that an edition keeps of its file.

    Args:
        editions: Every issued edition; the texts are spread over them.
        issued: What the edition says of the record.
        edition: Which; left out, the last.

    Returns:
        The record; None where its text is not kept or can no longer be read.
    """
    of = edition or editions.last
    text = editions.text_of(of.files.get(issued.path, "")) if of else None
    return None if text is None else _read(text, issued.path)


def issued_digest(editions: Editions, issued: IssuedRecord) -> str:
    """The digest that its issued text has today.

    It differs from the one in the edition only where a newer tool digests otherwise: then a record
    that nobody touched must not be taken for altered.
    """
    found = issued_record(editions, issued)
    return whole_digest(found) if found is not None else ""


def issued_cards(editions: Editions, edition: Edition) -> tuple[Card, ...]:
    """The cards that hung or were to hang when an edition was issued, as its handbook.yml lists them."""
    text = editions.text_of(edition.files.get(HANDBOOK, ""))
    return () if text is None else _listed(text)


@cache
def _read(text: str, path: str) -> Record | None:
    thing = read_markdown(text, path).thing
    return thing if isinstance(thing, Record) else None


@cache
def _listed(text: str) -> tuple[Card, ...]:
    cards = read_vessel(text, HANDBOOK).vessel.cards
    return tuple(one for one in cards if one.removed is None)
