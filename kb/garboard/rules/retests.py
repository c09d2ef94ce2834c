"""Which test comes after which, and which of them is a second try at the same thing."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.base import bare_id
from garboard.records.inspection import Test
from garboard.records.standing import has_left

__all__ = ["comes_after", "following", "follows", "is_again"]


def follows(book: Book, test: Test, other: Test) -> bool:
    """Whether a test follows another one, by any number of steps."""
    seen: set[str] = set()
    name = test.follows
    while name and bare_id(name) not in seen:
        seen.add(bare_id(name))
        before = book.records.get(bare_id(name))
        if before is other:
            return True
        name = before.follows if isinstance(before, Test) else None
    return False


def following(book: Book, test: Test) -> Iterator[Test]:
    """Every test that follows one and has not left."""
    for one in book.of_kind(Test):
        if one is not test and not has_left(one) and follows(book, one, test):
            yield one


def comes_after(test: Test, other: Test) -> bool:
    """Whether a test was done later than another; on one day the greater id is the later."""
    if test.on is None or other.on is None:
        return False
    return (test.on, str(test.id)) > (other.on, str(other.id))


def is_again(test: Test, other: Test) -> bool:
    """Whether two tests try the same: one plan line, or one procedure and the same components."""
    tags, others = ({item.tag for item in one.tested} for one in (test, other))
    if tags and others and not tags & others:
        return False
    if test.line and other.line:
        return bare_id(test.line) == bare_id(other.line)
    if not (test.procedure and other.procedure and tags):
        return False
    return bare_id(test.procedure) == bare_id(other.procedure) and tags == others
