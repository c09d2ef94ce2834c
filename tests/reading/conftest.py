"""Content folders made for a test."""

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from garboard.reading.content import Content
from garboard.reading.folder import read_folder

HANDBOOK = """\
vessel: Skerry Light
systems: {SA: starting-air, BG: bilge-fire}
edition: {life: 12 months}
"""
"""The least that makes a folder a handbook's content."""

Files = Mapping[str, str | bytes]


@pytest.fixture
def write_content(tmp_path: Path) -> Callable[[Files], Path]:
    """Write files into a content folder that has a handbook.yml, and return the folder."""

    def write(files: Files) -> Path:
        for path, text in ({"handbook.yml": HANDBOOK} | dict(files)).items():
            target = tmp_path / path
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
        return tmp_path

    return write


@pytest.fixture
def read_content(write_content: Callable[[Files], Path]) -> Callable[[Files], Content]:
    """Write files into a content folder and read it."""
    return lambda files: read_folder(write_content(files))
