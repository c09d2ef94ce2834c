"""Read a quantity as the SI Brochure writes it: number, one space, unit, and how sure it is.

`33 bar(g) +/- 0.5 bar`: a tolerance is a difference, so its pressure needs no tag. The same reader
serves the lines of a calculation and the properties of a component.
"""

from dataclasses import dataclass
from fractions import Fraction

from garboard.calc.characters import check_characters
from garboard.calc.fault import CalcFault, Family, Line, Span
from garboard.calc.kinds import Kind, Type, has_datum, words
from garboard.calc.syntax import Number, Tolerance
from garboard.calc.tokens import KEYWORDS, Cursor, Sort, Token
from garboard.calc.unit_names import LIBRARY_NAMES, TRAPS
from garboard.calc.units import NO_UNIT, Unit, as_difference, read_unit_in
from garboard.calc.value import Given
from garboard.errors import Where

__all__ = ["Quantity", "read_quantity", "take_number", "take_tolerance"]

LONGEST = 400
SPACED_TAGS = ("g", "a", "d", "n", "s", "anr")
TOLERANCE_SIGNS = ("+/-", "±")


@dataclass(frozen=True, slots=True)
class Quantity:
    """A measurement as a person wrote it."""

    si: float
    low: float
    """The ends of its tolerance, in SI; equal to `si` where none is stated."""
    high: float
    unit: Unit
    type: Type
    shown: str
    """As written, without the tolerance: `33 bar(g)`."""
    tolerance: str = ""
    """As written: `0.5 bar`, `10 %`; empty where none is stated."""

    def given(self, address: str, where: Where) -> Given:
        """The same as a number of the handbook, at an address and a place."""
        return Given(
            address,
            self.si,
            self.low,
            self.high,
            self.unit,
            self.type,
            self.shown,
            where,
            self.tolerance,
        )


def read_quantity(text: str, where: Where, about: str = "") -> Quantity:
    """Read a quantity that stands alone.

    Args:
        text: As written: `30 bar(g) +/- 0.5 bar`, `25 degC`, `3 %`, `12`.
        where: The place of its first sign.
        about: The tag or record it belongs to.

    Raises:
        CalcFault: It is no quantity, or does not say what it is counted from.

    >>> found = read_quantity("30 bar(g) +/- 0.5 bar", Where("a.yml"))
    >>> found.si, found.low, found.shown
    (3000000.0, 2950000.0, '30 bar(g)')
    """
    line = Line(text, where, about)
    if len(text) > LONGEST:
        raise line.fault(
            Family.LIMIT, Span(0, LONGEST), f"a quantity of {len(text)} signs", "shorten it"
        )
    check_characters(line, len(text))
    cursor = Cursor(line, 0, len(text))
    number = take_number(cursor)
    tolerance = take_tolerance(cursor, number)
    if cursor.next.sort is not Sort.END:
        raise cursor.fault(
            "something follows the quantity", "leave the number and its unit alone here"
        )
    si = number.unit.exact(number.number)
    low, high = (tolerance.low, tolerance.high) if tolerance else (si, si)
    shown = tolerance.shown if tolerance else ""
    return Quantity(si, low, high, number.unit, number.unit.type, number.shown, shown)


def take_number(cursor: Cursor) -> Number:
    """Take a number with its unit, and the minus before it.

    Raises:
        CalcFault: None stands here, or its unit cannot be read.
    """
    start = cursor.next.span
    negative = cursor.sees("-")
    if negative:
        cursor.take()
    if cursor.next.sort is not Sort.NUMBER:
        raise cursor.fault("a number is missing", "write a quantity as number, one space, unit")
    token = cursor.take()
    number = Fraction(token.text) * (-1 if negative else 1)
    sign = "-" if negative else ""
    if not cursor.on(Sort.UNIT):
        return Number(start.to(token.span), number, NO_UNIT, sign + token.text)
    unit_token = cursor.take()
    span = start.to(unit_token.span)
    check_spaced_tag(cursor, token, unit_token)
    unit = take_unit(cursor.line, token, unit_token)
    if unit.type.kind is not Kind.PLAIN and unit.exact(number) < 0 and below_nothing(unit):
        text = f"`{cursor.line.quote(span)}` is below {'nothing' if unit.shift == 0 else '0 K'}"
        raise cursor.line.fault(Family.RANGE, span, text, "check the number and its sign")
    return Number(span, number, unit, f"{sign}{token.text} {unit_token.text}")


def below_nothing(unit: Unit) -> bool:
    """Whether a negative value in SI cannot exist: absolute ones, and thermometer readings."""
    return unit.type.kind is Kind.ABSOLUTE or unit.shift != 0


def check_spaced_tag(cursor: Cursor, number: Token, unit: Token) -> None:
    """Refuse `10 bar g` and `10 bar (g)`.

    Raises:
        CalcFault: A word or bracket follows a unit with nothing between.
    """
    token, line = cursor.next, cursor.line
    bracket = token.text == "("
    word = cursor.after() if bracket else token
    if word.sort is not Sort.NAME or word.text in KEYWORDS:
        return
    part = number.span.to(cursor.after(2).span if bracket else word.span)
    text = f"`{word.text}` follows the unit in `{line.quote(part)}` with nothing between"
    cure = "write a unit with no space inside, and + - * / between two values"
    if word.text in SPACED_TAGS:
        cure = f"write {number.text} {unit.text}({word.text}), the tag against the unit"
    raise line.fault(Family.SYNTAX, part, text, cure)


def take_unit(line: Line, number: Token, token: Token) -> Unit:
    """Read the unit behind a number.

    Raises:
        CalcFault: It is none; the cure says how to multiply by a name.
    """
    try:
        return read_unit_in(line, token.span)
    except CalcFault as found:
        said = found.diagnostic
        if said.family == Family.UNIT and token.text.isidentifier():
            trap = token.text in TRAPS or token.text.rstrip("0123456789") in LIBRARY_NAMES
            if trap and len(token.text) > 1:
                raise
            cure = f"{said.help}; to multiply write {number.text} * {token.text}"
            raise line.fault(Family.UNIT, token.span, said.text, cure) from None
        if said.family == Family.UNIT and "/" in token.text and said.text.endswith("handbook"):
            cure = f"{said.help}; to divide by something else put a space on both sides of /"
            raise line.fault(Family.UNIT, token.span, said.text, cure) from None
        raise


def take_tolerance(cursor: Cursor, number: Number) -> Tolerance | None:
    """Take the tolerance behind a quantity, if there is one.

    Raises:
        CalcFault: It is no difference of the same kind.
    """
    if not cursor.sees(*TOLERANCE_SIGNS):
        return None
    cursor.take()
    token = cursor.next
    if token.sort is not Sort.NUMBER:
        raise cursor.fault("the tolerance has no number", "write it as +/- 0.5 bar or +/- 10 %")
    cursor.take()
    size = Fraction(token.text)
    si = number.unit.exact(number.number)
    if cursor.next.sort is not Sort.UNIT:
        span = token.span
        check_tolerance_type(cursor.line, span, NO_UNIT, number)
        width = float(size)
    else:
        unit_token = cursor.take()
        span = token.span.to(unit_token.span)
        check_spaced_tag(cursor, token, unit_token)
        if unit_token.text == "%":
            width = share_of(cursor.line, span, size, number)
        else:
            unit = difference_unit(cursor.line, token, unit_token)
            check_tolerance_type(cursor.line, span, unit, number)
            width = float(size * unit.factor)
    shown = cursor.line.text[span.start : span.end]
    return Tolerance(span, si - width, si + width, shown, width)


def share_of(line: Line, span: Span, size: Fraction, number: Number) -> float:
    """A tolerance in per cent of the value.

    Raises:
        CalcFault: Of a thermometer reading, or of a value that is itself in per cent.
    """
    quoted = line.quote(span)
    if number.unit.shift != 0:
        text = f"`{quoted}` of a thermometer reading has no meaning"
        raise line.fault(Family.DATUM, span, text, "write the tolerance in K or degC")
    if number.unit.text == "%":
        text = f"`{quoted}` of `{number.shown}` can be read in two ways"
        plain = float(number.number / 100)
        raise line.fault(
            Family.UNIT, span, text, f"write the value as {plain:g} with +/- and its share"
        )
    si = number.number * number.unit.factor
    return float(abs(si) * size / 100)


def difference_unit(line: Line, number: Token, token: Token) -> Unit:
    """The unit of a tolerance; it is a difference by nature, so `bar` and `K` need no tag.

    Raises:
        CalcFault: It carries the tag of a reading, or is no unit.
    """
    text = token.text
    if text.endswith(("(g)", "(a)")):
        said = f"a tolerance in `{text}` would be a pressure or temperature, not a difference"
        raise line.fault(Family.DATUM, token.span, said, f"write +/- {number.text} {text[:-3]}")
    try:
        return as_difference(read_unit_in(Line(text, line.at(token.span)), Span(0, len(text))))
    except CalcFault as found:
        if found.diagnostic.family != Family.DATUM:
            raise
        tagged = f"{text}(d)"
        return read_unit_in(Line(tagged, line.at(token.span)), Span(0, len(tagged)))


def check_tolerance_type(line: Line, span: Span, unit: Unit, number: Number) -> None:
    """Refuse a tolerance of another dimension than its value.

    Raises:
        CalcFault: It is one.
    """
    if unit.type.dimension == number.unit.type.dimension:
        return
    text = f"the tolerance `{line.quote(span)}` is {words(unit.type)}, `{number.shown}` is "
    text += words(number.unit.type)
    cure = "give it in a unit of the same kind, or in %"
    if unit is NO_UNIT and has_datum(number.unit.type.dimension):
        cure = f"write its unit too, such as {as_difference(number.unit).text}; or give it in %"
    raise line.fault(Family.DIMENSION, span, text, cure)
