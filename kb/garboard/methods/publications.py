"""The publications that the methods rest on: edition, clause, and how each was read.

`original` is the document or a true copy of it; `secondary` a page, chart or worked companion
that restates it; `remembered` must be confirmed before it is cited; `constructed` is arithmetic
of our own that follows from a definition, with no publication behind the number.
"""

from collections.abc import Mapping
from typing import Final

from garboard.calc.method import Published
from garboard.methods.published.air_properties import AIR_PROPERTIES
from garboard.methods.published.books import BOOKS
from garboard.methods.published.practice import PRACTICE
from garboard.methods.published.regulations import REGULATIONS
from garboard.methods.published.standards import STANDARDS

__all__ = ["PUBLISHED", "published"]

PUBLISHED: Final[Mapping[str, Published]] = {
    item.name: item for item in (*REGULATIONS, *STANDARDS, *BOOKS, *PRACTICE, *AIR_PROPERTIES)
}


def published(*names: str) -> tuple[Published, ...]:
    """The publications of these names, in the order asked for."""
    return tuple(PUBLISHED[name] for name in names)
