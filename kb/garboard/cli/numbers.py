"""The commands about one number: what it is, what feeds it, and what it feeds."""

import argparse
from collections.abc import Callable, Iterable, Iterator

from garboard.book import Book
from garboard.calc.show import show_mover, show_range, show_usual
from garboard.calc.value import Value
from garboard.cli.arguments import add_command, add_folder, content_folder
from garboard.errors import GarboardError
from garboard.handbook import read_book
from garboard.names import nearest

__all__ = ["add_numbers", "trace", "value"]


def add_numbers(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the commands."""
    one = add_command(commands, "value", value, "a number with its range and source")
    one.add_argument("address", help="such as receiver-sizing.n, SA-RV-001.set or site.atmosphere")
    one.add_argument(
        "--in", dest="unit", default="", help="show it in another unit, such as psi(g)"
    )
    add_folder(one)

    one = add_command(commands, "trace", trace, "what feeds a number, and what it feeds")
    one.add_argument("address", help="such as receiver-sizing.n")
    add_folder(one)


def value(args: argparse.Namespace) -> int:
    """Print a value, its range, what it is and where it comes from."""
    book = read_book(content_folder(args.folder))
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
    book = read_book(content_folder(args.folder))
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


def _known(book: Book, address: str) -> Value:
    found = book.values.get(address)
    if found:
        return found
    near = nearest(address, book.values)
    raise GarboardError(
        f"there is no value {address!r}" + (f"; did you mean {near}?" if near else "")
    )
