"""Give a line its meaning: the type of every part, and the slot of every name.

Dimensions, kinds and datum exponents are checked here, once; working it out afterwards is plain
arithmetic on SI numbers.
"""

from collections.abc import Callable
from fractions import Fraction

from garboard.calc.casting import Casting, Scope, unit_of
from garboard.calc.fault import CalcFault, Family, Span
from garboard.calc.functions import CASTS, CONSTANTS, free_air_type, type_of_call
from garboard.calc.kinds import (
    NUMBER,
    PLAIN_NUMBER,
    PRESSURE,
    TEMPERATURE,
    Clash,
    Kind,
    Type,
    add,
    divide,
    multiply,
    power,
    same,
    subtract,
    words,
)
from garboard.calc.syntax import Binary, Call, Choice, Comparison, Expression, Name, Number, Sign
from garboard.calc.tree import (
    Apply,
    Choose,
    Compare,
    Constant,
    Negate,
    Node,
    Operation,
)
from garboard.calc.units import NO_UNIT

__all__ = ["Meaning", "Scope"]

HIGHEST_POWER = 12
FINEST_POWER = 1000


class Meaning(Casting):
    """Reads the expressions of one line."""

    def of(self, what: Expression) -> Node:
        """The meaning of an expression.

        Raises:
            CalcFault: Two things meet in it that cannot.
        """
        match what:
            case Number():
                return self.of_number(what)
            case Name():
                return self.of_name(what)
            case Sign():
                return self.of_sign(what)
            case Binary():
                return self.of_binary(what)
            case Choice():
                return self.of_choice(what)
            case Call():
                return self.of_call(what)

    def of_number(self, what: Number) -> Node:
        """A number in SI."""
        unit = what.unit
        value = unit.exact(what.number)
        return Constant(unit.type, what.span, value, what.shown, unit, what.number)

    def of_name(self, what: Name) -> Node:
        """A name: a constant of the language, or a value elsewhere."""
        if what.text in CONSTANTS:
            value = CONSTANTS[what.text]
            return Constant(PLAIN_NUMBER, what.span, value, what.text, NO_UNIT)
        return self.scope.find(self.line, what)

    def of_sign(self, what: Sign) -> Node:
        """A minus before something that has no starting point."""
        operand = self.of(what.operand)
        if operand.type.kind is not Kind.PLAIN:
            text = f"`{self.line.quote(what.span)}` turns the sign of {words(operand.type)}"
            cure = "subtract it from another one, or say difference(...)"
            raise self.line.fault(Family.DATUM, what.span, text, cure)
        return Negate(operand.type, what.span, operand)

    def of_binary(self, what: Binary) -> Node:
        """Two things joined by a sign."""
        left, right = self.of(what.left), self.of(what.right)
        if what.sign == "^":
            return self.of_power(what, left, right)
        rule = ALGEBRA[what.sign]
        try:
            kind = rule(left.type, right.type)
        except Clash as clash:
            raise self.clash_fault(clash, what.span) from clash
        if what.sign in "+-":
            self.check_torque(left, unit_of(right), what.span)
        return Operation(kind, what.span, what.sign, left, right)

    def of_power(self, what: Binary, base: Node, exponent: Node) -> Node:
        """A power; what has a unit takes only a power written out."""
        if exponent.type.dimension != NUMBER or exponent.type.kind is not Kind.PLAIN:
            text = f"the power in `{self.line.quote(what.span)}` is {words(exponent.type)}"
            raise self.line.fault(Family.DIMENSION, exponent.span, text, "make it a plain number")
        written = fraction_of(exponent)
        if written is not None and abs(written) > HIGHEST_POWER:
            text = f"the power in `{self.line.quote(what.span)}` is beyond {HIGHEST_POWER}"
            raise self.line.fault(Family.LIMIT, exponent.span, text, "powers go from -12 to 12")
        if base.type == PLAIN_NUMBER:
            return Operation(PLAIN_NUMBER, what.span, "^", base, exponent)
        if written is None or written.denominator > FINEST_POWER:
            if base.type.dimension == NUMBER:
                return Operation(PLAIN_NUMBER, what.span, "^", base, exponent)
            text = f"`{self.line.quote(base.span)}` has a unit, so its power must be written out"
            cure = "write the power as a number, or divide by one of the unit first"
            raise self.line.fault(Family.DIMENSION, what.span, text, cure)
        try:
            kind = power(base.type, written)
        except Clash as clash:
            raise self.clash_fault(clash, what.span) from clash
        return Operation(kind, what.span, "^", base, exponent)

    def of_comparison(self, what: Comparison) -> Compare:
        """Two things of the same kind, compared."""
        left, right = self.of(what.left), self.of(what.right)
        try:
            same(left.type, right.type, "compare")
        except Clash as clash:
            raise self.clash_fault(clash, what.span) from clash
        self.check_torque(left, unit_of(right), what.span)
        return Compare(what.span, what.sign, left, right)

    def of_choice(self, what: Choice) -> Node:
        """One of two things of the same kind."""
        condition = self.of_comparison(what.condition)
        then, otherwise = self.of(what.then), self.of(what.otherwise)
        try:
            kind = same(then.type, otherwise.type, "choose between")
        except Clash as clash:
            raise self.clash_fault(clash, what.span) from clash
        return Choose(kind, what.span, condition, then, otherwise)

    def of_call(self, what: Call) -> Node:
        """A function of its arguments."""
        arguments = tuple(self.of(each) for each in what.arguments)
        if what.function in CASTS:
            return self.cast(what.function, arguments[0], what.span)
        if what.function == "free_air":
            return self.of_free_air(what, arguments)
        try:
            kind = type_of_call(what.function, tuple(each.type for each in arguments))
        except Clash as clash:
            raise self.clash_fault(clash, what.span) from clash
        return Apply(kind, what.span, what.function, arguments)

    def of_free_air(self, what: Call, arguments: tuple[Node, ...]) -> Node:
        """The amount of gas in a volume; readings are counted from nothing first."""
        volume, pressure, temperature = arguments
        try:
            kind = free_air_type(volume.type)
        except Clash as clash:
            raise self.clash_fault(clash, volume.span) from clash
        pressure = self.as_absolute(pressure, PRESSURE, "the pressure of free_air()")
        temperature = self.as_absolute(temperature, TEMPERATURE, "the temperature of free_air()")
        return Apply(kind, what.span, "free_air", (volume, pressure, temperature))

    def clash_fault(self, clash: Clash, span: Span) -> CalcFault:
        """Refuse a part of the line in which two things clash."""
        family = Family.DATUM if clash.datum else Family.DIMENSION
        return self.line.fault(
            family, span, f"in `{self.line.quote(span)}`: {clash.text}", clash.cure
        )


ALGEBRA: dict[str, Callable[[Type, Type], Type]] = {
    "+": add,
    "-": subtract,
    "*": multiply,
    "/": divide,
}


def fraction_of(node: Node) -> Fraction | None:
    """The exact value of an expression of plain written numbers, such as `0.4 / 1.4`."""
    match node:
        case Constant():
            return node.exact if not node.unit.text else None
        case Negate():
            inner = fraction_of(node.operand)
            return None if inner is None else -inner
        case Operation():
            left, right = fraction_of(node.left), fraction_of(node.right)
            if left is None or right is None or (node.sign == "/" and not right):
                return None
            return {
                "+": left + right,
                "-": left - right,
                "*": left * right,
                "/": left / right if right else None,
            }.get(node.sign)
        case _:
            return None
