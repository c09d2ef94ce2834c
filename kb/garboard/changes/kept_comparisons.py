"""Comparisons that were made before, of one content folder.

Two issued editions never change, so what differs between them is worked out once. The last edition
is held against the working copy, which is worked out again when a file of it, or its day, is another.
"""

from dataclasses import dataclass
from pathlib import Path

import msgspec

from garboard.book import Book
from garboard.calc.engine import digest, engine
from garboard.changes.compare import compare
from garboard.changes.comparison import Comparison
from garboard.changes.earlier import earlier_book
from garboard.errors import GarboardError
from garboard.methods import METHODS
from garboard.reading.store_folder import StoreFolder
from garboard.records.edition import Edition

__all__ = ["Compared", "KeptComparisons"]

FILE = "comparisons.json"
DECIDE = ("book.py", "records/*.py", "reading/*.py", "review/*.py", "changes/*.py")
"""What decides about a comparison, beside the engine of the calculations."""
MOST_HELD = 64
"""Comparisons held by one process; a run that reads many editions makes each once."""
HELD: dict[str, Comparison] = {}


@dataclass(frozen=True, slots=True)
class Compared:
    """Two books, and what differs between them."""

    before: int
    """Number of the older edition."""
    after: int
    """Number of the newer one; 0 for the book at hand."""
    found: Comparison | None
    refused: str = ""
    """Why they could not be compared: a text of the older one is lost."""


class KeptComparisons:
    """What differs between the editions of a folder, and between the last one and the book."""

    def __init__(self, content: Path) -> None:
        self.engine = engine(DECIDE)
        self.folder = StoreFolder(content, self.engine)
        self.kept = _read(self.folder.read(FILE) or "")
        self.used: dict[str, Comparison] = {}
        self.books: dict[int, Book] = {}

    def all_of(self, book: Book) -> tuple[Compared, ...]:
        """The book against its last edition, then each edition against the one before it.

        Args:
            book: As it was read from the folder.
        """
        issued = book.content.editions.issued
        pairs: list[tuple[Edition, Edition | None]] = []
        if issued:
            pairs.append((issued[-1], None))
        pairs += zip(issued[-2::-1], issued[:0:-1], strict=True)
        return tuple(self.of(book, *pair) for pair in pairs)

    def of(self, book: Book, old: Edition, new: Edition | None) -> Compared:
        """What differs between an edition and a later one.

        Args:
            book: As it was read from the folder.
            old: The older edition.
            new: The newer one; None for the book itself.
        """
        number = new.number if new else 0
        key = self._key(book, old, new)
        found = self.kept.get(key) or HELD.get(key)
        if found is None:
            try:
                newer = self._book(book, new) if new else book
                found = compare(self._book(book, old), newer, METHODS, old, new)
            except GarboardError as fault:
                return Compared(old.number, number, None, str(fault))
        self.used[key] = found
        _hold(key, found)
        return Compared(old.number, number, found)

    def save(self) -> None:
        """Keep what was used in this run, and nothing else."""
        if self.used and self.used != self.kept:
            self.folder.write(FILE, msgspec.json.encode(self.used).decode("utf-8"))
            self.kept = dict(self.used)

    def _key(self, book: Book, old: Edition, new: Edition | None) -> str:
        if new is not None:
            return digest(self.engine, old.seal, new.seal)
        files = (part for pair in sorted(book.content.digests.items()) for part in pair)
        return digest(self.engine, old.seal, book.today.isoformat(), *files)

    def _book(self, book: Book, edition: Edition) -> Book:
        """The book of an edition; each is made again once."""
        if edition.number not in self.books:
            self.books[edition.number] = earlier_book(book.content.editions, edition)
        return self.books[edition.number]


def _hold(key: str, found: Comparison) -> None:
    HELD.pop(key, None)
    HELD[key] = found
    for name in list(HELD)[:-MOST_HELD]:
        del HELD[name]


def _read(text: str) -> dict[str, Comparison]:
    try:
        return msgspec.json.decode(text, type=dict[str, Comparison]) if text else {}
    except msgspec.MsgspecError:
        return {}
