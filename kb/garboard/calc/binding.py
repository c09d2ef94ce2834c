"""Bind the call of a method: what every call has in common.

Arguments are handed to parameters as inner steps of the calculation, and the limits are judged as
soon as the values they speak of are known, before anything is worked out from them. A call outside
a limit is refused with the reason and gives no result at all; nothing is clipped.
"""

from abc import ABC, abstractmethod
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Protocol

from garboard.calc.body import BODY_PATH, read_condition
from garboard.calc.fault import CalcFault, Family, Line, Span, fault
from garboard.calc.handing import Handing
from garboard.calc.kinds import PLAIN_NUMBER
from garboard.calc.ledger import Formula, Told
from garboard.calc.meaning import Meaning, Scope
from garboard.calc.method import Answer, Limit, Method
from garboard.calc.syntax import MethodCall, Name
from garboard.calc.tree import Cast, Compare, Held, Node, Within
from garboard.calc.units import Unit

__all__ = ["Binder", "Bound", "Emit", "Watch"]


class Emit(Protocol):
    """Enters an inner step and gives it back, worked out."""

    def __call__(self, node: Node, told: Told) -> Formula:
        """Enter one step."""
        ...


@dataclass(frozen=True, slots=True)
class Watch:
    """An alarm of a formula method, to be judged."""

    condition: Compare
    text: str


@dataclass(frozen=True, slots=True)
class Bound:
    """A call, bound."""

    results: Mapping[str, Node]
    """By name, in the order the method declares them; only those that are worked out."""
    missing: Mapping[str, str]
    """Results that are not worked out, and what it would take."""
    steps: tuple[Formula, ...]
    """Inner lines, to be shown."""
    watches: tuple[Watch, ...] = ()
    answer: Answer | None = None
    """What a table gave."""
    units: Mapping[str, Unit] = field(default_factory=dict)
    """Units that a table's results are shown in."""
    notes: tuple[str, ...] = ()
    """Why results are held back."""


class Binder(ABC):
    """One call; the scope of names inside its method."""

    def __init__(
        self, method: Method, call: MethodCall, line: Line, scope: Scope, emit: Emit
    ) -> None:
        self.method = method
        self.call = call
        self.line = line
        self.outer = scope
        self.atmosphere = scope.atmosphere
        self.emit = emit
        self.handing = Handing(method, call, line, scope)
        self.parameters = {each.name: each for each in method.parameters}
        self.emitted: dict[str, Formula] = {}
        self.limits: list[tuple[Limit, Formula]] = []
        """Those that hold, each with the results it is about; none: all of them."""
        self.held_back: list[tuple[Limit, str]] = []
        """Results held back by a limit of their own, and why."""
        self.waiting = list(method.limits)
        self.steps: list[Formula] = []

    def bind(self) -> Bound:
        """Expand the call.

        Raises:
            CalcFault: An argument does not fit, leads nowhere, or lies outside a limit.
        """
        try:
            return self.expand()
        except CalcFault as found:
            inner = found.diagnostic
            if not inner.where.path.startswith(BODY_PATH):
                raise
            text = f"in {self.method.name}: {inner.text}"
            family = Family(inner.family)
            where = self.line.at(self.call.span)
            raise fault(family, where, text, inner.help, self.line.about) from None

    @abstractmethod
    def expand(self) -> Bound:
        """Expand the call, with places inside the method where that is at fault."""

    def find(self, line: Line, name: Name) -> Node:
        """The value of a name inside the method."""
        if "." in name.text:
            return self.outer.find(line, name)
        return self.demand(name.text).reference(name.span, name.text)

    def demand(self, name: str) -> Formula:
        """Work a name out, with all it needs, unless it is worked out already.

        Raises:
            CalcFault: It cannot be.
        """
        if name not in self.emitted:
            self.emitted[name] = self.work_name(name)
            self.check_limits()
        return self.emitted[name]

    @abstractmethod
    def work_name(self, name: str) -> Formula:
        """Work a name out.

        Raises:
            CalcFault: It cannot be.
        """

    def hand(self, name: str) -> Formula:
        """Hand an argument, or a default, to its parameter."""
        parameter = self.parameters[name]
        handed = self.handing.given.get(name)
        node, line = self.handing.node_for(parameter, self)
        written = line.quote(handed.span if handed else Span(0, len(line.text)))
        formula = self.emit(node, Told(name, line, parameter.meaning, written))
        if not handed or isinstance(node, Cast):
            self.steps.append(formula)
        return formula

    def check_limits(self) -> None:
        """Judge every limit whose names are all worked out.

        Raises:
            CalcFault: One does not hold; nothing is clipped to make it hold.
        """
        for limit in list(self.waiting):
            read = read_condition(self.method.name, limit.holds)
            if not self.knows(read.names):
                continue
            self.waiting.remove(limit)
            condition = Meaning(read.line, self).of_comparison(read.comparison)
            node = Within(PLAIN_NUMBER, condition.span, condition, limit.reason)
            key = f"limit {len(self.method.limits) - len(self.waiting)}"
            try:
                formula = self.emit(node, Told(key, read.line, written=limit.holds))
            except CalcFault as found:
                if found.diagnostic.family != Family.VALIDITY:
                    raise
                if not limit.of:
                    raise self.limit_fault(limit.holds, limit.reason, read.names) from None
                self.held_back.append((limit, self.why_withheld(limit.reason, read.names)))
            else:
                self.limits.append((limit, formula))

    def limit_fault(self, holds: str, reason: str, names: Iterable[str]) -> CalcFault:
        """Refuse a call outside a limit, at the argument that the limit is about."""
        own = [each for each in self.call.arguments if each.name in names]
        span = own[0].span if own else self.call.span
        text = f"`{self.line.quote(span)}` is outside {self.method.name}: {reason}"
        cure = f"keep {holds}, here {self.values_of(names)}; or measure instead"
        return self.line.fault(Family.VALIDITY, span, text, cure)

    @property
    def withheld(self) -> dict[str, str]:
        """Results held back, and why: by the first of their limits as the method declares them."""
        found: dict[str, str] = {}
        for limit, why in sorted(
            self.held_back, key=lambda each: self.method.limits.index(each[0])
        ):
            for name in limit.of:
                found.setdefault(name, why)
        return found

    def why_withheld(self, reason: str, names: Iterable[str]) -> str:
        """Why one result is held back, with the values that the limit speaks of."""
        return f"{reason}, here {self.values_of(names)}"

    def values_of(self, names: Iterable[str]) -> str:
        """What names stand at, where they are worked out."""
        return ", ".join(
            f"{name} = {self.emitted[name].text}" for name in sorted(names) if name in self.emitted
        )

    def knows(self, names: Iterable[str]) -> bool:
        """Whether every name is worked out."""
        return all(name in self.emitted or "." in name for name in names)

    def held(self, value: Node, name: str) -> Node:
        """A result that stands only while every limit of the call, and of its own, does."""
        span = self.call.span
        held = sorted(self.limits, key=lambda each: self.method.limits.index(each[0]))
        limits = tuple(
            one.reference(span) for limit, one in held if not limit.of or name in limit.of
        )
        return Held(value.type, span, value, limits) if limits else value
