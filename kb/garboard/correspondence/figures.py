"""Numbers before and after, each beside what it is held against and how much room is left.

What became of a number is told in `changes/numbers.py`; here stands one row for each limit of it. Margins
are those at the worst corner, in per cent of the limit, as the handbook judges them.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from garboard.book import Book
from garboard.calc.value import ASSUMED, Citation, Requirement
from garboard.changes.comparison import Number, Sort
from garboard.changes.numbers import on_both_sides
from garboard.changes.requirements import Judged, pair_requirements
from garboard.rules.upstream import feeding
from garboard.views.ranges import percent_down

__all__ = ["Figure", "figures_of"]

UNSOURCED = "no source recorded"
NOTHING_ASKED = Judged(None, None)
NAMED = 3
"""Assumed numbers that are named where one rests on more."""


@dataclass(frozen=True, slots=True)
class Figure:
    """One number, with one limit that it is held against."""

    number: Number
    limit: str = ""
    """`at least 1`; empty where nothing is asked of it."""
    held: Judged = NOTHING_ASKED
    """The requirement, before and after."""
    guess: str = ""
    """What the number is in truth: assumed, or resting on what is; empty where neither."""

    @property
    def address(self) -> str:
        """Of the number; of the block for an expression."""
        return self.number.address

    @property
    def label(self) -> str:
        """What it is, in words."""
        return self.number.label

    @property
    def name(self) -> str:
        """The address with what it is."""
        return self.address + (f", {self.label}" if self.label else "")

    @property
    def before(self) -> str:
        """As shown; empty where there was none."""
        return self.number.before

    @property
    def after(self) -> str:
        """As shown; `gone` where there is none any more."""
        return self.number.after or "gone"

    @property
    def change(self) -> str:
        """In its unit and in per cent; empty where nothing moved or cannot be told."""
        return ", ".join(filter(None, (self.number.change, self.number.percent)))

    @property
    def moved(self) -> bool:
        """Whether it is shown as another number than before."""
        return bool(self.before) and self.before != self.after

    @property
    def source(self) -> str:
        """Of the limit."""
        known = self.held.after or self.held.before
        return _cited(known.sources) if known else ""

    @property
    def verdict(self) -> str:
        """How the requirement stands today; empty where it is not asked any more."""
        return str(self.held.after.verdict) if self.held.after else ""

    @property
    def margin_before(self) -> float | None:
        """At the worst corner [per cent of the limit]."""
        return self.held.before.margin_percent if self.held.before else None

    @property
    def margin_after(self) -> float | None:
        """The same today."""
        return self.held.after.margin_percent if self.held.after else None

    @property
    def margin_lost(self) -> float:
        """How much room is gone [points of per cent]; what is not known counts as nothing."""
        if self.margin_before is None or self.margin_after is None:
            return 0.0
        return self.margin_before - self.margin_after

    def margin(self, side: float | None) -> str:
        """A margin as shown."""
        return "not known" if side is None else percent_down(side)


def figures_of(old: Book | None, new: Book, addresses: Iterable[str]) -> tuple[Figure, ...]:
    """Numbers before and after, the one that lost most margin first.

    Args:
        old: As it was; None where nothing is known of that.
        new: As it stands.
        addresses: Of the numbers that are looked at.

    Returns:
        A row for each requirement that one of them enters, and one for each that nothing is asked of.
    """
    looked = dict.fromkeys(addresses)
    plain = {one: figure for one in looked if (figure := _plain(old, new, one))}
    held = list(_held(old, new, plain))
    asked = {one.address for one in held}
    found = [*held, *(one for address, one in plain.items() if address not in asked)]
    order = sorted(
        found,
        key=lambda one: (
            -max(one.margin_lost, 0.0),
            not (one.moved and one.limit),
            not one.moved,
            not one.limit,
            one.address,
        ),
    )
    return tuple(order)


def _plain(old: Book | None, new: Book, address: str) -> Figure | None:
    """A number, whatever it is held against; None where neither book has it."""
    before = old.values.get(address) if old else None
    after = new.values.get(address)
    number = on_both_sides(address, before, after)
    if number is None:
        return None
    return Figure(number, guess=_rests_on_guess(new, address) if after else "")


def _held(old: Book | None, new: Book, plain: Mapping[str, Figure]) -> Iterator[Figure]:
    """A row for each requirement, at the number that it says something of, or by itself."""
    said = {**_says(old, plain), **_says(new, plain)}
    before = old.network.requirements if old else ()
    for pair in pair_requirements(before, new.network.requirements):
        known = pair.after or pair.before
        if known is None or not any(one in plain for one in known.uses):
            continue
        address, limit = said.get((known.block, known.text), ("", ""))
        figure = plain.get(address) or Figure(_expression(pair, known))
        words = limit or f"as in {known.text}"
        yield replace(
            figure, limit=words + ("" if pair.after else " (not asked any more)"), held=pair
        )


def _says(book: Book | None, plain: Mapping[str, Figure]) -> dict[tuple[str, str], tuple[str, str]]:
    """For each requirement the number that it says something of, the worked one first."""
    found: dict[tuple[str, str], tuple[str, str]] = {}
    for address, them in book.demands.items() if book else ():
        value = book.values.get(address) if book else None
        for one in them if address in plain else ():
            key = (one.requirement.block, one.requirement.text)
            if key not in found or (value and not value.given):
                found[key] = (address, one.words)
    return found


def _expression(pair: Judged, known: Requirement) -> Number:
    """The left side of a requirement that holds more than one name."""
    return Number(
        address=known.block,
        label=known.text,
        sort=Sort.MOVED,
        given=False,
        before=pair.before.left if pair.before else "",
        after=pair.after.left if pair.after else "",
    )


def _cited(sources: Iterable[Citation]) -> str:
    return ", ".join(f"{one.source} {one.clause}".strip() for one in sources) or UNSOURCED


def _rests_on_guess(book: Book, address: str) -> str:
    """Whether a number is assumed, unsourced, or rests on such a one; in words."""
    value = book.values[address]
    if value.assumed:
        return ASSUMED
    guesses = sorted(one.address for one in feeding(book, value.uses) if one.assumed)
    if guesses:
        return f"rests on what is assumed: {', '.join(guesses[:NAMED])}"
    return UNSOURCED if value.given and not value.sources and "." in address else ""
