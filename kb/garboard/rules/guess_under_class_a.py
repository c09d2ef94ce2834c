"""A calculation of class A rests on a guess: an assumed input, or a source that was remembered.

Why: what can hurt somebody is calculated so that it need not be found out. A guess upstream makes
the result a guess, however many figures it has.

Fix: measure the input, or read the source and say so with `seen: original` or `secondary`.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.sheet import Sheet
from garboard.errors import Diagnostic, Severity, Where
from garboard.records.base import Class, Record
from garboard.records.calculation import Calculation
from garboard.records.standing import has_left
from garboard.records.vessel import Seen
from garboard.rules.upstream import feeding, guessed

CODE = "guess-under-class-a"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Follow every class A calculation back to what people wrote down."""
    for sheet in book.network.sheets.values():
        owner = book.records.get(sheet.owner)
        if owner is None or has_left(owner) or owner.weight is not Class.A:
            continue
        for where, what, why in _guesses(book, sheet, owner):
            text = f"{sheet.name} rests on {what}, {why}"
            cure = "measure it, or read the source and say so in sources.yml"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, str(owner.id))


def _guesses(book: Book, sheet: Sheet, owner: Record) -> Iterator[tuple[Where, str, str]]:
    """Each guess under a fence: where to look, what it is, and why it is one."""
    own = [line for line in sheet.lines if line.name]
    first = [line.value.address for line in own if line.value]
    for value in feeding(book, first):
        if why := guessed(book, value.sources):
            inside = value.address.partition(".")[0] == sheet.name
            where = value.where if inside else _user(book, sheet, value.address)
            yield where, f"{value.address} ({value.text})", why
    for line in sheet.lines:
        if line.requirement and (why := guessed(book, line.requirement.sources)):
            yield line.where, f"the limit {line.requirement.text}", why
    method = owner.method_source if isinstance(owner, Calculation) else None
    source = book.content.sources.get(method or "")
    if method and source is not None and source.seen is Seen.REMEMBERED:
        yield owner.place("method_source"), f"the method of {method}", "which was remembered"


def _user(book: Book, sheet: Sheet, address: str) -> Where:
    """The first line of a fence that a value elsewhere flows into."""
    for line in sheet.lines:
        uses = line.value.uses if line.value else ()
        if any(value.address == address for value in feeding(book, uses)):
            return line.where
    return sheet.where
