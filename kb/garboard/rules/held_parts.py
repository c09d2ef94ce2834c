"""Holds that stand on what a work package closes up."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.holds import is_open_hold, is_tied, parts_of
from garboard.records.inspection import PlanLine, Test
from garboard.records.work import WorkPackage

__all__ = ["hidden"]


def hidden(book: Book, work: WorkPackage) -> Iterator[tuple[PlanLine, str]]:
    """Open holds on what a package closes up, with the component; those it is tied to left out."""
    tests = list(book.of_kind(Test))
    for line in book.of_kind(PlanLine) if work.hides else ():
        if is_open_hold(line) and not is_tied(work, line):
            closed = sorted(parts_of(line, tests) & {str(tag) for tag in work.hides})
            if closed:
                yield line, closed[0]
