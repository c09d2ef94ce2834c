"""The worked line as plain text: symbols = numbers = result.

It is written from the tree and not from the author's text, so that every conversion shows: a gauge
reading that was handed to something that counts from nothing stands there as
`absolute(p)` and then as `(30 bar(g) + 1.01 bar(a))`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from garboard.calc.kinds import TEMPERATURE, absolute_of
from garboard.calc.show import show_number
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
)

__all__ = ["Shown", "show_comparison", "show_numbers", "show_symbols", "show_working"]


@dataclass(frozen=True, slots=True)
class Shown:
    """Every value, by slot."""

    texts: Mapping[int, str]
    """As shown."""
    slots: Sequence[float]
    """In SI."""

    def kelvin(self, node: Node) -> str:
        """A thermometer reading as an absolute temperature; empty where it is no single value."""
        if isinstance(node, Constant):
            return show_number(node.value, 3, "K(a)")
        if isinstance(node, Reference):
            return show_number(self.slots[node.slot], 3, "K(a)")
        return ""


SUM, PRODUCT, SIGNED, POWER, ATOM = range(1, 6)
BINDING = {"+": SUM, "-": SUM, "*": PRODUCT, "/": PRODUCT, "^": POWER}


def show_working(name: str, node: Node, shown: Shown, result: str) -> str:
    """A whole worked line.

    Args:
        name: What it sets.
        node: How it is worked out.
        shown: Every value.
        result: The result as shown.
    """
    parts = [name]
    for part in (show_symbols(node), show_numbers(node, shown), result):
        if part != parts[-1]:
            parts.append(part)
    return " = ".join(parts)


def show_symbols(node: Node) -> str:
    """An expression in the names of its author."""
    return Writer(None).write(node, 0)


def show_numbers(node: Node, shown: Shown) -> str:
    """An expression with every name replaced by its value."""
    return Writer(shown).write(node, 0)


def show_comparison(node: Compare, shown: Shown | None = None) -> str:
    """A comparison, in names or in values."""
    writer = Writer(shown)
    return f"{writer.write(node.left, 0)} {node.sign} {writer.write(node.right, 0)}"


class Writer:
    """Writes one expression."""

    def __init__(self, shown: Shown | None) -> None:
        self.shown = shown
        """None: names stand as they are."""

    def write(self, node: Node, above: int) -> str:
        """A node, in brackets where what stands around it binds more tightly."""
        text, binding = self.part(node)
        return f"({text})" if binding < above else text

    def part(self, node: Node) -> tuple[str, int]:  # noqa: C901, PLR0911 - one case for each kind of node
        """A node, and how tightly it holds together."""
        match node:
            case Constant():
                return node.shown, value_binding(node.shown)
            case Reference():
                text = self.shown.texts[node.slot] if self.shown else node.name
                return text, value_binding(text)
            case Negate():
                return f"-{self.write(node.operand, POWER)}", SIGNED
            case Operation():
                return self.operation(node)
            case Choose():
                condition = show_comparison(node.condition, self.shown)
                then, other = self.write(node.then, SUM), self.write(node.otherwise, 0)
                return f"{then} if {condition} else {other}", 0
            case Apply():
                parts = ", ".join(self.write(each, 0) for each in node.arguments)
                return f"{node.function}({parts})", ATOM
            case Cast():
                return self.cast(node)
            case Held():
                return self.part(node.value)
            case Within():
                return show_comparison(node.condition, self.shown), 0
            case Look():
                parts = ", ".join(self.write(each, 0) for each in node.operands)
                return f"{node.method}({parts})", ATOM

    def operation(self, node: Operation) -> tuple[str, int]:
        """Two things and the sign between; what follows - or / needs brackets sooner."""
        binding = BINDING[node.sign]
        if node.sign == "^":
            return f"{self.write(node.left, ATOM)}^{self.write(node.right, ATOM)}", POWER
        left = self.write(node.left, binding)
        right = self.write(node.right, binding + (node.sign in "-/"))
        if right.startswith("-"):
            right = f"({right})"
        return f"{left} {node.sign} {right}", binding

    def cast(self, node: Cast) -> tuple[str, int]:
        """A value counted from another point, with what was added or taken."""
        if node.word == "in":
            return self.part(node.operand)
        if self.shown is None or node.conversion is Conversion.SAME_NUMBER:
            kelvin = self.shown.kelvin(node.operand) if self.shown else ""
            if kelvin and node.type == absolute_of(TEMPERATURE):
                return kelvin, SIGNED
            return f"{node.word}({self.write(node.operand, 0)})", ATOM
        inner = self.write(node.operand, SUM)
        sign = "+" if node.conversion is Conversion.ADD_ATMOSPHERE else "-"
        return f"{inner} {sign} {self.shown.texts[node.atmosphere]}", SUM


def value_binding(text: str) -> int:
    """How tightly a value as shown holds together: a unit or a sign loosens it."""
    if text.startswith("-"):
        return SIGNED
    return SIGNED if " " in text else ATOM
