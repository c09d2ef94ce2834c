"""Give account of a reckoning: its values with their ranges, its worked lines, its requirements."""

from collections.abc import Iterator
from dataclasses import replace

from garboard.calc.call_lines import CallLines, notes_of
from garboard.calc.criterion import Judgement, judge
from garboard.calc.curve import find_curve
from garboard.calc.draft import Draft, Entry, Unread
from garboard.calc.fault import Span
from garboard.calc.kinds import PLAIN_NUMBER
from garboard.calc.ledger import Formula
from garboard.calc.mathml import math_comparison, math_working
from garboard.calc.movers import Likely, Movers
from garboard.calc.opening import what_if_text
from garboard.calc.part import Part, usual_of
from garboard.calc.reckoner import Judged, Reckoner
from garboard.calc.sheet import Sheet, WorkedLine
from garboard.calc.show import NOT_COMPUTED
from garboard.calc.spread import Extremes, Spread
from garboard.calc.syntax import Assignment, MethodCall
from garboard.calc.units import NO_UNIT
from garboard.calc.value import Requirement, Value, Verdict
from garboard.calc.working import Shown, show_comparison, show_working
from garboard.errors import Diagnostic

__all__ = ["Account"]


class Account:
    """Everything that a page or rule looks at, made from one reckoning."""

    def __init__(self, reckoner: Reckoner) -> None:
        self.reckoner = reckoner
        self.ledger = reckoner.ledger
        self.spread = Spread(reckoner.ledger)
        self.movers = Movers(self.spread)
        self.shown = Shown(reckoner.ledger.texts, reckoner.ledger.slots)
        self.values: dict[str, Value] = {}
        """Of the block at hand, by address."""
        self.calls = CallLines(self.spread, self.shown, self.values)
        self.requirements: list[Requirement] = []

    def part_of(self, block: str, draft: Draft) -> Part:
        """All that one block comes to."""
        self.values.clear()
        self.requirements.clear()
        sheet = self.of_block(block, draft)
        sheet = replace(sheet, what_if=what_if_text(self.reckoner, sheet, self.spread))
        return Part(sheet, tuple(self.values.values()), tuple(self.requirements))

    def of_block(self, block: str, draft: Draft) -> Sheet:
        """A block, worked out."""
        together = self.roots_of(block, draft)
        lines: list[WorkedLine] = []
        for line in draft.lines:
            if isinstance(line, Unread):
                lines.append(unread_line(line))
                if line.name:
                    self.note_unread(f"{block}.{line.name}", line)
            elif isinstance(line.statement, Assignment):
                lines.append(self.of_assignment(block, line, line.statement, together))
            else:
                lines.append(self.of_requirement(block, line, together))
        faults = [found for found in self.reckoner.standing.faults if found.about == block]
        return Sheet(
            block,
            draft.fence.owner,
            draft.fence.where,
            draft.options,
            tuple(lines),
            tuple(dict.fromkeys((*draft.faults, *faults))),
        )

    def note_unread(self, address: str, line: Unread) -> None:
        """The value that an unreadable line would have set."""
        self.values.setdefault(
            address,
            Value(
                address, line.where, PLAIN_NUMBER, NO_UNIT, None, None, None, NOT_COMPUTED,
                fault=line.fault,
            ),
        )  # fmt: skip

    def roots_of(self, block: str, draft: Draft) -> int:
        """The toleranced inputs upstream of anything in a block, a bit each."""
        found = 0
        for formula in self.formulas_of(block, draft):
            found |= self.ledger.upstream[formula.slot]
        return found

    def formulas_of(self, block: str, draft: Draft) -> Iterator[Formula]:
        """Everything that a block works out."""
        for entry in draft.entries:
            statement = entry.statement
            if isinstance(statement, Assignment):
                worked = self.reckoner.worked.get(f"{block}.{statement.name}")
                yield from worked.formulas.values() if worked else ()
            else:
                judged = self.reckoner.judged.get((block, statement.line.where.line))
                yield from (judged.left, judged.right) if judged else ()

    def of_assignment(
        self, block: str, entry: Entry, statement: Assignment, together: int
    ) -> WorkedLine:
        """A line that sets a name."""
        key = f"{block}.{statement.name}"
        found = self.reckoner.standing.broken.get(key)
        if found:
            return self.broken_line(key, entry, statement, found)
        worked = self.reckoner.worked[key]
        for address, formula in worked.formulas.items():
            self.values[address] = self.of_formula(address, formula, entry, statement, together)
        if worked.bound:
            return self.calls.of_call(key, entry, statement, worked, together)
        value, formula = self.values[key], worked.formulas[key]
        return WorkedLine(
            statement.name,
            entry.label,
            entry.sources,
            entry.written,
            self.working_of(formula, value),
            math_working(formula.told.name, formula.node, self.shown, formula.text),
            statement.line.where,
            value,
            notes=notes_of((formula,), self.ledger),
        )

    def working_of(self, formula: Formula, value: Value) -> str:
        """The worked line as text, with the tolerance of a given value."""
        text = show_working(formula.told.name, formula.node, self.shown, formula.text)
        return f"{text} +/- {value.tolerance}" if value.tolerance else text

    def of_formula(
        self, address: str, formula: Formula, entry: Entry, statement: Assignment, together: int
    ) -> Value:
        """One value with its range."""
        ends, likely = self.sureness_of(formula, together)
        tolerance = statement.tolerance.shown if statement.tolerance else ""
        return Value(
            address,
            statement.line.where,
            formula.node.type,
            formula.unit,
            formula.si,
            ends.low,
            ends.high,
            formula.text,
            formula.told.label or entry.label,
            entry.sources,
            given=not formula.needs,
            tolerance=tolerance,
            uses=self.ledger.uses(formula.slot),
            whole=formula.whole,
            digits=formula.told.digits,
            usual=likely.usual,
            movers=likely.movers,
            sampled=ends.sampled,
        )

    def sureness_of(self, formula: Formula, together: int) -> tuple[Extremes, Likely]:
        """The range of one value at worst, and how it usually stands."""
        if not self.ledger.upstream[formula.slot]:
            return Extremes(formula.si, formula.si), Likely(None)
        if formula.told.ends:
            low, high = formula.told.ends
            return Extremes(low, high), Likely(usual_of(low, high))
        reference = formula.reference(Span(0, 0))
        ends = self.spread.range_of(reference, together)
        return ends, self.movers.of(reference, ends, together)

    def broken_line(
        self, key: str, entry: Entry, statement: Assignment, found: Diagnostic
    ) -> WorkedLine:
        """A line that is not computed, with the reason."""
        register = self.reckoner.register
        block = key.partition(".")[0]
        names = (register.address_of(block, name.text) for name in register.names(entry))
        unit = statement.unit or NO_UNIT
        addresses = [key]
        if isinstance(statement.value, MethodCall):
            results = register.methods[statement.value.method].results
            if len(results) > 1:
                addresses = [f"{key}.{result.name}" for result in results]
        for address in addresses:
            self.values[address] = Value(
                address,
                statement.line.where,
                unit.type,
                unit,
                None,
                None,
                None,
                NOT_COMPUTED,
                entry.label,
                entry.sources,
                uses=tuple(dict.fromkeys(names)),
                fault=found,
            )
        return WorkedLine(
            statement.name,
            entry.label,
            entry.sources,
            entry.written,
            f"{statement.name} = {NOT_COMPUTED}: {found.text}",
            "",
            statement.line.where,
            self.values[key] if len(addresses) == 1 else None,
            fault=found,
        )

    def of_requirement(self, block: str, entry: Entry, together: int) -> WorkedLine:
        """A `require` line, judged."""
        line = entry.statement.line
        text = entry.written.removeprefix("require").strip()
        judged = self.reckoner.judged.get((block, line.where.line))
        if judged is None:
            return self.unjudged(block, entry, text)
        found = judge(judged.comparison.sign, judged.left, judged.right, self.spread, together)
        uses = dict.fromkeys(
            (*self.ledger.uses(judged.left.slot), *self.ledger.uses(judged.right.slot))
        )
        requirement = Requirement(
            block,
            line.where,
            text,
            entry.label,
            entry.sources,
            found.verdict,
            found.left,
            found.right,
            found.margin,
            found.margin_percent,
            tuple(uses),
            find_curve(judged.comparison.sign, judged.left, judged.right, self.movers, together),
        )
        self.requirements.append(requirement)
        return WorkedLine(
            "",
            entry.label,
            entry.sources,
            entry.written,
            requirement_text(judged, found),
            math_comparison(judged.comparison, self.shown),
            line.where,
            requirement=requirement,
            notes=notes_of((judged.left, judged.right), self.ledger),
        )

    def unjudged(self, block: str, entry: Entry, text: str) -> WorkedLine:
        """A requirement that rests on something that is not computed."""
        line = entry.statement.line
        found = self.reckoner.standing.broken[f"{block}.require {line.where.line}"]
        register = self.reckoner.register
        names = [register.address_of(block, name.text) for name in register.names(entry)]
        requirement = Requirement(
            block,
            line.where,
            text,
            entry.label,
            entry.sources,
            Verdict.UNKNOWN,
            NOT_COMPUTED,
            NOT_COMPUTED,
            NOT_COMPUTED,
            None,
            tuple(dict.fromkeys(names)),
        )
        self.requirements.append(requirement)
        return WorkedLine(
            "",
            entry.label,
            entry.sources,
            entry.written,
            f"{text}: {NOT_COMPUTED}: {found.text}",
            "",
            line.where,
            requirement=requirement,
            fault=found,
        )


def unread_line(line: Unread) -> WorkedLine:
    """A line that cannot be read, with the reason."""
    worked = f"{NOT_COMPUTED}: {line.fault.text}"
    return WorkedLine(line.name, "", (), line.written, worked, "", line.where, fault=line.fault)


def requirement_text(judged: Judged, found: Judgement) -> str:
    """A requirement worked out, as text."""
    names = show_comparison(judged.comparison)
    values = f"{found.left} {judged.comparison.sign} {found.right}"
    said = f"{found.verdict}, margin {found.margin}"
    return f"{names}: {values}: {said}" if names != values else f"{names}: {said}"
