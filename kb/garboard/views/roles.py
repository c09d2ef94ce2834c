"""What the rules found, with people by their roles: a page shows no key of people.yml."""

import re
from collections.abc import Iterable
from dataclasses import replace

from garboard.book import Book
from garboard.errors import Diagnostic

__all__ = ["by_roles"]

NUMBERED = re.compile(r"(?<![\w-])[a-z]+(?:-[a-z]+)*-\d+(?![\w-])")
"""A key that can be taken for nothing else; one that is a plain word, such as `lead`, is a role."""


def by_roles(book: Book, found: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Faults as a page tells them; the command line keeps the keys, by which they are mended."""

    def role(named: re.Match[str]) -> str:
        person = book.content.people.get(named[0])
        return person.role if person else named[0]

    return tuple(
        replace(one, text=NUMBERED.sub(role, one.text), help=NUMBERED.sub(role, one.help))
        for one in found
    )
