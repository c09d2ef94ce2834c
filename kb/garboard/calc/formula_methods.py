"""Expand the call of a formula method into steps like an author's own lines.

A body line whose parameter was left out is left out with it, and so is a line that is meant for
another word than the one that was said. An argument that then leads to no result is refused, with
the partner it needs and why. A result that a limit of its own holds back is missing, with the reason.
"""

from collections.abc import Iterable, Iterator, Mapping

from garboard.calc.binding import Binder, Bound, Emit, Watch
from garboard.calc.body import BodyLine, read_body, read_condition, read_default
from garboard.calc.fault import Family, Line
from garboard.calc.ledger import Formula, Told
from garboard.calc.meaning import Meaning, Scope
from garboard.calc.method import FormulaMethod
from garboard.calc.syntax import MethodCall
from garboard.calc.tree import Node

__all__ = ["FormulaBinder"]


class FormulaBinder(Binder):
    """One call of a formula method."""

    def __init__(
        self, method: FormulaMethod, call: MethodCall, line: Line, scope: Scope, emit: Emit
    ) -> None:
        super().__init__(method, call, line, scope, emit)
        self.formula = method
        self.body: dict[str, BodyLine] = {}
        self.words: dict[str, str] = {}
        """Of each parameter that takes words, the one that was said or is its default."""

    def expand(self) -> Bound:
        """Expand the call."""
        self.body = read_body(self.method.name, self.formula.body)
        self.handing.check_names()
        self.take_words()
        for handed in self.call.arguments:
            if handed.name not in self.words:
                self.demand(handed.name)
        able = [each.name for each in self.method.results if not self.lacks(each.name)]
        self.check_arguments(able)
        inner = {name: self.demand(name).reference(self.call.span, name) for name in able}
        back = {name: why for name, why in self.withheld.items() if name in inner}
        found: dict[str, Node] = {
            name: self.held(node, name) for name, node in inner.items() if name not in back
        }
        missing = {
            each.name: back.get(each.name) or self.reason(self.lacks(each.name))
            for each in self.method.results
            if each.name not in found
        }
        steps = tuple(step for step in self.steps if step.told.name not in back)
        return Bound(found, missing, steps, tuple(self.watch()), notes=notes_of(back))

    def take_words(self) -> None:
        """Take the words that were said, and the defaults of those that were not.

        Raises:
            CalcFault: One is none of the parameter's words.
        """
        for parameter in self.method.parameters:
            word = self.handing.word_for(parameter)
            if word:
                self.words[parameter.name] = word.word

    def work_name(self, name: str) -> Formula:
        """Work a name out: a line of the body, or a parameter, which goes first where it is given."""
        if name in self.handing.given or name not in self.body:
            return self.hand(name)
        return self.work_line(name)

    def check_arguments(self, able: list[str]) -> None:
        """Refuse a call that works nothing out, and an argument that leads to no result.

        Raises:
            CalcFault: It names the partner that is missing, and why it cannot be done without.
        """
        if not able:
            lacking = self.nearest_lack(each.name for each in self.method.results)
            text = f"`{self.line.quote(self.call.span)}` works nothing out"
            raise self.line.fault(Family.METHOD, self.call.span, text, self.reason(lacking))
        used = {name for each in able for name in self.leads_to(each)}
        meant = {each.name: self.leads_to(each.name) for each in self.method.results}
        for handed in self.call.arguments:
            if handed.name in used or self.only_judges(handed.name, meant):
                continue
            if handed.name in self.words and not self.opens(handed.name):
                continue
            lacking = self.nearest_lack(name for name, path in meant.items() if handed.name in path)
            text = f"`{self.line.quote(handed.span)}` leads to no result of {self.method.name}"
            cure = f"{self.reason(lacking)}; or leave {handed.name} out"
            raise self.line.fault(Family.METHOD, handed.span, text, cure)

    def nearest_lack(self, results: Iterable[str]) -> frozenset[str]:
        """What the result lacks that was meant: the one that uses most of what was given."""
        given = self.handing.given.keys()
        meant = max(
            results,
            key=lambda name: (len(given & self.leads_to(name)), -len(self.lacks(name))),
            default="",
        )
        return self.lacks(meant) if meant else frozenset()

    def only_judges(self, name: str, meant: Mapping[str, frozenset[str]]) -> bool:
        """Whether a parameter serves limits and alarms alone, and one of them can be judged."""
        if any(name in path for path in meant.values()):
            return self.sets_off(name)
        limits = (each.holds for each in self.method.limits)
        return self.can_judge(name, limits) or self.sets_off(name)

    def sets_off(self, name: str) -> bool:
        """Whether an alarm that can be judged speaks of a name."""
        return self.can_judge(name, (each.when for each in self.formula.alarms))

    def can_judge(self, name: str, conditions: Iterable[str]) -> bool:
        """Whether one of some conditions speaks of a name, and all its names can be worked out."""
        for text in conditions:
            names = read_condition(self.method.name, text).names
            if name in names and not any(self.lacks(each) for each in names):
                return True
        return False

    def opens(self, name: str) -> bool:
        """Whether the word that was said of a parameter opens a line; others only shut lines."""
        return any(
            only[0] == name and self.words[name] in only[1:] for only in self.formula.only.values()
        )

    def reason(self, lacking: Iterable[str]) -> str:
        """What to give, and why it cannot be done without."""
        parts = []
        for name in sorted(lacking, key=list(self.parameters).index):
            missing = self.parameters[name].missing
            said = self.words.get(name)
            ask = f"{name} is {said}" if said else f"give {name}"
            parts.append(f"{ask}: {missing}" if missing else ask)
        return "; ".join(parts) or "leave it out"

    def lacks(self, name: str, above: frozenset[str] = frozenset()) -> frozenset[str]:
        """The parameters that were left out and without which a name cannot be worked out."""
        if "." in name or name in self.handing.given:
            return frozenset()
        if self.stands_alone(name):
            return frozenset((name,))
        found: frozenset[str] = frozenset()
        only = self.formula.only.get(name)
        if only and self.words.get(only[0]) not in only[1:]:
            found = frozenset((only[0],))
        for need in self.needs(name, above):
            found |= self.lacks(need, above | {name})
        return found

    def leads_to(self, name: str, above: frozenset[str] = frozenset()) -> frozenset[str]:
        """The names that a name is worked out from, itself included."""
        found = frozenset((name,))
        if "." in name or name in self.handing.given or self.stands_alone(name):
            return found
        found |= frozenset(self.formula.only.get(name, ())[:1])
        for need in self.needs(name, above):
            found |= self.leads_to(need, above | {name})
        return found

    def stands_alone(self, name: str) -> bool:
        """Whether a name is a parameter without a default, and no line of the body sets it."""
        parameter = self.parameters.get(name)
        return parameter is not None and parameter.default is None and name not in self.body

    def needs(self, name: str, above: frozenset[str]) -> frozenset[str]:
        """The names that stand in a body line or a default.

        Raises:
            CalcFault: The method is at fault: it uses a name that it does not set, or a ring.
        """
        if name in above or (name not in self.parameters and name not in self.body):
            text = f"the method {self.method.name} is at fault: it cannot work out its `{name}`"
            raise self.line.fault(Family.METHOD, self.call.span, text, "report it with this line")
        if name in self.body:
            return self.body[name].names
        return read_default(self.method.name, name, self.parameters[name].default or "").names

    def work_line(self, name: str) -> Formula:
        """Work a line of the body out."""
        read = self.body[name]
        meaning = Meaning(read.line, self)
        node = meaning.of(read.expression)
        if read.unit:
            node = meaning.shown_in(node, read.unit, read.unit_span or node.span)
        code = read.line.text.partition("#")[0].strip()
        formula = self.emit(node, Told(name, read.line, read.label, code, read.unit))
        self.steps.append(formula)
        return formula

    def watch(self) -> Iterator[Watch]:
        """The alarms whose names are all worked out."""
        for alarm in self.formula.alarms:
            read = read_condition(self.method.name, alarm.when)
            if self.knows(read.names):
                condition = Meaning(read.line, self).of_comparison(read.comparison)
                yield Watch(condition, alarm.text)


def notes_of(back: Mapping[str, str]) -> tuple[str, ...]:
    """Why results are held back; those with the same reason are named together."""
    names: dict[str, list[str]] = {}
    for name, why in back.items():
        names.setdefault(why, []).append(name)
    return tuple(f"not given: {', '.join(found)}; {why}" for why, found in names.items())
