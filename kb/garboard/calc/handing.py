"""Hand arguments to the parameters of a method: names, words, lists, units, kinds.

A reading handed to a parameter that counts from nothing is converted, and the conversion is shown.
"""

from garboard.calc.body import read_default
from garboard.calc.fault import CalcFault, Family, Line, Span
from garboard.calc.kinds import Kind, words
from garboard.calc.meaning import Meaning, Scope
from garboard.calc.method import Argument, Method, Parameter
from garboard.calc.syntax import Argument as Handed
from garboard.calc.syntax import Expression, Listing, MethodCall, Name, Number
from garboard.calc.tree import Node
from garboard.calc.units import read_unit
from garboard.names import nearest

__all__ = ["Handing"]

CASTS = {Kind.READING: "gauge", Kind.ABSOLUTE: "absolute", Kind.PLAIN: "difference"}


class Handing:
    """The arguments of one call."""

    def __init__(self, method: Method, call: MethodCall, line: Line, scope: Scope) -> None:
        self.method = method
        self.call = call
        self.line = line
        self.scope = scope
        self.given: dict[str, Handed] = {each.name: each for each in call.arguments}

    def check_names(self) -> None:
        """Refuse an argument that the method does not take, takes once only, or cannot do without.

        Raises:
            CalcFault: There is one; or a word that is understood and refused.
        """
        known = [each.name for each in self.method.parameters]
        seen: set[str] = set()
        for each in self.call.arguments:
            if each.name not in known:
                near = nearest(each.name, known)
                cure = f"did you mean {near}?" if near else f"it takes {', '.join(known)}"
                text = f"{self.method.name} takes no `{self.line.quote(each.name_span)}`"
                raise self.line.fault(Family.METHOD, each.name_span, text, cure)
            if each.name in seen:
                text = f"`{each.name}` is given twice"
                raise self.line.fault(Family.METHOD, each.name_span, text, "give it once")
            seen.add(each.name)
        for parameter in self.method.parameters:
            self.check_required(parameter)
            self.check_refused(parameter)

    def check_required(self, parameter: Parameter) -> None:
        """Refuse a call without a parameter that no answer can do without.

        Raises:
            CalcFault: It is left out.
        """
        name = parameter.name
        if parameter.required and name not in self.given:
            text = f"`{self.line.quote(self.call.span)}` does not say `{name}`"
            cure = f"give {name}: {parameter.missing}"
            raise self.line.fault(Family.METHOD, self.call.span, text, cure)

    def check_refused(self, parameter: Parameter) -> None:
        """Refuse a word that says what the method does not answer for.

        Raises:
            CalcFault: It is one of those, with its reason.
        """
        handed = self.given.get(parameter.name)
        word = handed.value.text if handed and isinstance(handed.value, Name) else ""
        if handed and word in parameter.refused:
            text = f"`{self.line.quote(handed.span)}` is outside {self.method.name}"
            text = f"{text}: {parameter.refused[word]}"
            cure = f"it answers for {', '.join(parameter.words)} only"
            raise self.line.fault(Family.VALIDITY, handed.span, text, cure)

    def node_for(self, parameter: Parameter, inner: Scope) -> tuple[Node, Line]:
        """A quantity for a parameter, and the line it is written in.

        Args:
            parameter: One that is given or has a default.
            inner: What names in a default stand for.

        Raises:
            CalcFault: It is of another dimension or kind.
        """
        handed = self.given.get(parameter.name)
        if handed is None:
            read = read_default(self.method.name, parameter.name, parameter.default or "")
            node = Meaning(read.line, inner).of(read.expression)
            return self.fit(parameter, node, read.line, inner), read.line
        if isinstance(handed.value, Listing):
            text = f"`{parameter.name}` of {self.method.name} takes no list"
            raise self.line.fault(Family.METHOD, handed.value.span, text, "give one value")
        return self.quantity(parameter, handed.value), self.line

    def quantity(self, parameter: Parameter, value: Expression) -> Node:
        """A quantity that an author hands to a parameter.

        Raises:
            CalcFault: It is of another dimension or kind.
        """
        node = Meaning(self.line, self.scope).of(value)
        return self.fit(parameter, node, self.line, self.scope)

    def fit(self, parameter: Parameter, node: Node, line: Line, scope: Scope) -> Node:
        """Check a quantity against the unit of its parameter, and convert a reading.

        Raises:
            CalcFault: It is of another dimension or kind.
        """
        wanted = read_unit(parameter.unit).type
        kind = node.type
        text = f"`{parameter.name}` of {self.method.name} is {words(wanted)}, "
        text += f"`{line.quote(node.span)}` is {words(kind)}"
        if kind.dimension != wanted.dimension:
            cure = (
                f"give it in a unit such as {parameter.unit}"
                if parameter.unit
                else ("give a plain number")
            )
            raise line.fault(Family.DIMENSION, node.span, text, cure)
        Meaning(line, scope).check_torque(node, read_unit(parameter.unit), node.span)
        if kind.kind is wanted.kind:
            return node
        if (kind.kind, wanted.kind) == (Kind.READING, Kind.ABSOLUTE):
            return Meaning(line, scope).reading_to_absolute(node, node.span)
        cure = f"say {CASTS[wanted.kind]}(...) openly, or give it in {parameter.unit}"
        raise line.fault(Family.DATUM, node.span, text, cure)

    def word_for(self, parameter: Parameter) -> Argument | None:
        """The word that is handed to a parameter, or its default word.

        Returns:
            None where it takes no words, is left out, or takes a quantity too and was given one.

        Raises:
            CalcFault: It is none of the parameter's words.
        """
        if not parameter.words:
            return None
        handed = self.given.get(parameter.name)
        if handed is None:
            default = parameter.default
            return Argument(word=default, text=default) if default in parameter.words else None
        value = handed.value
        text = value.text if isinstance(value, Name) else ""
        if isinstance(value, Number) and not value.unit.text:
            text = value.shown
        if text in parameter.words:
            return Argument(word=text, text=text)
        if parameter.unit:
            return None
        raise self.word_fault(parameter, value.span, text)
        return None

    def word_fault(self, parameter: Parameter, span: Span, text: str) -> CalcFault:
        """Refuse a word that a parameter does not know."""
        near = nearest(text, parameter.words)
        known = ", ".join(parameter.words)
        cure = f"did you mean {near}? it takes {known}" if near else f"write one of {known}"
        said = f"`{self.line.quote(span)}` is no word for `{parameter.name}` of {self.method.name}"
        return self.line.fault(Family.METHOD, span, said, cure)
