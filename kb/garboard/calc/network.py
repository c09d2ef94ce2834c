"""All calculations of a handbook as one network: fences, given values, and what rests on what.

This is the door of the calculation core. Fences may use each other's values in any order; those
that need each other in a ring are named hop by hop, and what rests on a broken value is not
computed.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from garboard.calc.account import Account
from garboard.calc.draft import Draft, read_draft
from garboard.calc.fault import Family, fault
from garboard.calc.ledger import Formula, Ledger
from garboard.calc.method import Method
from garboard.calc.reckoner import Reckoner
from garboard.calc.register import Register
from garboard.calc.sheet import Fence, Sheet
from garboard.calc.value import Given, Requirement, Value
from garboard.errors import Diagnostic

__all__ = ["Network", "evaluate"]


@dataclass(frozen=True, slots=True)
class Network:
    """Everything worked out; it never changes."""

    values: Mapping[str, Value]
    """By address: given ones, those of the fences, and results of methods, `block.x.power`."""
    requirements: tuple[Requirement, ...]
    sheets: Mapping[str, Sheet]
    """By name of the block."""
    diagnostics: tuple[Diagnostic, ...]
    """Each fault once, sorted by place; not what merely follows from it."""
    feeds: Mapping[str, tuple[str, ...]]
    """Address to the addresses that use it directly."""
    ledger: Ledger = field(repr=False, compare=False)
    """How each value is worked out, for a second opinion and for what-if."""
    slots: Mapping[str, int] = field(repr=False, compare=False)
    """Address to its place in the ledger."""

    def upstream(self, address: str) -> tuple[str, ...]:
        """All that a value rests on, near and far, each after what it rests on itself."""
        found: dict[str, None] = {}
        waiting: list[tuple[str, bool]] = [(address, False)]
        seen = {address}
        while waiting:
            name, done = waiting.pop()
            if done:
                found[name] = None
                continue
            waiting.append((name, True))
            value = self.values.get(name)
            for other in reversed(value.uses if value else ()):
                if other not in seen:
                    seen.add(other)
                    waiting.append((other, False))
        del found[address]
        return tuple(found)

    def formula(self, address: str) -> Formula | None:
        """How a value is worked out; None for given and broken ones."""
        slot = self.slots.get(address)
        return None if slot is None else self.ledger.formulas.get(slot)

    def recompute(self, changes: Mapping[str, float], wanted: Sequence[str]) -> tuple[float, ...]:
        """Some values, with some inputs changed.

        Args:
            changes: Address to its value in SI; what rests on it is worked out again.
            wanted: The addresses asked for.

        Returns:
            Their values in SI.

        Raises:
            KeyError: There is no such value.
            ArithmeticError: A value cannot be worked out with these inputs.
            ValueError: The same, or a method does not hold for them.
        """
        slots = list(self.ledger.slots)
        for address, si in changes.items():
            slots[self.slots[address]] = si
        program = self.ledger.program(
            [self.slots[address] for address in wanted],
            fixed=[self.slots[address] for address in changes],
        )
        program.run(slots)
        return tuple(slots[self.slots[address]] for address in wanted)


def evaluate(
    fences: Iterable[Fence],
    givens: Mapping[str, Given],
    methods: Mapping[str, Method],
    aliases: Mapping[str, str] = MappingProxyType({}),
) -> Network:
    """Work all calculations out.

    Args:
        fences: Every calc fence.
        givens: Values that stand outside the fences, by address: of components, and the vessel's
            conditions as `site.name`. `site.atmosphere` stands between gauge and absolute
            pressures; without it 101 325 Pa is taken and the lines say so.
        methods: The bundled methods by name.
        aliases: Other names of addresses or of their owners.
    """
    drafts, faults = read_drafts(fences, methods)
    register = Register(drafts, givens, methods, aliases)
    reckoner = Reckoner(register)
    reckoner.run()
    account = Account(reckoner)
    account.run()
    found = dict.fromkeys((*faults, *reckoner.standing.faults))
    feeds: dict[str, list[str]] = {}
    for value in account.values.values():
        for used in value.uses:
            feeds.setdefault(used, []).append(value.address)
    return Network(
        account.values,
        tuple(account.requirements),
        account.sheets,
        tuple(sorted(found, key=lambda each: (each.where, each.code, each.text))),
        {address: tuple(users) for address, users in feeds.items()},
        reckoner.ledger,
        reckoner.standing.slots,
    )


def read_drafts(
    fences: Iterable[Fence], methods: Mapping[str, Method]
) -> tuple[list[Draft], list[Diagnostic]]:
    """Read all fences; the second of two with one name is refused whole."""
    names = frozenset(methods)
    drafts: dict[str, Draft] = {}
    faults: list[Diagnostic] = []
    for fence in sorted(fences, key=lambda each: each.where):
        draft = read_draft(fence, names)
        faults += draft.faults
        first = drafts.setdefault(fence.name, draft)
        if first is not draft:
            place = replace(fence.where, line=max(1, fence.where.line - 1), column=1)
            text = f"the block name `{fence.name[:60]}` stands at {first.fence.where} already"
            cure = "name it otherwise; a block name is unique in the handbook"
            faults.append(fault(Family.NAME, place, text, cure, fence.name).diagnostic)
    return list(drafts.values()), faults
