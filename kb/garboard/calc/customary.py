"""The unit a result is shown in when nobody asked for one.

It stays in the units of what it is made of where it can: two volumes in litres give litres, 2 * 250
L is 500 L. Where that says nothing, it is what the trade uses, scaled so that the number is
readable.
"""

from fractions import Fraction
from functools import cache

from garboard.calc.dimensions import (
    AIR,
    NUMBER,
    PRESSURE,
    TEMPERATURE,
    TIME,
    TURN,
    VOLUME,
    Dimension,
    dimension,
)
from garboard.calc.kinds import Kind, Type
from garboard.calc.tree import (
    Apply,
    Cast,
    Choose,
    Constant,
    Held,
    Negate,
    Node,
    Operation,
    Reference,
)
from garboard.calc.units import NO_UNIT, Unit, as_difference, read_unit

__all__ = ["customary_unit", "shown_unit"]

LENGTHS = ("m", "mm", "cm", "inch", "ft")
SYMBOLS = ("m", "kg", "s", "K", "A", "mol", "cd", "m3(n)", "rev")
"""Of BASES, in their order."""


def shown_unit(node: Node, si: float) -> Unit:
    """The unit to show a result in.

    Args:
        node: How it is worked out.
        si: Its value, which decides between a unit and its multiples.
    """
    found = inherited(node)
    if found == NO_UNIT and node.type.dimension == NUMBER:
        return found
    if found and found.type.dimension == node.type.dimension and found.type.kind is node.type.kind:
        return found
    return customary_unit(node.type, si)


def inherited(node: Node) -> Unit | None:  # noqa: PLR0911 - one case for each kind of node
    """The unit that a result takes over from what it is made of."""
    match node:
        case Constant() | Reference():
            return node.unit
        case Negate():
            return inherited(node.operand)
        case Held():
            return inherited(node.value)
        case Choose():
            return inherited(node.then)
        case Cast():
            return cast_unit(node)
        case Operation():
            return joined_unit(node)
        case Apply():
            return function_unit(node)
        case _:
            return None


def joined_unit(node: Operation) -> Unit | None:
    """The unit of a sum, or of something times or over a plain number, or of a power."""
    left, right = node.left, node.right
    if node.sign in "+-":
        own = inherited(left) if left.type.kind is not Kind.PLAIN else inherited(right)
        if left.type.kind is right.type.kind:
            own = inherited(left)
        if own and node.type.kind is Kind.PLAIN:
            return as_difference(own)
        return own
    if node.sign == "*" and left.type.dimension == NUMBER and right.type == node.type:
        return inherited(right)
    if node.sign in "*/" and right.type.dimension == NUMBER and left.type == node.type:
        return inherited(left)
    if node.sign == "^" and isinstance(right, Constant) and right.value in (2, 3):
        base = inherited(left)
        if base and base.text in LENGTHS:
            return read_unit(f"{base.text}{right.value:.0f}")
    return None


def function_unit(node: Apply) -> Unit | None:
    """The unit of what a function gives."""
    if node.function in ("min", "max", "abs"):
        return inherited(node.arguments[0])
    if node.function == "interpolate":
        return inherited(node.arguments[2])
    return None


def cast_unit(node: Cast) -> Unit | None:
    """The unit of a value that is counted from another point."""
    own = inherited(node.operand)
    if not own or not own.text:
        return None
    if own.text in ("degC", "degF") or own.text.startswith(("K", "deg")):
        return None
    stem = own.text.removesuffix("(g)").removesuffix("(a)").removesuffix("(d)")
    if stem == own.text:
        return None
    tag = {Kind.ABSOLUTE: "a", Kind.READING: "g", Kind.PLAIN: "d"}[node.type.kind]
    return read_unit(f"{stem}({tag})")


def customary_unit(what: Type, si: float) -> Unit:
    """The unit of the trade for a dimension, scaled to the value.

    >>> customary_unit(Type(VOLUME), 0.25).text, customary_unit(Type(PRESSURE), 2e5).text
    ('L', 'bar(d)')
    """
    names = UNITS.get((what.dimension, what.kind))
    if names is None:
        return coherent(what)
    units = [read_unit(name) for name in names]
    fitting = [unit for unit in units if abs(si) >= unit.scale]
    return fitting[-1] if fitting else units[0]


@cache
def coherent(what: Type) -> Unit:
    """The SI unit of any dimension, broken powers among them.

    >>> coherent(Type(dimension(mass=1, length=2, time=-3, current=-2))).text
    'm2.kg/(s3.A2)'
    """
    above = [power_text(at, exponent) for at, exponent in enumerate(what.dimension) if exponent > 0]
    below = [
        power_text(at, -exponent) for at, exponent in enumerate(what.dimension) if exponent < 0
    ]
    text = ".".join(above)
    if below:
        text = f"{text or '1'}/{below[0] if len(below) == 1 else '(' + '.'.join(below) + ')'}"
    return Unit(text, Fraction(1), Fraction(0), what)


def power_text(base: int, exponent: Fraction) -> str:
    """A base unit with its power."""
    symbol = SYMBOLS[base]
    if exponent == 1:
        return symbol
    if exponent.denominator != 1 or symbol.endswith(")"):
        return f"{symbol}^({exponent})"
    return f"{symbol}{exponent}"


def of_trade() -> dict[tuple[Dimension, Kind], tuple[str, ...]]:
    """Units of the trade, each dimension's from small to large."""
    flow = dimension(length=3, time=-1)
    plain: dict[Dimension, tuple[str, ...]] = {
        PRESSURE: ("Pa(d)", "mbar(d)", "bar(d)"),
        TEMPERATURE: ("K(d)",),
        TIME: ("s", "min", "h"),
        VOLUME: ("mL", "L", "m3"),
        AIR: ("L(n)", "m3(n)"),
        TURN: ("rev",),
        dimension(length=1): ("um", "mm", "m"),
        dimension(mass=1): ("g", "kg", "t"),
        dimension(current=1): ("mA", "A"),
        dimension(length=2): ("mm2", "cm2", "m2"),
        flow: ("L/min", "m3/h"),
        dimension(free_air=1, time=-1): ("L(n)/min", "m3(n)/min"),
        dimension(mass=1, time=-1): ("kg/h", "kg/s"),
        dimension(mass=1, length=-3): ("kg/m3",),
        dimension(length=1, mass=1, time=-2): ("N", "kN"),
        dimension(length=2, mass=1, time=-2): ("J", "kJ", "MJ"),
        dimension(length=2, mass=1, time=-3): ("W", "kW", "MW"),
        dimension(length=1, time=-1): ("m/s",),
        dimension(length=1, time=-2): ("m/s2",),
        dimension(turn=1, time=-1): ("rpm",),
        dimension(current=1, time=1): ("Ah",),
        dimension(length=2, mass=1, time=-3, current=-1): ("mV", "V", "kV"),
        dimension(length=2, mass=1, time=-3, current=-2): ("mohm", "ohm", "kohm"),
        dimension(length=-1, mass=1, time=-1): ("cP", "Pa.s"),
        dimension(length=2, time=-1): ("mm2/s", "m2/s"),
    }
    return {
        **{(measure, Kind.PLAIN): names for measure, names in plain.items()},
        (PRESSURE, Kind.READING): ("mbar(g)", "bar(g)"),
        (PRESSURE, Kind.ABSOLUTE): ("mbar(a)", "bar(a)"),
        (TEMPERATURE, Kind.READING): ("degC",),
        (TEMPERATURE, Kind.ABSOLUTE): ("K(a)",),
        (NUMBER, Kind.PLAIN): ("",),
    }


UNITS = of_trade()
