"""What became different since the last edition, one line for each kind: enough to see that one is due."""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.changes.hanging import listed_otherwise
from garboard.records.edition import Edition, IssuedCard

__all__ = ["changed_lines", "to_reprint"]

MOST_NAMED = 4


def changed_lines(edition: Edition, before: Edition | None) -> Iterator[str]:
    """What is new, other or gone, by kind.

    Args:
        edition: The new one.
        before: The one before it; None where there is none.
    """
    if before is None:
        yield "no edition before it: everything is new"
        return
    for what, new, old in (
        (
            "records",
            {key: one.digest for key, one in edition.records.items()},
            {key: one.digest for key, one in before.records.items()},
        ),
        (
            "states of records",
            {key: one.state for key, one in edition.records.items() if key in before.records},
            {key: one.state for key, one in before.records.items() if key in edition.records},
        ),
        ("parts", edition.components, before.components),
        (
            "numbers",
            {key: one.text for key, one in edition.values.items()},
            {key: one.text for key, one in before.values.items()},
        ),
        ("requirements", edition.answers, before.answers),
        (
            "pages",
            {one.key: one.digest for one in edition.pages},
            {one.key: one.digest for one in before.pages},
        ),
        (
            "systems",
            {key: one.status for key, one in edition.systems.items()},
            {key: one.status for key, one in before.systems.items()},
        ),
    ):
        if line := _line(what, new, old):
            yield line


def _line(what: str, new: Mapping[str, str], old: Mapping[str, str]) -> str:
    groups = (
        ("new", [key for key in new if key not in old]),
        ("other", [key for key in new if key in old and new[key] != old[key]]),
        ("gone", [key for key in old if key not in new]),
    )
    parts = [f"{len(keys)} {word} ({_named(keys)})" for word, keys in groups if keys]
    return f"{what}: {', '.join(parts)}" if parts else ""


def _named(keys: list[str]) -> str:
    more = f" and {len(keys) - MOST_NAMED} more" if len(keys) > MOST_NAMED else ""
    return ", ".join(keys[:MOST_NAMED]) + more


def to_reprint(edition: Edition, book: Book) -> tuple[IssuedCard, ...]:
    """The cards of which the last edition would print something else, or which it does not list.

    Args:
        edition: The new one.
        book: What it was made of, with the edition before it.
    """
    before = book.edition
    known = {one.card: one.digest for one in before.cards} if before else {}
    listed = {str(one.card): one for one in book.content.vessel.cards if one.removed is None}
    return tuple(
        one
        for one in edition.cards
        if before is None
        or known.get(one.card) != one.digest
        or any(listed_otherwise(book, listed[one.card], before))
    )
