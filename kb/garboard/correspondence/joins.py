"""What was joined before and what is joined now, in sentences and drawn, for a reviewer of a change."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.comparison import Rejoined
from garboard.changes.joins import drawn_joins, joins_moved
from garboard.correspondence.pack import Line, Sort, point
from garboard.correspondence.subject import Subject
from garboard.schematic.overlays import Overlay, gone_overlay, new_overlay

__all__ = ["drawn_lines", "joined_lines"]


def joined_lines(subject: Subject) -> Iterator[Line]:
    """Joins that went and came in the systems that it touches, as sentences."""
    for one in _touched(subject):
        yield Line(Sort.HEADING, f"{one.title}: what was joined before, and what is now")
        yield from (point(f"no longer joined: {words}") for words in one.parted)
        yield from (point(f"now joined: {words}") for words in one.joined)
        yield from (point(f"new part: {tag}") for tag in one.new)
        yield from (point(f"part taken away: {tag}") for tag in one.gone)


def drawn_lines(subject: Subject) -> Iterator[Line]:
    """The same systems drawn, before and after, on the sheets that the change touches."""
    old = subject.before.book
    for one in _touched(subject) if old else ():
        was = old.surveys.get(one.system) if old else None
        if was and old:
            gone = gone_overlay(was.plant, (*one.gone, *one.moved))
            yield from _drawn(old, one, gone, "before the change")
        if now := subject.book.surveys.get(one.system):
            new = new_overlay(now.plant, (*one.new, *one.moved))
            yield from _drawn(subject.book, one, new, "after the change")


def _touched(subject: Subject) -> Iterator[Rejoined]:
    """The systems that are joined otherwise, of those that it is about."""
    old = subject.before.book
    if old is None or subject.before.put_back:
        return
    about = {subject.thing.system, *(tag[:2] for tag in subject.tags)}
    yield from (one for one in joins_moved(old, subject.book) if one.system in about)


def _drawn(book: Book, one: Rejoined, overlay: Overlay, when: str) -> Iterator[Line]:
    for drawn in drawn_joins(book, one, overlay, when):
        if drawn.only == "paper":  # pieces of what stands here whole: a pack is read on a screen
            continue
        caption = f"Drawn, in the page form of this pack: {drawn.caption}"
        yield Line(Sort.DRAWING, caption, drawing=drawn.svg)
