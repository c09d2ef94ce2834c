"""An expression with its meaning: every part has a type, and every name is a slot.

A slot is a place in the flat list of all values of a handbook. What stands in the tree is all that
is needed to work it out again, on floats, on arrays, or in the page.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from garboard.calc.fault import Span
from garboard.calc.kinds import Type
from garboard.calc.method import Answer
from garboard.calc.units import Unit

__all__ = [
    "Apply",
    "Cast",
    "Choose",
    "Compare",
    "Constant",
    "Conversion",
    "Held",
    "Look",
    "Negate",
    "Node",
    "Operation",
    "Reference",
    "Within",
    "can_have_pole",
    "every_part",
    "is_whole",
    "named_slots",
    "parts_of",
    "reads_table",
    "slots_of",
]


@dataclass(frozen=True, slots=True)
class Constant:
    """A number written in the line, in SI."""

    type: Type
    span: Span
    value: float
    shown: str
    """As written: `250 L`, `pi`."""
    unit: Unit
    exact: Fraction | None = None
    """As written, before its unit; None for a constant such as pi."""


@dataclass(frozen=True, slots=True)
class Reference:
    """A value that stands elsewhere."""

    type: Type
    span: Span
    slot: int
    name: str
    """As written."""
    unit: Unit
    """The unit that value is shown in."""
    whole: bool = False
    """Whether it is a count."""


@dataclass(frozen=True, slots=True)
class Negate:
    """A minus before something."""

    type: Type
    span: Span
    operand: "Node"


@dataclass(frozen=True, slots=True)
class Operation:
    """`+ - * / ^`."""

    type: Type
    span: Span
    sign: str
    left: "Node"
    right: "Node"


@dataclass(frozen=True, slots=True)
class Compare:
    """`< <= > >=`."""

    span: Span
    sign: str
    left: "Node"
    right: "Node"


@dataclass(frozen=True, slots=True)
class Choose:
    """`a if left <= right else b`."""

    type: Type
    span: Span
    condition: Compare
    then: "Node"
    otherwise: "Node"


@dataclass(frozen=True, slots=True)
class Apply:
    """A function of the language."""

    type: Type
    span: Span
    function: str
    arguments: tuple["Node", ...]


class Conversion(StrEnum):
    """How a value goes from one starting point to another."""

    ADD_ATMOSPHERE = "add atmosphere"
    """A gauge pressure counted from nothing."""
    TAKE_ATMOSPHERE = "take atmosphere"
    """An absolute pressure as a gauge reads it."""
    SAME_NUMBER = "same number"
    """Readings of a thermometer are held in kelvin; other casts only change what it is called."""


@dataclass(frozen=True, slots=True)
class Cast:
    """A value counted from another point than it was."""

    type: Type
    span: Span
    word: str
    """`absolute`, `gauge`, `difference`; `in` for a unit asked for."""
    conversion: Conversion
    operand: "Node"
    atmosphere: int
    """The slot of the vessel's atmosphere."""


@dataclass(frozen=True, slots=True)
class Within:
    """A limit of a method: 1 while it holds; the run stops when it does not."""

    type: Type
    span: Span
    condition: Compare
    reason: str


@dataclass(frozen=True, slots=True)
class Held:
    """A result that stands only while the limits of its method hold."""

    type: Type
    span: Span
    value: "Node"
    limits: tuple["Reference", ...]


@dataclass(frozen=True, slots=True)
class Look:
    """One result read from a table or rule."""

    type: Type
    span: Span
    method: str
    result: str
    operands: tuple["Node", ...]
    """What the method is handed, its lists laid out one behind the other; words are left out."""
    read: Callable[[tuple[float, ...]], Answer]
    """Reads the table at such values, and keeps what it has read."""


Node = Constant | Reference | Negate | Operation | Choose | Apply | Cast | Within | Held | Look


def parts_of(node: Node | Compare) -> tuple[Node | Compare, ...]:  # noqa: PLR0911 - one case for each kind of node
    """What a node is made of, from left to right."""
    match node:
        case Constant() | Reference():
            return ()
        case Negate() | Cast():
            return (node.operand,)
        case Operation() | Compare():
            return (node.left, node.right)
        case Choose():
            return (node.condition, node.then, node.otherwise)
        case Apply():
            return node.arguments
        case Within():
            return (node.condition,)
        case Held():
            return (node.value, *node.limits)
        case Look():
            return node.operands


def every_part(node: Node | Compare) -> Iterator[Node | Compare]:
    """A node and all it is made of, in the order in which it is written."""
    waiting = [node]
    while waiting:
        part = waiting.pop()
        yield part
        waiting.extend(reversed(parts_of(part)))


def slots_of(node: Node | Compare) -> frozenset[int]:
    """The slots a node is worked out from, the atmosphere among them where it counts."""
    return frozenset(named_slots(node))


def named_slots(node: Node | Compare) -> list[int]:
    """The same in the order in which the node names them, each once."""
    if isinstance(node, Reference):
        return [node.slot]
    found: dict[int, None] = {}
    for part in every_part(node):
        if isinstance(part, Reference):
            found[part.slot] = None
        elif isinstance(part, Cast) and part.conversion is not Conversion.SAME_NUMBER:
            found[part.atmosphere] = None
    return list(found)


def is_whole(node: Node) -> bool:  # noqa: PLR0911 - one case for each kind of node
    """Whether a node is a count, shown without decimals: rounded, or made of counts."""
    match node:
        case Constant():
            return not node.unit.text and node.shown.removeprefix("-").isdecimal()
        case Reference():
            return node.whole
        case Negate():
            return is_whole(node.operand)
        case Operation():
            return node.sign in "+-*" and is_whole(node.left) and is_whole(node.right)
        case Choose():
            return is_whole(node.then) and is_whole(node.otherwise)
        case Apply():
            if node.function in ("min", "max", "abs"):
                return all(is_whole(part) for part in node.arguments)
            return node.function in ("floor", "ceil", "round")
        case Held():
            return is_whole(node.value)
        case _:
            return False


def reads_table(node: Node) -> bool:
    """Whether a table is read anywhere in a node."""
    return any(isinstance(part, Look) for part in every_part(node))


def can_have_pole(node: Node) -> bool:
    """Whether a node divides: by a stroke, a power, a tangent, or a temperature in free air."""
    return any(
        (isinstance(part, Operation) and part.sign in "/^")
        or (isinstance(part, Apply) and part.function in ("tan", "free_air"))
        for part in every_part(node)
    )
