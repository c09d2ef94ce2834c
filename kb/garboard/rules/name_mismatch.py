"""A tag stands beside the name of another component.

Why: of the two a reader believes one, and walks to the wrong valve with the right words in his
ear.

Fix: correct the tag or the name; in a sentence that speaks of both, give each its own tag.
"""

import re
from collections.abc import Iterator, Mapping

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.names import IDENTIFIER
from garboard.reading.content import Written

CODE = "name-mismatch"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

TAG = re.compile(rf"\b{IDENTIFIER.pattern}\b")
LONGEST_NAME = 60


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the words directly before each tag, and in brackets behind it."""
    named: dict[str, list[str]] = {}
    for part in book.components.values():
        if part.name and len(part.name) > 3:
            named.setdefault(part.name.casefold(), []).append(part.tag)
    for written in book.content.texts:
        yield from _in_text(book, written, named)


def _in_text(book: Book, written: Written, named: Mapping[str, list[str]]) -> Iterator[Diagnostic]:
    for number, line in enumerate(written.text.splitlines()):
        for found in TAG.finditer(line):
            part = book.components.get(found[0])
            other = _name_beside(line, found, named) if part else ""
            if part and part.name and other and found[0] not in named[other]:
                if part.name.casefold().endswith(other) or other.endswith(part.name.casefold()):
                    continue
                text = f"calls {found[0]} {other}, which is {named[other][0]}"
                text += f"; {found[0]} is {part.name}"
                cure = "correct the tag or the name"
                start = written.where
                column = found.start() + (start.column if number == 0 else 1)
                where = Where(start.path, start.line + number, column)
                yield Diagnostic(where, SEVERITY, text, cure, CODE, written.owner)


def _name_beside(line: str, found: re.Match[str], named: Mapping[str, list[str]]) -> str:
    """The recorded name that stands beside a tag, the longest; empty where none does."""
    before = line[: found.start()].rstrip(" (`*[").casefold()
    words = before[-LONGEST_NAME:].split(" ")
    for first in range(len(words)):
        name = " ".join(words[first:])
        if name in named:
            return name
    behind = re.match(r" ?\(([^()]{4,60})\)", line[found.end() :])
    name = behind[1].casefold() if behind else ""
    return name if name in named else ""
