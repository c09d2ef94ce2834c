"""An expression as nested lists, for a page to walk with numbers of its own.

Each value is a cell in a row: first the inputs that a reader may change, then the other toleranced
inputs, then the steps. A number stands for itself, `[3]` for the third cell after the first, and
`["+", left, right]` for an operation. Nothing in it is text to be run. What no cell reaches is
worked out here, once, and stands as its number.
"""

import math
from collections.abc import Iterable, Sequence

from garboard.calc.evaluate import build
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
    every_part,
    slots_of,
)

__all__ = ["Code", "PageProgram", "Reach", "looks_of", "number"]

Code = int | float | str | list["Code"]
"""A number, a cell, or an operation with what it is made of."""

WHOLE_SAFE = 2**53


class Reach:
    """What a set of slots reaches: the slots that are worked out from one of them."""

    def __init__(self, ledger: Ledger, sources: Iterable[int]) -> None:
        self.ledger = ledger
        self.found = dict.fromkeys(sources, True)

    def __contains__(self, slot: int) -> bool:
        """Whether a slot is one of them, or is worked out from one."""
        if slot not in self.found:
            for inner in self.ledger.inner_cone((slot,), self.found):
                if inner not in self.found:
                    formula = self.ledger.formulas.get(inner)
                    needs = formula.needs if formula else ()
                    self.found[inner] = any(self.found[need] for need in needs)
        return self.found[slot]

    def any_of(self, slots: Iterable[int]) -> bool:
        """Whether one of some slots is among them."""
        return any(slot in self for slot in slots)


class PageProgram:
    """The steps of one program, entered as they are asked for."""

    def __init__(self, ledger: Ledger, cells: Sequence[int]) -> None:
        """Start with the inputs.

        Args:
            ledger: How every value is worked out.
            cells: The slots of the inputs; what they do not reach stands as a number.
        """
        self.ledger = ledger
        self.moved = Reach(ledger, cells)
        self.codes: dict[int, Code] = {slot: [cell] for cell, slot in enumerate(cells)}
        self.first = len(cells)
        self.steps: list[Code] = []
        self.words: list[str] = []
        """Why limits of methods hold no longer."""

    def cell(self, slot: int) -> Code:
        """The cell of a value, with all it is worked out from; its number where nothing moves it."""
        if slot not in self.moved:
            return number(self.ledger.slots[slot])
        for inner in self.ledger.inner_cone((slot,), self.codes):
            if inner not in self.codes and inner in self.moved:
                self.codes[inner] = self.step(self.code(self.ledger.formulas[inner].node))
        return self.codes[slot]

    def step(self, code: Code) -> Code:
        """Enter a step; what is a cell already needs none."""
        if isinstance(code, list) and len(code) == 1:
            return code
        self.steps.append(code)
        return [self.first + len(self.steps) - 1]

    def code(self, node: Node) -> Code:  # noqa: C901, PLR0911 - one case for each kind of node
        """A node, whose cells are entered already."""
        if not self.moved.any_of(slots_of(node)):
            fixed = self.fixed(node)
            if fixed is not None:
                return fixed
        match node:
            case Constant():
                return number(node.value)
            case Reference():
                return self.read(node.slot)
            case Negate():
                return ["minus", self.code(node.operand)]
            case Operation():
                return self.operation(node)
            case Apply():
                return [node.function, *(self.code(part) for part in node.arguments)]
            case Cast():
                return self.cast(node)
            case Choose():
                branches = self.code(node.then), self.code(node.otherwise)
                return ["if", self.condition(node.condition), *branches]
            case Within():
                return ["within", self.condition(node.condition), self.word(node.reason)]
            case Held():
                limits = [limit for limit in node.limits if limit.slot in self.moved]
                value = self.code(node.value)
                return ["held", value, *map(self.code, limits)] if limits else value
            case Look():
                # Without a moving operand: what moves a table is kept out before.
                return number(node.read(self.operands(node)).results[node.result])

    def operands(self, node: Look) -> tuple[float, ...]:
        """What a table is read at."""
        return tuple(build(part)(self.ledger.slots) for part in node.operands)

    def read(self, slot: int) -> Code:
        """A slot that is entered already, or does not move."""
        return self.codes[slot] if slot in self.moved else number(self.ledger.slots[slot])

    def operation(self, node: Operation) -> Code:
        """`+ - * / ^`; a square is a product, as the core works it out."""
        if node.sign == "^" and isinstance(node.right, Constant) and node.right.value == 2.0:
            return ["square", self.code(node.left)]
        return [node.sign, self.code(node.left), self.code(node.right)]

    def cast(self, node: Cast) -> Code:
        """A value counted from another point."""
        operand = self.code(node.operand)
        if node.conversion is Conversion.SAME_NUMBER:
            return operand
        sign = "+" if node.conversion is Conversion.ADD_ATMOSPHERE else "-"
        return [sign, operand, self.read(node.atmosphere)]

    def condition(self, node: Compare) -> Code:
        """A comparison, always as less or at most."""
        left, right = self.code(node.left), self.code(node.right)
        if node.sign in (">", ">="):
            left, right = right, left
        return ["<=" if node.sign in ("<=", ">=") else "<", left, right]

    def compared(self, node: Compare) -> Code:
        """A comparison that stands in no step: its cells are entered first."""
        for slot in sorted(slots_of(node)):
            self.cell(slot)
        return self.condition(node)

    def bounds(self, cell: int) -> tuple[float | None, float | None]:
        """The least and the most, in SI, at which methods that are handed an input as it is hold."""
        low: list[float] = []
        high: list[float] = []
        for step in self.steps:
            match step:
                case ["within", ["<" | "<=", [int(own)], int() | float() as most], _] if (
                    own == cell
                ):
                    high.append(float(most))
                case ["within", ["<" | "<=", int() | float() as least, [int(own)]], _] if (
                    own == cell
                ):
                    low.append(float(least))
        return max(low, default=None), min(high, default=None)

    def word(self, text: str) -> int:
        """The place of a reason among the words."""
        if text not in self.words:
            self.words.append(text)
        return self.words.index(text)

    def fixed(self, node: Node) -> Code | None:
        """What a node that nothing moves comes to; None in a branch that cannot be worked out."""
        try:
            value = build(node)(self.ledger.slots)
        except (ArithmeticError, ValueError):
            return None
        return number(value) if math.isfinite(value) else None


def number(value: float) -> Code:
    """A number to the last bit, a whole one without its decimals.

    >>> number(101325.0), number(0.1), number(-0.0)
    (101325, 0.1, -0.0)
    """
    value = float(value)
    whole = value.is_integer() and abs(value) < WHOLE_SAFE and (value or str(value) == "0.0")
    return int(value) if whole else value


def looks_of(node: Node) -> list[Look]:
    """The tables that a node reads."""
    return [part for part in every_part(node) if isinstance(part, Look)]
