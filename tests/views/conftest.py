"""The handbook that the tests of pages look at."""

from pathlib import Path

import pytest

from garboard.book import Book
from tests.views import receiver


@pytest.fixture(scope="session")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """The receiver's book, with what is set by hand."""
    return receiver.read(Path(tmp_path_factory.mktemp("receiver")))
