"""A valve is called locked, and nothing says how it is held or who looks at it.

Why: checks of relief and sensing lines take a locked valve to stay where it is. A lock that
nobody fitted, or that nobody looks at, is a word on paper.

Fix: write how it is `secured` and the watch round it is looked at on; or take `locked` out, and
the valve counts as one that anybody can move.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.records.component import Component

CODE = "lock-unregistered"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at every valve that is called locked."""
    stops = frozenset[str]().union(*(system.stops for system in book.systems.values()))
    for part in book.components.values():
        if part.locked is None:
            continue
        if not part.secured:
            text = f"{part.tag} is called locked {part.locked}, nothing says how it is held"
            yield _found(part, text, "say what it is `secured` by, or take `locked` out")
        elif not part.on_round(stops):
            text = f"{part.tag} is locked {part.locked} by {part.secured}, on no watch round"
            yield _found(part, text, "put it on a round, or take `locked` out")


def _found(part: Component, text: str, cure: str) -> Diagnostic:
    return Diagnostic(part.at_place("locked"), SEVERITY, text, cure, CODE, part.tag)
