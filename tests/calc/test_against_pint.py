"""Ours against the units library: every value of the demo that an expression gives, worked out again.

The tree is walked with quantities of the units library, from what each author wrote down: the
numbers as typed, in their own units. Our factors, slots and closures take no part.
"""

import math
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pint
import pytest

from garboard.book import Book
from garboard.calc.kinds import BASES, Kind
from garboard.calc.ledger import Formula
from garboard.calc.network import Network
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
from garboard.calc.unit_names import FREE_AIR, LIBRARY_NAMES, ROLES, Role
from garboard.calc.unit_reader import read_parts
from garboard.calc.units import Unit
from tests.demo_site import demo_handbook

CLOSE = 1e-12
TURN_AT = BASES.index("turn")


class Second:
    """A second opinion on the values of one network."""

    def __init__(self, network: Network) -> None:
        self.network = network
        self.units: Any = pint.UnitRegistry()
        self.addresses = {slot: address for address, slot in network.slots.items()}
        self.known: dict[int, Any] = {}

    def quantity(self, number: float, unit: Unit) -> Any:
        """A number in a unit, by the library's own factors; readings as they stand on the gauge."""
        found = self.units.Quantity(number, "dimensionless")
        parts = read_parts(unit.text) if unit.text else None
        if parts is None:
            return found
        if parts.kind is Kind.READING and parts.atoms[0].role is Role.THERMOMETER:
            return self.units.Quantity(number, LIBRARY_NAMES[parts.atoms[0].name]).to("kelvin")
        for atom in parts.atoms:
            name = LIBRARY_NAMES[atom.name]
            if ROLES.get(atom.name) is Role.THERMOMETER:
                name = f"delta_{name}"
            found = found * self.units.Quantity(1.0, name) ** float(atom.power)
            if atom.volumes_of_air:
                pressure, warmth = (float(Fraction(text)) for text in FREE_AIR[atom.tag])
                found = found * (pressure / 101_325.0 * 273.15 / warmth) ** float(
                    atom.volumes_of_air
                )
        return found

    def si(self, node: Node) -> float:
        """A value in SI; a turn counts as one, as we hold it."""
        found = self.walk(node).to_base_units()
        turns = node.type.dimension[TURN_AT]
        return float(found.magnitude) / math.pow(math.tau, float(turns))

    def slot(self, slot: int) -> Any:
        """A value that stands elsewhere."""
        if slot not in self.known:
            formula = self.network.ledger.formulas.get(slot)
            if formula is None:
                self.known[slot] = self.given(slot)
            elif has_method(formula):
                self.known[slot] = self.taken_over(slot, formula)
            else:
                self.known[slot] = self.walk(formula.node)
        return self.known[slot]

    def given(self, slot: int) -> Any:
        """A value that stands outside the fences, from its text."""
        value = self.network.values[self.addresses[slot]]
        number = float(value.text.split()[0])
        return self.quantity(number, value.unit)

    def taken_over(self, slot: int, formula: Formula) -> Any:
        """What a method gave is taken as it is."""
        number = formula.unit.from_si(self.network.ledger.slots[slot])
        return self.quantity(number, formula.unit)

    def walk(self, node: Node) -> Any:  # noqa: C901, PLR0911 - one case for each kind of node
        """A node as a quantity of the library."""
        match node:
            case Constant():
                if node.exact is None:
                    return self.units.Quantity(node.value, "dimensionless")
                return self.quantity(float(node.exact), node.unit)
            case Reference():
                return self.slot(node.slot)
            case Negate():
                return -self.walk(node.operand)
            case Operation():
                return self.operate(node.sign, self.walk(node.left), self.walk(node.right))
            case Apply():
                return self.apply(node.function, [self.walk(part) for part in node.arguments])
            case Cast():
                inner = self.walk(node.operand)
                if node.conversion is Conversion.ADD_ATMOSPHERE:
                    return inner + self.slot(node.atmosphere)
                if node.conversion is Conversion.TAKE_ATMOSPHERE:
                    return inner - self.slot(node.atmosphere)
                return inner
            case Choose():
                return self.walk(node.then if self.holds(node.condition) else node.otherwise)
            case Held():
                return self.walk(node.value)
            case Look() | Within():
                raise TypeError("a method")

    def holds(self, condition: Compare) -> bool:
        """Whether a comparison holds."""
        left, right = self.walk(condition.left), self.walk(condition.right)
        signs: dict[str, Callable[[Any, Any], bool]] = {
            "<": lambda a, b: a < b, "<=": lambda a, b: a <= b,
            ">": lambda a, b: a > b, ">=": lambda a, b: a >= b,
        }  # fmt: skip
        return bool(signs[condition.sign](left, right))

    def operate(self, sign: str, left: Any, right: Any) -> Any:
        """`+ - * / ^`."""
        signs: dict[str, Callable[[], Any]] = {
            "+": lambda: left + right,
            "-": lambda: left - right,
            "*": lambda: left * right,
            "/": lambda: left / right,
            "^": lambda: left ** float(right.to("dimensionless").magnitude),
        }
        return signs[sign]()

    def apply(self, function: str, arguments: list[Any]) -> Any:
        """A function of the language."""
        first = arguments[0]
        if function == "free_air":
            volume, pressure, warmth = arguments
            normal = self.units.Quantity(101_325.0, "pascal") / self.units.Quantity(
                273.15, "kelvin"
            )
            return volume * pressure / warmth / normal
        if function == "sqrt":
            return first**0.5
        if function in ("min", "max"):
            return (min if function == "min" else max)(arguments)
        if function == "abs":
            return abs(first)
        number = float(first.to("dimensionless").magnitude)
        rules: dict[str, Callable[[float], float]] = {
            "floor": lambda x: math.floor(x + abs(x) * CLOSE),
            "ceil": lambda x: math.ceil(x - abs(x) * CLOSE),
            "round": lambda x: math.floor(x + 0.5 + abs(x) * CLOSE),
            "exp": math.exp, "log": math.log, "log10": math.log10,
            "sin": math.sin, "cos": math.cos, "tan": math.tan,
        }  # fmt: skip
        return self.units.Quantity(rules[function](number), "dimensionless")


def has_method(formula: Formula) -> bool:
    """Whether a value comes from a method, or is an inner step of one."""
    waiting: list[Node | Compare] = [formula.node]
    while waiting:
        node = waiting.pop()
        if isinstance(node, Look | Held | Within):
            return True
        waiting += parts_of(node)
    return " " in formula.key


@pytest.fixture(scope="module")
def book() -> Book:
    """The demo, read and worked out."""
    return demo_handbook().book


def test_every_expression_of_the_demo_agrees_with_the_units_library(book: Book) -> None:
    network = book.network
    second = Second(network)
    compared, worst = 0, 0.0
    for address, slot in network.slots.items():
        formula = network.ledger.formulas.get(slot)
        if formula is None or has_method(formula):
            continue
        ours, theirs = formula.si, second.si(formula.node)
        size = max(abs(ours), abs(theirs))
        off = abs(ours - theirs) / size if size else 0.0
        assert off <= CLOSE, (address, ours, theirs)
        worst, compared = max(worst, off), compared + 1

    assert compared > 60
    assert worst > 0.0, "two ways that round alike everywhere would be one way"
