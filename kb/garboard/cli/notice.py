"""The verb for notices to holders: print them as they are sent, add one, withdraw one."""

import argparse

from garboard.cli.arguments import add_folder, content_folder
from garboard.editions.notify import (
    add_notice as write_notice,
)
from garboard.editions.notify import (
    look_at,
    next_notice,
    withdraw_notice,
    withdrawn_today,
)
from garboard.errors import GarboardError
from garboard.handbook import read_book
from garboard.records.notice_message import LONGEST, messages

__all__ = ["add_notice", "notice"]


def add_notice(one: argparse.ArgumentParser) -> None:
    """Declare its arguments."""
    one.add_argument("--says", metavar="TEXT", help="add a notice that tells this")
    one.add_argument(
        "--against", nargs="+", default=[], metavar="ID", help="ids and tags not to be relied on"
    )
    one.add_argument("--until", metavar="DATE", help="a day or an event; left out: until withdrawn")
    one.add_argument("--withdraw", metavar="NUMBER", help="withdraw the notice of this number")
    one.add_argument("--dry-run", action="store_true", help="show the message and write nothing")
    add_folder(one)


def notice(args: argparse.Namespace) -> int:
    """Print every notice as sent; or add one, or withdraw one, showing the message first."""
    if args.withdraw and args.says:
        raise GarboardError("withdraw one notice or add one, not both at once")
    if not args.says and (args.against or args.until):
        raise GarboardError("a notice needs words: --says TEXT")
    if args.says is not None:
        return _add(args)
    return _withdraw(args) if args.withdraw else _list(args)


def _add(args: argparse.Namespace) -> int:
    folder = content_folder(args.folder)
    book = read_book(folder)
    made, message = next_notice(book, args.says, tuple(args.against), args.until)
    _show(message)
    look_at(made, message)
    if args.dry_run:
        print("Nothing was written.")
    else:
        write_notice(folder, book, made)
        print(
            f"Notice {made.number} is written to handbook.yml. Send the message above to every holder."
        )
    return 0


def _withdraw(args: argparse.Namespace) -> int:
    folder = content_folder(args.folder)
    book = read_book(folder)
    made, message = withdrawn_today(book, args.withdraw)
    _show(message)
    if args.dry_run:
        print("Nothing was written.")
    else:
        withdraw_notice(folder, book, made)
        print(f"Notice {made.number} is withdrawn. Send the message above to every holder.")
    return 0


def _list(args: argparse.Namespace) -> int:
    content = read_book(content_folder(args.folder)).content
    for one, message in messages(content.vessel, content.editions.issued):
        state = f"withdrawn {one.withdrawn}" if one.withdrawn else "stands"
        print(f"notice {one.number}, {state}:")
        _show(message)
    if not content.vessel.notices:
        print("no notice was sent yet")
    return 0


def _show(message: str) -> None:
    print(f"  {message}")
    print(f"  ({len(message)} of {LONGEST} signs)")
