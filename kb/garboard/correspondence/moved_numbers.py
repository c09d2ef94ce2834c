"""Numbers before and after, with what they are held against and how much room is left.

Margins are those at the worst corner, in per cent of the limit, as the handbook judges them.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from garboard.book import Book
from garboard.calc.show import show_number
from garboard.calc.value import Value
from garboard.records.demand import Demand
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
    """
    found = [each for address in addresses for each in _rows(old, new, address)]
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


def _rows(old: Book | None, new: Book, address: str) -> list[MovedNumber]:
    then = old.values.get(address) if old else None
    now = new.values.get(address)
    if then is None and now is None:
        return []
    label = (now or then).label if (now or then) else ""  # type: ignore[union-attr]
    plain = MovedNumber(
        address,
        label,
        then.text if then else "",
        now.text if now else "gone",
        _change(then, now),
        guess=rests_on_guess(new, address) if now else "",
    )
    demands = new.demands.get(address, ()) or (old.demands.get(address, ()) if old else ())
    earlier = old.demands.get(address, ()) if old else ()
    return [
        _held(plain, one, earlier, still=one in new.demands.get(address, ())) for one in demands
    ] or [plain]


def _held(
    plain: MovedNumber, demand: Demand, earlier: tuple[Demand, ...], *, still: bool
) -> MovedNumber:
    """A number with one limit, and the margins to it."""
    asked = demand.requirement
    same = next((one for one in earlier if one.requirement.text == asked.text), None) or next(
        (one for one in earlier if one.sign == demand.sign), None
    )
    sources = ", ".join(f"{one.source} {one.clause}".strip() for one in asked.sources)
    gone = "" if still else " (asked before, not any more)"
    return MovedNumber(
        plain.address,
        plain.label,
        plain.before,
        plain.after,
        plain.change,
        demand.words + gone,
        sources or "no source recorded",
        same.requirement.margin_percent if same else None,
        asked.margin_percent if still else None,
        str(asked.verdict) if still else "",
        plain.guess,
    )


def _change(then: Value | None, now: Value | None) -> str:
    """`+3 bar, +20 %`; empty where it cannot be told or is nothing."""
    if then is None or now is None or then.si is None or now.si is None or then.type != now.type:
        return ""
    step = now.unit.from_si(now.si) - now.unit.from_si(then.si)
    if then.text == now.text and abs(step) <= 1e-9 * max(abs(now.unit.from_si(now.si)), 1e-12):
        return ""
    unit = now.unit.text.replace("(g)", "").replace("(a)", "").replace("degC", "K")
    words = f"{_tidy(step)} {unit}".rstrip()
    base = now.unit.from_si(then.si)
    share = (
        ""
        if (now.unit.shift and unit == "K") or not base
        else f", {_signed(100 * step / abs(base))} %"
    )
    return f"{'+' if step > 0 else ''}{words}{share}"


def _signed(number: float) -> str:
    return f"{'+' if number > 0 else ''}{show_number(number, 2)}"


def _tidy(step: float) -> str:
    """A difference with at most three significant digits, without noughts that say nothing."""
    text = show_number(step, 3)
    return text.rstrip("0").rstrip(".") if "." in text and "e" not in text else text


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
