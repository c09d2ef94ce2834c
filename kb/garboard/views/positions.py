"""The position of a valve, switch or machine in the words of the deck and of the board."""

from garboard.book import Book
from garboard.records.component import Component
from garboard.records.component_kinds import position_word
from garboard.systems.positions import folded

__all__ = ["board_word", "position_of"]


def board_word(part: Component, position: str | None) -> str:
    """A position as it is said of a part: a switch is on or off, a valve open or shut.

    Args:
        part: The part.
        position: As written, or as the layout names it; empty or None stays empty.
    """
    return position_word(part.kind, folded(position, part.kind))


def position_of(book: Book, tag: str, position: str) -> str:
    """A part and where it stands: `DC-SW-001 off`."""
    part = book.components.get(tag)
    return f"{tag} {board_word(part, position) if part else position}"
