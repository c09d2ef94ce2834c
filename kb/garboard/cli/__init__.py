"""The command line: read the arguments, take the main path, print, return a status.

0: clean, done. 1: a STOP or HOLD stands. 2: wrong use, or the run could not go on.
"""

import argparse
import json
import os
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from importlib.metadata import entry_points, version
from pathlib import Path

from garboard.changes.since_edition import since_edition
from garboard.cli.arguments import add_command, add_folder, content_folder
from garboard.cli.binder import add_binder, binder
from garboard.cli.edition import add_edition, edition
from garboard.cli.intake import add_intake, intake
from garboard.cli.isolate import add_isolate, isolate
from garboard.cli.numbers import add_numbers, trace, value
from garboard.cli.pack import add_pack, pack
from garboard.cli.refresh import add_refresh, refresh
from garboard.cli.sign import add_sign, sign
from garboard.cli.supersede import add_supersede, supersede
from garboard.errors import Diagnostic, GarboardError, Severity
from garboard.handbook import read_book
from garboard.names import nearest
from garboard.reading.corroboration import corroborate
from garboard.reading.history import read_history
from garboard.reading.new_record import new_record
from garboard.reading.start import start_handbook
from garboard.records.kinds import BY_NAME
from garboard.rules import RULES
from garboard.rules.judge import judge
from garboard.views.asked import asked_line

__all__ = [
    "binder",
    "check",
    "edition",
    "intake",
    "isolate",
    "main",
    "new",
    "pack",
    "refresh",
    "sign",
    "supersede",
    "trace",
    "value",
]

FAILING = (Severity.STOP, Severity.HOLD)
COLOURS = {Severity.STOP: "1;31", Severity.HOLD: "1;33", Severity.WARN: "33", Severity.NOTE: "2"}
PATIENCE = 1.0
"""Seconds after which a command says that it is still at work."""
HONEST = (
    "A clean run means: no contradiction was found in what was entered. What was not entered was not"
    " checked. It is no approval."
)


def main(argv: list[str] | None = None) -> int:
    """Run one command.

    Args:
        argv: Words after the program's name; those of the process where left out.

    Returns:
        The exit status.
    """
    parser = _parser()
    args = parser.parse_args(argv)
    command: Callable[[argparse.Namespace], int] = args.run
    try:
        with _progress():
            return command(args)
    except GarboardError as fault:
        print(f"garboard: {fault}", file=sys.stderr)
        return 2
    except BrokenPipeError:
        sys.stderr.close()
        return 0


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="garboard",
        description="Keep one true, reviewed account of every system of a vessel.",
        epilog="Exit status: 0 clean or done, 1 a STOP or HOLD stands, 2 wrong use.",
    )
    parser.add_argument("--version", action="version", version=f"garboard {version('garboard')}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")

    one = add_command(
        commands, "check", check, "read, work out, run all rules; say every fault at its line"
    )
    one.add_argument(
        "folder", nargs="?", type=Path, help="content folder, the one with handbook.yml"
    )
    one.add_argument(
        "--format", choices=("text", "json"), default="text", help="how faults are printed"
    )
    one.add_argument(
        "--history",
        action="store_true",
        help="hold the records against what git says of their files",
    )

    one = add_command(commands, "new", new, "start a record, or a handbook of your own")
    one.add_argument("kind", help=f"handbook, or one of: {', '.join(BY_NAME)}")
    one.add_argument(
        "target", nargs="?", default="", help="system code such as SA; a new folder for a handbook"
    )
    one.add_argument("--title", default="", help="a noun phrase without a verdict")
    add_folder(one)

    add_numbers(commands)
    add_isolate(commands)
    add_refresh(commands)
    add_sign(commands)
    add_supersede(commands)
    add_pack(commands)
    add_intake(commands)
    add_edition(commands)
    add_binder(commands)
    return parser


def check(args: argparse.Namespace) -> int:
    """Print every fault; 0 clean, 1 a STOP or HOLD stands, or a record vanished from the history."""
    folder = content_folder(args.folder)
    book = read_book(folder)
    found = judge(book, RULES)
    told = corroborate(book.content, read_history(folder)) if args.history else None
    past = told.found if told else ()
    if args.format == "json":
        print(json.dumps([one.as_data() for one in (*found, *past)], indent=1, ensure_ascii=False))
    else:
        for item in found:
            print(_coloured(item))
        counts = ", ".join(
            f"{sum(item.severity is severity for item in found)} {severity}"
            for severity in Severity
        )
        if since := since_edition(book):
            print(since)
        print(f"{counts}. {HONEST}")
        for code in book.systems:
            print(asked_line(book, RULES, code))
        if told:
            print(f"History of the files: {told.reach}.")
        for item in past:
            print(_coloured(item))
    return int(any(item.severity in FAILING for item in (*found, *past)))


def new(args: argparse.Namespace) -> int:
    """Start a record, or a handbook."""
    if args.kind == "handbook":
        if not args.target:
            raise GarboardError("name the new folder: garboard new handbook FOLDER")
        written = start_handbook(Path(args.target), dict(_starter()))
        for path in written:
            print(path)
        print(f"Next: cd {args.target} && mkdocs serve")
        return 0
    if args.kind not in BY_NAME:
        near = nearest(args.kind, (*BY_NAME, "handbook"))
        raise GarboardError(
            f"there is no kind {args.kind!r}; "
            + (f"did you mean {near!r}?" if near else f"one of {', '.join(BY_NAME)}")
        )
    folder = content_folder(args.folder)
    path = new_record(
        folder, read_book(folder).content, BY_NAME[args.kind], args.target, args.title
    )
    print(path)
    return 0


def _starter() -> Iterator[tuple[str, str]]:
    for entry in entry_points(group="garboard.starter"):
        yield from entry.load()().items()


def _coloured(item: Diagnostic) -> str:
    if not sys.stdout.isatty() or os.environ.get("NO_COLOR"):
        return item.in_full
    colour = COLOURS[item.severity]
    return item.in_full.replace(
        f": {item.severity}: ", f": \033[{colour}m{item.severity}\033[0m: ", 1
    )


@contextmanager
def _progress() -> Iterator[None]:
    """Say that work goes on, once it has taken a second and somebody is looking."""
    if not sys.stderr.isatty():
        yield
        return
    timer = threading.Timer(PATIENCE, lambda: print("working ...", file=sys.stderr, flush=True))
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        timer.cancel()
