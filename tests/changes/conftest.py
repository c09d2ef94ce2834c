"""The desk on which two books are held together."""

from pathlib import Path

import pytest

from tests.changes.pairs import Desk


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """An empty one."""
    return Desk(tmp_path / "content")
