"""`garboard binder`: the book of a system or of the vessel on paper."""

import argparse
from pathlib import Path
from typing import cast

from garboard.cli.arguments import add_command, add_folder, content_folder
from garboard.cli.drawers import who_draws
from garboard.editions.binder import Binder, bind
from garboard.views.binder_plan import BinderOrder

__all__ = ["GROUP", "add_binder", "binder"]

GROUP = "garboard.binders"
"""The entry points by which somebody offers to draw binders."""
TO = Path("binder")


def add_binder(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the command."""
    one = add_command(
        commands, "binder", binder, "write the book of a system, or the whole book, for paper"
    )
    one.add_argument(
        "system", nargs="?", default="", help="code such as SA; left out, the whole book"
    )
    one.add_argument("--size", choices=("a4", "a5"), default="a4", help="of the paper")
    one.add_argument("--pdf", action="store_true", help="print it to PDF by an installed Chromium")
    one.add_argument("--cards", action="store_true", help="the quick cards instead of the pages")
    one.add_argument(
        "--edition", type=int, metavar="N", help="of an issued edition; left out, a working copy"
    )
    one.add_argument(
        "--to", type=Path, default=TO, metavar="DIR", help=f"a new folder; left out: {TO}"
    )
    add_folder(one)


def binder(args: argparse.Namespace) -> int:
    """Write it and say what was written; 2 where it cannot be made, or not be printed."""
    order = BinderOrder(args.system, args.size, args.pdf, args.cards)
    draws = cast("Binder", who_draws(GROUP, "binders"))
    for line in bind(content_folder(args.folder), order, args.to, draws, args.edition):
        print(line)
    return 0
