"""The command line: read the arguments, take the main path, print, return a status.

0: clean, done. 1: a STOP or HOLD stands. 2: wrong use, or the run could not go on.
"""

import argparse
import json
import os
import sys
import threading
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from importlib.metadata import entry_points, version
from pathlib import Path

from garboard.book import Book
from garboard.calc.show import show_mover, show_range, show_usual
from garboard.calc.value import Value
from garboard.errors import Diagnostic, GarboardError, Severity
from garboard.handbook import read_book
from garboard.names import nearest
from garboard.reading.new_record import new_record
from garboard.reading.refresh import find_changes, write_changes
from garboard.reading.start import start_handbook
from garboard.records.kinds import BY_NAME
from garboard.rules import RULES
from garboard.rules.judge import judge

__all__ = ["main"]

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

    one = _command(
        commands, "check", check, "read, work out, run all rules; say every fault at its line"
    )
    one.add_argument(
        "folder", nargs="?", type=Path, help="content folder, the one with handbook.yml"
    )
    one.add_argument(
        "--format", choices=("text", "json"), default="text", help="how faults are printed"
    )

    one = _command(commands, "new", new, "start a record, or a handbook of your own")
    one.add_argument("kind", help=f"handbook, or one of: {', '.join(BY_NAME)}")
    one.add_argument(
        "target", nargs="?", default="", help="system code such as SA; a new folder for a handbook"
    )
    one.add_argument("--title", default="", help="a noun phrase without a verdict")
    _folder(one)

    one = _command(commands, "value", value, "a number with its range and source")
    one.add_argument("address", help="such as receiver-sizing.n, SA-RV-001.set or site.atmosphere")
    one.add_argument(
        "--in", dest="unit", default="", help="show it in another unit, such as psi(g)"
    )
    _folder(one)

    one = _command(commands, "trace", trace, "what feeds a number, and what it feeds")
    one.add_argument("address", help="such as receiver-sizing.n")
    _folder(one)

    one = _command(
        commands, "refresh", refresh, "rewrite quoted numbers that went stale, showing each"
    )
    one.add_argument(
        "folder", nargs="?", type=Path, help="content folder, the one with handbook.yml"
    )
    one.add_argument("--dry-run", action="store_true", help="show the changes and write nothing")
    return parser


def _command(
    commands: "argparse._SubParsersAction[argparse.ArgumentParser]",
    name: str,
    run: Callable[[argparse.Namespace], int],
    words: str,
) -> argparse.ArgumentParser:
    one = commands.add_parser(name, help=words, description=f"{words[0].upper()}{words[1:]}.")
    one.set_defaults(run=run)
    return one


def _folder(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--folder", type=Path, help="content folder, the one with handbook.yml")


def check(args: argparse.Namespace) -> int:
    """Print every fault; 0 clean, 1 a STOP or HOLD stands."""
    found = judge(read_book(_content(args.folder)), RULES)
    if args.format == "json":
        print(json.dumps([item.as_data() for item in found], indent=1, ensure_ascii=False))
    else:
        for item in found:
            print(_coloured(item))
        counts = ", ".join(
            f"{sum(item.severity is severity for item in found)} {severity}"
            for severity in Severity
        )
        print(f"{counts}. {HONEST}")
    return int(any(item.severity in FAILING for item in found))


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
    folder = _content(args.folder)
    path = new_record(
        folder, read_book(folder).content, BY_NAME[args.kind], args.target, args.title
    )
    print(path)
    return 0


def _starter() -> Iterator[tuple[str, str]]:
    for entry in entry_points(group="garboard.starter"):
        yield from entry.load()().items()


def value(args: argparse.Namespace) -> int:
    """Print a value, its range, what it is and where it comes from."""
    book = read_book(_content(args.folder))
    found = _known(book, args.address)
    text = book.show(args.address, args.unit)
    if text is None:
        raise GarboardError(f"{args.address} cannot be shown in {args.unit!r}: it is {found.text}")
    print(f"{found.address} = {text}")
    for label, words in _about(book, found):
        if words:
            print(f"  {label}: {words}")
    return int(found.si is None)


def _about(book: Book, found: Value) -> Iterator[tuple[str, str]]:
    yield "what", found.label
    yield "range", ", ".join(filter(None, (show_range(found), show_usual(found))))
    for mover in found.movers:
        yield "moved by", show_mover(found, mover)
    yield "tolerance", f"+/- {found.tolerance}" if found.tolerance else ""
    yield "stands at", str(found.where)
    yield "source", "; ".join(f"{one.source} {one.clause}".strip() for one in found.sources)
    yield "not computed because", found.fault.text if found.fault else ""
    for one in book.network.requirements:
        if found.address in one.uses:
            yield "must hold", f"{one.text}: {one.verdict}, margin {one.margin}"


def trace(args: argparse.Namespace) -> int:
    """Print what a value is worked out from, and what is worked out from it."""
    book = read_book(_content(args.folder))
    found = _known(book, args.address)
    print(f"{found.address} = {found.text}  ({found.where})")
    print("fed by:")
    _tree(book, found.address, lambda one: book.values[one].uses if one in book.values else ())
    print("feeds:")
    _tree(book, found.address, lambda one: book.network.feeds.get(one, ()))
    for one in book.network.requirements:
        if found.address in one.uses:
            print(f"  require {one.text}: {one.verdict}  ({one.where})")
    quoted = sorted({f"{item.by} at {item.where}" for item in book.mentions_of(found.address)})
    if quoted:
        print("quoted by:")
        for line in quoted:
            print(f"  {line}")
    return 0


def _tree(book: Book, start: str, step: Callable[[str], Iterable[str]]) -> None:
    seen = {start}

    def walk(address: str, depth: int) -> bool:
        some = False
        for one in step(address):
            some = True
            known = book.values.get(one)
            again = " (above)" if one in seen else ""
            print(f"{'  ' * depth}{one} = {known.text if known else 'not declared'}{again}")
            if not again:
                seen.add(one)
                walk(one, depth + 1)
        return some

    if not walk(start, 1):
        print("  nothing")


def refresh(args: argparse.Namespace) -> int:
    """Rewrite stale quotations, showing each change."""
    folder = _content(args.folder)
    book = read_book(folder)
    changes = find_changes(book.content, book.show, book.values)
    for change in changes:
        print(f"{change.where}: {change.old!r} -> {change.new!r}")
    if not args.dry_run:
        write_changes(folder, book.content, changes)
    print(f"{len(changes)} {'would be ' if args.dry_run else ''}rewritten.")
    return 0


def _known(book: Book, address: str) -> Value:
    found = book.values.get(address)
    if found:
        return found
    near = nearest(address, book.values)
    raise GarboardError(
        f"there is no value {address!r}" + (f"; did you mean {near}?" if near else "")
    )


def _content(folder: Path | None) -> Path:
    """The content folder: as named, this one, or the one below this that holds handbook.yml."""
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


def _coloured(item: Diagnostic) -> str:
    if not sys.stdout.isatty() or os.environ.get("NO_COLOR"):
        return str(item)
    colour = COLOURS[item.severity]
    return str(item).replace(f": {item.severity}: ", f": \033[{colour}m{item.severity}\033[0m: ", 1)


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
