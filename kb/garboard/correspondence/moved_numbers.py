"""Numbers before and after, with what they are held against and how much room is left.

Margins are those at the worst corner, in per cent of the limit, as the handbook judges them.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from garboard.book import Book
from garboard.calc.value import Requirement, Value
from garboard.changes.differences import change_of, percent_of
from garboard.changes.requirements import Judged, pair_requirements
from garboard.views.ranges import percent_down

__all__ = ["MovedNumber", "moved_numbers", "rests_on_guess"]

ASSUMED = "assumed"


@dataclass(frozen=True, slots=True)
class MovedNumber:
    """One number, with one limit that it is held against."""

    address: str
    label: str
    before: str
    """As shown; empty where there was none."""
    after: str
    """As shown; `gone` where there is none any more."""
    change: str
    """In its unit and in per cent; empty where nothing moved or cannot be told."""
    limit: str = ""
    """`at least 1`; empty where nothing is asked of it."""
    source: str = ""
    """Of the limit."""
    margin_before: float | None = None
    """At the worst corner [per cent of the limit]."""
    margin_after: float | None = None
    verdict: str = ""
    """How the requirement stands today."""
    guess: str = ""
    """What it is in truth: assumed, or resting on what is; empty where neither."""

    @property
    def margin_lost(self) -> float:
        """How much room is gone [points of per cent]; what is not known counts as nothing."""
        if self.margin_before is None or self.margin_after is None:
            return 0.0
        return self.margin_before - self.margin_after

    @property
    def moved(self) -> bool:
        """Whether it is another number than before."""
        return bool(self.before) and self.before != self.after

    def margin(self, side: float | None) -> str:
        """A margin as shown."""
        return "not known" if side is None else percent_down(side)


def moved_numbers(old: Book | None, new: Book, addresses: Iterable[str]) -> tuple[MovedNumber, ...]:
    """Numbers before and after, the one that lost most margin first.

    Args:
        old: As it was; None where nothing is known of that.
        new: As it stands.
        addresses: Of the numbers that are looked at.

    Returns:
        A row for each requirement that one of them enters, and one for each that nothing is asked of.
    """
    looked = dict.fromkeys(addresses)
    plain = {one: number for one in looked if (number := _plain(old, new, one))}
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


def _plain(old: Book | None, new: Book, address: str) -> MovedNumber | None:
    """A number, whatever it is held against; None where neither book has it."""
    then = old.values.get(address) if old else None
    now = new.values.get(address)
    known = now or then
    if known is None:
        return None
    return MovedNumber(
        address,
        known.label,
        then.text if then else "",
        now.text if now else "gone",
        _change(then, now),
        guess=rests_on_guess(new, address) if now else "",
    )


def _held(old: Book | None, new: Book, plain: Mapping[str, MovedNumber]) -> Iterator[MovedNumber]:
    """A row for each requirement, at the number that it says something of, or by itself."""
    said = {**_says(old, plain), **_says(new, plain)}
    before = old.network.requirements if old else ()
    for pair in pair_requirements(before, new.network.requirements):
        known = pair.after or pair.before
        if known is None or not any(one in plain for one in known.uses):
            continue
        address, limit = said.get((known.block, known.text), ("", ""))
        number = plain.get(address) or _expression(pair, known)
        sources = ", ".join(f"{one.source} {one.clause}".strip() for one in known.sources)
        yield replace(
            number,
            limit=(limit or f"as in {known.text}")
            + ("" if pair.after else " (not asked any more)"),
            source=sources or "no source recorded",
            margin_before=pair.before.margin_percent if pair.before else None,
            margin_after=pair.after.margin_percent if pair.after else None,
            verdict=str(pair.after.verdict) if pair.after else "",
        )


def _says(
    book: Book | None, plain: Mapping[str, MovedNumber]
) -> dict[tuple[str, str], tuple[str, str]]:
    """For each requirement the number that it says something of, the worked one first."""
    found: dict[tuple[str, str], tuple[str, str]] = {}
    for address, them in book.demands.items() if book else ():
        value = book.values.get(address) if book else None
        for one in them if address in plain else ():
            key = (one.requirement.block, one.requirement.text)
            if key not in found or (value and not value.given):
                found[key] = (address, one.words)
    return found


def _expression(pair: Judged, known: Requirement) -> MovedNumber:
    """The left side of a requirement that holds more than one name."""
    before, after = pair.before, pair.after
    return MovedNumber(
        known.block,
        known.text,
        before.left if before else "",
        after.left if after else "gone",
        "",
    )


def _change(then: Value | None, now: Value | None) -> str:
    """`+3 bar`, `+0.75, +100 %`; empty where it cannot be told or is nothing."""
    if then is None or now is None:
        return ""
    return ", ".join(filter(None, (change_of(then, now), percent_of(then, now))))


def rests_on_guess(book: Book, address: str) -> str:
    """Whether a number is assumed, unsourced, or rests on such a one; in words."""
    value = book.values[address]
    if any(one.source == ASSUMED for one in value.sources):
        return "assumed"
    waiting, seen = list(value.uses), set(value.uses)
    guesses = []
    while waiting:
        one = waiting.pop()
        found = book.values.get(one)
        if found is None:
            continue
        if any(each.source == ASSUMED for each in found.sources):
            guesses.append(one)
        fresh = [each for each in found.uses if each not in seen]
        seen.update(fresh)
        waiting += fresh
    if guesses:
        return f"rests on what is assumed: {', '.join(sorted(guesses)[:3])}"
    return "no source recorded" if value.given and not value.sources and "." in address else ""
