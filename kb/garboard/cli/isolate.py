"""`garboard isolate`: one part made safe to work on, as a sheet to take along."""

import argparse
import textwrap
from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.cli.arguments import add_command, add_folder, content_folder
from garboard.errors import GarboardError
from garboard.handbook import read_book
from garboard.names import key_of, nearest
from garboard.systems.isolation import Isolation
from garboard.systems.isolation import isolate as isolate_part
from garboard.views.inline import title_of
from garboard.views.isolation_sheet import isolation_messages, isolation_sheet
from garboard.views.page import Block, Bullets, Heading, Message, Paragraph, Step, Steps, Table
from garboard.views.runs import plain

__all__ = ["add_isolate", "isolate"]

WIDTH = 72
"""Columns: reads on a phone held across, prints on A5."""


def add_isolate(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the command."""
    one = add_command(
        commands, "isolate", isolate, "what to stop, shut, let out and read to work on a part"
    )
    one.add_argument(
        "tag", nargs="+", help="full tag of the part, or of several, such as SA-AR-001"
    )
    add_folder(one)


def isolate(args: argparse.Namespace) -> int:
    """Print the sheet; 1 where it cannot be isolated, or not proved, or with too few blocks."""
    book = read_book(content_folder(args.folder))
    found = _found(book, [_known(book, tag) for tag in args.tag])
    for line in _sheet(book, found):
        print(line)
    return int(bool(found.faults))


def _known(book: Book, tag: str) -> str:
    """A tag that some connection names.

    Raises:
        GarboardError: There is no such tag, or it is in no connection.
    """
    headers = (one for system in book.systems.values() for one in (system.headers or {}).values())
    if any(one.tag == tag for one in headers):
        raise GarboardError(f"{tag} is a pipe: name a part that is joined to it")
    if tag not in book.components:
        ends = [one for one in book.components if key_of(one).endswith(key_of(tag))]
        near = " or ".join(ends) or nearest(tag, book.components)
        raise GarboardError(
            f"there is no part {tag!r}" + (f"; did you mean {near}?" if near else "")
        )
    system = book.components[tag].system
    if tag not in book.surveys[system].plant.numbers:
        raise GarboardError(f"{tag} is in no connection of {system}: join it in its system.yml")
    return tag


def _found(book: Book, tags: list[str]) -> Isolation:
    codes = dict.fromkeys(book.components[tag].system for tag in tags)
    if len(codes) > 1:
        raise GarboardError(f"{' and '.join(codes)} are two systems: isolate each by itself")
    surveyed = book.surveys[next(iter(codes))]
    return isolate_part(surveyed.plant, *dict.fromkeys(tags), survey=surveyed)


def _sheet(book: Book, found: Isolation) -> Iterator[str]:
    vessel = book.content.vessel.vessel
    names = " and ".join(f"{tag} {title_of(book, tag)}".strip() for tag in found.tags)
    yield from _wrapped(f"ISOLATE {names}")
    yield from _wrapped(f"{vessel}. Working copy, uncontrolled: valid on the day of printing only.")
    yield "=" * WIDTH
    for message in isolation_messages(book, found):
        yield from _message(message)
    yield from _drawn(isolation_sheet(book, found))


def _drawn(blocks: Iterable[Block]) -> Iterator[str]:
    """Blocks as lines, in the words of the page."""
    for block in blocks:
        match block:
            case Heading():
                yield ""
                yield block.text.upper() if block.level == 2 else block.text
            case Paragraph():
                yield from _wrapped(plain(block.runs))
            case Bullets():
                for number, item in enumerate(block.items, 1):
                    mark = f"{number}." if block.ordered else "-"
                    yield from _wrapped(plain(item), f"{mark} ")
            case Steps():
                for step in block.steps:
                    yield from _step(step)
            case Table():
                yield from _table(block)
            case _:
                continue


def _message(message: Message) -> Iterator[str]:
    yield from _wrapped(plain(message.hazard), f"{message.word}: ")
    said = " ".join(f"{plain(one).rstrip('.')}." for one in (message.harm, message.avoid))
    yield from _wrapped(said, "  ")


def _step(step: Step) -> Iterator[str]:
    to = f" to {step.to}" if step.to else ""
    place = f", {step.place}" if step.place else ""
    said = f"{step.do} {plain(step.item)}".strip()
    yield from _wrapped(f"{said}{to}{place}", f"[ ] {step.number:>2} ")
    yield from _wrapped(f"see: {plain(step.see)}", "       ")
    if step.if_not:
        yield from _wrapped(plain(step.if_not), "       ")
    for line in (step.hold, step.note):
        if line:
            yield from _wrapped(plain(line), "       ")
    if step.second:
        yield from _wrapped(step.second, "       ")


def _table(table: Table) -> Iterator[str]:
    yield f"{table.caption}:"
    titles = [column.title for column in table.columns]
    for row in table.rows:
        first, *rest = (plain(cell).strip() for cell in row.cells)
        said = "; ".join(f"{title} {cell}" for title, cell in zip(titles[1:], rest, strict=True))
        yield from _wrapped(f"{first}: {said}", "- ")
    if not table.rows:
        yield table.empty


def _wrapped(text: str, mark: str = "") -> list[str]:
    """Words folded to the width of the sheet, under a mark."""
    words = textwrap.TextWrapper(
        WIDTH, mark, " " * len(mark), break_on_hyphens=False, break_long_words=False
    )
    return words.wrap(" ".join(text.split()))
