"""The command that puts right what moved under a text: quoted numbers, and on demand names of records."""

import argparse
from collections.abc import Callable, Sequence
from functools import cache
from pathlib import Path

from garboard.changes.citing import rename_edits
from garboard.cli.arguments import add_command, content_folder
from garboard.handbook import read_book
from garboard.reading.refresh import find_changes, write_changes
from garboard.reading.text_file import read_text

__all__ = ["add_refresh", "refresh"]


def add_refresh(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the command and its arguments."""
    one = add_command(
        commands, "refresh", refresh, "rewrite quoted numbers that went stale, showing each"
    )
    one.add_argument(
        "folder", nargs="?", type=Path, help="content folder, the one with handbook.yml"
    )
    one.add_argument(
        "--names", action="store_true", help="write successors where superseded records are named"
    )
    one.add_argument("--dry-run", action="store_true", help="show the changes and write nothing")


def refresh(args: argparse.Namespace) -> int:
    """Rewrite stale quotations, and the names of superseded records where asked; show each change."""
    folder = content_folder(args.folder)
    book = read_book(folder)
    changes = list(find_changes(book.content, book.show, book.values))
    named = [edit for edit, _ in rename_edits(book, _lines_of(folder))]
    if args.names:
        changes += named
    for change in changes:
        print(f"{change.where}: {change.old!r} -> {change.new!r}")
    if not args.dry_run:
        write_changes(folder, book.content, changes)
    print(f"{len(changes)} {'would be ' if args.dry_run else ''}rewritten.")
    if named and not args.names:
        places = "1 place names" if len(named) == 1 else f"{len(named)} places name"
        print(f"{places} a superseded record; --names would write:")
        for edit in named:
            print(f"  {edit.where}: {edit.old} -> {edit.new}")
    if named:
        print("A name is text: raise the revision of what was issued, and have it checked again.")
    return 0


def _lines_of(folder: Path) -> Callable[[str], Sequence[str]]:
    @cache
    def lines(path: str) -> Sequence[str]:
        return read_text((folder / path).read_bytes(), path).text.split("\n")

    return lines
