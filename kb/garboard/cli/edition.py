"""The commands about issued editions."""

import argparse

from garboard.cli.edition_diff import add_diff

__all__ = ["add_edition"]


def add_edition(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Declare the command and what it can do."""
    words = "issued editions: what differs between two"
    one = commands.add_parser("edition", help=words, description=f"{words.capitalize()}.")
    verbs = one.add_subparsers(title="what to do", required=True, metavar="VERB")
    add_diff(verbs)
