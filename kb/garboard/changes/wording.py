"""What a line says in its own book: quoted values filled in, so that two books can be held together."""

from difflib import SequenceMatcher
from functools import lru_cache

from garboard.book import Book
from garboard.names import ADDRESS
from garboard.reading.references import VALUE_LINK

__all__ = ["alike", "role_of", "spoken"]


def spoken(book: Book, text: object) -> str:
    """A field as a reader of that book meets it; empty where nothing is written.

    Args:
        book: Where values are looked up.
        text: Text, a word of a closed list, or None.
    """
    said = "" if text is None else str(text)
    if ADDRESS.fullmatch(said) and said in book.values:
        return book.show(said) or said
    if "value:" not in said:
        return said

    parts: list[str] = []
    done = 0
    for link in VALUE_LINK.finditer(said):
        shown = book.show(link["address"], link["unit"] or "")
        words = link["text"].partition(" ")[2]
        value = book.values.get(link["address"])
        tail = f" {words}" if value is not None and not value.unit.text and words else ""
        parts += [said[done : link.start()], f"{shown}{tail}" if shown else link["text"]]
        done = link.end()
    return "".join((*parts, said[done:]))


@lru_cache(maxsize=8192)
def alike(one: str, other: str) -> float:
    """How much two lines have in common, 0 to 1, whichever is named first."""
    first, second = sorted((one.casefold(), other.casefold()))
    return SequenceMatcher(None, first, second, autojunk=False).ratio()


def role_of(book: Book, key: str | None) -> str:
    """The role of a person; the key itself is never printed."""
    known = book.content.people.get(key) if key else None
    return known.role if known else "somebody not in the list of people"
