"""The command that takes replies in: it raises what was found and keeps each reply; it signs nothing."""

import argparse
import sys
from collections.abc import Iterator
from pathlib import Path

from garboard.book import Book
from garboard.cli.arguments import add_command, add_folder, content_folder
from garboard.correspondence.intake import Intake, Taken
from garboard.correspondence.reply_sheet import blank_form
from garboard.errors import GarboardError
from garboard.handbook import read_book
from garboard.names import nearest
from garboard.reading.edits import create_file
from garboard.reading.text_file import LARGEST, plain_lines
from garboard.records.reply import Seal
from garboard.records.signoff import Capacity
from garboard.review.covers import Cover

__all__ = ["add_intake", "intake"]

WANTED = """no filled form of a review pack was found in it. A reply holds, each at the start of a line:
  REF, as it was sent with the pack; NAME KEY, a key of people.yml; DATE; and what was found.
Copy the text of the mail into a file, quoted or not, and try again. The form looks like this:
"""


def add_intake(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the command and its arguments."""
    one = add_command(
        commands, "intake", intake, "take a reviewer's replies in: raise findings, keep the reply"
    )
    one.add_argument("files", nargs="+", type=Path, metavar="FILE", help="text of a mail")
    one.add_argument(
        "--by", default="", metavar="PERSON", help="who takes it in: a key of people.yml"
    )
    add_folder(one)


def intake(args: argparse.Namespace) -> int:
    """Take replies in; 2 where one of them was not."""
    folder = content_folder(args.folder)
    book = read_book(folder)
    if args.by and args.by not in book.content.people:
        near = nearest(args.by, book.content.people)
        cure = f"did you mean {near!r}?" if near else "add this person there"
        raise GarboardError(f"people.yml knows nobody by the key {args.by!r}; {cure}")
    desk = Intake(book, args.by)
    return max([_one(desk, folder, file) for file in args.files])


def _one(desk: Intake, folder: Path, file: Path) -> int:
    """Take one file in."""
    try:
        text, how = _text(file)
    except GarboardError as fault:
        print(f"garboard: {fault}", file=sys.stderr)
        return 2
    taken = desk.take(text, str(file))
    if not taken.forms:
        print(f"garboard: {file}: {WANTED}", file=sys.stderr)
        print("\n".join(_example(desk.book)), file=sys.stderr)
        print(f"Nothing was written. Keep {file} as it is.", file=sys.stderr)
        return 2
    _write(folder, taken)
    for said in (*how, *taken.told):
        print(said)
    for fault_ in taken.faults:
        print(fault_, file=sys.stderr)
    if taken.faults:
        print(f"Not taken in. Keep {file} as it is until this is settled.", file=sys.stderr)
    return 2 if taken.faults else 0


def _text(file: Path) -> tuple[str, tuple[str, ...]]:
    """The text of a file, and how it had to be read.

    Raises:
        GarboardError: It cannot be opened, or is far larger than a reply.
    """
    try:
        size = file.stat().st_size
        if size > LARGEST:
            raise GarboardError(
                f"{file}: {size} bytes, more than {LARGEST}; copy the form out of it into a file of its "
                f"own, and keep {file} as it is"
            )
        data = file.read_bytes()
    except OSError as stop:
        raise GarboardError(f"{file} cannot be opened: {stop.strerror}") from stop
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return plain_lines(data.decode("utf-16", "replace")), (f"{file}: read as UTF-16",)
    try:
        return plain_lines(data.decode("utf-8-sig")), ()
    except UnicodeDecodeError:
        said = f"{file}: it is no UTF-8; letters with accents may have come out wrong"
        return plain_lines(data.decode("cp1252", "replace")), (said,)


def _write(folder: Path, taken: Taken) -> None:
    """The reply first: what was found in it can be written down once more."""
    for path, text in (*taken.kept.items(), *((one.path, one.text) for one in taken.findings)):
        create_file(folder, path, text)


def _example(book: Book) -> Iterator[str]:
    key = next(iter(book.records), "SA-CN-001")
    yield from blank_form(
        Seal(key, "0" * 16, "0" * 16), Cover(""), (Capacity.CHECKER, Capacity.APPROVER)
    )
