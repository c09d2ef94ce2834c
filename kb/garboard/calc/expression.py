"""Read an expression of a calculation, from left to right.

From loosest to tightest: `a if x < y else b`, then `+ -`, then `* /`, then the minus before
something, then `^`. Two powers in a row need brackets.
"""

from collections.abc import Collection
from dataclasses import replace

from garboard.calc.fault import CalcFault, Family, Line
from garboard.calc.functions import FUNCTIONS
from garboard.calc.quantity import TOLERANCE_SIGNS, take_number
from garboard.calc.syntax import Binary, Call, Choice, Comparison, Expression, Name, Number, Sign
from garboard.calc.tokens import KEYWORDS, WORDS_ELSEWHERE, Cursor, Sort, Token
from garboard.names import nearest

__all__ = ["COMPARISONS", "MOST_ARGUMENTS", "ExpressionReader"]

DEEPEST = 30
MOST_ARGUMENTS = 40
COMPARISONS = ("<", "<=", ">", ">=")
OUT_OF_PLACE = {
    **WORDS_ELSEWHERE,
    "in": "end the line with in UNIT, no space inside the unit; an inch is written inch",
    "[": "write brackets [ ] only as a list of a method, or for sources behind #",
    ")": "take one closing bracket away, or add the opening one",
    "=": "set one name a line",
    ",": "write a decimal point; a comma only parts the arguments of a function",
}


class ExpressionReader:
    """Reads expressions from the tokens of a line."""

    def __init__(self, line: Line, end: int, methods: Collection[str]) -> None:
        self.line = line
        self.methods = methods
        self.cursor = Cursor(line, 0, end)
        self.terms = 0
        """How many things it is made of."""

    def check_end(self) -> None:
        """Refuse whatever is left of the line.

        Raises:
            CalcFault: Something is.
        """
        cursor = self.cursor
        token = cursor.next
        if token.sort is Sort.END:
            return
        if token.text in COMPARISONS:
            text = f"a second comparison stands at `{token.text}`"
            cure = "compare two values at a time: one require line for each, or a if x < y else b"
            raise self.line.fault(Family.SYNTAX, token.span, text, cure)
        if token.text in TOLERANCE_SIGNS:
            text = "a tolerance belongs to a quantity that stands alone on its line"
            cure = "give the quantity a name and a line of its own"
            raise self.line.fault(Family.SYNTAX, token.span, text, cure)
        raise self.follower_fault(token)

    def follower_fault(self, token: Token) -> CalcFault:
        """Refuse something that follows with no sign between."""
        cure = OUT_OF_PLACE.get(token.text, "put + - * / or ^ between two values")
        text = f"`{self.line.quote(token.span)}` does not belong here"
        return self.line.fault(Family.SYNTAX, token.span, text, cure)

    def read_comparison(self, depth: int) -> Comparison:
        """Read two sums and the sign between them."""
        left = self.read_sum(depth)
        token = self.cursor.next
        if token.text not in COMPARISONS:
            if token.text == "=":
                raise self.cursor.fault(
                    "a single = compares nothing", "compare with <, <=, > or >="
                )
            raise self.cursor.fault(
                "a comparison is missing", "compare two values with <, <=, > or >="
            )
        self.cursor.take()
        right = self.read_sum(depth)
        if self.cursor.next.text in COMPARISONS:
            self.check_end()
        return Comparison(left.span.to(right.span), token.text, left, right)

    def read_expression(self, depth: int) -> Expression:
        """Read a value, or the choice between two."""
        then = self.read_sum(self.deeper(depth))
        if not self.cursor.sees("if"):
            return then
        self.cursor.take()
        condition = self.read_comparison(depth + 1)
        self.cursor.expect("else", "write a if left <= right else b")
        otherwise = self.read_expression(depth + 1)
        return Choice(then.span.to(otherwise.span), condition, then, otherwise)

    def deeper(self, depth: int) -> int:
        """Count one level of brackets.

        Raises:
            CalcFault: There are too many.
        """
        if depth > DEEPEST:
            span = self.cursor.next.span
            text = f"an expression nested deeper than {DEEPEST} levels"
            cure = "name its inner parts on lines of their own"
            raise self.line.fault(Family.LIMIT, span, text, cure)
        return depth

    def read_sum(self, depth: int) -> Expression:
        """Read products joined by + and -."""
        left = self.read_product(depth)
        while self.cursor.sees("+", "-"):
            sign = self.cursor.take().text
            right = self.read_product(depth)
            left = Binary(left.span.to(right.span), sign, left, right)
        return left

    def read_product(self, depth: int) -> Expression:
        """Read factors joined by * and /."""
        left = self.read_factor(depth)
        while self.cursor.sees("*", "/"):
            sign = self.cursor.take().text
            right = self.read_factor(depth)
            left = Binary(left.span.to(right.span), sign, left, right)
        return left

    def read_factor(self, depth: int) -> Expression:
        """Read a power, or the minus before one."""
        cursor = self.cursor
        if not cursor.sees("-"):
            if cursor.sees("+"):
                raise cursor.fault("a plus before a value says nothing", "leave it out")
            return self.read_power(depth)
        if cursor.after().sort is Sort.NUMBER:
            behind = cursor.after(3 if cursor.after(2).sort is Sort.UNIT else 2)
            if behind.text != "^":
                return self.read_number()
        token = cursor.take()
        operand = self.read_factor(self.deeper(depth + 1))
        self.terms += 1
        return Sign(token.span.to(operand.span), operand)

    def read_power(self, depth: int) -> Expression:
        """Read one thing, with its power."""
        base = self.read_primary(depth)
        if not self.cursor.sees("^"):
            return base
        token = self.cursor.take()
        exponent = self.read_factor(depth)
        if self.cursor.sees("^") or (isinstance(exponent, Binary) and exponent.sign == "^"):
            text = f"powers in a row, `{self.line.quote(base.span.to(exponent.span))}`"
            span = base.span.to(self.cursor.next.span)
            raise self.line.fault(Family.SYNTAX, span, text, "say with brackets which comes first")
        bare = self.line.text[base.span.start] != "("
        if isinstance(base, Number) and base.unit.text and bare:
            text = f"`{self.line.quote(base.span)} ^` can be read in two ways"
            cure = f"write {base.shown}^2 for the unit, or ({base.shown})^2 for the value"
            raise self.line.fault(Family.SYNTAX, base.span.to(token.span), text, cure)
        return Binary(base.span.to(exponent.span), "^", base, exponent)

    def read_primary(self, depth: int) -> Expression:
        """Read a number, a name, a function or a bracket."""
        self.terms += 1
        cursor = self.cursor
        token = cursor.next
        if token.sort is Sort.NUMBER:
            return self.read_number()
        if token.sort is Sort.NAME and token.text not in KEYWORDS:
            return self.read_name(depth)
        if token.text == "(":
            cursor.take()
            inside = self.read_expression(self.deeper(depth + 1))
            if cursor.next.text in COMPARISONS:
                self.check_end()
            closing = cursor.expect(")", "close the bracket")
            return replace(inside, span=token.span.to(closing.span))
        if token.text == "[":
            text = "a list stands outside a method"
            cure = "write [a, b] only as an argument of a method"
            raise self.line.fault(Family.SYNTAX, token.span, text, cure)
        raise cursor.fault("a value is missing", "write a name, or a number with its unit")

    def read_number(self) -> Expression:
        """Read a quantity inside an expression."""
        number = take_number(self.cursor)
        follows = self.cursor.next
        if follows.text in TOLERANCE_SIGNS:
            self.check_end()
        if follows.sort in (Sort.NUMBER, Sort.NAME) and follows.text not in KEYWORDS:
            raise self.follower_fault(follows)
        return number

    def read_name(self, depth: int) -> Expression:
        """Read a name, or a function with its arguments."""
        cursor = self.cursor
        token = cursor.take()
        if "-" in token.text and "." not in token.text:
            text = f"`{self.line.quote(token.span)}` is one name here"
            spaced = token.text.replace("-", " - ")
            raise self.line.fault(
                Family.SYNTAX, token.span, text, f"to subtract write {spaced[:60]}"
            )
        if cursor.sees("("):
            return self.read_call(token, depth)
        if cursor.sees("["):
            text = f"`{self.line.quote(token.span)}[` picks a part of a value"
            cure = "give each value a name of its own"
            raise self.line.fault(Family.SYNTAX, token.span.to(cursor.next.span), text, cure)
        return Name(token.span, token.text)

    def read_call(self, token: Token, depth: int) -> Call:
        """Read the arguments of a function."""
        if token.text not in FUNCTIONS:
            raise self.call_fault(token)
        cursor = self.cursor
        cursor.take()
        arguments: list[Expression] = []
        while not cursor.sees(")"):
            if arguments:
                cursor.expect(",", "part the arguments by a comma, and close the bracket")
            if cursor.after().text == "=":
                text = f"a named argument in `{token.text}`"
                raise cursor.fault(text, "write the values alone, in their order")
            arguments.append(self.read_expression(self.deeper(depth + 1)))
            if len(arguments) > MOST_ARGUMENTS:
                text = f"more than {MOST_ARGUMENTS} arguments in `{token.text}`"
                raise self.line.fault(
                    Family.LIMIT, token.span, text, "name parts on lines of their own"
                )
            if cursor.next.text in COMPARISONS:
                self.check_end()
        closing = cursor.take()
        span = token.span.to(closing.span)
        least, most = FUNCTIONS[token.text]
        if not least <= len(arguments) <= most:
            wanted = f"{least}" if least == most else f"at least {least}"
            text = f"`{self.line.quote(span)}` has {len(arguments)} values"
            raise self.line.fault(Family.SYNTAX, span, text, f"give {token.text} {wanted}")
        return Call(span, token.text, token.span, tuple(arguments))

    def call_fault(self, token: Token) -> CalcFault:
        """Refuse a call of something that is no function, or a method inside an expression."""
        if token.text in self.methods:
            text = f"the method `{token.text}` stands inside an expression"
            cure = f"give it a line of its own: x = {token.text}(...), then use x"
            return self.line.fault(Family.METHOD, token.span, text, cure)
        near = nearest(token.text, (*FUNCTIONS, *self.methods))
        cure = f"did you mean {near}?" if near else "to multiply by a bracket put * between"
        text = f"no function or method is called `{self.line.quote(token.span)}`"
        return self.line.fault(Family.NAME, token.span, text, cure)
