"""The command for editions: a table of verbs, and those of them that only look."""

import argparse
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from garboard.cli.arguments import add_command, add_folder, content_folder
from garboard.cli.edition_diff import add_diff, diff
from garboard.cli.issue import add_issue, issue
from garboard.cli.notice import add_notice, notice
from garboard.cli.publish import add_publish, publish
from garboard.editions.manifest import check_site
from garboard.editions.verify import faults_of, proof_words
from garboard.errors import GarboardError
from garboard.reading.edition_folder import editions_in

__all__ = ["VERBS", "Verb", "add_edition", "edition"]


@dataclass(frozen=True, slots=True)
class Verb:
    """What can be done with editions."""

    name: str
    words: str
    arguments: Callable[[argparse.ArgumentParser], None]
    run: Callable[[argparse.Namespace], int]


def add_edition(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the command and its verbs."""
    parser = add_command(commands, "edition", edition, "issue an edition, publish it, prove it")
    verbs = parser.add_subparsers(title="verbs", required=True, metavar="VERB")
    for verb in VERBS:
        verb.arguments(add_command(verbs, verb.name, verb.run, verb.words))


def edition(args: argparse.Namespace) -> int:
    """Run the verb that was named; without one the parser has refused already."""
    run: Callable[[argparse.Namespace], int] = args.run
    return run(args)


def _add_verify(one: argparse.ArgumentParser) -> None:
    one.add_argument(
        "what",
        nargs="?",
        default="",
        help="number of an edition, or the folder of a published one; left out: all editions",
    )
    add_folder(one)


def verify(args: argparse.Namespace) -> int:
    """Say of an edition, or of a published copy, whether it is as it was issued; 1 where it is not."""
    if args.what and not args.what.isdigit():
        return _verify_site(Path(args.what))
    folder = content_folder(args.folder)
    number = int(args.what) if args.what else None
    faults = faults_of(folder, number)
    for fault in faults:
        print(fault)
    if faults:
        return 1
    editions = editions_in(folder)
    issued = [one for one in editions.issued if number in (None, one.number)]
    for one in issued:
        print(
            f"edition {one.number} is as it was issued on {one.issued}; {proof_words(folder, one)}"
        )
    if not issued:
        print("no edition was issued yet")
    return 0


def _verify_site(site: Path) -> int:
    if not site.is_dir():
        raise GarboardError(f"there is no folder {site}, and no edition of that number")
    faults = check_site(site)
    for fault in faults:
        print(fault)
    if faults:
        print("This copy is not as it was published. Do not use it; ask for a whole one.")
        return 1
    print(
        "Every file is as it was published. That guards against accident, and is no proof of who made it."
    )
    return 0


def list_(args: argparse.Namespace) -> int:
    """Print every edition, the newest first."""
    editions = editions_in(content_folder(args.folder))
    for fault in editions.diagnostics:
        print(fault)
    for one in reversed(editions.issued):
        role = one.people.get(one.by, "somebody not in the list of people")
        unreviewed = sum(not page.trusted for page in one.pages)
        print(f"edition {one.number}  issued {one.issued} by the {role}")
        print(f"  valid until {one.valid_until}: {one.ends}")
        print(f"  {len(one.pages)} pages, {unreviewed} not fully reviewed; seal {one.seal[:16]}")
    if not editions.issued:
        print("no edition was issued yet")
    return int(bool(editions.diagnostics))


VERBS: tuple[Verb, ...] = (
    Verb("issue", "freeze the handbook as it stands into an edition", add_issue, issue),
    Verb("publish", "write the site of an edition, with its manifest", add_publish, publish),
    Verb("verify", "say whether an edition or a copy is as it was issued", _add_verify, verify),
    Verb("diff", "what differs between two editions, why, and what is to be done", add_diff, diff),
    Verb("list", "print every edition", add_folder, list_),
    Verb("notice", "print, add or withdraw a notice to holders", add_notice, notice),
)
"""Each verb has a line here; a new one needs no other."""
