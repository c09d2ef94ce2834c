"""A line of contributed text as runs: values filled in, ids and tags turned into links.

What an author wrote in a field is never Markdown: beside values, ids and tags it is shown to the letter.
"""

import re
from collections.abc import Iterator
from datetime import date
from enum import Enum

from garboard.book import Book
from garboard.names import ADDRESS, IDENTIFIER
from garboard.reading.references import VALUE_LINK
from garboard.records.base import Record
from garboard.views.page import Cell, Link, Plate, Run, Shown

__all__ = [
    "cell",
    "day",
    "days_in_words",
    "heir_of",
    "link_to",
    "linked",
    "person",
    "short_day",
    "shown",
    "title_of",
    "to_the_letter",
]

ONE_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")
IN_A_LINE = re.compile(rf"(?<![\w./-])(?:{ONE_DAY.pattern})(?![\w-])")


def cell(book: Book, text: object) -> Cell:
    """Any field value as a line.

    Args:
        book: Where ids, tags and values are looked up.
        text: Text, a date, a word of a closed list, a number, or None.

    Returns:
        Runs; an address alone becomes the value it names.
    """
    if text is None or text == "":
        return ()
    if isinstance(text, date):
        return (day(text),)
    if isinstance(text, bool):
        return ("yes" if text else "no",)
    if isinstance(text, Enum):
        return (str(text.value),)
    words = day(str(text))
    if ADDRESS.fullmatch(words) and words in book.values:
        return (shown(book, words),)
    return tuple(_runs(book, words))


def to_the_letter(book: Book, text: str) -> Cell:
    """What somebody said, sign by sign; ids and tags in it lead somewhere, no number is renewed."""
    return tuple(_names(book, text))


def _runs(book: Book, text: str) -> Iterator[Run]:
    done = 0
    for link in VALUE_LINK.finditer(text):
        yield from _names(book, text[done : link.start()])
        yield shown(book, link["address"], link["unit"] or "")
        value = book.values.get(link["address"])
        words = link["text"].partition(" ")[2]
        if value and not value.unit.text and words:
            yield f" {words}"
        done = link.end()
    yield from _names(book, text[done:])


def _names(book: Book, text: str) -> Iterator[Run]:
    done = 0
    for name in IDENTIFIER.finditer(text):
        if name.start() > done:
            yield text[done : name.start()]
        yield _named(book, name.group())
        yield from _heir(book, name.group(), text)
        done = name.end()
    if done < len(text):
        yield text[done:]


def linked(book: Book, text: str) -> Cell:
    """A line of another time: its ids and tags lead on, its numbers stay as they were."""
    return tuple(_names(book, text))


def _heir(book: Book, name: str, beside: str) -> Iterator[Run]:
    """What took the place of a record, where the text does not name it itself."""
    heir = heir_of(book, name)
    if heir and heir not in beside:
        yield " (superseded by "
        yield Link(heir, heir)
        yield ")"


def heir_of(book: Book, name: str) -> str:
    """The live record that took the place of a superseded one; empty where there is none."""
    record = book.records.get(name)
    if record is None or record.state != "superseded":
        return ""
    return book.heirs.get(name, ("",))[-1]


def _named(book: Book, name: str) -> Run:
    if name in book.components:
        return Plate(name)
    if name in book.records:
        return Link(name, name)
    return name


def shown(book: Book, address: str, unit: str = "") -> Shown:
    """A value by its address, in another unit where one is named."""
    return Shown(address, book.show(address, unit) or "not recorded")


def link_to(book: Book, name: str) -> Run:
    """A link to a record, a plate for a tag, and the bare name for anything else."""
    return _named(book, name.split(" ", maxsplit=1)[0])


def title_of(book: Book, name: str) -> str:
    """The title of a record or the name of a component; empty where it has none."""
    known: Record | None = book.records.get(name)
    if known:
        return known.title
    component = book.components.get(name)
    return (component.name or component.kind) if component else ""


def person(book: Book, key: str | None) -> str:
    """The role of a person; the key itself is never printed."""
    if key is None:
        return "not recorded"
    known = book.content.people.get(key)
    return known.role if known else "somebody not in the list of people"


def day(when: date | str | None) -> str:
    """A date in words, `12 May 2027`, or the event that stands in its place.

    >>> day(date(2027, 5, 12)), day("2027-05-12"), day("until the refit")
    ('12 May 2027', '12 May 2027', 'until the refit')
    """
    if when is None:
        return "not recorded"
    if isinstance(when, date):
        months = (
            "January February March April May June July August September October November December"
        )
        return f"{when.day} {months.split()[when.month - 1]} {when.year}"
    try:
        return day(date.fromisoformat(when)) if ONE_DAY.fullmatch(when) else when
    except ValueError:
        return when


def days_in_words(text: str) -> str:
    """A sentence of our own with its days in words; file names keep theirs.

    >>> days_in_words("ran out 2031-09-01; log/2031-09-01-elbow.md")
    'ran out 1 September 2031; log/2031-09-01-elbow.md'
    """
    return IN_A_LINE.sub(lambda found: day(found[0]), text)


def short_day(when: date | None) -> str:
    """A date where there is little room.

    >>> short_day(date(2027, 5, 12)), short_day(None)
    ('12 May 2027', 'undated')
    """
    if when is None:
        return "undated"
    months = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec"
    return f"{when.day} {months.split()[when.month - 1]} {when.year}"
