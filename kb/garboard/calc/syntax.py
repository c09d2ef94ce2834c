"""A line as it is written, before anybody asks what it means."""

from dataclasses import dataclass
from fractions import Fraction

from garboard.calc.fault import Line, Span
from garboard.calc.units import Unit

__all__ = [
    "Argument",
    "Assignment",
    "Binary",
    "Call",
    "Choice",
    "Comparison",
    "Expression",
    "Listing",
    "MethodCall",
    "Name",
    "Number",
    "Requiring",
    "Sign",
    "Statement",
    "Tolerance",
]


@dataclass(frozen=True, slots=True)
class Number:
    """A number, with its unit where it has one."""

    span: Span
    number: Fraction
    unit: Unit
    shown: str
    """As written: `30 bar(g)`, `-5 degC`."""


@dataclass(frozen=True, slots=True)
class Name:
    """A name of this fence, or an address elsewhere in the handbook."""

    span: Span
    text: str


@dataclass(frozen=True, slots=True)
class Sign:
    """A minus before something."""

    span: Span
    operand: "Expression"


@dataclass(frozen=True, slots=True)
class Binary:
    """`+ - * / ^` between two things."""

    span: Span
    sign: str
    left: "Expression"
    right: "Expression"


@dataclass(frozen=True, slots=True)
class Comparison:
    """`< <= > >=` between two things."""

    span: Span
    sign: str
    left: "Expression"
    right: "Expression"


@dataclass(frozen=True, slots=True)
class Choice:
    """`a if left <= right else b`."""

    span: Span
    condition: Comparison
    then: "Expression"
    otherwise: "Expression"


@dataclass(frozen=True, slots=True)
class Call:
    """A function of the language."""

    span: Span
    function: str
    name_span: Span
    arguments: tuple["Expression", ...]


Expression = Number | Name | Sign | Binary | Choice | Call


@dataclass(frozen=True, slots=True)
class Listing:
    """`[a, b]`, legal only as an argument of a method."""

    span: Span
    items: tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class Argument:
    """`name = value` in the call of a method."""

    span: Span
    name: str
    name_span: Span
    value: Expression | Listing


@dataclass(frozen=True, slots=True)
class MethodCall:
    """A bundled method, alone on the right of a name."""

    span: Span
    method: str
    name_span: Span
    arguments: tuple[Argument, ...]


@dataclass(frozen=True, slots=True)
class Tolerance:
    """What stands behind `+/-`, already in SI units."""

    span: Span
    low: float
    high: float
    """The ends of the range."""
    shown: str
    """As written: `0.5 bar`, `10 %`."""
    width: float = 0.0
    """How far the ends lie from the value."""


@dataclass(frozen=True, slots=True)
class Assignment:
    """`name = expression in UNIT`."""

    line: Line
    name: str
    name_span: Span
    value: Expression | MethodCall
    terms: int
    """How many things it is made of."""
    tolerance: Tolerance | None = None
    unit: Unit | None = None
    unit_span: Span | None = None


@dataclass(frozen=True, slots=True)
class Requiring:
    """`require comparison`."""

    line: Line
    comparison: Comparison
    terms: int


Statement = Assignment | Requiring
