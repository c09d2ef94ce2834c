"""A text that is published holds more about a person than a role.

Why: the handbook is handed round, printed and put on the network; an address or a number that got into
it cannot be called back.

Fix: name the role, or say where the number is kept ashore. Seen are e-mail addresses, telephone
numbers, and keys of people.yml that no word of the language can be mistaken for (those with a figure
or a hyphen in them); a name cannot be told from any other word, and is for the reviewer to see.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.reading.content import Written

CODE = "personal-data-published"
SEVERITY = Severity.STOP
BINDS_FROM = "sketch"
WAIVABLE = False

MAIL = re.compile(r"[A-Za-z0-9._%+-]{1,64}@(?:[A-Za-z0-9-]{1,63}\.){1,8}[A-Za-z]{2,24}\b")
ABROAD = re.compile(r"(?<![\w+])(?:\+|00)[1-9]\d{0,2}[ ./-]?\(?\d(?:[ ./()-]{0,2}\d){6,12}(?!\w)")
"""A number with its country, written without a space after the plus."""
CALLED = re.compile(
    r"\b(?:tel|telephone|phone|mobile|cell|fax|whatsapp)\b\.?:?(?: (?:no\.?|number))?:? *"
    r"(?P<number>\+?\(?\d(?:[ ./()-]{0,2}\d){5,14})(?!\w)",
    re.IGNORECASE,
)
TELLING = re.compile(r"[-_\d]")
"""What a key holds that no ordinary word does."""
WHOLE = re.compile(r"holders\[\d+\]\.where")
"""A field that may hold a key alone: the role is printed in its place."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Look through every text that reaches a page."""
    keys = [re.escape(key) for key in book.content.people if TELLING.search(key)]
    named = re.compile(rf"(?<![\w.-])(?:{'|'.join(keys)})(?![\w-])") if keys else None
    for written in book.content.texts:
        for offset, what in _found(written, named):
            where = _place(written, offset)
            text = f"{written.owner} shows {what}"
            cure = "name the role, or keep it out of the public tree"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, written.owner)


def _found(written: Written, named: re.Pattern[str] | None) -> Iterator[tuple[int, str]]:
    """Where something personal starts, and what it is; the thing itself is not repeated."""
    text = written.text
    for found in MAIL.finditer(text):
        yield found.start(), "an e-mail address"
    called = {found.start("number") for found in CALLED.finditer(text)}
    for start in sorted(called | {found.start() for found in ABROAD.finditer(text)}):
        yield start, "a telephone number"
    if named and not (WHOLE.fullmatch(written.field) and named.fullmatch(text.strip())):
        for found in named.finditer(text):
            yield found.start(), f"the key {found[0]} of a person"


def _place(written: Written, offset: int) -> Where:
    before = written.text[:offset]
    line = before.count("\n")
    column = offset - (before.rfind("\n") + 1) + (written.where.column if line == 0 else 1)
    return Where(written.where.path, written.where.line + line, column)
