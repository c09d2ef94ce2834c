"""Judge a requirement: at the values as given, and at the worst corner of all tolerances.

Both sides are taken together, at the same corner: a warm receiver holds less and needs less.
"""

from dataclasses import dataclass

import numpy as np

from garboard.calc.arithmetic import HAIR
from garboard.calc.fault import Span
from garboard.calc.kinds import Type
from garboard.calc.ledger import Formula
from garboard.calc.show import show_against, show_number
from garboard.calc.spread import Spread
from garboard.calc.tree import Operation
from garboard.calc.units import as_difference
from garboard.calc.value import Verdict

__all__ = ["Judgement", "judge"]

RANGE_UNKNOWN = "range unknown"


@dataclass(frozen=True, slots=True)
class Sides:
    """Both sides of a comparison at one point, in SI."""

    left: float
    right: float
    sign: str

    @property
    def margin(self) -> float:
        """How far it holds; negative where it fails. A hair counts as nothing."""
        gap = self.left - self.right if self.sign in (">", ">=") else self.right - self.left
        return 0.0 if abs(gap) <= HAIR * max(abs(self.left), abs(self.right)) else gap

    @property
    def holds(self) -> bool:
        """Whether it holds here."""
        return self.margin > 0 or (self.margin == 0 and self.sign in ("<=", ">="))


@dataclass(frozen=True, slots=True)
class Judgement:
    """How a requirement stands."""

    verdict: Verdict
    left: str
    right: str
    margin: str
    margin_percent: float | None
    """Of the limit, at the worst corner."""


def judge(sign: str, left: Formula, right: Formula, spread: Spread, together: int = 0) -> Judgement:
    """Judge a comparison.

    Args:
        sign: `<`, `<=`, `>` or `>=`.
        left: Its left side, worked out at the values as given.
        right: Its right side.
        spread: The ranges of what they are made of.
        together: Roots of the block, a bit each.
    """
    here = Sides(left.si, right.si, sign)
    worst = find_worst(left, right, here, spread, together)
    unit, digits = left.unit, left.told.digits
    whole = left.whole and right.whole
    texts = show_against(here.left, here.right, unit, digits, (left.whole, right.whole))
    if worst is None:
        verdict = Verdict.NOMINAL if here.holds else Verdict.FAILS
        return Judgement(verdict, *texts, RANGE_UNKNOWN, None)
    verdict = Verdict.HOLDS if worst.holds else Verdict.NOMINAL
    if not here.holds:
        verdict = Verdict.FAILS
    scale = as_difference(unit)
    margin = show_number(worst.margin / scale.scale, digits, scale.text, whole=whole)
    thermometer = unit.shift != 0
    limit = worst.left if stands_left(left, right, spread) else worst.right
    percent = None if thermometer or not limit else 100 * worst.margin / abs(limit)
    return Judgement(verdict, *texts, margin, percent)


def stands_left(left: Formula, right: Formula, spread: Spread) -> bool:
    """Whether the limit is the left side: the one that is sure, or else the one that is a number.

    `require 12 > a` says what `require a < 12` says and has the same margin in per cent.
    """
    upstream = spread.ledger.upstream
    unsure = bool(upstream[left.slot]), bool(upstream[right.slot])
    if unsure[0] != unsure[1]:
        return unsure[1]
    return not left.needs and bool(right.needs)


def find_worst(
    left: Formula, right: Formula, here: Sides, spread: Spread, together: int
) -> Sides | None:
    """Both sides at the corner where the margin is least; None where some corner has no answer."""
    nowhere = Span(0, 0)
    sides = left.reference(nowhere), right.reference(nowhere)
    gap = Operation(Type(left.node.type.dimension), nowhere, "-", *sides)
    if not spread.mask_of(gap):
        return here
    lefts, rights = spread.samples(sides, gap, together)
    margins = lefts - rights if here.sign in (">", ">=") else rights - lefts
    if not np.isfinite(margins).all():
        return None
    at = int(margins.argmin())
    return Sides(float(lefts[at]), float(rights[at]), here.sign)
