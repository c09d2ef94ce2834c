"""Turn a tree into closures over a flat list of values, and run them.

One builder serves floats and arrays; the number library is its only parameter. A closure reads its
inputs by their place in the list, so that working a block out again looks up no names.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import assert_never

from garboard.calc.arithmetic import FLOATS, Arithmetic, Closure, LimitPassed, Slots, Uneven
from garboard.calc.fault import CalcFault, Family, Line
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
)
from garboard.errors import OutsideValidity

__all__ = ["FREE_AIR", "Program", "build", "work_out"]

FREE_AIR = 273.15 / 101_325.0
"""Kelvin over pascal at the reference state of free air, 0 degC and 101 325 Pa."""


@dataclass(frozen=True, slots=True)
class Program:
    """Steps in the order in which they are worked out."""

    steps: tuple[tuple[int, Closure], ...]
    """Slot and closure."""

    def run(self, slots: Slots) -> None:
        """Work every step out, in place."""
        for slot, step in self.steps:
            slots[slot] = step(slots)


def build(node: Node, numbers: Arithmetic = FLOATS) -> Closure:  # noqa: C901, PLR0911 - one case for each kind of node
    """A closure that works a node out.

    Args:
        node: The tree.
        numbers: Floats, or arrays.
    """
    match node:
        case Constant():
            value = numbers.number(node.value)
            return lambda _: value
        case Reference():
            slot = node.slot
            return lambda slots: slots[slot]
        case Negate():
            operand = build(node.operand, numbers)
            return lambda slots: -operand(slots)
        case Operation():
            return build_operation(node, numbers)
        case Apply():
            return build_function(node, numbers)
        case Cast():
            return build_cast(node, numbers)
        case Choose():
            condition = build_comparison(node.condition, numbers)
            branches = build(node.then, numbers), build(node.otherwise, numbers)
            return numbers.choose(condition, *branches)
        case Within():
            return numbers.within(build_comparison(node.condition, numbers), node.reason)
        case Held():
            limits = tuple(build(limit, numbers) for limit in node.limits)
            return numbers.hold(build(node.value, numbers), limits)
        case Look():
            return build_look(node, numbers)
        case _:
            assert_never(node)


def build_operation(node: Operation, numbers: Arithmetic) -> Closure:
    """`+ - * / ^`; a square is a product, as a hand would work it out."""
    if node.sign == "^":
        power = numbers.power
        base = build(node.left, numbers)
        if isinstance(node.right, Constant) and node.right.value == 2.0:
            return lambda slots: (found := base(slots)) * found
        exponent = build(node.right, numbers)
        return lambda slots: power(base(slots), exponent(slots))
    left, right = build(node.left, numbers), build(node.right, numbers)
    if node.sign == "/":
        return numbers.divide(left, right)
    return JOIN[node.sign](left, right)


def build_comparison(node: Compare, numbers: Arithmetic) -> Closure:
    """A comparison: true, or false, or an array of both."""
    left, right = build(node.left, numbers), build(node.right, numbers)
    if node.sign in (">", ">="):
        left, right = right, left
    return (numbers.less if node.sign in ("<", ">") else numbers.at_most)(left, right)


def add(left: Closure, right: Closure) -> Closure:
    """Their sum."""
    return lambda slots: left(slots) + right(slots)


def subtract(left: Closure, right: Closure) -> Closure:
    """Their difference."""
    return lambda slots: left(slots) - right(slots)


def multiply(left: Closure, right: Closure) -> Closure:
    """Their product."""
    return lambda slots: left(slots) * right(slots)


JOIN: dict[str, Callable[[Closure, Closure], Closure]] = {
    "+": add,
    "-": subtract,
    "*": multiply,
}


def build_function(node: Apply, numbers: Arithmetic) -> Closure:
    """A function of the language."""
    arguments = [build(each, numbers) for each in node.arguments]
    if node.function == "free_air":
        volume, pressure, temperature = arguments
        return lambda slots: volume(slots) * pressure(slots) * FREE_AIR / temperature(slots)
    function = numbers.functions[node.function]
    if len(arguments) == 1:
        only = arguments[0]
        return lambda slots: function(only(slots))
    if len(arguments) == 2:
        left, right = arguments
        return lambda slots: function(left(slots), right(slots))
    return lambda slots: function(*[argument(slots) for argument in arguments])


def build_cast(node: Cast, numbers: Arithmetic) -> Closure:
    """Count a value from another point."""
    operand, atmosphere = build(node.operand, numbers), node.atmosphere
    if node.conversion is Conversion.ADD_ATMOSPHERE:
        return lambda slots: operand(slots) + slots[atmosphere]
    if node.conversion is Conversion.TAKE_ATMOSPHERE:
        return lambda slots: operand(slots) - slots[atmosphere]
    return operand


def build_look(node: Look, numbers: Arithmetic) -> Closure:
    """Read a table, one corner at a time."""

    def read(*values: float) -> float:
        return node.read(values).results[node.result]

    return numbers.each(read, tuple(build(part, numbers) for part in node.operands))


def work_out(node: Node, closure: Closure, slots: Slots, line: Line) -> float:
    """Work one step out, with the place of whatever goes wrong.

    Args:
        node: The tree.
        closure: What was built from it.
        slots: All values so far, in SI.
        line: The line it stands in.

    Raises:
        CalcFault: It divides by zero, leaves the range of numbers, or a limit of a method.
    """
    try:
        found = closure(slots)
    except (LimitPassed, OutsideValidity) as reason:
        said = f"`{line.quote(node.span)}` lies outside what the method holds for: {reason}"
        cure = "give values inside its limits, or measure"
        raise line.fault(Family.VALIDITY, node.span, said, cure) from None
    except (ArithmeticError, ValueError):
        raise explain(node, slots, line) from None
    if not math.isfinite(found):
        raise explain(node, slots, line)
    return float(found)


def explain(node: Node, slots: Slots, line: Line) -> CalcFault:
    """Find the innermost part that cannot be worked out, and say why."""
    for part in worked_parts(node, slots):
        if not works(part, slots):
            return explain(part, slots, line)
    text, cure = reason_of(node, slots, line)
    return line.fault(Family.RANGE, node.span, text, cure)


def worked_parts(node: Node, slots: Slots) -> list[Node]:
    """The parts that a node works out; of a choice only the branch that is taken."""
    if isinstance(node, Choose):
        sides: list[Node] = [node.condition.left, node.condition.right]
        if all(works(side, slots) for side in sides):
            holds = build_comparison(node.condition, FLOATS)(slots)
            return [node.then if holds else node.otherwise]
        return sides
    if isinstance(node, Within):
        return [node.condition.left, node.condition.right]
    return [part for part in parts_of(node) if not isinstance(part, Compare)]


def works(node: Node, slots: Slots) -> bool:
    """Whether a part can be worked out."""
    try:
        return math.isfinite(build(node)(slots))
    except (ArithmeticError, ValueError, LookupError):
        return False


def reason_of(node: Node, slots: Slots, line: Line) -> tuple[str, str]:
    """Why a node whose parts are all known cannot be worked out, and the cure."""
    quoted = line.quote(node.span)
    if isinstance(node, Operation) and node.sign == "/" and not build(node.right)(slots):
        text = f"`{quoted}` divides by zero: `{line.quote(node.right.span)}` is 0"
        return text, "check the value below the stroke"
    if isinstance(node, Operation) and node.sign == "^" and build(node.left)(slots) <= 0:
        text = f"`{quoted}` is no real number: `{line.quote(node.left.span)}` is not above 0"
        return text, "check the sign of what is raised to the power"
    if isinstance(node, Apply) and node.function in NOT_BELOW_ZERO:
        return f"`{quoted}` is no real number", NOT_BELOW_ZERO[node.function]
    if isinstance(node, Apply) and node.function == "interpolate":
        try:
            build(node)(slots)
        except Uneven as reason:
            return f"`{quoted}` cannot be read: {reason}", "add points to the table, or measure"
    return f"`{quoted}` is too large to be worked out", "check its values and units"


NOT_BELOW_ZERO = {
    "sqrt": "take the root of a value that is 0 or more",
    "log": "take the logarithm of a value above 0",
    "log10": "take the logarithm of a value above 0",
}
