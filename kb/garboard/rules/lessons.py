"""Into what a lesson was built: a record, a rule, a watch round or a written page."""

from collections.abc import Iterator

from garboard import rules
from garboard.book import Book
from garboard.names import is_record_id
from garboard.records.base import bare_id
from garboard.records.finding import Lesson
from garboard.records.standing import has_left

__all__ = ["homes", "known_homes", "taken_in"]


def taken_in(lesson: Lesson) -> bool:
    """Whether a lesson says, as written, that it was built in."""
    return lesson.state in ("incorporated", "effective")


def homes(book: Book, lesson: Lesson) -> Iterator[str]:
    """What it names that stands; an id that nothing has is another rule's to report."""
    known = known_homes(book)
    for name in lesson.into:
        record = book.records.get(bare_id(name))
        stands = is_record_id(bare_id(name)) if record is None else not has_left(record)
        if stands or name in known:
            yield name


def known_homes(book: Book) -> frozenset[str]:
    """Every name that a lesson may be built into, records aside."""
    rounds = (name for system in book.systems.values() for name in system.rounds or {})
    pages = (page.where.path for page in book.content.pages)
    codes = (rule.CODE for rule in rules.RULES)
    return frozenset((*rounds, *pages, *codes))
