"""Replies of reviewers that wait to be confirmed: said where they are about, and all in one list.

They are shown because they are there, and marked because nobody has confirmed them: nothing here
says that anything was reviewed.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.records.reply import Waiting
from garboard.views.inline import cell, day, link_to, person
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Heading,
    Link,
    Paragraph,
    Row,
    Strong,
    Table,
)

__all__ = ["waiting_blocks", "waiting_table", "waiting_words"]

HOW = "To confirm it, the one in charge looks at it and signs with it: garboard sign --reply {}"


def waiting_words(book: Book, one: Waiting) -> str:
    """`A reply of the remote reviewer of 2 October 2031 waits to be confirmed: verdict object`."""
    reply = one.reply
    who = person(book, one.by or reply.by)
    on = f" of {day(reply.on)}" if reply.on else ", undated,"
    return (
        f"A reply of the {who}{on} waits to be confirmed: verdict {reply.verdict or 'not stated'}"
    )


def waiting_blocks(book: Book, key: str) -> Iterator[Block]:
    """What waits at one record or written page; nothing where nothing does."""
    waiting = book.waiting.get(key, ())
    if waiting:
        yield Heading("Not confirmed yet")
        yield Bullets(tuple(_said(book, one) for one in waiting))


def _said(book: Book, one: Waiting) -> Cell:
    reply = one.reply
    words: Cell = (". \u201c", *cell(book, reply.words), "\u201d") if reply.words else (".",)
    looked = f" Looked at: {', '.join(reply.checked)}." if reply.checked else ""
    left = f" Not looked at: {', '.join(reply.not_checked)}." if reply.not_checked else ""
    return (Strong(waiting_words(book, one)), *words, looked, left)


def waiting_table(book: Book) -> Iterator[Block]:
    """Every reply that waits, for the list of what is to be filed."""
    rows = []
    for key, waiting in sorted(book.waiting.items()):
        titles = {page.where.path: page.title for page in book.content.pages}
        about: Cell = (Link(key, titles[key]),) if key in titles else (link_to(book, key),)
        for one in waiting:
            cells: tuple[Cell, ...] = (
                about,
                (waiting_words(book, one),),
                cell(book, one.reply.words),
                (one.path,),
            )
            rows.append(Row(cells))
    columns = tuple(Column(name) for name in ("about", "what waits", "in their words", "kept as"))
    yield Heading("Replies to be confirmed")
    if rows:
        yield Paragraph((HOW.format("FILE --entered-by PERSON"),), quiet=True)
    yield Table("Replies of reviewers", columns, tuple(rows), "none waits")
