"""Something would be looked for in vain: it has no words that Find and the list from A to Z could hold.

Why: at night nobody knows ids. An alarm is looked up by what the panel says, a fault by what the crew
notices, a part by its name or its place, a spare by the number on its box. What has none of these
is written and cannot be found.

Fix: write the words as they stand on the panel, as the crew says them, as they are engraved on the
label; give a name or a place; tell two part numbers apart by more than their hyphens.
"""

import unicodedata
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.alarm import Alarm, Fault
from garboard.records.standing import has_left

CODE = "not-in-index"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = True
AT_ISSUE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Ask each thing for the words that it is looked up by."""
    yield from _alarms(book)
    yield from _faults(book)
    yield from _parts(book)
    yield from _crew_words(book)
    yield from _part_numbers(book)


def _said(where: Where, text: str, cure: str, about: str) -> Diagnostic:
    return Diagnostic(where, SEVERITY, text, cure, CODE, about)


def _folded(text: str | None) -> str:
    """What is left of a text for who looks it up: letters and figures, small, without accents."""
    even = unicodedata.normalize("NFKD", (text or "").casefold())
    return "".join(sign for sign in even if sign.isalnum())


def _alarms(book: Book) -> Iterator[Diagnostic]:
    for alarm in book.of_kind(Alarm):
        if has_left(alarm) or _folded(alarm.wording):
            continue
        where = alarm.place("wording" if alarm.wording else "id")
        text = f"{alarm.id} has no wording: who reads the panel does not find it"
        yield _said(where, text, "write wording: as it stands on the panel", str(alarm.id))


def _faults(book: Book) -> Iterator[Diagnostic]:
    for fault in book.of_kind(Fault):
        if has_left(fault) or any(_folded(symptom) for symptom in fault.symptoms):
            continue
        where = fault.place("symptoms" if fault.symptoms else "id")
        text = f"{fault.id} has no symptoms: who notices something does not find it"
        cure = "write symptoms: what the crew says, in its own words"
        yield _said(where, text, cure, str(fault.id))


def _parts(book: Book) -> Iterator[Diagnostic]:
    for part in book.components.values():
        if not _folded(part.name) and not _folded(part.place):
            text = f"{part.tag} has neither a name nor a place"
            cure = "write name: as on its label, or place: where one stands in front of it"
            yield _said(part.where, text, cure, part.tag)


def _crew_words(book: Book) -> Iterator[Diagnostic]:
    for key, term in book.content.glossary.items():
        for number, word in enumerate(term.crew_words):
            if not _folded(word):
                where = term.places.get(f"crew_words[{number}]", term.where)
                text = f"{key} has a crew word without a letter or figure"
                yield _said(where, text, "write the word, or take it out", key)


def _part_numbers(book: Book) -> Iterator[Diagnostic]:
    first: dict[str, str] = {}
    for number, spare in book.content.spares.items():
        like = first.setdefault(_folded(number), number)
        if like != number:
            text = f"part numbers {like} and {number} are one for who types them"
            cure = "write them as on their boxes; where they are one, make them one entry"
            yield _said(spare.where, text, cure, number)
