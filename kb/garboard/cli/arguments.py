"""What the commands have in common: how one is declared, and which folder it works on."""

import argparse
from collections.abc import Callable
from pathlib import Path

from garboard.errors import GarboardError

__all__ = ["add_command", "add_folder", "content_folder"]


def add_command(
    commands: "argparse._SubParsersAction[argparse.ArgumentParser]",
    name: str,
    run: Callable[[argparse.Namespace], int],
    words: str,
) -> argparse.ArgumentParser:
    """Declare a command: what it is called, what runs it, what its help says."""
    one = commands.add_parser(name, help=words, description=f"{words[0].upper()}{words[1:]}.")
    one.set_defaults(run=run)
    return one


def add_folder(parser: argparse.ArgumentParser) -> None:
    """Let a command be told which folder it works on."""
    parser.add_argument("--folder", type=Path, help="content folder, the one with handbook.yml")


def content_folder(folder: Path | None) -> Path:
    """The content folder: as named, this one, or the one below this that holds handbook.yml.

    Raises:
        GarboardError: None or several are below this one.
    """
    if folder is not None:
        return folder
    here = Path()
    if (here / "handbook.yml").is_file():
        return here
    below = sorted(path.parent for path in here.glob("*/handbook.yml"))
    if len(below) == 1:
        return below[0]
    words = "several folders here hold" if below else "no folder here holds"
    raise GarboardError(f"{words} a handbook.yml; name the content folder")
