"""Publish an issued edition: lay it out from its own texts, hold every page against its digest, seal the site.

Whoever draws the site is handed in: the core knows that there is somebody who can, and no more.
"""

import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from garboard.editions.freeze import page_digest
from garboard.editions.manifest import write_manifest
from garboard.editions.verify import known_edition
from garboard.errors import GarboardError
from garboard.handbook import Handbook, read
from garboard.reading.edition_folder import editions_in
from garboard.reading.thaw import thaw
from garboard.records.edition import Edition
from garboard.views.editions import is_about_editions

__all__ = ["Published", "Publisher", "laid_out", "look_at", "publish"]

MOST_NAMED = 10


class Publisher(Protocol):
    """Draws the site of a handbook."""

    def __call__(
        self, handbook: Handbook, content: Path, site: Path, settings: Path | None
    ) -> tuple[str, ...]:
        """Draw it.

        Args:
            handbook: What is drawn.
            content: The folder it was read from, with its photographs.
            site: An empty folder for it.
            settings: The file of the site's name and looks; None for its own.

        Returns:
            What is wrong with the finished site.
        """


@dataclass(frozen=True, slots=True)
class Published:
    """A site that was written."""

    edition: Edition
    site: Path
    files: int
    otherwise: tuple[str, ...]
    """Pages that this version lays out otherwise than the one that issued them, with the same numbers."""


def publish(
    folder: Path, number: int, to: Path, publisher: Publisher, settings: Path | None = None
) -> Published:
    """Write the site of an issued edition, with its manifest.

    Args:
        folder: The content folder.
        number: Of the edition.
        to: A folder that is empty or not there yet, outside the content.
        publisher: Who draws it.
        settings: The file of the site's name and looks.

    Raises:
        GarboardError: There is no such edition, it is not as it was issued, its numbers come out
            otherwise, or the finished site is not whole.
    """
    look_at(to, folder)
    with laid_out(folder, number) as (handbook, content, edition), _new_folder() as place:
        site = place / "site"
        otherwise = tuple(_laid_out_otherwise(handbook, edition))
        faults = publisher(handbook, content, site, settings)
        if faults:
            raise GarboardError(f"the site is not whole, nothing was written: {_few(faults)}")
        text = write_manifest(site, edition)
        shutil.copytree(site, to, dirs_exist_ok=True)
    return Published(edition, to, text.count("\n") - 9, otherwise)


@contextmanager
def laid_out(folder: Path, number: int) -> Iterator[tuple[Handbook, Path, Edition]]:
    """An issued edition as a handbook, with the folder it was laid out in while it is looked at.

    Args:
        folder: The content folder.
        number: Of the edition.

    Raises:
        GarboardError: There is no such edition, it is not as it was issued, or its numbers come out
            otherwise.
    """
    editions = editions_in(folder)
    if editions.diagnostics:
        raise GarboardError("; ".join(one.text for one in editions.diagnostics))
    edition = known_edition(editions, number)
    with _new_folder() as place:
        content = place / "content"
        thaw(editions, edition, content, folder)
        handbook = read(content, edition)
        _same_numbers(handbook, edition)
        yield handbook, content, edition


@contextmanager
def _new_folder() -> Iterator[Path]:
    with tempfile.TemporaryDirectory() as place:
        yield Path(place)


def look_at(to: Path, folder: Path) -> None:
    """Refuse to write over anything, or into the content.

    Raises:
        GarboardError: It would.
    """
    if to.exists() and (not to.is_dir() or any(to.iterdir())):
        raise GarboardError(f"{to} is not empty; name a folder that is not there yet")
    if to.resolve().is_relative_to(folder.resolve()):
        raise GarboardError(f"{to} lies in the content folder; name one beside it")


def _same_numbers(handbook: Handbook, edition: Edition) -> None:
    """Refuse an edition whose numbers this version works out otherwise.

    Raises:
        GarboardError: It does.
    """
    book = handbook.book
    now = {address: one.text for address, one in book.values.items()}
    now |= {f"{one.block}: {one.text}": str(one.verdict) for one in book.network.requirements}
    then = {address: one.text for address, one in edition.values.items()} | dict(edition.answers)
    moved = [
        f"{key} was {then.get(key, 'not there')}, now {now.get(key, 'gone')}"
        for key in sorted({*now, *then})
        if now.get(key) != then.get(key)
    ]
    if moved:
        raise GarboardError(
            f"this version works {len(moved)} numbers of edition {edition.number} out otherwise:"
            f" {_few(moved)}; publish it with the version that issued it"
        )


def _laid_out_otherwise(handbook: Handbook, edition: Edition) -> Iterator[str]:
    now = {
        page.key: page_digest(page) for page in handbook.pages if not is_about_editions(page.key)
    }
    then = {page.key: page.digest for page in edition.pages}
    return (key for key in sorted({*now, *then}) if now.get(key) != then.get(key))


def _few(lines: tuple[str, ...] | list[str]) -> str:
    more = f"; and {len(lines) - MOST_NAMED} more" if len(lines) > MOST_NAMED else ""
    return "; ".join(lines[:MOST_NAMED]) + more
