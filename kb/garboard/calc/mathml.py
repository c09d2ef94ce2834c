"""The worked line as MathML: symbols = numbers = result, for browsers without any script.

Names show as people write them: `p_max` with its index, `rho` as the Greek letter. Everything that
an author typed is escaped.
"""

import re
from html import escape

from garboard.calc.kinds import TEMPERATURE, absolute_of
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
from garboard.calc.working import (
    ATOM,
    BINDING,
    POWER,
    PRODUCT,
    SIGNED,
    SUM,
    Shown,
    value_binding,
)

__all__ = ["math_comparison", "math_value", "math_working"]

GREEK = {
    "alpha": "\u03b1", "beta": "\u03b2", "gamma": "\u03b3", "delta": "\u03b4", "epsilon": "\u03b5",
    "zeta": "\u03b6", "eta": "\u03b7", "theta": "\u03b8", "kappa": "\u03ba", "lambda": "\u03bb",
    "mu": "\u03bc", "nu": "\u03bd", "xi": "\u03be", "pi": "\u03c0", "rho": "\u03c1",
    "sigma": "\u03c3", "tau": "\u03c4", "phi": "\u03c6", "chi": "\u03c7", "psi": "\u03c8",
    "omega": "\u03c9", "Gamma": "\u0393", "Delta": "\u0394", "Theta": "\u0398", "Lambda": "\u039b",
    "Sigma": "\u03a3", "Phi": "\u03a6", "Psi": "\u03a8", "Omega": "\u03a9",
}  # fmt: skip
RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
SIGNS = {"<": "&lt;", ">": "&gt;", "<=": "≤", ">=": "≥"}
NAMES = {"log": "ln", "log10": "log10"}
POWERS = re.compile(r"(?<=[A-Za-z])\^?(-?[0-9]+)(?![A-Za-z0-9_])")
DEGREES = re.compile(r"\bdeg(?=[CF])|\bdeg\b")
NEGATIVE = "<mn>\u2212"
ATMOSPHERE = "<msub><mi>p</mi><mtext>atmosphere</mtext></msub>"


def math_working(name: str, node: Node, shown: Shown, result: str) -> str:
    """A whole worked line as a `math` element.

    Args:
        name: What it sets.
        node: How it is worked out.
        shown: Every value.
        result: The result as shown.
    """
    parts = [symbol(name)]
    for part in (MathWriter(None).write(node), MathWriter(shown).write(node), value(result)):
        if part != parts[-1]:
            parts.append(part)
    return wrap("<mo>=</mo>".join(parts))


def math_value(name: str, result: str) -> str:
    """A name and its value as a `math` element."""
    return wrap(f"{symbol(name)}<mo>=</mo>{value(result)}")


def math_comparison(node: Compare, shown: Shown) -> str:
    """A requirement as a `math` element: in names, then in values."""
    names, values = MathWriter(None).comparison(node), MathWriter(shown).comparison(node)
    gap = '<mspace width="1em"/>'
    return wrap(names if names == values else f"{names}<mo>:</mo>{gap}{values}")


def wrap(inside: str) -> str:
    """The element around a line."""
    return f'<math display="block"><mrow>{inside}</mrow></math>'


def symbol(name: str) -> str:
    """A name: `p_max` with its index, a Greek one as the letter, an address as it stands."""
    owner, dot, last = name.rpartition(".")
    base, _, index = last.partition("_")
    letter = GREEK.get(base, base)
    style = "" if len(letter) == 1 else ' mathvariant="normal"'
    text = f"<mi{style}>{escape(letter)}</mi>"
    if index:
        text = f"<msub>{text}<mtext>{escape(index.replace('_', ' '))}</mtext></msub>"
    if not dot:
        return text
    return f"<mrow><mtext>{escape(owner)}.</mtext>{text}</mrow>"


def value(text: str) -> str:
    """A number with its unit, as shown."""
    number, _, unit = text.partition(" ")
    mantissa, e, power = number.replace("-", "\u2212").partition("e")
    shown = f"<mn>{escape(mantissa)}</mn>"
    if e:
        shown += f"<mo>·</mo><msup><mn>10</mn><mn>{escape(power)}</mn></msup>"
    if unit:
        shown += f'<mspace width="0.2em"/><mtext>{escape(unit_text(unit))}</mtext>'
    return f"<mrow>{shown}</mrow>"


def unit_text(unit: str) -> str:
    """A unit as it is printed: raised powers and dots, the degree sign.

    >>> unit_text("kg.m2/s2"), unit_text("degC"), unit_text("m3(n)/h")
    ('kg·m²/s²', '°C', 'm³(n)/h')
    """
    raised = POWERS.sub(lambda found: found[1].translate(RAISED), unit)
    return DEGREES.sub("°", raised).replace(".", "·").replace("ohm", "Ω")


class MathWriter:
    """Writes one expression as MathML."""

    def __init__(self, shown: Shown | None) -> None:
        self.shown = shown
        """None: names stand as they are."""

    def write(self, node: Node, above: int = 0) -> str:
        """A node, in brackets where what stands around it binds more tightly."""
        text, binding = self.part(node)
        return f"<mrow><mo>(</mo>{text}<mo>)</mo></mrow>" if binding < above else text

    def part(self, node: Node) -> tuple[str, int]:  # noqa: C901, PLR0911 - one case for each kind of node
        """A node, and how tightly it holds together."""
        match node:
            case Constant():
                shown = symbol(node.shown) if node.exact is None else value(node.shown)
                return shown, value_binding(node.shown)
            case Reference():
                if self.shown is None:
                    return symbol(node.name), ATOM
                return value(self.shown.texts[node.slot]), value_binding(
                    self.shown.texts[node.slot]
                )
            case Negate():
                return f"<mrow><mo>\u2212</mo>{self.write(node.operand, POWER)}</mrow>", SIGNED
            case Operation():
                return self.operation(node)
            case Choose():
                return self.choice(node), ATOM
            case Apply():
                return self.function(node), ATOM
            case Cast():
                return self.cast(node)
            case Held():
                return self.part(node.value)
            case Within():
                return self.comparison(node.condition), 0
            case Look():
                return self.call(node.method, node.operands), ATOM

    def operation(self, node: Operation) -> tuple[str, int]:
        """Two things and what joins them; a ratio as a fraction, a power raised."""
        if node.sign == "/":
            return f"<mfrac>{self.write(node.left)}{self.write(node.right)}</mfrac>", PRODUCT
        if node.sign == "^":
            base = self.write(node.left, ATOM)
            return f"<msup>{base}{self.write(node.right)}</msup>", POWER
        binding = BINDING[node.sign]
        left = self.write(node.left, binding)
        right = self.write(node.right, binding + (node.sign == "-"))
        if right.startswith((NEGATIVE, f"<mrow>{NEGATIVE}")):
            right = f"<mrow><mo>(</mo>{right}<mo>)</mo></mrow>"
        sign = {"+": "+", "-": "\u2212", "*": "·"}[node.sign]
        return f"<mrow>{left}<mo>{sign}</mo>{right}</mrow>", binding

    def comparison(self, node: Compare) -> str:
        """Two things compared."""
        left, right = self.write(node.left), self.write(node.right)
        return f"<mrow>{left}<mo>{SIGNS[node.sign]}</mo>{right}</mrow>"

    def choice(self, node: Choose) -> str:
        """Two cases under one bracket."""
        first = f"<mtr><mtd>{self.write(node.then)}</mtd><mtd><mtext>if</mtext>"
        first += f"{self.comparison(node.condition)}</mtd></mtr>"
        second = f"<mtr><mtd>{self.write(node.otherwise)}</mtd><mtd><mtext>otherwise</mtext>"
        table = f"<mtable>{first}{second}</mtd></mtr></mtable>"
        return f"<mrow><mo>{{</mo>{table}</mrow>"

    def function(self, node: Apply) -> str:
        """A function; roots, sizes and powers of e as they are printed."""
        if node.function == "sqrt":
            return f"<msqrt>{self.write(node.arguments[0])}</msqrt>"
        if node.function == "abs":
            return f"<mrow><mo>|</mo>{self.write(node.arguments[0])}<mo>|</mo></mrow>"
        if node.function == "exp":
            return f"<msup><mi>e</mi>{self.write(node.arguments[0])}</msup>"
        return self.call(NAMES.get(node.function, node.function), node.arguments)

    def call(self, name: str, arguments: tuple[Node, ...]) -> str:
        """A name and its arguments in brackets."""
        parts = "<mo>,</mo>".join(self.write(each) for each in arguments)
        inside = f"<mrow><mo>(</mo>{parts}<mo>)</mo></mrow>"
        shown = escape(name.replace("_", " "))
        return f'<mrow><mi mathvariant="normal">{shown}</mi><mo>&#8289;</mo>{inside}</mrow>'

    def cast(self, node: Cast) -> tuple[str, int]:
        """A value counted from another point: the atmosphere added or taken."""
        if node.word == "in":
            return self.part(node.operand)
        if node.conversion is Conversion.SAME_NUMBER:
            kelvin = self.shown.kelvin(node.operand) if self.shown else ""
            if kelvin and node.type == absolute_of(TEMPERATURE):
                return value(kelvin), SIGNED
            return self.call(node.word, (node.operand,)), ATOM
        sign = "+" if node.conversion is Conversion.ADD_ATMOSPHERE else "\u2212"
        own = value(self.shown.texts[node.atmosphere]) if self.shown else ATMOSPHERE
        inner = self.write(node.operand, SUM)
        return f"<mrow>{inner}<mo>{sign}</mo>{own}</mrow>", SUM
