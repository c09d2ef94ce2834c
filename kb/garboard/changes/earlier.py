"""The book of an issued edition, made again from its own file, in a folder that is thrown away."""

import tempfile
from pathlib import Path

from garboard.book import Book, make_book
from garboard.calc.store import Store
from garboard.errors import GarboardError
from garboard.methods import METHODS
from garboard.reading.edition_file import Editions
from garboard.reading.folder import read_folder
from garboard.reading.thaw import thaw
from garboard.records.edition import Edition

__all__ = ["earlier_book"]


def earlier_book(editions: Editions, edition: Edition, store: Store | None = None) -> Book:
    """Read and work out an edition as it was issued, judged by its own day.

    Args:
        editions: All that are known; the texts are spread over them.
        edition: Which.
        store: Its blocks as they were worked out before.

    Raises:
        GarboardError: A text of it is kept nowhere, or it cannot be laid out here.
    """
    with tempfile.TemporaryDirectory(prefix="edition-") as name:
        folder = Path(name) / "content"
        try:
            thaw(editions, edition, folder)
        except (OSError, ValueError) as stop:
            why = getattr(stop, "strerror", None) or str(
                stop
            )  # without the path, which is by chance
            said = f"edition {edition.number} cannot be laid out again: {why}"
            raise GarboardError(said) from stop
        return make_book(read_folder(folder), METHODS, store, edition.issued)
