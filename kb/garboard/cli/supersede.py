"""The command that starts the record which takes the place of another, and says who names the old one."""

import argparse
from pathlib import Path

from garboard.book import Book
from garboard.changes.citing import citing
from garboard.cli.arguments import add_command, add_folder, content_folder
from garboard.cli.signable import find_signable
from garboard.errors import GarboardError
from garboard.handbook import read_book
from garboard.reading.blank import next_id, path_for
from garboard.reading.edits import create_file
from garboard.reading.successor_file import Successor, successor_text
from garboard.reading.text_file import read_text
from garboard.records.base import Record
from garboard.records.kinds import Kind, kind_of
from garboard.records.standing import has_left, refused

__all__ = ["add_supersede", "supersede"]

SUPERSEDED = "superseded"


def add_supersede(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the command and its arguments."""
    one = add_command(
        commands, "supersede", supersede, "start the record that takes the place of another"
    )
    one.add_argument("id", help="id of the record that is replaced")
    one.add_argument("--title", default="", help="left out: that of the old one")
    one.add_argument(
        "--by", default="", metavar="PERSON", help="who writes it: a key of people.yml"
    )
    one.add_argument("--dry-run", action="store_true", help="show the file and write nothing")
    add_folder(one)


def supersede(args: argparse.Namespace) -> int:
    """Write the new record, and print what still names the old one."""
    folder = content_folder(args.folder)
    book = read_book(folder)
    old, kind = _replaceable(book, args.id, folder)
    if args.by and args.by not in book.content.people:
        raise GarboardError(f"people.yml knows nobody by the key {args.by!r}")
    system = book.systems.get(old.system)
    if system is None:
        raise GarboardError(
            f"{old.id} is of system {old.system!r}, which handbook.yml does not have"
        )
    taken = [*book.content.retired, *(one.name for one in book.content.declared)]
    ident = next_id(taken, old.system, kind.letters)
    title = " ".join(args.title.split()) or old.title
    path = path_for(kind, system.folder, ident, title, book.today)
    made = successor_text(
        old,
        read_text((folder / old.where.path).read_bytes(), old.where.path).text,
        ident,
        title=title,
        author=args.by,
        drafted=book.today if path.startswith(system.folder) else None,
        blocks=tuple(fence.name for fence in book.content.fences),
    )
    if args.dry_run:
        print(f"{path} would hold:\n{made.text}")
    else:
        create_file(folder, path, made.text)
        print(path)
    _tell(book, old, ident, made)
    return 0


def _replaceable(book: Book, name: str, folder: Path) -> tuple[Record, Kind]:
    """The record of a name, which must be one that another may replace.

    Raises:
        GarboardError: It is not.
    """
    old = find_signable(book, name, folder)
    kind = kind_of(old) if isinstance(old, Record) else None
    if kind is None or not isinstance(old, Record):
        raise GarboardError(f"{name} is a written page; change its text, and have it signed again")
    if SUPERSEDED not in kind.machine.ends:
        raise GarboardError(
            f"a {kind.name} is not superseded; start one that follows it: "
            f"garboard new {_quoted(kind.name)} {old.system}"
        )
    heir = next(
        (
            one
            for one in book.records.values()
            if one.supersedes == old.id
            and not refused(one)
            and one.state not in ("withdrawn", "void")
        ),
        None,
    )
    if heir is not None:
        raise GarboardError(f"{heir.id} supersedes {old.id} already; go on from that one")
    if has_left(old) and old.state != SUPERSEDED:
        raise GarboardError(f"{old.id} is {old.state}; start a new one with garboard new")
    return old, kind


def _quoted(name: str) -> str:
    return f'"{name}"' if " " in name else name


def _tell(book: Book, old: Record, ident: str, made: Successor) -> None:
    """Say what was left out, who still names the old record, and what is to be done next."""
    if made.left_out:
        print(f"Not copied: {', '.join(made.left_out)}.")
    for before, after in made.renamed:
        print(f"The calculation {before} is copied as {after}; what quotes {before} still does.")
    found = citing(book, str(old.id))
    print(f"{old.id} is named in {len(found)} {'place' if len(found) == 1 else 'places'}.")
    for one in found:
        print(f"  {one.where}: {one.by}{f' (let be: {one.kept})' if one.kept else ''}")
    print(
        f"{old.id} stays as it is until an approver signs: garboard sign {old.id} --as approver"
        f" --by PERSON --to {SUPERSEDED}"
    )
    if any(not one.kept for one in found):
        print(f"Then garboard refresh --names puts {ident} where it may stand.")
