"""An input or a limit does not say where it comes from: no source, no edition, no clause.

Why: nobody can check a number without knowing who said it, and in which edition. A limit was
chosen by somebody for a reason, and the reason stands around the clause.

Fix: put the source in brackets behind it, [plate-R1] or [46CFR54 54.10-10(b)], with its edition in
sources.yml; what is a guess is given as one, with [assumed].
"""

import re
from collections.abc import Iterator

from garboard.book import Book
from garboard.calc.value import Citation, Requirement
from garboard.errors import Diagnostic, Severity, Where
from garboard.rules.upstream import is_input

CODE = "unsourced-number"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

TYPED = re.compile(
    r"(?<![\w.])\d[\d.]*(?:e-?\d+)? (?!(?:in|if|else)\b)[^\W\d_][^\s,()]*(?:\(\w+\))?"
)
"""A number with its unit within a line."""
NAME = re.compile(r"[A-Za-z][\w.-]*")
"""A name or unit. A requirement without a number compares names alone: its limit is elsewhere."""


def check(book: Book) -> Iterator[Diagnostic]:
    """Look for the source of every input and limit, and for the edition of every source."""
    for where, about, what in _bare(book):
        cure = "add [source clause] behind it, or [assumed]"
        yield Diagnostic(where, SEVERITY, f"{what} and has no source", cure, CODE, about)
    for line in book.network.requirements:
        if fault := _limit_fault(book, line):
            yield Diagnostic(line.where, SEVERITY, *fault, CODE, line.block)
    for key in sorted({item.source for item in _cited(book)}):
        source = book.content.sources.get(key)
        if source is not None and not source.edition and "edition" not in source.unread:
            text = f"{key} is cited for a number and has no edition"
            cure = "give its edition, revision or year; of a plate, the year on it"
            yield Diagnostic(source.where, SEVERITY, text, cure, CODE, key)


def _bare(book: Book) -> Iterator[tuple[Where, str, str]]:
    """Numbers without a source: where they stand, of what they are, and what they are."""
    for address, value in book.values.items():
        inside = address.partition(".")[0] in book.network.sheets
        if not inside and is_input(value) and not value.sources:
            yield value.where, address, f"{address} is {value.text}"
    for sheet in book.network.sheets.values():
        for line in sheet.lines:
            if line.requirement or line.fault or line.sources:
                continue
            address, typed = f"{sheet.name}.{line.name}", TYPED.search(line.written)
            if line.value and is_input(line.value):
                yield line.where, address, f"{address} is {line.value.text}"
            elif typed:
                yield line.where, address, f"{address} holds {typed[0]}"


def _limit_fault(book: Book, line: Requirement) -> tuple[str, str] | None:
    """What the source of a limit lacks, and the cure; None where it lacks nothing."""
    if not re.search(r"\d", NAME.sub("", line.text)):
        return None
    if not line.sources:
        cure = "add # what asks for it [source clause], or [assumed]"
        return f"the limit {line.text} has no source", cure
    plates = {part.plate for part in book.components.values()}
    for item in line.sources:
        bare = item.source in book.content.sources and not item.clause
        if bare and item.source not in plates and not item.source.startswith("plate"):
            cure = f"write [{item.source} clause], or the page of it"
            return f"the limit {line.text} cites {item.source} without a clause", cure
    return None


def _cited(book: Book) -> Iterator[Citation]:
    for value in book.values.values():
        yield from value.sources
    for line in book.network.requirements:
        yield from line.sources
