"""The editions of a content folder alone, without reading the rest of it."""

from pathlib import Path

from garboard.errors import GarboardError
from garboard.reading.edition_file import FOLDER, Editions, is_edition, read_editions

__all__ = ["editions_in"]


def editions_in(folder: Path) -> Editions:
    """Every edition that was issued from a content folder, and what is wrong with any of them.

    Args:
        folder: The content folder.

    Raises:
        GarboardError: There is no such folder, or an edition cannot be opened.
    """
    if not (folder / "handbook.yml").is_file():
        raise GarboardError(f"{folder} holds no handbook.yml, so it is no handbook's content")
    texts = {}
    for file in sorted((folder / FOLDER).glob("*.json")):
        path = f"{FOLDER}/{file.name}"
        if is_edition(path) and not file.is_symlink():
            try:
                texts[path] = file.read_bytes().decode("utf-8", "replace")
            except OSError as stop:
                raise GarboardError(f"{path} cannot be opened: {stop.strerror}") from stop
    return read_editions(texts)
