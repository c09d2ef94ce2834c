"""Single words that lead to what is opened in a hurry: for paper, and where no script runs.

Somebody remembers one word of what he sees, `eggs`, `glows`, `clutch`, and not how a title begins. Each
telling word of alarms, faults, hazards and of procedures that are no planned work stands here with what it
stands in, and each word of what the crew says for a word of the trade.
"""

from collections import defaultdict
from collections.abc import Iterator

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure, Use
from garboard.records.standing import has_left
from garboard.views.first_actions import words_of
from garboard.views.found_by import telling
from garboard.views.inline import cell, title_of
from garboard.views.listing import Jumps, Listed, Listing, letter_of, slug
from garboard.views.page import Cell, Link, Strong
from garboard.views.runs import plain
from garboard.views.word_register import WORDS

__all__ = ["word_index"]

MOST = 5
"""A word of more records than this tells nothing: `valve`, `water`."""
AT_HAND = (Use.NORMAL, Use.ABNORMAL, Use.EMERGENCY)
"""Planned work is not looked up by what is seen: it has its day and its sheet."""
SHORTEST = 3
"""Words of fewer letters are none that somebody looks up."""


def word_index(book: Book) -> tuple[Jumps, Listing]:
    """The ways to its letters, and each word with what it stands in.

    Args:
        book: The book.
    """
    found: dict[str, dict[Cell, None]] = defaultdict(dict)
    spelt: dict[str, str] = {}
    for text, line in (*_of_records(book), *_of_words(book)):
        for word in telling(text):
            if len(word) >= SHORTEST and not any(sign.isdigit() for sign in word):
                one = _one(word)
                found[one][line] = None
                spelt[one] = min(spelt.get(one, word), word, key=len)
    words = sorted((spelt[one], tuple(lines)) for one, lines in found.items() if len(lines) <= MOST)
    first = {letter_of(word): word for word, _ in reversed(words)}
    items = tuple(
        Listed((Strong(word),), (_one_line(ways),), _anchor(word) if word in first.values() else "")
        for word, ways in words
    )
    ways = tuple((letter, _anchor(word)) for letter, word in sorted(first.items()))
    return Jumps("Letters", ways), Listing("Word by word", items)


def _one_line(ways: tuple[Cell, ...]) -> Cell:
    """All ways of a word beside it: a line each would fill twice the sheets."""
    return tuple(run for at, way in enumerate(ways) for run in ((", ",) if at else ()) + way)


def _anchor(word: str) -> str:
    return f"word-{slug(word)}"


def _of_records(book: Book) -> Iterator[tuple[str, Cell]]:
    """What is said of what is seen, each with the way to where it is said."""
    for record in book.records.values():
        hurried = isinstance(record, Alarm | Fault | Hazard) or (
            isinstance(record, Procedure) and record.use in AT_HAND
        )
        if hurried and not has_left(record):
            line: Cell = (Link(str(record.id), words_of(record)),)
            for text in _seen(book, record):
                yield plain(cell(book, text)), line


def _of_words(book: Book) -> Iterator[tuple[str, Cell]]:
    """What the crew says in more than one word, each with the way to the word of the trade."""
    for key, term in book.content.glossary.items():
        line: Cell = ("means ", Link(f"{WORDS}#{slug(key)}", key))
        for said in term.crew_words:
            if " " in said:
                yield said, line


def _seen(book: Book, record: Record) -> Iterator[str]:
    """What a record says of what is seen, heard and smelt."""
    yield record.title
    match record:
        case Alarm():
            yield from (record.wording or "", record.means or "", record.consequence or "")
        case Fault():
            yield from (*record.symptoms, record.stop_when or "", record.causes or "")
        case Hazard():
            yield from (record.source or "", record.sequence or "")
            yield from (title_of(book, key) for key in record.where_)
        case Procedure():
            yield from (record.purpose or "", record.stop_if or "")


def _one(word: str) -> str:
    """A word and more than one of it are one: `battery` and `batteries`."""
    many = word.casefold()
    if many.endswith("ies"):
        return f"{many[:-3]}y"
    return many[:-1] if many.endswith("s") and not many.endswith("ss") else many
