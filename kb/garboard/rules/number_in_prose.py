"""A number with its unit is typed in a text instead of quoted.

Why: a typed number is right on the day it is typed. When the value moves, the sentence keeps saying
what it said, and nothing finds it.

Fix: quote the value, as [30 bar(g)](value:receiver-sizing.p_max); a number that stands nowhere yet
goes into a `calc` fence or the data of its component, with its source. What was said, read or so
before is never rewritten: `words`, `readings`, `before`, criteria, refused options and the text of
the log are free. A field that holds nothing but a figure, such as `within: 60 s`, is no prose.
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.reading.content import Written
from garboard.records.figure import figure_of
from garboard.records.kinds import Place, kind_of

CODE = "number-in-prose"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = True

FREE = frozenset(
    (
        "criterion",
        "words",
        "readings",
        "before",
        "after",
        "as_found",
        "as_left",
        "why_not",
        "option",
    )
)
"""Fields that tell what was said, read, refused or so before."""
LEAF = re.compile(r"[a-z_]+")


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every number with a unit in every text."""
    for written in book.content.texts:
        for number in () if _is_free(book, written) else written.numbers:
            if written.field and number.text == written.text.strip():
                continue
            near = _value_like(book, written.owner, number.text)
            cure = f"quote it: [{number.text}](value:{near})"
            if near is None:
                cure = "quote the value it is; where there is none yet, give it one with its source"
            text = f"{number.text} is typed"
            yield Diagnostic(number.where, SEVERITY, text, cure, CODE, written.owner)


def _is_free(book: Book, written: Written) -> bool:
    if written.field:
        return not FREE.isdisjoint(LEAF.findall(written.field))
    record = book.records.get(written.owner)
    kind = kind_of(record) if record else None
    return kind is not None and kind.place is Place.LOG


def _value_like(book: Book, owner: str, text: str) -> str | None:
    """A value that is shown as this number, one of the same system first."""
    figure = figure_of(book.values, text)
    alike = [
        value.address
        for value in book.values.values()
        if figure and value.si == figure.si and value.type == figure.type and value.text == text
    ]
    return min(alike, key=lambda address: (address[:2] != owner[:2], address), default=None)
