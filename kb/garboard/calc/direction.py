"""Which way a value goes with each of its inputs, proved.

Every part of an expression gets an interval that surely holds it, and one that surely holds its slope
in each input, whatever the inputs are within their tolerances. Where no slope can have both signs,
the value is monotone and its worst cases lie at corners: nothing need be sampled. A count gets the
slopes from nothing to infinity. Where the proof fails nothing is said; it is then for the gradient at
many points to tell.

Source: interval arithmetic, R. E. Moore, Interval Analysis, 1966 (verify before citing).
"""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import cast

from garboard.calc.arithmetic import HAIR, nearest_whole
from garboard.calc.arithmetic import down as whole_below
from garboard.calc.arithmetic import up as whole_above
from garboard.calc.evaluate import FREE_AIR, build
from garboard.calc.ledger import Ledger
from garboard.calc.tree import (
    Apply,
    Cast,
    Choose,
    Compare,
    Constant,
    Conversion,
    Held,
    Look,
    Negate,
    Node,
    Operation,
    Reference,
    Within,
    parts_of,
    slots_of,
)

__all__ = ["Direction", "Directions"]


Interval = tuple[float, float]
ANY_RISE = (0.0, math.inf)
"""The slope of a step upwards."""


@dataclass(frozen=True, slots=True)
class Direction:
    """Where a part of an expression lies, and how it goes with each input."""

    low: float
    high: float
    slopes: dict[int, Interval] = field(default_factory=dict)
    """By number of the input: what its slope surely lies between."""

    @property
    def proved(self) -> bool:
        """Whether every input moves it one way only."""
        return all(low >= 0.0 or high <= 0.0 for low, high in self.slopes.values())

    @property
    def own(self) -> Interval:
        """Where it lies."""
        return self.low, self.high

    @property
    def turned(self) -> "Direction":
        """The same with a minus before it."""
        return Direction(
            -self.high, -self.low, {at: (-b, -a) for at, (a, b) in self.slopes.items()}
        )

    def through(self, own: Interval, slope: Interval) -> "Direction":
        """Through a function, from where that lies and what its slope lies between."""
        return Direction(*own, {at: times(each, slope) for at, each in self.slopes.items()})


class Directions:
    """The directions of the values of one ledger."""

    def __init__(self, ledger: Ledger) -> None:
        self.ledger = ledger
        self.known: dict[int, Direction | None] = {}
        self.inputs = ledger.inputs

    def of(self, node: Node) -> Direction | None:
        """The direction of a value; None where none can be proved.

        Of `a * b` with a between 1 and 2, b between 3 and 4: from 3 to 8, its slope in a from 3 to 4,
        in b from 1 to 2, so that it rises with both.

        Args:
            node: How it is worked out.
        """
        for slot in self.unknown(node):
            self.known[slot] = self.of_slot(slot)
        return self.sure(node)

    def sure(self, node: Node) -> Direction | None:
        """The direction of a value whose slots are all known."""
        try:
            return self.find(node)
        except (ArithmeticError, ValueError, LookupError):
            return None

    def unknown(self, node: Node) -> list[int]:
        """The slots that have to be looked at first, in order: a long chain is no deep one."""
        found: set[int] = set()
        waiting = list(slots_of(node))
        while waiting:
            slot = waiting.pop()
            if slot not in found and slot not in self.known:
                found.add(slot)
                formula = self.ledger.formulas.get(slot)
                if formula and slot not in self.inputs and self.ledger.upstream[slot]:
                    waiting.extend(formula.needs)
        return sorted(found)

    def find(self, node: Node) -> Direction | None:  # noqa: PLR0911 - one case for each kind of node
        """The direction of one part."""
        match node:
            case Constant():
                return Direction(node.value, node.value)
            case Reference():
                return self.known[node.slot]
            case Negate():
                inner = self.find(node.operand)
                return inner.turned if inner else None
            case Held():
                found = self.find(node.value)
                return found if all(map(self.find, node.limits)) else None
            case Within():
                gap = self.gap(node.condition)
                return Direction(1.0, 1.0) if gap and gap.proved else None
            case Choose():
                return self.choose(node)
            case Cast():
                return self.cast(node)
            case _:
                return self.apply(node)

    def of_slot(self, slot: int) -> Direction | None:
        """The direction of a value that stands elsewhere."""
        at = self.inputs.get(slot)
        si = self.ledger.slots[slot]
        if at is not None:
            root = self.ledger.roots[at]
            return Direction(min(root.low, si), max(root.high, si), {at: (1.0, 1.0)})
        if not self.ledger.upstream[slot]:
            return Direction(si, si)
        return self.sure(self.ledger.formulas[slot].node)

    def gap(self, condition: Compare) -> Direction | None:
        """The left side less the right one."""
        left, right = self.find(condition.left), self.find(condition.right)
        return plus(left, right.turned) if left and right else None

    def choose(self, node: Choose) -> Direction | None:
        """The branch that is surely taken, if one is."""
        gap = self.gap(node.condition)
        if gap is None:
            return None
        hair = HAIR * max(abs(self.nominal(node.condition.left)), abs(gap.low), abs(gap.high))
        below, above = gap.high < -hair, gap.low > hair
        if not below and not above:
            return None
        return self.find(
            node.then if below == (node.condition.sign in ("<", "<=")) else node.otherwise
        )

    def nominal(self, node: Node) -> float:
        """A value as it is given."""
        return build(node)(self.ledger.slots)

    def cast(self, node: Cast) -> Direction | None:
        """A value counted from another point."""
        inner = self.find(node.operand)
        air = self.known[node.atmosphere]
        if node.conversion is Conversion.SAME_NUMBER or inner is None or air is None:
            return inner
        adds = node.conversion is Conversion.ADD_ATMOSPHERE
        return plus(inner, air if adds else air.turned)

    def apply(self, node: Operation | Apply | Look) -> Direction | None:
        """An operation or function, from its arguments."""
        found = [self.find(cast("Node", part)) for part in parts_of(node)]
        known = [part for part in found if part]
        if len(known) != len(found):
            return None
        if not any(part.slopes for part in known) and all(part.low == part.high for part in known):
            value = self.nominal(node)
            return Direction(value, value)
        if isinstance(node, Operation):
            return operate(node.sign, *known)
        return call(node.function, known) if isinstance(node, Apply) else None


def times(one: Interval, other: Interval) -> Interval:
    """What the product of two numbers lies between; nothing times anything is nothing."""
    ends = [a * b if a and b else 0.0 for a in one for b in other]
    return min(ends), max(ends)


def joined(parts: Iterable[tuple[dict[int, Interval], Interval]]) -> dict[int, Interval]:
    """Slopes added up, each handed on by a factor."""
    found: dict[int, Interval] = {}
    for slopes, factor in parts:
        for at, slope in slopes.items():
            low, high = times(slope, factor)
            before = found.get(at, (0.0, 0.0))
            found[at] = before[0] + low, before[1] + high
    return found


def operate(sign: str, left: Direction, right: Direction) -> Direction | None:
    """`+ - * / ^`."""
    if sign == "+":
        return plus(left, right)
    if sign == "-":
        return plus(left, right.turned)
    if sign == "*":
        return product(left, right)
    if sign == "/":
        below = inverse(right)
        return product(left, below) if below else None
    return power(left, right.low) if right.low == right.high and not right.slopes else None


def plus(left: Direction, right: Direction) -> Direction:
    """A sum."""
    slopes = joined(((left.slopes, ONE), (right.slopes, ONE)))
    return Direction(left.low + right.low, left.high + right.high, slopes)


def product(left: Direction, right: Direction) -> Direction:
    """A product."""
    slopes = joined(((left.slopes, right.own), (right.slopes, left.own)))
    return Direction(*times(left.own, right.own), slopes)


def inverse(value: Direction) -> Direction | None:
    """One over a value that is surely not zero."""
    if value.low <= 0 <= value.high:
        return None
    low, high = 1 / value.high, 1 / value.low
    steep = low * low, high * high
    return value.through((low, high), (-max(steep), -min(steep)))


def power(base: Direction, exponent: float) -> Direction | None:
    """A power with a fixed exponent, of a base that is surely not below zero."""
    if base.low < 0 or (base.low == 0 and exponent < 0):
        return None
    own = base.low**exponent, base.high**exponent
    steep = [
        exponent * end ** (exponent - 1) if end else ANY_RISE[exponent < 1] for end in base.own
    ]
    return base.through((min(own), max(own)), (min(steep), max(steep)))


def call(function: str, known: list[Direction]) -> Direction | None:
    """A function of the language."""
    first = known[0]
    if function in STEPS:
        rule = STEPS[function]
        return first.through((rule(first.low), rule(first.high)), ANY_RISE)
    if function in SMOOTH:
        value, slope = SMOOTH[function]
        steep = slope(first.low), slope(first.high)
        return first.through((value(first.low), value(first.high)), (min(steep), max(steep)))
    if function == "abs" and (first.low >= 0 or first.high <= 0):
        return first if first.low >= 0 else first.turned
    if function in ("min", "max"):
        pick = min if function == "min" else max
        inputs = {at for part in known for at in part.slopes}
        slopes = {at: hull(part.slopes.get(at, NOTHING) for part in known) for at in inputs}
        return Direction(
            pick(part.low for part in known), pick(part.high for part in known), slopes
        )
    if function == "free_air":
        below = inverse(known[2])
        held = product(product(known[0], known[1]), Direction(FREE_AIR, FREE_AIR))
        return product(held, below) if below else None
    return None


def hull(several: Iterable[Interval]) -> Interval:
    """What holds several intervals."""
    lows, highs = zip(*several, strict=True)
    return min(lows), max(highs)


ONE = (1.0, 1.0)
NOTHING = (0.0, 0.0)
STEPS: dict[str, Callable[[float], float]] = {
    "floor": whole_below,
    "ceil": whole_above,
    "round": nearest_whole,
}
SMOOTH: dict[str, tuple[Callable[[float], float], Callable[[float], float]]] = {
    "sqrt": (math.sqrt, lambda at: 0.5 / math.sqrt(at) if at else math.inf),
    "exp": (math.exp, math.exp),
    "log": (math.log, lambda at: 1 / at),
    "log10": (math.log10, lambda at: 1 / (at * math.log(10.0))),
}
"""Functions that rise everywhere: the value and its slope, which goes one way too."""
