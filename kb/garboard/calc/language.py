"""Read one line of a calculation: `name = expression` or `require comparison`.

A small grammar of our own. Nothing of what an author writes is ever run.
"""

import re
from collections.abc import Collection
from dataclasses import replace

from garboard.calc.expression import COMPARISONS, MOST_ARGUMENTS, ExpressionReader
from garboard.calc.fault import CalcFault, Family, Line, Span
from garboard.calc.functions import CONSTANTS, FUNCTIONS
from garboard.calc.quantity import TOLERANCE_SIGNS, take_number, take_tolerance
from garboard.calc.syntax import (
    Argument,
    Assignment,
    Expression,
    Listing,
    MethodCall,
    Requiring,
    Statement,
    Tolerance,
)
from garboard.calc.tokens import KEYWORDS, Sort, Token
from garboard.calc.units import read_unit_in

__all__ = ["read_statement"]

LONGEST_NAME = 40
IDENTIFIER = re.compile(r"[A-Za-z][A-Za-z0-9_]*")
SHOWN_UNIT = re.compile(r"(?<=[\s)])in[ \t]+(\S+)[ \t]*$")


def read_statement(line: Line, end: int, methods: Collection[str]) -> Statement:
    """Read one statement.

    Args:
        line: The line.
        end: Where its comment starts.
        methods: Names of the bundled methods.

    Raises:
        CalcFault: It is not written in this language.
    """
    found = SHOWN_UNIT.search(line.text, 0, end)
    stop = found.start() if found else end
    reader = StatementReader(line, stop, methods)
    if reader.cursor.sees("require"):
        if found:
            text = "`in` has no place in a requirement"
            cure = "compare values in any units of the same kind"
            raise line.fault(Family.SYNTAX, Span(found.start(), found.end()), text, cure)
        return reader.read_requirement()
    statement = reader.read_assignment()
    if not found:
        return statement
    unit_span = Span(*found.span(1))
    return replace(statement, unit=read_unit_in(line, unit_span), unit_span=unit_span)


class StatementReader(ExpressionReader):
    """Reads one statement."""

    def read_requirement(self) -> Requiring:
        """Read `require comparison`."""
        self.cursor.take()
        comparison = self.read_comparison(1)
        self.check_end()
        return Requiring(self.line, comparison, self.terms)

    def read_assignment(self) -> Assignment:
        """Read `name = value`."""
        token = self.cursor.take()
        if token.sort is not Sort.NAME or token.text in KEYWORDS or not self.cursor.sees("="):
            raise self.statement_fault(token)
        self.check_name(token)
        self.cursor.take()
        value: Expression | MethodCall
        tolerance: Tolerance | None = None
        if self.sees_lone_quantity():
            value = take_number(self.cursor)
            tolerance = take_tolerance(self.cursor, value)
            self.terms += 1
        elif self.sees_method():
            value = self.read_method()
        else:
            value = self.read_expression(1)
        self.check_end()
        return Assignment(self.line, token.text, token.span, value, self.terms, tolerance)

    def statement_fault(self, token: Token) -> CalcFault:
        """Refuse a line that starts like no statement."""
        text = f"`{self.line.quote(token.span)}` starts no statement"
        if token.text == "in":
            text = "`in` starts no statement; an inch is written inch"
        cure = "write name = expression, or require left <= right; a remark starts with #"
        return self.line.fault(Family.SYNTAX, token.span, text, cure)

    def check_name(self, token: Token) -> None:
        """Refuse a name that could be taken for something else.

        Raises:
            CalcFault: It is one.
        """
        name = token.text
        if name in FUNCTIONS or name in CONSTANTS:
            text, cure = f"`{name}` is a word of this language", "choose another name"
        elif not IDENTIFIER.fullmatch(name):
            text = f"`{self.line.quote(token.span)}` cannot be set"
            cure = "names are letters, figures and _, and start with a letter: p_max"
        elif len(name) > LONGEST_NAME:
            text = f"`{self.line.quote(token.span)}` has {len(name)} signs"
            cure = f"keep names to {LONGEST_NAME}; what it is goes behind #"
        else:
            return
        raise self.line.fault(Family.NAME, token.span, text, cure)

    def sees_lone_quantity(self) -> bool:
        """Whether a quantity stands alone here, with or without its tolerance."""
        at = 1 if self.cursor.sees("-") else 0
        if self.cursor.after(at).sort is not Sort.NUMBER:
            return False
        at += 1
        if self.cursor.after(at).sort is Sort.UNIT:
            at += 1
        follows = self.cursor.after(at)
        if follows.text in KEYWORDS:
            return False
        return follows.sort in (Sort.END, Sort.NAME) or follows.text in (*TOLERANCE_SIGNS, "(")

    def sees_method(self) -> bool:
        """Whether the call of something that is no function stands here."""
        token = self.cursor.next
        called = token.sort is Sort.NAME and self.cursor.after().text == "("
        return called and token.text not in FUNCTIONS and token.text not in KEYWORDS

    def read_method(self) -> MethodCall:
        """Read the call of a bundled method."""
        cursor = self.cursor
        token = cursor.take()
        if token.text not in self.methods:
            raise self.call_fault(token)
        cursor.take()
        self.terms += 1
        arguments: list[Argument] = []
        while not cursor.sees(")"):
            if arguments:
                cursor.expect(",", "part the arguments by a comma, and close the bracket")
            arguments.append(self.read_argument(token.text))
        closing = cursor.take()
        if cursor.next.sort is not Sort.END:
            text = f"the method `{token.text}` stands inside an expression"
            cure = f"give it a line of its own: x = {token.text}(...), then use x"
            raise self.line.fault(Family.METHOD, token.span, text, cure)
        return MethodCall(token.span.to(closing.span), token.text, token.span, tuple(arguments))

    def read_argument(self, method: str) -> Argument:
        """Read `name = value` in the call of a method."""
        cursor = self.cursor
        name = cursor.next
        if name.sort is not Sort.NAME or cursor.after().text != "=":
            text = f"an argument of `{method}` has no name"
            cure = f"name every argument: {method}(name = value)"
            raise self.line.fault(Family.METHOD, name.span, text, cure)
        cursor.take()
        cursor.take()
        value: Expression | Listing = (
            self.read_list() if cursor.sees("[") else self.read_expression(2)
        )
        if cursor.next.text in (*COMPARISONS, *TOLERANCE_SIGNS):
            self.check_end()
        return Argument(name.span.to(value.span), name.text, name.span, value)

    def read_list(self) -> Listing:
        """Read `[a, b]`."""
        cursor = self.cursor
        opening = cursor.take()
        items: list[Expression] = []
        while not cursor.sees("]"):
            if items:
                cursor.expect(",", "part the values of a list by a comma, and close it with ]")
            if cursor.sees("["):
                raise cursor.fault("a list inside a list", "give the inner values one list each")
            items.append(self.read_expression(2))
            if len(items) > MOST_ARGUMENTS:
                text = f"a list of more than {MOST_ARGUMENTS} values"
                raise self.line.fault(Family.LIMIT, opening.span, text, "take fewer")
        closing = cursor.take()
        return Listing(opening.span.to(closing.span), tuple(items))
