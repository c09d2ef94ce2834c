"""Where valves and machines stand in the operating states of a book."""

from collections.abc import Mapping

from garboard.book import Book
from garboard.systems.positions import folded, positions_of

__all__ = ["folded", "state_positions"]


def state_positions(book: Book) -> Mapping[str, Mapping[str, Mapping[str, str]]]:
    """By system code and name of the operating state: where each named part stands."""
    return {
        code: {name: positions_of(state) for name, state in (system.operating_states or {}).items()}
        for code, system in book.systems.items()
    }
