"""The verb that publishes an edition: its site is drawn by whoever has offered to."""

import argparse
from pathlib import Path
from typing import cast

from garboard.cli.arguments import add_folder, content_folder
from garboard.cli.drawers import who_draws
from garboard.editions.manifest import MANIFEST
from garboard.editions.publish import Publisher
from garboard.editions.publish import publish as publish_edition

__all__ = ["GROUP", "add_publish", "publish"]

GROUP = "garboard.publishers"
"""The entry points by which somebody offers to draw the site."""
SETTINGS = "mkdocs.yml"
MOST_NAMED = 10


def add_publish(one: argparse.ArgumentParser) -> None:
    """Declare its arguments."""
    one.add_argument("number", type=int, help="number of the edition")
    one.add_argument("--to", type=Path, required=True, metavar="DIR", help="a new folder")
    one.add_argument(
        "--settings",
        type=Path,
        metavar="FILE",
        help=f"name and looks of the site; left out: {SETTINGS} beside the content, if there is one",
    )
    add_folder(one)


def publish(args: argparse.Namespace) -> int:
    """Write the site of an edition, sealed; 2 where it cannot be made as it was issued."""
    folder = content_folder(args.folder)
    settings = args.settings or _beside(folder)
    publisher = cast("Publisher", who_draws(GROUP, "a site"))
    done = publish_edition(folder, args.number, args.to, publisher, settings)
    edition = done.edition
    print(f"edition {edition.number} of {edition.issued}, valid until {edition.valid_until}")
    if done.otherwise:
        named = ", ".join(done.otherwise[:MOST_NAMED])
        more = len(done.otherwise) - MOST_NAMED
        print(
            f"{len(done.otherwise)} pages are laid out otherwise by this version, with the same"
            f" numbers: {named}{f' and {more} more' if more > 0 else ''}"
        )
    print(f"{done.files} files in {done.site}, and {MANIFEST}")
    return 0


def _beside(folder: Path) -> Path | None:
    found = folder.resolve().parent / SETTINGS
    return found if found.is_file() else None
