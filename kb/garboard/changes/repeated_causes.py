"""Findings that came about in the same way: three ask for a lesson."""

from garboard.book import Book
from garboard.names import key_of
from garboard.records.base import bare_id
from garboard.records.finding import Finding, Lesson
from garboard.records.standing import has_left, refused

__all__ = ["lessons_asked_for"]

MANY = 3


def lessons_asked_for(book: Book) -> tuple[tuple[Finding, ...], ...]:
    """Groups of three or more findings with one cause, of which none taught a lesson yet.

    Returns:
        Each group in order of id; the groups in the order of their first finding.
    """
    taught = {
        bare_id(name)
        for lesson in book.of_kind(Lesson)
        if not has_left(lesson)
        for name in lesson.event
    }
    causes: dict[str, list[Finding]] = {}
    for finding in book.of_kind(Finding):
        if finding.cause and not refused(finding):
            causes.setdefault(key_of(finding.cause), []).append(finding)
    return tuple(
        tuple(alike)
        for alike in causes.values()
        if len(alike) >= MANY and not any(str(one.id) in taught for one in alike)
    )
