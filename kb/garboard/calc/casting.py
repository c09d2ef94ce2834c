"""Count a value from another point: casts, units asked for, readings handed on as absolute.

An absolute temperature and a thermometer reading are one state and change into each other where a
unit asks for it; between gauge and absolute pressure stands the vessel's atmosphere, and a cast.
"""

from collections.abc import Callable
from fractions import Fraction
from typing import Protocol

from garboard.calc.fault import Family, Line, Span
from garboard.calc.kinds import (
    PRESSURE,
    TEMPERATURE,
    Kind,
    Type,
    absolute_of,
    difference_of,
    has_datum,
    reading_of,
    words,
)
from garboard.calc.syntax import Name
from garboard.calc.tree import Cast, Constant, Conversion, Node, Reference
from garboard.calc.units import Unit

__all__ = ["Casting", "Scope", "unit_of"]

TORQUES = frozenset(("N.m", "kN.m", "lbf.ft", "lbf.inch", "kgf.m"))
ENERGIES = frozenset(("J", "kJ", "MJ", "GJ", "Wh", "kWh", "MWh", "ft.lbf"))


class Scope(Protocol):
    """What names stand for in one fence, or in the body of a method."""

    @property
    def atmosphere(self) -> int:
        """The slot of the vessel's atmosphere."""
        ...

    def find(self, line: Line, name: Name) -> Node:
        """The value a name stands for.

        Raises:
            CalcFault: Nothing is called so, or it is not computed.
        """
        ...


class Casting:
    """Casts in one line."""

    def __init__(self, line: Line, scope: Scope) -> None:
        self.line = line
        self.scope = scope

    def as_absolute(self, node: Node, measure: tuple[Fraction, ...], what: str) -> Node:
        """A reading counted from nothing, where something needs it so.

        Raises:
            CalcFault: It is another dimension, or a difference.
        """
        wanted = absolute_of(measure)
        if node.type.dimension != measure:
            text = f"{what} is {words(wanted)}, `{self.line.quote(node.span)}` is "
            text += words(node.type)
            raise self.line.fault(
                Family.DIMENSION, node.span, text, "check the order of the arguments"
            )
        if node.type.kind is Kind.PLAIN:
            text = f"{what} is {words(wanted)}, `{self.line.quote(node.span)}` is "
            text += words(node.type)
            cure = "give what it is counted from: a tag on its unit, absolute(...) or gauge(...)"
            raise self.line.fault(Family.DATUM, node.span, text, cure)
        if node.type.kind is Kind.ABSOLUTE:
            return node
        return self.reading_to_absolute(node, node.span)

    def reading_to_absolute(self, node: Node, span: Span) -> Cast:
        """A reading, counted from nothing."""
        gauge = node.type.dimension == PRESSURE
        how = Conversion.ADD_ATMOSPHERE if gauge else Conversion.SAME_NUMBER
        kind = absolute_of(node.type.dimension)
        return Cast(kind, span, "absolute", how, node, self.scope.atmosphere)

    def cast(self, word: str, node: Node, span: Span) -> Node:
        """A cast that an author wrote.

        Raises:
            CalcFault: It makes no sense of such a value.
        """
        kind = node.type
        if not has_datum(kind.dimension):
            text = f"`{self.line.quote(span)}` is {words(kind)}, which is counted from nowhere"
            raise self.line.fault(Family.DIMENSION, span, text, f"leave {word}() out")
        if word == "absolute" and kind.kind is Kind.READING:
            return self.reading_to_absolute(node, span)
        wanted = CAST_TO[word](kind.dimension)
        if kind.kind is wanted.kind:
            return node
        if word == "absolute":
            return Cast(wanted, span, word, Conversion.SAME_NUMBER, node, self.scope.atmosphere)
        if kind.dimension == TEMPERATURE:
            text = f"`{self.line.quote(span)}` of {words(kind)} has no meaning"
            cure = "end the line with in degC for a reading; subtract another for a difference"
            raise self.line.fault(Family.DATUM, span, text, cure)
        if word == "difference" and kind.kind is Kind.ABSOLUTE:
            text = f"`{self.line.quote(span)}` is counted from nothing and is no difference"
            cure = "subtract another absolute pressure, or say difference(gauge(...))"
            raise self.line.fault(Family.DATUM, span, text, cure)
        down = word == "gauge" and kind.kind is Kind.ABSOLUTE
        how = Conversion.TAKE_ATMOSPHERE if down else Conversion.SAME_NUMBER
        return Cast(wanted, span, word, how, node, self.scope.atmosphere)

    def shown_in(self, node: Node, unit: Unit, span: Span) -> Node:
        """Check that a value is what the unit asked for measures.

        An absolute temperature and a thermometer reading are one state and may be asked for in each
        other's units; nothing else changes its kind here.

        Raises:
            CalcFault: It is of another dimension or kind.
        """
        kind, wanted = node.type, unit.type
        quoted = self.line.quote(node.span)
        if kind.dimension != wanted.dimension:
            text = f"`{quoted}` is {words(kind)}, `{unit.text}` measures {words(wanted)}"
            raise self.line.fault(
                Family.DIMENSION, span, text, "correct the unit or the expression"
            )
        self.check_torque(node, unit, span)
        if kind.kind is wanted.kind:
            return node
        if kind.dimension == TEMPERATURE and Kind.PLAIN not in (kind.kind, wanted.kind):
            same_number = Conversion.SAME_NUMBER
            return Cast(wanted, node.span, "in", same_number, node, self.scope.atmosphere)
        text = f"`{quoted}` is {words(kind)}, `{unit.text}` is {words(wanted)}"
        raise self.line.fault(Family.DATUM, span, text, CURE_FOR[wanted.kind])

    def check_torque(self, node: Node, unit: Unit | None, span: Span) -> None:
        """Refuse a torque as an energy, and the other way round: both are newton metres.

        Raises:
            CalcFault: One of two things that meet is in N.m, the other in J or kWh.
        """
        own = unit_of(node)
        texts = {own.text, unit.text} if own and unit else set()
        if texts & TORQUES and texts & ENERGIES:
            torque, energy = (texts & TORQUES).pop(), (texts & ENERGIES).pop()
            text = f"`{self.line.quote(span)}` makes a torque in {torque} an energy in {energy}"
            raise self.line.fault(Family.DIMENSION, span, text, "multiply the torque by an angle")


CAST_TO: dict[str, Callable[[tuple[Fraction, ...]], Type]] = {
    "absolute": absolute_of,
    "gauge": reading_of,
    "difference": lambda measure: difference_of(Type(measure)),
}
CURE_FOR = {
    Kind.ABSOLUTE: "say absolute(...) openly, or ask for a unit of its own kind",
    Kind.READING: "say gauge(...) openly, or ask for a unit of its own kind",
    Kind.PLAIN: "say difference(...) openly, or ask for a unit of its own kind",
}


def unit_of(node: Node) -> Unit | None:
    """The unit that a value was given or is shown in, where it stands alone."""
    return node.unit if isinstance(node, Constant | Reference) else None
