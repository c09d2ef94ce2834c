"""How the parts of a system stand in an operating state, each in the words said of it."""

from collections.abc import Iterator
from dataclasses import dataclass

from garboard.book import Book
from garboard.records.component import Component
from garboard.records.component_kinds import COMPONENT_KINDS
from garboard.records.system import OperatingState
from garboard.systems.plant import Plant
from garboard.systems.positions import folded, positions_of
from garboard.systems.state import stands, start_of
from garboard.views.positions import board_word

__all__ = ["Stands", "movable_parts", "plant_of", "stands_in"]

MACHINES = ("compressor", "pump")


@dataclass(frozen=True, slots=True)
class Stands:
    """One part in one operating state."""

    part: Component
    position: str
    """In words; empty where nobody said."""
    locked: bool
    """Whether it is locked in that position."""


def movable_parts(book: Book, code: str) -> list[Component]:
    """Valves, switches and machines of a system, in the order of its file."""
    return [
        part for part in book.components.values() if part.system == code and _can_be_moved(part)
    ]


def _can_be_moved(part: Component) -> bool:
    kind = COMPONENT_KINDS.get(part.kind)
    asked = kind is not None and "usual" in kind.wants
    return asked or bool(part.usual) or part.kind in MACHINES


def plant_of(book: Book, code: str) -> Plant | None:
    """The layout of a system; None where it has none."""
    surveyed = book.surveys.get(code)
    return surveyed.plant if surveyed and surveyed.plant.parts else None


def stands_in(book: Book, code: str, state: OperatingState) -> Iterator[Stands]:
    """Where each movable part of a system stands in an operating state.

    Args:
        book: The book.
        code: Of the system.
        state: One of its operating states.
    """
    plant = plant_of(book, code)
    named = positions_of(state)
    start = start_of(plant, state) if plant else None
    for part in movable_parts(book, code):
        at = stands(plant, start, part.tag) if plant and start else ""
        position = board_word(part, at or named.get(part.tag) or part.usual)
        locked = bool(part.locked) and folded(part.locked, part.kind) == at
        yield Stands(part, position, locked)
