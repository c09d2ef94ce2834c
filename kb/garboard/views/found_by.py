"""The words that a record is found by: what it says of what is seen, of what goes wrong, of what is done.

Whoever looks for a record in a hurry types what he sees and not its title: `floor plates`, `eggs`.
Each word is taken once and little words not at all, so that much of a record fits into little.
"""

import re
from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.calculation import Calculation
from garboard.records.decision import Decision
from garboard.records.finding import Finding
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure
from garboard.records.work import MaintenanceTask
from garboard.views.inline import cell, title_of
from garboard.views.runs import plain

__all__ = ["each_once", "found_by", "telling"]

LITTLE = frozenset(
    (
        "a about above after again against all along an and any anybody anything anywhere are as at away be "
        "been before behind below between both but by can cannot did do does each enough every everything for "
        "from get gives goes going had has have however if in into is it its itself less made make makes more "
        "most much nearly next nobody now of on one only or other own same she should so some somebody "
        "somewhere soon stays still such take takes than that the their them then there they this three "
        "through to too two under until up use used was were what when where which while who will with within "
        "without"
    ).split()
)
"""Words that every text has and nobody looks for."""
FENCED = re.compile(r"^```.*?^```", re.DOTALL | re.MULTILINE)
"""What is written to be worked out, or drawn: its numbers are found by themselves."""
WORD = re.compile(r"[^\W_](?:[\w'\u2019.,/-]*[^\W_])?(?:\([gadns]\)(?:/\w+)?)?|%")
"""A word, or a unit with what it counts from: `bar(g)`, `m3(n)/h`."""


def found_by(book: Book, record: Record) -> str:
    """What a record is found by beside its names, the most telling words first.

    Args:
        book: Where the values that the record quotes are looked up.
        record: A record of any kind.
    """
    texts = (plain(cell(book, text)) for text in _told(book, record) if text)
    return " ".join((*texts, *record.affects, *FENCED.sub(" ", record.text).split()))


def _told(book: Book, record: Record) -> Iterator[str | None]:
    """The fields in which a record of a kind says what somebody would type."""
    match record:
        case Alarm():
            yield from (record.means, record.consequence)
            yield title_of(book, record.tag or "")
            yield from record.first
        case Fault():
            yield from (record.stop_when, record.causes, record.safe_first)
            yield from (check.see for check in record.checks)
        case Hazard():
            yield from (record.source, record.sequence, record.who)
            yield from (title_of(book, key) for key in record.where_)
            if record.message:
                yield from (record.message.hazard, record.message.harm, record.message.avoid)
        case Procedure():
            yield from (record.purpose, record.stop_if)
            yield from (step.do for step in record.steps)
        case Finding():
            yield record.words
        case Decision():
            yield from (record.question, record.chosen)
        case Calculation():
            yield record.purpose
        case MaintenanceTask():
            yield record.task


def telling(text: str) -> Iterator[str]:
    """The words of a text that somebody may look for, in small letters.

    >>> list(telling("A smell of eggs, or the plug is hot"))
    ['smell', 'eggs', 'plug', 'hot']
    """
    yield from (
        word for word in (one.casefold() for one in WORD.findall(text)) if word not in LITTLE
    )


def each_once(text: str, said: Iterable[str]) -> str:
    """A text without little words and without what it or its title said before; numbers keep their units.

    >>> each_once("the pump is hot, a hot pump at 30 bar(g) and 40 bar(g)", ["Fire pump"])
    'hot 30 bar(g) 40 bar(g)'
    """
    known = {word.casefold() for words in said for word in WORD.findall(words)} | LITTLE
    kept: list[str] = []
    for word in WORD.findall(text):
        of_number = bool(kept) and kept[-1][-1].isdigit()
        if word.casefold() not in known or word[0].isdigit() or of_number:
            kept.append(word)
            known.add(word.casefold())
    return " ".join(kept)
