"""Comparisons that were made before, of one content folder.

Two issued editions never change, so what differs between them is worked out once. The last edition
is held against the working copy, which is worked out again when a file of it, or its day, is another.
"""

from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

import msgspec

from garboard.book import Book
from garboard.calc.engine import digest, engine
from garboard.calc.store import Store
from garboard.changes.compare import compare
from garboard.changes.comparison import Comparison
from garboard.changes.earlier import earlier_book
from garboard.errors import GarboardError
from garboard.methods import METHODS
from garboard.reading.edition_file import edition_path
from garboard.reading.store_folder import StoreFolder
from garboard.records.edition import Edition

__all__ = ["Compared", "KeptComparisons"]

T = TypeVar("T")

FILE = "comparisons.json"
LAST = "last-edition.json"
"""The worked blocks of the edition that the working copy is held against."""
DECIDE = (
    "book.py",
    *(f"{room}/*.py" for room in ("records", "systems", "systems/checks", "reading")),
    *(f"{room}/*.py" for room in ("review", "changes")),
    "schematic/*.py",
)
"""What decides about a comparison, beside the engine of the calculations."""
MOST_HELD = 64
"""Comparisons held by one process; a run that reads many editions makes each once."""
HELD: dict[str, Comparison] = {}
MOST_BOOKS = 2
BOOKS: dict[str, Book] = {}
"""Books of editions that this process has read, the last two: while pages are served, every edit
asks for the last edition again."""


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
        found = [self.of(book, *pair) for pair in reversed(pairs)]  # the last edition stays held
        return tuple(reversed(found))

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
                older = self._book(book, old)
                newer = self._book(book, new) if new else book
                found = compare(older, newer, METHODS, old, new)
            except GarboardError as fault:
                return Compared(old.number, number, None, str(fault))
        self.used[key] = found
        _hold(HELD, key, found, MOST_HELD)
        return Compared(old.number, number, found)

    def save(self) -> None:
        """Keep what was used in this run, and nothing else."""
        if self.used and self.used != self.kept:
            self.folder.write(FILE, msgspec.json.encode(self.used).decode("utf-8"))
            self.kept = dict(self.used)

    def _key(self, book: Book, old: Edition, new: Edition | None) -> str:
        if new is not None:
            return digest(self._file(book, old), self._file(book, new))
        files = (part for pair in sorted(book.content.digests.items()) for part in pair)
        return digest(self._file(book, old), book.today.isoformat(), *files)

    def _file(self, book: Book, edition: Edition) -> str:
        """What an edition is read from: its own file, and those before it, which hold its texts.

        The bytes as they are, and not the seal: an altered file still bears the old one.
        """
        paths = (edition_path(number + 1) for number in range(edition.number))
        return digest(self.engine, *(book.content.digests.get(path, "") for path in paths))

    def _book(self, book: Book, edition: Edition) -> Book:
        """The book of an edition; each is made again once."""
        key = self._file(book, edition)
        found = BOOKS.get(key)
        if found is None:
            editions = book.content.editions
            store = None
            if edition is editions.last:
                store = Store.read(self.folder.read(LAST) or "")
            found = earlier_book(editions, edition, store)
            if store is not None and store.changed:
                self.folder.write(LAST, store.write())
        _hold(BOOKS, key, found, MOST_BOOKS)
        return found


def _hold(held: dict[str, T], key: str, found: T, most: int) -> None:
    """Put something last among what is held, and let go of the first."""
    held.pop(key, None)
    held[key] = found
    for name in list(held)[:-most]:
        del held[name]


def _read(text: str) -> dict[str, Comparison]:
    try:
        return msgspec.json.decode(text, type=dict[str, Comparison]) if text else {}
    except msgspec.MsgspecError:
        return {}
