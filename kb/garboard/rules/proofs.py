"""Which tests of a book still prove something, and of which component."""

from garboard.book import Book
from garboard.records import proofs
from garboard.records.change import Change
from garboard.records.inspection import Test
from garboard.records.proofs import is_proof

__all__ = ["is_proof", "proofs_by_tag", "tested_again"]


def proofs_by_tag(book: Book) -> dict[str, list[Test]]:
    """The proofs of each component, oldest first; a test without a day is none."""
    return proofs.proofs_by_tag(book.records.values())


def tested_again(book: Book, change: Change) -> bool:
    """Whether every re-test that a change asks for was passed after it; not where it asks for none."""
    return proofs.tested_again(book.records, change)
