"""Every requirement that is not as it was: how it stands, and how much of its margin is gone."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from garboard.book import Book
from garboard.calc.fault import CalcFault
from garboard.calc.quantity import Quantity, read_quantity
from garboard.calc.value import Requirement, Verdict
from garboard.changes.comparison import Limit
from garboard.changes.differences import show_change
from garboard.changes.sequences import pair_up
from garboard.errors import Where

__all__ = ["Judged", "limits_moved", "margin_words", "pair_requirements"]

FALLS = (Verdict.HOLDS, Verdict.NOMINAL, Verdict.FAILS, Verdict.UNKNOWN)
"""From the best on."""


class Judged(NamedTuple):
    """One requirement before and after; None where it is not there."""

    before: Requirement | None
    after: Requirement | None


def pair_requirements(old: Iterable[Requirement], new: Iterable[Requirement]) -> Iterator[Judged]:
    """Pair the requirements of two books, block by block."""
    rows: tuple[dict[str, list[Requirement]], ...] = (defaultdict(list), defaultdict(list))
    for row, found in zip(rows, (old, new), strict=True):
        for one in found:
            row[one.block].append(one)
    for block in dict.fromkeys((*rows[1], *rows[0])):
        here, there = rows[0].get(block, []), rows[1].get(block, [])
        for pair in pair_up([one.text for one in here], [one.text for one in there]):
            yield Judged(
                None if pair.before is None else here[pair.before],
                None if pair.after is None else there[pair.after],
            )


def limits_moved(old: Book, new: Book) -> list[Limit]:
    """Every requirement that is new, is gone, is worded otherwise, or stands otherwise."""
    pairs = pair_requirements(old.network.requirements, new.network.requirements)
    found = [_limit(pair) for pair in pairs if _differs(pair)]
    return sorted(
        found,
        key=lambda one: (
            -one.worse,
            not (one.before and one.after),  # what stands otherwise comes before what came or went
            -(one.share or 0.0),
            one.key,
            one.before,
        ),
    )


def margin_words(one: Requirement) -> str:
    """A verdict with its margin: `holds at the worst corner, margin 3`."""
    return (
        str(one.verdict)
        if one.verdict is Verdict.UNKNOWN
        else f"{one.verdict}, margin {one.margin}"
    )


def _differs(pair: Judged) -> bool:
    if pair.before is None or pair.after is None:
        return True
    return _told(pair.before) != _told(pair.after)


def _told(one: Requirement) -> tuple[object, ...]:
    return (
        " ".join(one.text.split()),
        one.verdict,
        one.left,
        one.right,
        one.margin,
        one.margin_percent,
    )


def _limit(pair: Judged) -> Limit:
    before, after = pair
    known = after or before
    assert known is not None  # noqa: S101 - a pair has one side at least
    lost, share = _lost(before, after)
    sources = "; ".join(f"{one.source} {one.clause}".strip() for one in known.sources)
    uses = (*(before.uses if before else ()), *(after.uses if after else ()))
    return Limit(
        block=known.block,
        before=before.text if before else "",
        after=after.text if after else "",
        stood=str(before.verdict) if before else "",
        stands=str(after.verdict) if after else "",
        margin_before=before.margin if before else "",
        margin_after=after.margin if after else "",
        lost=lost,
        worse=_worse(before, after),
        share=share,
        asks=" ".join(part for part in (known.why, f"[{sources}]" if sources else "") if part),
        values=tuple(dict.fromkeys(uses)),
    )


def _worse(before: Requirement | None, after: Requirement | None) -> int:
    """How far the verdict fell; a requirement that is gone counts as one that is not known to hold."""
    if before is None:
        return 0
    fell = FALLS.index(after.verdict) if after else len(FALLS) - 1
    return fell - FALLS.index(before.verdict)


def _lost(before: Requirement | None, after: Requirement | None) -> tuple[str, float | None]:
    """What of the margin is gone, in words and in per cent."""
    if before is None or after is None:
        return "", None
    had, has = _read(before.margin), _read(after.margin)
    if had is None or has is None or had.type != has.type or before.margin == after.margin:
        return "", None
    gone = had.si - has.si
    text = show_change(gone, has.unit, whole=not has.unit.text).removeprefix("+")
    if before.margin_percent is not None and after.margin_percent is not None:
        return text, before.margin_percent - after.margin_percent
    return text, 100 * gone / abs(had.si) if had.si else None


def _read(margin: str) -> Quantity | None:
    try:
        return read_quantity(margin, Where(""))
    except CalcFault:
        return None
