"""A signal word is typed that is not the one the hazard gives.

Why: DANGER, WARNING, CAUTION and NOTICE say how bad it is; where each author takes the one that
sounds right, none of them means anything. The word is computed from the harm, the severity and
how sure it is (ANSI Z535, ISO 3864-2; verify before citing).

Fix: drop the typed word; the page sets its own. Where the computed one seems wrong, the severity
is.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import IDENTIFIER
from garboard.records.hazard import Hazard
from garboard.records.signal_word import signal_word
from garboard.records.standing import has_left

CODE = "signal-word-wrong"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

TYPED = re.compile(r"[\s>*_#:\-]*(DANGER|WARNING|CAUTION|NOTICE)\b")
PARTS = ("hazard", "harm", "avoid")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the words of every message, and at lines of text that name a hazard."""
    for hazard in book.of_kind(Hazard):
        if hazard.message is None or has_left(hazard):
            continue
        for name in PARTS:
            typed = TYPED.match(getattr(hazard.message, name) or "")
            if typed:
                text = f"the message of {hazard.id} begins with {typed[1]}"
                text += f", its page says {signal_word(hazard)} by itself"
                where = hazard.place(f"message.{name}")
                cure = "drop the typed word, or correct the severity"
                yield Diagnostic(where, SEVERITY, text, cure, CODE, str(hazard.id))
    for written in book.content.texts:
        if not written.field:
            yield from _in_text(book, written.owner, written.where, written.text)


def _in_text(book: Book, owner: str, start: Where, text: str) -> Iterator[Diagnostic]:
    """Lines that begin with a signal word and name a hazard with another one."""
    for number, line in enumerate(text.splitlines()):
        typed = TYPED.match(line)
        if not typed:
            continue
        for name in IDENTIFIER.findall(line):
            hazard = book.records.get(name)
            if isinstance(hazard, Hazard) and signal_word(hazard) != typed[1]:
                text = f"says {typed[1]}, {_why(hazard)} of {hazard.id} gives {signal_word(hazard)}"
                where = Where(start.path, start.line + number, typed.start(1) + 1)
                cure = "drop the typed word, or correct the hazard"
                yield Diagnostic(where, SEVERITY, text, cure, CODE, owner)


def _why(hazard: Hazard) -> str:
    if hazard.harms == "plant":
        return "harm to plant only"
    return f"severity {hazard.severity or 'not stated'}"
