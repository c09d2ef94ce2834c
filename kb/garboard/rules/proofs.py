"""Which tests still prove something: passed, not refused, and of which component."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.inspection import Result, Test
from garboard.records.standing import has_left, state_of

__all__ = ["is_proof", "proofs_by_tag"]


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


def _dated(book: Book) -> Iterator[Test]:
    return (test for test in book.of_kind(Test) if is_proof(test) and test.on is not None)
