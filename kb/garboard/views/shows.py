"""What a page shows, of which the page is only as well reviewed as the worst.

The page of a record, or a written one, shows that and the safety messages it carries. A page that is
made from records shows all those it leads to: too many rather than too few.
"""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any

from garboard.book import Book
from garboard.records.base import Record
from garboard.records.pages import WrittenPage
from garboard.review.page_state import Part
from garboard.views.draft import Draft
from garboard.views.runs import Link, Shown

__all__ = ["parts_of"]


def parts_of(draft: Draft) -> tuple[Part, ...]:
    """The records and written pages that a page shows, each once."""
    book = draft.book
    messages = [message.source for message in draft.messages]
    own = [key for key in (draft.key, draft.source_path, *draft.follows) if key in book.reviews]
    named = [*own, *messages] if own else [*messages, *_named(book, tuple(draft.blocks))]
    return tuple(_part(book, key) for key in dict.fromkeys(named) if key in book.reviews)


def _part(book: Book, key: str) -> Part:
    thing: Record | WrittenPage | None = book.records.get(key)
    if thing is None:
        thing = next(page for page in book.content.pages if page.where.path == key)
    return Part(thing, book.reviews[key], book.waiting.get(key, ()))


def _named(book: Book, blocks: Any) -> Iterator[str]:  # noqa: ANN401 - blocks and what they are made of
    """Every record that some blocks lead to, or draw a value from."""
    waiting = [blocks]
    while waiting:
        thing = waiting.pop()
        if isinstance(thing, tuple):
            waiting += [part for part in reversed(thing) if not isinstance(part, str)]
        elif isinstance(thing, Link | Shown):
            target = thing.target if isinstance(thing, Link) else thing.address
            name = target.partition("#")[0].partition(".")[0]
            sheet = book.network.sheets.get(name)
            yield sheet.owner if sheet else name
        else:
            waiting += [getattr(thing, name) for name in _inner(type(thing))]  # type: ignore[arg-type]  # a class is hashable


@cache
def _inner(kind: type) -> tuple[str, ...]:
    """The fields of a block that others may stand in, the last first; of plain words none."""
    return tuple(item.name for item in reversed(fields(kind))) if is_dataclass(kind) else ()
