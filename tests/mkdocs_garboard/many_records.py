"""A list for the Find box of as many records as are asked for, made from the demo's."""

from collections.abc import Iterator
from dataclasses import replace

from garboard.records.kinds import KINDS
from garboard.views.contents import Entry
from tests.demo_site import demo_handbook

__all__ = ["many_entries", "records_in"]

NOUNS = frozenset(kind.name for kind in KINDS)
FIRST = "QRSTUVWXYZ"
"""Letters that stand for a further vessel's systems in place of the demo's first letter."""


def records_in(entries: tuple[Entry, ...]) -> int:
    """How many records are among them."""
    return sum(entry.kind in NOUNS for entry in entries)


def many_entries(records: int) -> tuple[Entry, ...]:
    """The demo's entries, and again under other ids and with other words, until there are enough."""
    own = demo_handbook().entries
    made = own
    for letter in FIRST:
        share = (records - records_in(made)) / records_in(own)
        if share <= 0:
            return made
        more = tuple(_others(letter))
        made += tuple(
            one for at, one in enumerate(more) if int((at + 1) * share) > int(at * share)
        ) if share < 1 else more  # fmt: skip
    raise ValueError(f"only {records_in(made)} records can be made")


def _others(letter: str) -> Iterator[Entry]:
    """Each entry once more: ids of another system, and every third word another one."""
    for entry in demo_handbook().entries:
        yield replace(
            entry,
            title=_reworded(entry.title, letter),
            path=entry.path.replace("id/", f"id/{letter}"),
            keys=tuple(f"{letter}{key}" for key in entry.keys),
            words=_reworded(entry.words, letter),
            text=_reworded(entry.text, letter),
        )


def _reworded(text: str, letter: str) -> str:
    words = text.split(" ")
    return " ".join(
        f"{word}{letter.lower()}" if place % 3 == 0 and word.isalpha() else word
        for place, word in enumerate(words)
    )
