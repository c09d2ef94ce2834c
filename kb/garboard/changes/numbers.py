"""Every value whose shown text or bits differ between two books, that appeared, or that went."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from garboard.book import Book
from garboard.calc.show import show_range
from garboard.calc.value import Value
from garboard.changes.comparison import Limit, Number, Sort
from garboard.changes.differences import change_of, kinds_differ, percent_of

__all__ = ["bits_of", "number_of", "numbers_moved", "on_both_sides"]

HAIR = 1e-9
"""Relative: what a float cannot be held to."""
LAST_FIGURES = "only in figures that no page shows"


def numbers_moved(old: Book, new: Book, limits: Iterable[Limit]) -> list[Number]:
    """Every number that is not as it was, the one with the most margin lost first.

    Args:
        old: The older book.
        new: The newer one.
        limits: Requirements that are not as they were, the worst first.
    """
    held: dict[str, list[str]] = {}
    ranks: dict[str, int] = {}
    for rank, one in enumerate(limits):
        for address in one.values:
            held.setdefault(address, []).append(one.key)
            ranks.setdefault(address, rank)
    found = []
    for address in {**new.values, **old.values}:
        number = number_of(address, old.values.get(address), new.values.get(address))
        if number is not None:
            keys = held.get(address) or held.get(new.source_of(address), [])
            held_to = replace(number, limits=tuple(keys))
            found.append((ranks.get(address, len(ranks) + held_to.inner), held_to))
    found.sort(
        key=lambda one: (
            one[1].sort in (Sort.NEW, Sort.GONE),  # what moved comes before what came or went
            one[0],
            _weight(one[1], old.values, new.values),
            one[1].address,
        )
    )
    return [number for _, number in found]


def bits_of(value: Value) -> tuple[object, ...]:
    """All that a value is, whatever unit and digits it is shown in."""
    return value.si, value.low, value.high, value.type.dimension, value.type.kind


def only_last_figures(before: Value, after: Value) -> bool:
    """Whether two values differ in nothing but the last figures of a float."""
    pairs = ((before.si, after.si), (before.low, after.low), (before.high, after.high))
    return (before.text, show_range(before)) == (after.text, show_range(after)) and all(
        one is not None
        and other is not None
        and abs(one - other) <= HAIR * max(abs(one), abs(other))
        for one, other in pairs
    )


def number_of(address: str, before: Value | None, after: Value | None) -> Number | None:
    """What became of one value; None where nothing differs."""
    found = on_both_sides(address, before, after)
    return None if found is None or found.sort is Sort.STILL else found


def on_both_sides(address: str, before: Value | None, after: Value | None) -> Number | None:
    """One value as it was and as it is, whether or not it differs; None where it is on neither side."""
    known = after or before
    if known is None:
        return None
    if before is None or after is None:
        return Number(
            address=address,
            label=known.label,
            sort=Sort.NEW if before is None else Sort.GONE,
            given=known.given,
            before=before.text if before else "",
            after=after.text if after else "",
            range_before=show_range(before) if before else "",
            range_after=show_range(after) if after else "",
        )
    sort = _sort(before, after)
    noise = sort is Sort.MOVED and only_last_figures(before, after)
    return Number(
        address=address,
        label=known.label,
        sort=sort,
        given=known.given,
        before=before.text,
        after=after.text,
        range_before=show_range(before),
        range_after=show_range(after),
        change="" if noise else change_of(before, after),
        percent="" if noise else percent_of(before, after),
        note=LAST_FIGURES if noise else _note(before, after),
    )


def _sort(before: Value, after: Value) -> Sort:
    """What became of a value that stands on both sides."""
    if bits_of(before) != bits_of(after):
        return Sort.MOVED
    return Sort.STILL if before.text == after.text else Sort.REWRITTEN


def _note(before: Value, after: Value) -> str:
    if after.si is None and after.fault:
        return after.fault.text
    words = kinds_differ(before, after)
    if not words and before.si == after.si and bits_of(before) != bits_of(after):
        return "only how sure it is differs"
    return words


def _weight(
    number: Number, old: Mapping[str, Value], new: Mapping[str, Value]
) -> tuple[int, float]:
    """Not computed any more, then by how much it moved, then new, gone, written otherwise."""
    before, after = old.get(number.address), new.get(number.address)
    if number.sort is not Sort.MOVED or before is None or after is None:
        order = (Sort.NEW, Sort.GONE, Sort.REWRITTEN)
        return 2 + order.index(number.sort), 0.0
    if before.si is None or after.si is None:
        return 0, 0.0
    size = max(abs(before.si), abs(after.si))
    return 1, -abs(after.si - before.si) / size if size else 0.0
