"""What became weaker or stronger in the procedures and safety messages that a pack touches.

What counts as weaker is settled where two books are held together; here it is only sorted out which of
it concerns the reviewer.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from garboard.book import Book
from garboard.changes.cautions import cautions_moved
from garboard.changes.comparison import Caution, Strength
from garboard.records.base import Record
from garboard.review.canonical import own_digest

__all__ = ["Shifted", "gone_with", "shifted"]


@dataclass(frozen=True, slots=True)
class Shifted:
    """How one record or part differs from before."""

    about: str
    title: str
    weaker: tuple[Caution, ...] = ()
    others: tuple[Caution, ...] = ()
    """Changed or strengthened."""
    new: bool = False
    reworded: bool = False
    """Its words are others than before, whatever that means."""


def shifted(old: Book | None, new: Book, keys: Iterable[str]) -> tuple[Shifted, ...]:
    """How some records and parts differ from before, the weakened first.

    Args:
        old: As it was; None where nothing is known of that.
        new: As it stands.
        keys: Ids and tags; of what is not there any more too.
    """
    wanted = dict.fromkeys(keys)
    by_key: dict[str, list[Caution]] = {}
    for one in cautions_moved(old, new) if old else ():
        by_key.setdefault(one.about, []).append(one)
    found = [_one(old, new, key, by_key.get(key, [])) for key in wanted]
    return tuple(sorted(found, key=lambda one: (not one.weaker, not one.others, one.about)))


def _one(old: Book | None, new: Book, key: str, moved: list[Caution]) -> Shifted:
    before: Record | None = old.records.get(key) if old else None
    after = new.records.get(key)
    known = after or before
    part = new.components.get(key)
    return Shifted(
        key,
        known.title if known else (part.name or part.kind) if part else "",
        tuple(one for one in moved if one.strength is Strength.WEAKENED),
        tuple(one for one in moved if one.strength is not Strength.WEAKENED),
        new=bool(old) and before is None and after is not None,
        reworded=bool(before and after and own_digest(before) != own_digest(after)),
    )


def gone_with(old: Book | None, new: Book, tags: Iterable[str]) -> tuple[str, ...]:
    """Hazards, procedures and alarms that named one of these parts and are not there any more."""
    if old is None:
        return ()
    wanted = set(tags)
    named = {item.by for item in old.mentions if item.to in wanted}
    return tuple(sorted(key for key in named if key in old.records and key not in new.records))
