"""The line that calls a method, as a page shows it: its inner lines, rows, notes and alarms."""

import math
import re
from collections.abc import Iterable, Iterator, Mapping

import numpy as np

from garboard.calc.arithmetic import FLOATS
from garboard.calc.draft import Entry
from garboard.calc.evaluate import build_comparison
from garboard.calc.kinds import PLAIN_NUMBER
from garboard.calc.ledger import ATMOSPHERE, Formula, Ledger
from garboard.calc.mathml import math_value, math_working
from garboard.calc.method import Answer
from garboard.calc.reckoner import Worked
from garboard.calc.sheet import Table, WorkedLine
from garboard.calc.spread import Spread
from garboard.calc.syntax import Assignment
from garboard.calc.tree import Compare, Held, Look, Node, Operation
from garboard.calc.value import Value
from garboard.calc.working import Shown, show_working
from garboard.errors import OutsideValidity

__all__ = ["CallLines", "notes_of"]

FIGURE = re.compile(r"\d+(\.\d+)?")
ASSUMED = "site.atmosphere is not stated: 101325 Pa(a) is taken"


class CallLines:
    """Makes the lines of method calls."""

    def __init__(self, spread: Spread, shown: Shown, values: Mapping[str, Value]) -> None:
        self.ledger = spread.ledger
        self.spread = spread
        self.shown = shown
        self.values = values

    def of_call(
        self, key: str, entry: Entry, statement: Assignment, worked: Worked, together: int
    ) -> WorkedLine:
        """A line that calls a method, with what the method did."""
        bound = worked.bound
        steps = bound.steps if bound else ()
        value = self.values.get(key)
        answer = bound.answer if bound else None
        inner = [self.inner_line(formula, key, statement) for formula in steps]
        shown = {step.name for step in inner}
        for address, formula in worked.formulas.items():
            if address != key and address.rpartition(".")[2] not in shown:
                inner.append(self.result_line(formula, self.values[address]))
        mathml = ""
        if value:
            formula = worked.formulas[key]
            mathml = math_working(formula.told.name, formula.node, self.shown, formula.text)
        used = (*steps, *worked.formulas.values())
        return WorkedLine(
            statement.name,
            entry.label,
            entry.sources,
            entry.written,
            f"{entry.written} = {value.text}" if value else entry.written,
            mathml,
            statement.line.where,
            value,
            steps=tuple(inner),
            table=table_of(answer),
            notes=(
                *notes_of(used, self.ledger),
                *words_of(answer),
                *(bound.notes if bound else ()),
            ),
            alarms=(
                *(answer.alarms if answer else ()),
                *self.worst_of(worked, answer, together),
                *self.alarms_of(worked, together),
            ),
        )

    def inner_line(self, formula: Formula, key: str, statement: Assignment) -> WorkedLine:
        """An inner line of a method; one that is a result carries its value."""
        value = self.values.get(f"{key}.{formula.told.name}")
        texts = self.shown
        return WorkedLine(
            formula.told.name,
            formula.told.label,
            (),
            formula.told.written,
            show_working(formula.told.name, formula.node, texts, formula.text),
            math_working(formula.told.name, formula.node, texts, formula.text),
            statement.line.where,
            value,
            notes=notes_of((formula,), self.ledger),
        )

    def result_line(self, formula: Formula, value: Value) -> WorkedLine:
        """A result that a table gives: the figure alone, its rows stand beside it."""
        name = value.address.rpartition(".")[2]
        return WorkedLine(
            name,
            formula.told.label,
            (),
            formula.told.written,
            f"{name} = {formula.text}",
            math_value(name, formula.text),
            value.where,
            value,
        )

    def alarms_of(self, worked: Worked, together: int) -> Iterator[str]:
        """The alarms of a formula method that go off, as given or at the worst corner."""
        for watch in worked.bound.watches if worked.bound else ():
            if build_comparison(watch.condition, FLOATS)(self.ledger.slots):
                yield watch.text
            elif self.goes_off(watch.condition, together):
                yield f"{watch.text} (at the worst corner)"

    def worst_of(self, worked: Worked, answer: Answer | None, together: int) -> Iterator[str]:
        """What a table warns of at some corner and not as given; once, whatever its figures."""
        look = look_of(worked) if answer else None
        if answer is None or look is None or not self.spread.mask_of(look):
            return
        said = {wording(text) for text in answer.alarms}
        columns = self.spread.samples(look.operands, look, together)
        corners = dict.fromkeys(zip(*(column.tolist() for column in columns), strict=True))
        for corner in (each for each in corners if all(map(math.isfinite, each))):
            for text in alarms_at(look, corner):
                if wording(text) not in said:
                    said.add(wording(text))
                    yield f"{text} (at the worst corner)"

    def goes_off(self, condition: Compare, together: int) -> bool:
        """Whether an alarm goes off at some corner."""
        gap = gap_of(condition)
        if not self.spread.mask_of(gap):
            return False
        (gaps,) = self.spread.samples((gap,), gap, together)
        return bool((gaps[np.isfinite(gaps)] > 0).any())


def notes_of(formulas: Iterable[Formula], ledger: Ledger) -> tuple[str, ...]:
    """What was taken for granted."""
    used = any(ATMOSPHERE in formula.needs for formula in formulas)
    return (ASSUMED,) if used and ledger.assumed_atmosphere else ()


def gap_of(condition: Compare) -> Node:
    """How far the condition of an alarm is met; above 0 it goes off."""
    left, right = condition.left, condition.right
    if condition.sign in ("<", "<="):
        left, right = right, left
    return Operation(PLAIN_NUMBER, condition.span, "-", left, right)


def look_of(worked: Worked) -> Look | None:
    """How a table method is read; every result of a call is read with the same values."""
    for formula in worked.formulas.values():
        node = formula.node.value if isinstance(formula.node, Held) else formula.node
        if isinstance(node, Look):
            return node
    return None


def alarms_at(look: Look, corner: tuple[float, ...]) -> tuple[str, ...]:
    """What a table warns of at one corner; nothing where it has no answer there."""
    try:
        return look.read(corner).alarms
    except (OutsideValidity, ArithmeticError, ValueError, LookupError):
        return ()


def wording(alarm: str) -> str:
    """An alarm without its figures, which move from corner to corner."""
    return FIGURE.sub("", alarm)


def table_of(answer: Answer | None) -> Table | None:
    """The rows that a table method read."""
    return Table(answer.columns, answer.rows) if answer and answer.rows else None


def words_of(answer: Answer | None) -> tuple[str, ...]:
    """What a table method says in words."""
    if answer is None:
        return ()
    return (*(f"{name}: {word}" for name, word in answer.words.items()), *answer.notes)
