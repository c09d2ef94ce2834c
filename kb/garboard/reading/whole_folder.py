"""Every file of a content folder as it stands, for an edition to keep."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from garboard.errors import GarboardError
from garboard.reading.edition_file import is_edition
from garboard.reading.text_file import digest_of, plain_lines
from garboard.reading.walk_folder import PHOTOS, walk_folder

__all__ = ["Files", "read_files"]


@dataclass(frozen=True, slots=True)
class Files:
    """The files of a content folder, editions left out."""

    texts: Mapping[str, str]
    """Text with plain line feeds, by path."""
    photos: Mapping[str, str]
    """SHA-256 of each photograph, by path."""


def read_files(folder: Path, digests: Mapping[str, str]) -> Files:
    """Read every file once more.

    Args:
        folder: The content folder.
        digests: SHA-256 of each text file when the handbook was read.

    Raises:
        GarboardError: A file has changed since, has come or is gone, or is no text.
    """
    texts, photos = {}, {}
    for found in walk_folder(folder).files:
        data = found.file.read_bytes()
        if found.suffix in PHOTOS:
            photos[found.path] = digest_of(data)
        elif not is_edition(found.path):
            if digests.get(found.path) != digest_of(data):
                raise GarboardError(f"{found.path} has changed since it was read; start again")
            texts[found.path] = _text(data, found.path)
    gone = next((path for path in digests if path not in texts and not is_edition(path)), None)
    if gone:
        raise GarboardError(f"{gone} is gone since it was read; start again")
    return Files(texts, photos)


def _text(data: bytes, path: str) -> str:
    try:
        return plain_lines(data.decode("utf-8-sig"))
    except UnicodeDecodeError as stop:
        raise GarboardError(f"{path} is no UTF-8 text, so no edition can keep it") from stop
