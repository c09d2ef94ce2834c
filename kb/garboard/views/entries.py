"""What the search knows: for each page the names it owns, then the words it should be found by.

Beside the pages there is an entry for each number, each value, each word, spare, pipe and place: they
stand on lists, and who looks for one wants its line and not the list.
"""

from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.component import Component
from garboard.records.procedure import Procedure
from garboard.review.canonical import whole_digest
from garboard.views.contents import Entry, Target
from garboard.views.found_by import each_once, found_by
from garboard.views.job_sheet import is_job_sheet
from garboard.views.listing import slug
from garboard.views.number_index import NUMBERS, same_numbers, what_it_is
from garboard.views.page import Bullets, Facts, Message, Page, Paragraph, Prose
from garboard.views.places import PLACES, rooms
from garboard.views.runs import plain
from garboard.views.word_register import WORDS, aboard, is_called

__all__ = ["entries"]

SHOWN = 160
SIGNS = 8
"""So much of a digest tells a card that was printed from another text."""


def entries(book: Book, pages: tuple[Page, ...], targets: Mapping[str, Target]) -> Iterator[Entry]:
    """Everything that can be found: pages first, then what stands on their lists.

    Args:
        book: The book.
        pages: Every page of the handbook.
        targets: Where each name leads.
    """
    for page in pages:
        keys, text = tuple(dict.fromkeys(_keys(book, page))), _shown(_text(page))
        yield Entry(
            title=page.title,
            kind=page.kind,
            system=page.system_title,
            path=page.path,
            anchor="",
            review=_first_words(page.review.words),
            keys=keys,
            words=each_once(" ".join(_words(book, page)), (page.title, *keys)),
            text=text,
            digest=_digest(book, page),
        )
    reviews = {page.path: _first_words(page.review.words) for page in pages}
    yield from _numbers(book, reviews.get(NUMBERS, ""))
    yield from _values(book, targets, reviews)
    yield from _glossary(book, reviews.get(WORDS, ""))
    yield from _spares(book, reviews.get("registers/spares", ""))
    yield from _pipes(book, targets, reviews)
    yield from _places(book, reviews.get(PLACES, ""))


def _first_words(words: str) -> str:
    return words.split(".", maxsplit=1)[0]


def _shown(text: str) -> str:
    """The beginning of a text in whole words."""
    return text if len(text) <= SHOWN else text[:SHOWN].rpartition(" ")[0].rstrip(",;:") + " …"


def _digest(book: Book, page: Page) -> str:
    """The first signs of the digest that a card or label of this page carries."""
    record = book.records.get(page.key)
    known = isinstance(record, Alarm | Fault | Procedure)
    return whole_digest(record)[:SIGNS] if known and record else ""


def _numbers(book: Book, review: str) -> Iterator[Entry]:
    for same in same_numbers(book):
        first, count = same.values[0], len(same.values)
        limit, rest = what_it_is(book, first)
        more = f" and {count - 1} more" if count > 1 else ""
        title = f"{same.text} = {same.other}" if same.other else same.text
        text = f"{f'{limit}, ' if limit else ''}{rest}{more}"
        keys = (same.text,)
        yield Entry(title, "number", "", NUMBERS, same.anchor, review, keys, "", _shown(text))


def _values(
    book: Book, targets: Mapping[str, Target], reviews: Mapping[str, str]
) -> Iterator[Entry]:
    for address, value in sorted(book.values.items()):
        if value.si is None or not value.unit.text:
            continue
        target = targets[address]
        limit, rest = what_it_is(book, value)
        said = f"{limit} of {rest}" if limit else rest
        yield Entry(
            title=f"{value.text}: {said}",
            kind="value",
            system="",
            path=target.path,
            anchor=target.anchor,
            review=reviews.get(target.path, ""),
            keys=(address,),
            words="",
            text="",
        )


def _glossary(book: Book, review: str) -> Iterator[Entry]:
    for key, term in book.content.glossary.items():
        keys = (key, *term.crew_words, *((term.abbreviation,) if term.abbreviation else ()))
        here = " ".join(aboard(book, key))
        text = _shown(term.means)
        yield Entry(key, "word", "", WORDS, slug(key), review, keys, here, text)


def _spares(book: Book, review: str) -> Iterator[Entry]:
    for number, spare in book.content.spares.items():
        lies = spare.where_ or "place not recorded"
        text = f"{number}, at: {lies}"
        words = " ".join((lies, *spare.fits))
        keys = (number, *spare.interchange)
        where = "registers/spares"
        yield Entry(
            f"{spare.name}, spare",
            "spare part",
            "",
            where,
            number,
            review,
            keys,
            words,
            _shown(text),
        )


def _pipes(
    book: Book, targets: Mapping[str, Target], reviews: Mapping[str, str]
) -> Iterator[Entry]:
    for system in book.systems.values():
        for name, header in (system.headers or {}).items():
            if not header.tag:
                continue
            target = targets[str(header.tag)]
            keys = (str(header.tag),)
            words = " ".join((header.place or "", header.service or ""))
            review = reviews.get(target.path, "")
            found = (name, "pipe", system.title, target.path, target.anchor, review, keys, words)
            yield Entry(*found, _shown(header.place or ""))


def _places(book: Book, review: str) -> Iterator[Entry]:
    for room in rooms(book):
        for one in room.stands:
            text = _shown(", ".join(key for key, _ in one.things))
            found = (one.name, "place", "", PLACES, one.anchor, review, (one.name,), "", text)
            yield Entry(*found)


def _keys(book: Book, page: Page) -> Iterator[str]:
    if page.ident and not is_job_sheet(page.key):  # the record itself owns its id
        yield page.ident
    part: Component | None = book.components.get(page.key)
    if part:
        number = "" if part.part_no in book.content.spares else part.part_no  # leads to its shelf
        yield from (name for name in (part.name, number) if name)
        if part.item:
            yield from (name for name in (part.item.serial, part.item.certificate) if name)
    record: Record | None = book.records.get(page.key)
    if isinstance(record, Alarm) and record.wording:
        yield from (record.wording, record.title)
    if isinstance(record, Fault):
        yield from record.symptoms


def _words(book: Book, page: Page) -> Iterator[str]:
    part = book.components.get(page.key)
    if part:
        yield from (word for word in (part.kind, part.place, part.type) if word)
        yield from (key for key, spare in book.content.spares.items() if part.tag in spare.fits)
        for key, term in book.content.glossary.items():
            if is_called(part, key):
                yield from term.crew_words
    record = book.records.get(page.key)
    if record:
        yield found_by(book, record)


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
