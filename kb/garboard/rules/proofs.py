"""Which tests still prove something: passed, not refused, and of which component."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.base import bare_id
from garboard.records.change import Change
from garboard.records.inspection import Result, Test
from garboard.records.standing import has_left, state_of

__all__ = ["is_proof", "proofs_by_tag", "tested_again"]


def is_proof(record: object) -> bool:
    """Whether a record is a test that was passed and has not been rejected or voided."""
    return (
        isinstance(record, Test)
        and record.result is Result.PASS
        and not has_left(record)
        and state_of(record) != "rejected"
    )


def proofs_by_tag(book: Book) -> dict[str, list[Test]]:
    """The proofs of each component, oldest first; a test without a day is none."""
    found: dict[str, list[Test]] = {}
    for test in sorted(_dated(book), key=lambda one: (one.on, one.id)):
        for item in test.tested:
            found.setdefault(item.tag, []).append(test)
    return found


def tested_again(book: Book, change: Change) -> bool:
    """Whether every re-test that a change asks for was passed after it; not where it asks for none."""
    again = [book.records.get(bare_id(name)) for name in change.retests]
    day = change.installed
    return bool(again and day) and all(
        isinstance(test, Test) and is_proof(test) and test.on and day and test.on >= day
        for test in again
    )


def _dated(book: Book) -> Iterator[Test]:
    return (test for test in book.of_kind(Test) if is_proof(test) and test.on is not None)
