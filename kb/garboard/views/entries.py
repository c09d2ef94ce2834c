"""What the search knows: for each page the names it owns, then the words it should be found by."""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.component import Component
from garboard.views.contents import Entry, Target
from garboard.views.inline import title_of
from garboard.views.page import Bullets, Facts, Message, Page, Paragraph, Prose
from garboard.views.runs import plain

__all__ = ["entries"]

SHOWN = 160


def entries(book: Book, pages: tuple[Page, ...], targets: Mapping[str, Target]) -> Iterator[Entry]:
    """One entry a page, one a value with a unit, one a word of the glossary.

    Args:
        book: The book.
        pages: Every page of the handbook.
        targets: Where each name leads.
    """
    for page in pages:
        yield Entry(
            title=page.title,
            kind=page.kind,
            system=page.system_title,
            path=page.path,
            anchor="",
            review=_first_words(page.review.words),
            keys=tuple(dict.fromkeys(_keys(book, page))),
            words=" ".join(_words(book, page)),
            text=_text(page)[:SHOWN],
        )
    for address, value in sorted(book.values.items()):
        if value.si is None or not value.unit.text:
            continue
        owner = address.split(".")[0]
        name = title_of(book, owner) or owner
        target = targets[address]
        yield Entry(
            title=f"{value.text}: {value.label or name}",
            kind="value",
            system="",
            path=target.path,
            anchor=target.anchor,
            review="",
            keys=(address, value.text),
            words=f"{value.label} {name} {owner}",
            text=address,
        )
    for key, term in book.content.glossary.items():
        words = " ".join((*term.crew_words, term.abbreviation or ""))
        anchor = key.replace(" ", "-")
        yield Entry(
            key, "word", "", "registers/glossary", anchor, "", (key,), words, term.means[:SHOWN]
        )


def _first_words(words: str) -> str:
    return words.split(".", maxsplit=1)[0]


def _keys(book: Book, page: Page) -> Iterator[str]:
    if page.ident:
        yield page.ident
    part: Component | None = book.components.get(page.key)
    if part:
        yield from (name for name in (part.name, part.part_no) if name)
        if part.item:
            yield from (name for name in (part.item.serial, part.item.certificate) if name)
        yield from (key for key, spare in book.content.spares.items() if part.tag in spare.fits)
    record: Record | None = book.records.get(page.key)
    if isinstance(record, Alarm) and record.wording:
        yield record.wording
    if isinstance(record, Fault):
        yield from record.symptoms


def _words(book: Book, page: Page) -> Iterator[str]:
    part = book.components.get(page.key)
    if part:
        yield from (word for word in (part.kind, part.place, part.type) if word)
        for key, term in book.content.glossary.items():
            if key in (part.kind, part.name):
                yield from term.crew_words
    record = book.records.get(page.key)
    if record:
        yield from (tag for tag in record.affects)
        yield " ".join(record.text.split())[:200]


def _text(page: Page) -> str:
    for block in page.blocks:
        if isinstance(block, Paragraph):
            return plain(block.runs)
        if isinstance(block, Prose):
            return " ".join(block.text.split())
        if isinstance(block, Facts):
            return "; ".join(f"{label}: {plain(line)}" for label, line in block.rows[:3])
        if isinstance(block, Bullets) and block.items:
            return plain(block.items[0])
        if isinstance(block, Message):
            return f"{block.word}: {plain(block.hazard)}"
    return ""
