"""How each part of an expression hands a change on to what it is made of.

A tree is turned into one closure that walks it backwards: it is handed the slope of the result with
respect to the whole tree, and adds to each slot the slope with respect to that slot. The same
closure serves one number of numpy's and arrays of them.

A choice has the slope of the branch taken. Where not all points take the same one, the walk says so,
and likewise where something that is divided by changes its sign between the points.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import cast

import numpy as np

from garboard.calc.arithmetic import Closure, Slots
from garboard.calc.corner_arithmetic import CORNERS
from garboard.calc.evaluate import build, build_comparison
from garboard.calc.slopes import FUNCTION_RULES, OPERATION_RULES, VARIADIC_RULES, Rule, TableSlope
from garboard.calc.tree import (
    Apply,
    Cast,
    Choose,
    Constant,
    Conversion,
    Held,
    Look,
    Negate,
    Node,
    Operation,
    Reference,
    Within,
    slots_of,
)

__all__ = ["Partials", "Push", "follow"]


@dataclass(slots=True)
class Partials:
    """What one walk has found."""

    slopes: dict[int, list[float]] = field(default_factory=dict)
    """By slot, one slope for each place in which it stands; they add up."""
    poles: list[tuple[float, float]] = field(default_factory=list)
    """Slope down to a ratio, and what it divides by, where that changes sign."""
    forks: list[tuple[float, float]] = field(default_factory=list)
    """Slope down to a choice or table, and which way it went, where that is not one way."""
    tables: bool = False
    """Whether a table was read on the way."""
    only_poles: bool = False
    """Only the poles are wanted: a table is not read, its slope counts as 1."""

    def watch(self, kept: list[tuple[float, float]], seed: float, side: float) -> None:
        """Keep a side of zero or of a choice, where it is not the same everywhere."""
        if isinstance(side, np.ndarray) and side.any() and not side.all():
            kept.append((seed, side))

    def add_where(self, taken: float, other: "Partials") -> None:
        """Add what a branch has found, where it was taken."""
        for slot, parts in other.slopes.items():
            self.slopes.setdefault(slot, []).extend(picked(taken, part) for part in parts)
        self.tables = self.tables or other.tables
        self.poles += [(picked(taken, seed), side) for seed, side in other.poles]
        self.forks += [(picked(taken, seed), side) for seed, side in other.forks]


Push = Callable[[Slots, float, Partials], None]


def picked(taken: float, part: float) -> float:
    """A part where a branch is taken, 0 elsewhere; what has no answer there is left behind."""
    return cast("float", np.where(taken, part, 0.0))


def follow(node: Node, matters: Callable[[int], bool]) -> Push | None:  # noqa: PLR0911 - one case for each kind of node
    """The closure that walks a tree backwards.

    Args:
        node: The tree.
        matters: Whether a tolerance lies anywhere upstream of a slot.

    Returns:
        None where nothing that matters stands in it.
    """
    match node:
        case Constant() | Within():
            return None
        case Reference():
            return to_slot(node.slot) if matters(node.slot) else None
        case Held():
            return follow(node.value, matters)
        case Negate():
            return sum_of([(follow(node.operand, matters), -1.0)])
        case Cast():
            return through_cast(node, matters)
        case Choose():
            return through_choice(node, matters)
        case Look():
            return through_table(node, matters)
        case Operation():
            return through_operation(node, matters)
        case Apply():
            return through_function(node, matters)


def to_slot(slot: int) -> Push:
    """Arrive at a slot."""

    def push(_: Slots, seed: float, found: Partials) -> None:
        found.slopes.setdefault(slot, []).append(seed)

    return push


def sum_of(parts: Sequence[tuple[Push | None, float]]) -> Push | None:
    """Through a sum, each part with its sign."""
    moving = [(push, sign) for push, sign in parts if push]
    if not moving:
        return None
    if len(moving) == 1 and moving[0][1] == 1.0:
        return moving[0][0]

    def push(slots: Slots, seed: float, found: Partials) -> None:
        for inner, sign in moving:
            inner(slots, seed if sign == 1.0 else -seed, found)

    return push


def through_cast(node: Cast, matters: Callable[[int], bool]) -> Push | None:
    """Through a cast, with the atmosphere that it adds or takes."""
    parts: list[tuple[Push | None, float]] = [(follow(node.operand, matters), 1.0)]
    if node.conversion is not Conversion.SAME_NUMBER and matters(node.atmosphere):
        sign = 1.0 if node.conversion is Conversion.ADD_ATMOSPHERE else -1.0
        parts.append((to_slot(node.atmosphere), sign))
    return sum_of(parts)


def through_choice(node: Choose, matters: Callable[[int], bool]) -> Push | None:
    """Through the branch that is taken."""
    branches = follow(node.then, matters), follow(node.otherwise, matters)
    if branches == (None, None) and not any(map(matters, slots_of(node.condition))):
        return None
    condition = build_comparison(node.condition, CORNERS)

    def push(slots: Slots, seed: float, found: Partials) -> None:
        holds = np.equal(condition(slots), 1.0)
        found.watch(found.forks, seed, cast("float", holds))
        for taken, inner in zip((holds, ~holds), branches, strict=True):
            if inner:
                own = Partials(only_poles=found.only_poles)
                inner(slots, seed, own)
                found.add_where(cast("float", taken), own)

    return push


def through_operation(node: Operation, matters: Callable[[int], bool]) -> Push | None:
    """Through `+ - * / ^`."""
    left, right = follow(node.left, matters), follow(node.right, matters)
    if node.sign in "+-":
        return sum_of([(left, 1.0), (right, 1.0 if node.sign == "+" else -1.0)])
    values = [build(node.left, CORNERS), build(node.right, CORNERS)]
    if node.sign == "*":
        return through_product(values, left, right)
    pole = None
    if node.sign == "/" and right:
        pole = values[1]
    elif node.sign == "^" and left and not is_above_zero(node.right):
        pole = values[0]
    return through(values, [left, right], OPERATION_RULES[node.sign], pole)


def through_product(
    values: Sequence[Closure], left: Push | None, right: Push | None
) -> Push | None:
    """Through a product, each factor with the other as its slope."""
    parts = [
        (push, other) for push, other in zip((left, right), reversed(values), strict=True) if push
    ]
    if not parts:
        return None

    def push(slots: Slots, seed: float, found: Partials) -> None:
        for inner, other in parts:
            inner(slots, seed * other(slots), found)

    return push


def is_above_zero(exponent: Node) -> bool:
    """Whether a power has no pole at zero."""
    return isinstance(exponent, Constant) and exponent.value >= 0


def through(
    values: Sequence[Closure],
    pushes: Sequence[Push | None],
    rules: Sequence[Rule],
    pole: Closure | None = None,
) -> Push | None:
    """Through a function, by the slope in each of its arguments."""
    moving = [(push, rule) for push, rule in zip(pushes, rules, strict=True) if push]
    if not moving:
        return None

    def push(slots: Slots, seed: float, found: Partials) -> None:
        known = [value(slots) for value in values]
        if pole:
            found.watch(found.poles, seed, pole(slots) > 0)
        for inner, rule in moving:
            inner(slots, seed * rule(*known), found)

    return push


def through_function(node: Apply, matters: Callable[[int], bool]) -> Push | None:
    """Through a function of the language."""
    pushes = [follow(part, matters) for part in node.arguments]
    values = [build(part, CORNERS) for part in node.arguments]
    pole = None
    if node.function == "free_air":
        pole = values[2]
    elif node.function == "tan":
        angle = values[0]
        pole = lambda slots: cast("float", np.cos(angle(slots)))  # noqa: E731 - one of two poles
    rules = FUNCTION_RULES.get(node.function)
    if rules is None:
        slope_in = VARIADIC_RULES[node.function]
        rules = [slope_in(at) for at in range(len(values))]
    return through(values, pushes, rules, pole)


def through_table(node: Look, matters: Callable[[int], bool]) -> Push | None:
    """Through a table. Where one argument alone moves, going up and down along it is a fork."""
    pushes = [follow(part, matters) for part in node.operands]
    values = [build(part, CORNERS) for part in node.operands]
    table = TableSlope(lambda *known: node.read(known).results[node.result])
    moving = [at for at, push in enumerate(pushes) if push]
    plain = through(values, pushes, [partial(table.in_argument, at) for at in range(len(values))])
    if plain is None:
        return None

    def push(slots: Slots, seed: float, found: Partials) -> None:
        found.tables = True
        if found.only_poles:
            for inner in filter(None, pushes):
                inner(slots, seed, found)
            return
        plain(slots, seed, found)
        if len(moving) == 1:
            known = [value(slots) for value in values]
            found.watch(found.forks, seed, table.rises(moving[0], known))

    return push
