"""The body, limits and defaults of a method: text in the calculation language, read once."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from garboard.calc.fault import Family, Line, Span
from garboard.calc.functions import CONSTANTS
from garboard.calc.language import read_statement
from garboard.calc.syntax import (
    Assignment,
    Binary,
    Call,
    Choice,
    Comparison,
    Expression,
    Listing,
    MethodCall,
    Name,
    Number,
    Requiring,
    Sign,
)
from garboard.calc.units import Unit
from garboard.errors import Where

__all__ = [
    "BODY_PATH",
    "BodyLine",
    "Condition",
    "names_in",
    "read_body",
    "read_condition",
    "read_default",
]

BODY_PATH = "method "
"""Places inside a method start with this; an author sees the place of the call instead."""


@dataclass(frozen=True, slots=True)
class BodyLine:
    """One line of a body, or the default of a parameter."""

    line: Line
    expression: Expression
    unit: Unit | None
    unit_span: Span | None
    label: str
    names: frozenset[str]


@dataclass(frozen=True, slots=True)
class Condition:
    """A limit, or what sets off an alarm."""

    line: Line
    comparison: Comparison
    names: frozenset[str]


def names_in(what: Expression | Comparison | Listing | MethodCall) -> Iterator[Name]:  # noqa: C901 - one case for each kind
    """The names an expression uses, from left to right."""
    waiting: list[Expression | Comparison | Listing | MethodCall] = [what]
    while waiting:
        part = waiting.pop()
        match part:
            case Name():
                if part.text not in CONSTANTS:
                    yield part
            case Number():
                pass
            case Sign():
                waiting.append(part.operand)
            case Binary() | Comparison():
                waiting += [part.right, part.left]
            case Choice():
                waiting += [part.otherwise, part.condition, part.then]
            case Call():
                waiting += reversed(part.arguments)
            case Listing():
                waiting += reversed(part.items)
            case MethodCall():
                waiting += [argument.value for argument in reversed(part.arguments)]


@lru_cache(maxsize=512)
def read_body(method: str, body: str) -> dict[str, BodyLine]:
    """The lines of a body by the name each sets.

    Raises:
        CalcFault: A line is not written in the calculation language.
    """
    found: dict[str, BodyLine] = {}
    for number, text in enumerate(body.splitlines(), 1):
        code, _, label = text.partition("#")
        if code.strip():
            line = Line(text, Where(f"{BODY_PATH}{method}", number))
            name, read = read_line(line, len(code), label.strip())
            found[name] = read
    return found


@lru_cache(maxsize=4096)
def read_default(method: str, name: str, text: str) -> BodyLine:
    """The default of a parameter.

    Raises:
        CalcFault: It is not written in the calculation language.
    """
    line = Line(f"{name} = {text}", Where(f"{BODY_PATH}{method}"))
    return read_line(line, len(line.text), "")[1]


def read_line(line: Line, end: int, label: str) -> tuple[str, BodyLine]:
    """One line of a method, with the name it sets.

    Raises:
        CalcFault: It is no assignment of an expression.
    """
    statement = read_statement(line, end, ())
    if not isinstance(statement, Assignment) or isinstance(statement.value, MethodCall):
        text = "a line of a method is no `name = expression`"
        raise line.fault(Family.METHOD, Span(0, end), text, "write it as one")
    names = frozenset(name.text for name in names_in(statement.value))
    read = BodyLine(line, statement.value, statement.unit, statement.unit_span, label, names)
    return statement.name, read


@lru_cache(maxsize=4096)
def read_condition(method: str, text: str) -> Condition:
    """A limit or alarm.

    Raises:
        CalcFault: It is no comparison.
    """
    line = Line(f"require {text}", Where(f"{BODY_PATH}{method}"))
    statement = read_statement(line, len(line.text), ())
    if not isinstance(statement, Requiring):
        raise line.fault(
            Family.METHOD, Span(0, len(line.text)), "a limit is no comparison", "write one"
        )
    names = frozenset(name.text for name in names_in(statement.comparison))
    return Condition(line, statement.comparison, names)
