"""Sign how far a system is: `garboard sign SA --as "in charge" --by lead --to "in test"`.

Such a line carries no digest: it is one person's word on how far a system is, and the rules walk it.
"""

import argparse
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from garboard.book import Book
from garboard.cli.refusal import newly_found, say_refused
from garboard.cli.signed_words import day_of, one_of, person_of
from garboard.errors import Diagnostic, GarboardError
from garboard.records.signoff import Capacity, SignOff
from garboard.records.system import ServiceStatus, System
from garboard.review.signing import write_status
from garboard.rules import illegal_state_move, in_service_unproved

__all__ = ["sign_status"]

UNUSED = ("verdict", "scope", "not_checked", "band", "evidence", "entered_by", "words", "key")
"""What belongs to the signature of a record."""


def sign_status(book: Book, system: System, args: argparse.Namespace, folder: Path) -> int:
    """Add a line to a system's signatures and move its status; 2 where it should not stand.

    Args:
        book: The book.
        system: The system.
        args: As `garboard sign` reads them.
        folder: The content folder.

    Raises:
        GarboardError: Something is left out, or is no word of a system's.
    """
    line = _line(book, system, args)
    moved = replace(system, status=ServiceStatus(str(line.to)), signed=(*system.signed, line))
    signed = _with_system(book, moved)
    against = list(newly_found(_asked(book, system.code), _asked(signed, system.code)))
    lacks = book.content.people[line.by].lacks(line.capacity, system.code)
    if against or lacks:
        return say_refused(system.code, against, f"{line.by} may not {lacks}" if lacks else "")
    print(f"{system.code}: {system.title}")
    print(f"Signed as {line.capacity} by {line.by} on {line.on}")
    print(f"  status: {system.status} -> {line.to}")
    if args.dry_run:
        print("Nothing was written.")
    else:
        write_status(folder, book.content, system, line)
        print(f"Written to {system.where.path}.")
    return 0


def _line(book: Book, system: System, args: argparse.Namespace) -> SignOff:
    unused = [name for name in UNUSED if getattr(args, name, None)]
    if unused:
        flag = unused[0].replace("_", "-")
        raise GarboardError(f"the status of a system is signed without --{flag}; leave it out")
    if not args.to:
        raise GarboardError(f"say with --to how far {system.code} is: {', '.join(ServiceStatus)}")
    return SignOff(
        capacity=one_of(tuple(Capacity), args.capacity, "capacity"),
        by=person_of(book, args.by),
        on=day_of(book, args.on),
        to=str(one_of(tuple(ServiceStatus), args.to, "status")),
    )


def _asked(book: Book, code: str) -> Iterator[Diagnostic]:
    for rule in (illegal_state_move, in_service_unproved):
        yield from (item for item in rule.check(book) if item.about == code)


def _with_system(book: Book, system: System) -> Book:
    systems = {**book.content.systems, system.code: system}
    return replace(book, content=replace(book.content, systems=systems))
