"""Which way a warning went: what is lost weakens it, what is added strengthens it."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from garboard.changes.comparison import Strength
from garboard.changes.sequences import pair_up

__all__ = ["Told", "acted", "listed", "present", "ranked", "worded"]


class Told(NamedTuple):
    """One thing that is not as it was."""

    strength: Strength
    what: str
    before: str = ""
    after: str = ""


def present(what: str, before: str, after: str) -> Iterator[Told]:
    """Something that is there or not, whatever its words."""
    if bool(before) != bool(after):
        strength = Strength.STRENGTHENED if after else Strength.WEAKENED
        yield Told(strength, what, before, after)


def worded(what: str, before: str, after: str) -> Iterator[Told]:
    """Words: lost, added, or otherwise."""
    if " ".join(before.split()) == " ".join(after.split()):
        return
    if before and after:
        yield Told(Strength.CHANGED, what, before, after)
    else:
        yield from present(what, before, after)


def ranked(what: str, before: str, after: str, rank: int) -> Iterator[Told]:
    """A word of a scale.

    Args:
        what: Which.
        before: The word.
        after: The word now.
        rank: How many steps it went to the safe side; negative: away from it.
    """
    if before == after:
        return
    strength = Strength.CHANGED
    if rank:
        strength = Strength.STRENGTHENED if rank > 0 else Strength.WEAKENED
    yield Told(strength, what, before or "not stated", after or "not stated")


def listed(what: str, before: Sequence[str], after: Sequence[str]) -> Iterator[Told]:
    """A list whose order is no matter."""
    for one in before:
        if one not in after:
            yield Told(Strength.WEAKENED, what, str(one), "")
    for one in after:
        if one not in before:
            yield Told(Strength.STRENGTHENED, what, "", str(one))


def acted(what: str, before: Sequence[str], after: Sequence[str]) -> Iterator[Told]:
    """What is done, in order: lost, added, reworded, or at another place."""
    for pair in pair_up(before, after):
        one = before[pair.before] if pair.before is not None else ""
        other = after[pair.after] if pair.after is not None else ""
        if pair.moved and pair.before is not None and pair.after is not None:
            places = f"{pair.before + 1}. {one}", f"{pair.after + 1}. {other}"
            yield Told(Strength.CHANGED, f"{what}, its place", *places)
        else:
            yield from worded(what, one, other)
