"""Lay an issued edition out as a content folder again, to be read like any other.

It is written only where nothing is yet, and never into the content itself.
"""

import shutil
from pathlib import Path

from garboard.errors import GarboardError
from garboard.reading.edition_file import Editions, edition_path, write_edition
from garboard.reading.text_file import digest_of
from garboard.reading.walk_folder import PHOTOS
from garboard.records.edition import Edition

__all__ = ["thaw"]


def thaw(editions: Editions, edition: Edition, into: Path, photos: Path | None = None) -> None:
    """Write the files of an edition, with those of the editions before it.

    Args:
        editions: All that are known; the texts are spread over them.
        edition: Which.
        into: An empty folder, or one that is not there yet.
        photos: The content folder that holds the photographs; without it they are left out.

    Raises:
        GarboardError: The folder holds something, or a text or photograph is not as it was issued.
    """
    if into.exists() and any(into.iterdir()):
        raise GarboardError(f"{into} is not empty; name a folder that is not there yet")
    for path, digest in edition.files.items():
        target = _inside(into, path)
        target.parent.mkdir(parents=True, exist_ok=True)
        if target.suffix.casefold() in PHOTOS:
            if photos is not None:
                _copy(photos / path, target, digest, edition)
            continue
        text = editions.text_of(digest)
        if text is None:
            raise GarboardError(f"no edition holds {path} as edition {edition.number} was issued")
        target.write_text(text, "utf-8", newline="\n")
    for one in editions.issued:
        if one.number < edition.number:
            target = into / edition_path(one.number)
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(write_edition(one), "utf-8", newline="\n")


def _inside(folder: Path, path: str) -> Path:
    """Where a file goes; an edition that somebody wrote by hand may name any path.

    Raises:
        GarboardError: It would lie outside.
    """
    if path.startswith("/") or "\\" in path or ".." in path.split("/") or not path:
        raise GarboardError(f"an edition names {path!r}, which lies outside the content")
    return folder / path


def _copy(source: Path, target: Path, digest: str, edition: Edition) -> None:
    try:
        same = not source.is_symlink() and digest_of(source.read_bytes()) == digest
    except OSError:
        same = False
    if not same:
        said = f"{target.name} is not the photograph that edition {edition.number} was issued with"
        raise GarboardError(f"{said}; put {source} back as it was")
    shutil.copyfile(source, target)
