"""The verb that issues an edition: everything is shown first, and nothing is written where a STOP stands."""

import argparse
import sys
from collections.abc import Iterator
from pathlib import Path

from garboard.cli.arguments import content_folder
from garboard.editions.issue import Proposal, propose, write
from garboard.errors import Severity
from garboard.reading.edition_file import edition_path
from garboard.review.canonical import SHORT
from garboard.views.editions import is_about_editions

__all__ = ["add_issue", "issue"]


def add_issue(one: argparse.ArgumentParser) -> None:
    """Declare its arguments."""
    one.add_argument("--by", required=True, metavar="PERSON", help="a key of people.yml")
    one.add_argument(
        "--key", type=Path, metavar="FILE", help="prove it with this key, by ssh-keygen"
    )
    one.add_argument("--dry-run", action="store_true", help="show all and write nothing")
    one.add_argument(
        "folder", nargs="?", type=Path, help="content folder, the one with handbook.yml"
    )


def issue(args: argparse.Namespace) -> int:
    """Show what would be frozen and write it; 1 where something stands against it."""
    folder = content_folder(args.folder)
    proposal = propose(folder, args.by, args.key)
    for line in _told(proposal):
        print(line)
    if proposal.refusals:
        print("garboard: the edition cannot be issued; nothing was written:", file=sys.stderr)
        for refusal in proposal.refusals:
            print(f"  {refusal}", file=sys.stderr)
        return 1
    if args.dry_run:
        print("Nothing was written.")
        return 0
    path = write(folder, proposal)
    print(
        f"Written to {path}. Publish it: garboard edition publish {_number(proposal)} --to FOLDER"
    )
    return 0


def _number(proposal: Proposal) -> int:
    before = proposal.handbook.book.edition
    return proposal.edition.number if proposal.edition else (before.number if before else 0) + 1


def _told(proposal: Proposal) -> Iterator[str]:
    """What would be issued."""
    book = proposal.handbook.book
    yield f"Edition {_number(proposal)} of {book.content.vessel.vessel}, {book.today}"
    limit = proposal.limit
    yield f"valid until {limit.day}: {limit.words}" if limit else "valid until: no last day"
    for ran_out in proposal.past:
        yield f"past already, and not counted: {ran_out.words}"
    pages = [page for page in proposal.handbook.pages if not is_about_editions(page.key)]
    unreviewed = sum(not page.review.trusted for page in pages)
    yield f"pages: {len(pages)}, {unreviewed} of them not fully reviewed"
    counts = ", ".join(
        f"{sum(one.severity is severity for one in proposal.found)} {severity}"
        for severity in Severity
    )
    yield f"against it: {counts}"
    for one in proposal.held:
        yield f"  goes with it: {one.where}: {one.text} [{one.code}]"
    yield from _changes(proposal)
    if proposal.edition and not proposal.refusals:
        proof = "with the issuer's proof" if proposal.edition.proof else "without a proof"
        yield f"file: {edition_path(proposal.edition.number)}, seal {proposal.edition.seal}, {proof}"


def _changes(proposal: Proposal) -> Iterator[str]:
    before = proposal.handbook.book.edition
    yield f"since edition {before.number} of {before.issued}:" if before else "since the beginning:"
    yield from (f"  {line}" for line in proposal.changed or ("nothing became different",))
    yield "cards to print:" if proposal.cards else "cards to print: none"
    for card in proposal.cards:
        yield f"  {card.card} of {card.of}, hangs at {card.place}: digest {card.digest[:SHORT]}"
