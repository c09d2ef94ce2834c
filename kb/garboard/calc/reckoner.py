"""Work all fences of a handbook out, in the order in which they rest on each other.

All faults are kept; none is reported a second time for what follows from it.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from garboard.calc.binding import Binder, Bound
from garboard.calc.draft import Draft, Entry
from garboard.calc.fault import CalcFault, Family, Line, fault
from garboard.calc.formula_methods import FormulaBinder
from garboard.calc.ledger import Formula, Told
from garboard.calc.meaning import Meaning
from garboard.calc.method import FormulaMethod, Method, TableMethod
from garboard.calc.order import find_ring, sort_groups
from garboard.calc.register import Register
from garboard.calc.standing import FenceScope, Inner, RestsOn, Standing, rests_on
from garboard.calc.syntax import Assignment, Expression, MethodCall, Requiring
from garboard.calc.table_methods import TableBinder
from garboard.calc.tree import Compare, Constant
from garboard.errors import Where

__all__ = ["Judged", "Reckoner", "Worked"]


@dataclass(frozen=True, slots=True)
class Worked:
    """An assignment, worked out."""

    formulas: Mapping[str, Formula]
    """By address: one, or one for each result of a method."""
    bound: Bound | None = None


@dataclass(frozen=True, slots=True)
class Judged:
    """A requirement whose sides are known."""

    comparison: Compare
    left: Formula
    right: Formula


class Reckoner:
    """Works a handbook out."""

    def __init__(self, register: Register) -> None:
        self.register = register
        self.standing = Standing(register)
        self.ledger = self.standing.ledger
        self.worked: dict[str, Worked] = {}
        """By address of the line."""
        self.judged: dict[tuple[str, int], Judged] = {}
        """By block and line number."""

    def begin(self, broken: Iterable[Draft]) -> None:
        """Enter what stands outside the fences.

        Args:
            broken: Fences with lines that cannot be read; what rests on those says so.
        """
        standing = self.standing
        givens = self.register.givens
        for address in sorted(givens):
            standing.enter_given(givens[address])
        for draft in broken:
            for name, found in draft.unreadable.items():
                standing.break_off(f"{draft.fence.name}.{name}", found, found)

    def work_out(self, blocks: Sequence[str]) -> None:
        """Work some blocks out that need each other; what else they need stands already."""
        register = self.register
        keys = dict.fromkeys(key for block in blocks for key in register.keys_of(block))
        needs = {key: register.needs(key) for key in keys}
        for group in sort_groups({key: list(found) for key, found in needs.items()}):
            placed = sorted(group, key=lambda key: register.entries[key].statement.line.where)
            ring = find_ring(placed, {key: list(needs[key]) for key in group})
            if ring:
                self.break_ring(placed, ring, needs)
            else:
                self.settle(group[0])
        for block in blocks:
            draft = register.drafts[block]
            for entry in draft.entries:
                self.settle_requirement(block, draft, entry)

    def break_ring(
        self, group: Iterable[str], ring: tuple[str, ...], needs: Mapping[str, Mapping[str, Where]]
    ) -> None:
        """Report values that need each other, hop by hop."""
        hops = list(zip(ring, (*ring[1:], ring[0]), strict=True))
        text = ", ".join(f"`{one}` needs `{other}` ({needs[one][other]})" for one, other in hops)
        where = needs[hops[0][0]][hops[0][1]]
        cure = "work one of them out from something else, or write it down as given"
        about = ring[0].partition(".")[0]
        found = fault(Family.CYCLE, where, f"values in a ring: {text}", cure, about).diagnostic
        self.standing.faults.append(found)
        for key in group:
            self.standing.break_off(key, found, found)

    def settle(self, key: str) -> None:
        """Work one assignment out, or note why not."""
        standing = self.standing
        entry = self.register.entries[key]
        draft = self.register.drafts[key.partition(".")[0]]
        statement = entry.statement
        if key in standing.broken or not isinstance(statement, Assignment):
            return
        try:
            if isinstance(statement.value, MethodCall):
                worked = self.settle_call(key, draft, entry, statement.value)
            else:
                worked = self.settle_value(key, draft, entry, statement.value)
        except CalcFault as found:
            standing.faults.append(found.diagnostic)
            standing.break_off(key, found.diagnostic, found.diagnostic)
        except RestsOn as found:
            standing.break_off(key, rests_on(found), found.root)
        else:
            self.worked[key] = worked
            for address, formula in worked.formulas.items():
                standing.enter(address, formula)

    def settle_value(self, key: str, draft: Draft, entry: Entry, value: Expression) -> Worked:
        """Work an expression out."""
        statement = entry.statement
        if not isinstance(statement, Assignment):
            raise TypeError(key)
        meaning = Meaning(statement.line, FenceScope(self.standing, draft.fence.name))
        node = meaning.of(value)
        if statement.unit:
            node = meaning.shown_in(node, statement.unit, statement.unit_span or node.span)
        self.standing.check_atmosphere(node, statement.line)
        told = Told(
            statement.name,
            statement.line,
            entry.label,
            entry.written,
            statement.unit,
            node.shown if isinstance(node, Constant) and not statement.unit else "",
            draft.options.digits,
            (statement.tolerance.low, statement.tolerance.high) if statement.tolerance else None,
        )
        return Worked({key: self.ledger.add(key, node, told)})

    def settle_call(self, key: str, draft: Draft, entry: Entry, call: MethodCall) -> Worked:
        """Work the call of a method out."""
        statement = entry.statement
        if not isinstance(statement, Assignment):
            raise TypeError(key)
        method = self.register.methods[call.method]
        single = len(method.results) == 1
        if statement.unit and not single:
            text = f"`{call.method}` has several results, one unit does not fit them"
            cure = f"ask where one is used: y = {statement.name}.{method.results[0].name} in UNIT"
            span = statement.unit_span or call.span
            raise statement.line.fault(Family.METHOD, span, text, cure)
        scope = FenceScope(self.standing, draft.fence.name)
        emit = Inner(self.standing, key, draft.options.digits)
        bound = binder_for(method, call, statement.line, scope, emit).bind()
        for name, reason in bound.missing.items():
            self.standing.absent[key if single else f"{key}.{name}"] = reason
        formulas: dict[str, Formula] = {}
        for result in method.results:
            node = bound.results.get(result.name)
            if node is None:
                continue
            unit = statement.unit or bound.units.get(result.name)
            if statement.unit:
                meaning = Meaning(statement.line, scope)
                node = meaning.shown_in(node, statement.unit, statement.unit_span or call.span)
            printed = bound.answer.printed.get(result.name, "") if bound.answer else ""
            told = Told(
                statement.name if single else f"{statement.name}.{result.name}",
                statement.line,
                entry.label if single else result.meaning,
                entry.written,
                unit,
                "" if statement.unit else printed,
                draft.options.digits,
            )
            address = key if single else f"{key}.{result.name}"
            formulas[address] = self.ledger.add(address, node, told)
        if not single:
            self.standing.calls[key] = tuple(formulas)
        return Worked(formulas, bound)

    def settle_requirement(self, block: str, draft: Draft, entry: Entry) -> None:
        """Work both sides of a requirement out, or note why not."""
        statement = entry.statement
        if not isinstance(statement, Requiring):
            return
        line, standing = statement.line, self.standing
        key = f"{block}.require {line.where.line}"
        emit = Inner(standing, key, draft.options.digits)
        try:
            meaning = Meaning(line, FenceScope(standing, block))
            found = meaning.of_comparison(statement.comparison)
            left = emit(found.left, Told("left", line))
            right = emit(found.right, Told("right", line))
        except CalcFault as wrong:
            standing.faults.append(wrong.diagnostic)
            standing.break_off(key, wrong.diagnostic, wrong.diagnostic)
        except RestsOn as rests:
            standing.break_off(key, rests_on(rests), rests.root)
        else:
            self.judged[block, line.where.line] = Judged(found, left, right)


def binder_for(
    method: Method, call: MethodCall, line: Line, scope: FenceScope, emit: Inner
) -> Binder:
    """The binder for a kind of method."""
    if isinstance(method, FormulaMethod):
        return FormulaBinder(method, call, line, scope, emit)
    if isinstance(method, TableMethod):
        return TableBinder(method, call, line, scope, emit)
    raise TypeError(method.name)
