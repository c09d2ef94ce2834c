"""A change on its page: what is joined otherwise at the parts it affects, since the last edition."""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.comparison import Comparison, Rejoined
from garboard.records.change import Change
from garboard.schematic.overlays import new_overlay
from garboard.views.inline import linked
from garboard.views.page import Block, Bullets, Cell, Heading, Paragraph, Schematic
from garboard.views.schematics import ID, drawn_alone

__all__ = ["change_joins"]


def change_joins(book: Book, record: Change, since: Comparison | None) -> Iterator[Block]:
    """Joins that went and came at the parts that a change affects, in sentences and drawn.

    Args:
        book: The book at hand.
        record: The change.
        since: What differs from the last edition; None where there is none.
    """
    affected = {str(one) for one in record.affects}
    for one in since.joins if since else ():
        tags = {*one.new, *one.gone, *one.moved}
        if since and tags & affected:
            yield Heading(f"{one.title}: joined otherwise since edition {since.before.edition}")
            yield Bullets(tuple(_lines(book, one)))
            yield Paragraph(("Another change since then may have a part in it.",), quiet=True)
            yield from _drawn(book, one)


def _lines(book: Book, one: Rejoined) -> Iterator[Cell]:
    yield from (linked(book, f"no longer joined: {words}") for words in one.parted)
    yield from (linked(book, f"now joined: {words}") for words in one.joined)
    yield from (linked(book, f"new part: {tag}") for tag in one.new)
    yield from ((f"part taken away: {tag}",) for tag in one.gone)


def _drawn(book: Book, one: Rejoined) -> Iterator[Schematic]:
    for was in one.before:
        yield Schematic(was.caption, was.svg, tuple(ID.findall(was.svg)), was.only)
    surveyed = book.surveys.get(one.system)
    if surveyed:
        overlay = new_overlay(surveyed.plant, (*one.new, *one.moved))
        yield from drawn_alone(book, surveyed.plant, overlay, f"{one.title}: after the change")
