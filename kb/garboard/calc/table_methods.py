"""Read a table, rule or graph method: its numbers are gathered and its own code answers.

What it gives depends on what it was handed, so it is read once while the call is bound; a result
that the row does not hold is left out.
"""

from collections.abc import Mapping, Sequence

from garboard.calc.binding import Binder, Bound, Emit
from garboard.calc.fault import Family, Line
from garboard.calc.ledger import Formula, Told
from garboard.calc.meaning import Scope
from garboard.calc.method import Answer, Argument, Parameter, TableMethod
from garboard.calc.syntax import Listing, MethodCall
from garboard.calc.tree import Look, Node
from garboard.calc.units import read_unit
from garboard.errors import OutsideValidity

__all__ = ["TableBinder"]

MOST_KEPT = 10_000


class TableBinder(Binder):
    """One call of a table method."""

    def __init__(
        self, method: TableMethod, call: MethodCall, line: Line, scope: Scope, emit: Emit
    ) -> None:
        super().__init__(method, call, line, scope, emit)
        self.table = method
        self.words: dict[str, Argument] = {}
        self.lists: dict[str, list[Formula]] = {}

    def expand(self) -> Bound:
        """Hand the arguments over and read the table."""
        self.handing.check_names()
        for parameter in self.method.parameters:
            self.take(parameter)
        inputs = [formula for each in self.lists.values() for formula in each]
        inputs += self.emitted.values()
        reader = TableReader(
            self.table,
            self.words,
            {name: len(items) for name, items in self.lists.items()},
            {name: self.text_of(name) for name in self.emitted},
        )
        answer = self.read(reader, [formula.si for formula in inputs])
        operands = tuple(formula.reference(self.call.span) for formula in inputs)
        results: dict[str, Node] = {}
        name = self.method.name
        for result in self.method.results:
            if result.name in answer.results:
                kind = read_unit(result.unit).type
                look = Look(kind, self.call.span, name, result.name, operands, reader.read)
                results[result.name] = self.held(look, result.name)
        missing = {
            each.name: f"{self.method.name} holds no such figure for these arguments"
            for each in self.method.results
            if each.name not in results
        }
        units = {each.name: read_unit(each.unit) for each in self.method.results}
        return Bound(results, missing, tuple(self.steps), (), answer, units)

    def take(self, parameter: Parameter) -> None:
        """Hand one argument over: a word, a list or a quantity; or leave it out."""
        word = self.handing.word_for(parameter)
        if word:
            self.words[parameter.name] = word
            return
        handed = self.handing.given.get(parameter.name)
        if handed is None and (parameter.default is None or parameter.default in parameter.words):
            return
        if handed and parameter.listed:
            value = handed.value
            items = value.items if isinstance(value, Listing) else (value,)
            self.lists[parameter.name] = [
                self.emit(
                    self.handing.quantity(parameter, item),
                    Told(
                        f"{parameter.name} {number}",
                        self.line,
                        parameter.meaning,
                        self.line.quote(item.span),
                    ),
                )
                for number, item in enumerate(items, 1)
            ]
            return
        self.demand(parameter.name)

    def work_name(self, name: str) -> Formula:
        """Hand a quantity, or a default, to its parameter."""
        return self.hand(name)

    def text_of(self, name: str) -> str:
        """An argument as written."""
        handed = self.handing.given.get(name)
        return self.line.quote(handed.value.span) if handed else ""

    def read(self, reader: "TableReader", values: Sequence[float]) -> Answer:
        """Read the table at the values as given.

        Raises:
            CalcFault: It has no answer there.
        """
        span, name = self.call.span, self.method.name
        try:
            return reader.read(tuple(values))
        except OutsideValidity as reason:
            text = f"`{self.line.quote(span)}` is outside {name}: {reason}"
            cure = "give values it holds for, or measure instead"
            raise self.line.fault(Family.VALIDITY, span, text, cure) from None
        except (ArithmeticError, ValueError, LookupError) as reason:
            text = f"`{self.line.quote(span)}` cannot be read: {type(reason).__name__} in {name}"
            cure = "check its arguments; report it with this line"
            raise self.line.fault(Family.METHOD, span, text, cure) from None


class TableReader:
    """Reads one table at different values, and keeps what it has read."""

    def __init__(
        self,
        method: TableMethod,
        words: Mapping[str, Argument],
        lists: Mapping[str, int],
        texts: Mapping[str, str],
    ) -> None:
        self.method = method
        self.words = dict(words)
        self.lists = dict(lists)
        self.texts = dict(texts)
        self.kept: dict[tuple[float, ...], Answer] = {}

    def read(self, values: tuple[float, ...]) -> Answer:
        """Read it at some values: those of the lists first, then the single ones.

        Raises:
            OutsideValidity: It has no answer there.
        """
        if values not in self.kept:
            if len(self.kept) >= MOST_KEPT:
                self.kept.clear()
            self.kept[values] = self.method.look_up(self.gather(values))
        return self.kept[values]

    def gather(self, values: Sequence[float]) -> dict[str, Argument]:
        """The arguments as the method wants them."""
        found = dict(self.words)
        at = 0
        for name, count in self.lists.items():
            found[name] = Argument(items=tuple(values[at : at + count]))
            at += count
        for name, value in zip(self.texts, values[at:], strict=True):
            found[name] = Argument(si=value, text=self.texts[name])
        return found
