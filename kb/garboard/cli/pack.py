"""The command that packs what a reviewer needs into one file to be mailed."""

import argparse
from pathlib import Path

from garboard.cli.arguments import add_command, add_folder, content_folder
from garboard.cli.signable import find_signable
from garboard.correspondence.assembly import make_pack
from garboard.correspondence.before import find_before
from garboard.correspondence.one_page import one_page
from garboard.correspondence.plain_text import plain_text
from garboard.correspondence.size import fitted
from garboard.errors import GarboardError
from garboard.handbook import read_book

__all__ = ["add_pack", "pack"]


def add_pack(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the command and its arguments."""
    one = add_command(
        commands, "pack", pack, "one file for a reviewer: what, how dangerous, before and after"
    )
    one.add_argument("id", help="id of the record, or path of a written page")
    one.add_argument("--since", type=int, metavar="N", help="compare with this issued edition")
    one.add_argument(
        "--base", type=Path, metavar="FOLDER", help="compare with another content folder"
    )
    one.add_argument("--to", type=Path, metavar="FILE", help="write it there; left out: print it")
    one.add_argument("--html", action="store_true", help="as one page rather than plain text")
    add_folder(one)


def pack(args: argparse.Namespace) -> int:
    """Print or write a review pack."""
    folder = content_folder(args.folder)
    book = read_book(folder)
    thing = find_signable(book, args.id, folder)
    made = make_pack(book, thing, find_before(book, thing, args.since, args.base))
    text = fitted(made, one_page if args.html else plain_text)
    if args.to is None:
        print(text, end="")
        return 0
    if args.to.resolve().is_relative_to(folder.resolve()):
        raise GarboardError(f"{args.to} lies in the content folder; name a file outside it")
    try:
        args.to.write_text(text, "utf-8", newline="\n")
    except OSError as stop:
        raise GarboardError(f"{args.to} cannot be written: {stop.strerror}") from stop
    print(f"{args.to}: {len(text.encode('utf-8'))} bytes. Mail it as it is.")
    return 0
