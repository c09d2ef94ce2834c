"""What a criterion asks of a reading: the bounds that its words, quantities and addresses set.

`SA-AR-001.test held 30 min`, `at least 12 bar(g)`, `29 bar(g) to 31 bar(g)`. A quantity without a
word that says on which side, and without a tolerance, sets no bound: it is left to a person.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from garboard.calc.fault import CalcFault
from garboard.calc.kinds import PLAIN_NUMBER, TIME, Type
from garboard.calc.quantity import read_quantity
from garboard.calc.value import Value
from garboard.errors import Where
from garboard.names import ADDRESS

__all__ = ["LINK", "Bound", "Number", "find_bounds", "find_numbers", "read_number"]

QUANTITY = r"(?<![\w.])-?\d+(?:\.\d+)? [A-Za-z%][^\s,;]*(?: (?:\+/-|±) \d+(?:\.\d+)?(?: \S+)?)?"
LINK = re.compile(rf"\[[^\[\]]*\]\(value:({ADDRESS.pattern})(?:\?[^()]*(?:\([^()]*\))?)?\)")
NUMBER = re.compile(rf"(?P<address>{ADDRESS.pattern})|(?P<quantity>{QUANTITY})")
LOWER_SIDE = ("at least", "min", "minimum", ">", ">=", "≥", "above", "over", "more than")
UPPER_SIDE = ("at most", "max", "maximum", "<", "<=", "≤", "below", "under", "less than")
TURNS = ("above", "over", "more than", "below", "under", "less than", "higher than", "lower than")
"""Words that a `no` or `not` turns round: not below is at least."""
SIDE = re.compile(
    rf"(?P<denied>\b(?:not|no) )?(?P<word>{'|'.join(map(re.escape, (*LOWER_SIDE, *UPPER_SIDE)))})"
    r"(?: of)?$",
    re.IGNORECASE,
)
DENIED = re.compile(r"\b(?:no|not|none|never|nothing|without|unless)\b", re.IGNORECASE)
"""Elsewhere in the clause it may turn the side as well: left to a person."""
OR_MORE = re.compile(r" (?:or|and) (?:more|above|over|up|higher)\b", re.IGNORECASE)
OR_LESS = re.compile(r" (?:or|and) (?:less|below|under|lower)\b", re.IGNORECASE)
UP_TO = re.compile(r"\s*(?:to|and|-|\u2013)\s*")


@dataclass(frozen=True, slots=True)
class Number:
    """A number of a criterion or a reading."""

    low: float
    high: float
    type: Type
    shown: str
    address: str = ""
    """Where it is quoted from; empty where it is typed."""


@dataclass(frozen=True, slots=True)
class Bound:
    """Between what a reading must lie."""

    low: float | None
    high: float | None
    type: Type
    shown: str
    address: str = ""

    def holds(self, reading: float) -> bool:
        """Whether a reading in SI lies within, to the last bit of what was typed."""
        slack = 1e-9 * abs(reading)
        above = self.low is None or reading >= self.low - slack
        return above and (self.high is None or reading <= self.high + slack)


def read_number(values: Mapping[str, Value], text: str, where: Where) -> Number | None:
    """A quantity or the address of a value; None where it is neither, or not computed."""
    text = LINK.sub(r"\1", text)
    value = values.get(text)
    if value is not None:
        if value.low is None or value.high is None:
            return None
        shown = f"{value.text} +/- {value.tolerance}" if value.tolerance else value.text
        return Number(value.low, value.high, value.type, shown, text)
    try:
        found = read_quantity(text, where)
    except CalcFault:
        return None
    shown = f"{found.shown} +/- {found.tolerance}" if found.tolerance else found.shown
    return Number(found.low, found.high, found.type, shown)


def find_bounds(values: Mapping[str, Value], text: str, where: Where) -> list[Bound]:
    """Every bound that a criterion sets.

    Args:
        values: What the addresses in it stand for.
        text: The criterion as written.
        where: Where it stands.
    """
    text = LINK.sub(r"\1", text)
    numbers = list(_numbers(values, text, where))
    bounds: list[Bound] = []
    end, taken = 0, False
    for place, (start, stop, one) in enumerate(numbers):
        before, behind, end = text[end:start], text[stop:], stop
        following = numbers[place + 1] if place + 1 < len(numbers) else None
        if taken:
            taken = False
        elif following and (bound := _between(one, text[stop : following[0]], following[2])):
            bounds.append(bound)
            taken = True
        elif bound := _bound(one, before, behind):
            bounds.append(bound)
    return bounds


def find_numbers(values: Mapping[str, Value], text: str, where: Where) -> list[Number]:
    """Every number of a criterion that could be held against a reading; how long is none of them.

    Args:
        values: What the addresses in it stand for.
        text: The criterion as written.
        where: Where it stands.
    """
    found = _numbers(values, LINK.sub(r"\1", text), where)
    return [one for _, _, one in found if one.type.dimension not in (TIME, PLAIN_NUMBER.dimension)]


def _numbers(
    values: Mapping[str, Value], text: str, where: Where
) -> Iterator[tuple[int, int, Number]]:
    for found in NUMBER.finditer(text):
        number = read_number(values, found[0], where)
        if number is not None:
            yield found.start(), found.end(), number


def _between(lower: Number, joint: str, upper: Number) -> Bound | None:
    """The bound of `29 bar(g) to 31 bar(g)`."""
    if not UP_TO.fullmatch(joint) or lower.type != upper.type or upper.high < lower.low:
        return None
    return Bound(lower.low, upper.high, lower.type, f"{lower.shown} to {upper.shown}")


def _bound(one: Number, before: str, behind: str) -> Bound | None:
    """The bound that one number sets, by the words around it."""
    clause = re.split(r"[,;.] ", before)[-1].strip()
    side = SIDE.search(clause)
    least = OR_MORE.match(behind) is not None
    most = OR_LESS.match(behind) is not None
    if side:
        word = side["word"].casefold()
        turned = bool(side["denied"]) and word in TURNS
        if DENIED.search(clause[: side.start()]):
            return None
        least, most = (word in LOWER_SIDE) != turned, (word in UPPER_SIDE) != turned
    if least:
        return Bound(one.low, None, one.type, f"at least {one.shown}", one.address)
    if most:
        return Bound(None, one.high, one.type, f"at most {one.shown}", one.address)
    if one.address.endswith(".test"):
        return Bound(one.low, None, one.type, one.shown, one.address)
    if one.low != one.high:
        return Bound(one.low, one.high, one.type, one.shown, one.address)
    return None
