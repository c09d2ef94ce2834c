"""Two rows of lines held together: what stayed, went, came, was reworded, or stands elsewhere now.

Which of two rows is called the old one changes nothing but the names: a pair is a pair in both
directions.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from garboard.changes.wording import alike

__all__ = ["Pair", "pair_up"]

SAME_LINE = 0.6
"""How much two lines share to be one line, reworded."""


@dataclass(frozen=True, slots=True)
class Pair:
    """One line before and after; the place is None where it is not there."""

    before: int | None
    after: int | None
    moved: bool = False


def pair_up(old: Sequence[str], new: Sequence[str]) -> tuple[Pair, ...]:
    """Pair the lines of two rows.

    Args:
        old: The lines, in order.
        new: The same, later.

    Returns:
        Every line of both exactly once, in the order of the new row; what went first.
    """
    if tuple(new) < tuple(old):
        turned = _paired(list(new), list(old))
        found = [Pair(pair.after, pair.before, pair.moved) for pair in turned]
    else:
        found = _paired(list(old), list(new))
    return tuple(
        sorted(found, key=lambda one: (one.after is not None, one.after or 0, one.before or 0))
    )


def _paired(old: list[str], new: list[str]) -> list[Pair]:
    pairs: list[Pair] = []
    left: list[int] = []
    right: list[int] = []
    gaps: list[tuple[list[int], list[int]]] = []
    matcher = SequenceMatcher(None, old, new, autojunk=False)
    for word, i1, i2, j1, j2 in matcher.get_opcodes():
        if word == "equal":
            pairs += [Pair(i, j) for i, j in zip(range(i1, i2), range(j1, j2), strict=True)]
        else:
            gaps.append((list(range(i1, i2)), list(range(j1, j2))))
    for here, there in gaps:
        left += here
        right += there
    moved = _elsewhere(old, new, left, right)
    pairs += moved
    taken = {one.before for one in moved}, {one.after for one in moved}
    for here, there in gaps:
        free = [i for i in here if i not in taken[0]], [j for j in there if j not in taken[1]]
        pairs += _reworded(old, new, *free)
    return pairs


def _elsewhere(old: list[str], new: list[str], left: list[int], right: list[int]) -> list[Pair]:
    """Lines of the same words that stand in another place."""
    found = []
    for words in dict.fromkeys(old[i] for i in left):
        here = [i for i in left if old[i] == words]
        there = [j for j in right if new[j] == words]
        found += [Pair(i, j, moved=True) for i, j in zip(here, there, strict=False)]
    return found


def _reworded(old: list[str], new: list[str], here: list[int], there: list[int]) -> list[Pair]:
    """The most alike first; what is like nothing went or came."""
    close = sorted(
        ((alike(old[i], new[j]), i, j) for i in here for j in there),
        key=lambda one: (-one[0], one[1] + one[2], one[1]),
    )
    pairs: dict[int, int] = {}
    for share, i, j in close:
        if share >= SAME_LINE and i not in pairs and j not in pairs.values():
            pairs[i] = j
    gone = [i for i in here if i not in pairs]
    come = [j for j in there if j not in pairs.values()]
    found = [Pair(i, j) for i, j in pairs.items()]
    return [*found, *(Pair(i, None) for i in gone), *(Pair(None, j) for j in come)]
