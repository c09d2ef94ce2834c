"""A record as the last edition holds it, read again by the tool of today."""

from functools import cache

from garboard.reading.edition_file import Editions
from garboard.reading.record_file import read_markdown
from garboard.records.base import Record
from garboard.records.edition import IssuedRecord
from garboard.review.canonical import whole_digest

__all__ = ["issued_digest", "issued_record"]


def issued_record(editions: Editions, issued: IssuedRecord) -> Record | None:
    """Read a record from the text that the last edition keeps of its file.

    Args:
        editions: Every issued edition.
        issued: What the last of them says of the record.

    Returns:
        The record; None where its text is not kept or can no longer be read.
    """
    last = editions.last
    text = editions.text_of(last.files.get(issued.path, "")) if last else None
    return None if text is None else _read(text, issued.path)


def issued_digest(editions: Editions, issued: IssuedRecord) -> str:
    """The digest that its issued text has today.

    It differs from the one in the edition only where a newer tool digests otherwise: then a record
    that nobody touched must not be taken for altered.
    """
    found = issued_record(editions, issued)
    return whole_digest(found) if found is not None else ""


@cache
def _read(text: str, path: str) -> Record | None:
    thing = read_markdown(text, path).thing
    return thing if isinstance(thing, Record) else None
