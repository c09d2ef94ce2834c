"""The book of an issued edition, made again from its own file, in a folder that is thrown away."""

import tempfile
from pathlib import Path

from garboard.book import Book, make_book
from garboard.methods import METHODS
from garboard.reading.edition_file import Editions
from garboard.reading.folder import read_folder
from garboard.reading.thaw import thaw
from garboard.records.edition import Edition

__all__ = ["earlier_book"]


def earlier_book(editions: Editions, edition: Edition) -> Book:
    """Read and work out an edition as it was issued, judged by its own day.

    Args:
        editions: All that are known; the texts are spread over them.
        edition: Which.

    Raises:
        GarboardError: A text of it is kept nowhere.
    """
    with tempfile.TemporaryDirectory(prefix="edition-") as name:
        folder = Path(name) / "content"
        thaw(editions, edition, folder)
        return make_book(read_folder(folder), METHODS, None, edition.issued)
