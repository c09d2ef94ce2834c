"""What the rules found, with people by their roles: a page shows no key of people.yml."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace

from garboard.book import Book
from garboard.errors import Diagnostic

__all__ = ["by_roles", "in_roles"]

NUMBERED = re.compile(r"(?<![\w-])[a-z]+(?:-[a-z]+)*-\d+(?![\w-])")
"""A key that can be taken for nothing else; one that is a plain word, such as `lead`, is a role."""


def by_roles(book: Book, found: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Faults as a page tells them; the command line keeps the keys, by which they are mended."""
    roles = {key: person.role for key, person in book.content.people.items()}
    return tuple(
        replace(one, text=in_roles(one.text, roles), help=in_roles(one.help, roles))
        for one in found
    )


def in_roles(text: str, roles: Mapping[str, str]) -> str:
    """A text with roles in place of keys.

    Args:
        text: Of a fault, or the key it is about.
        roles: Role by key.
    """
    return NUMBERED.sub(lambda named: roles.get(named[0], named[0]), text)
