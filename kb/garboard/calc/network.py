"""All calculations of a handbook as one network: fences, given values, and what rests on what.

This is the door of the calculation core. Fences may use each other's values in any order; those
that need each other in a ring are named hop by hop, and what rests on a broken value is not
computed.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType

from garboard.calc.directory import Directory
from garboard.calc.engine import engine_of
from garboard.calc.ledger import Formula, Ledger
from garboard.calc.method import Method
from garboard.calc.part import value_of
from garboard.calc.rounds import Round, Sheets
from garboard.calc.sheet import Fence, Sheet
from garboard.calc.shelf import Shelf
from garboard.calc.store import Store
from garboard.calc.value import Given, Requirement, Value
from garboard.calc.workings import Layout, Workings
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
    workings: Workings = field(repr=False, compare=False)
    """How each value is worked out, for a second opinion and for what-if."""
    evaluated: tuple[str, ...] = field(default=(), compare=False)
    """The blocks that were worked out in this run; all others were taken from the store."""

    @property
    def ledger(self) -> Ledger:
        """Every value with how it is worked out; whatever is not yet is worked out now."""
        self.workings.enter(range(len(self.workings.layout.groups)))
        return self.workings.ledger

    @property
    def slots(self) -> Mapping[str, int]:
        """Address to its place in the ledger."""
        self.workings.enter(range(len(self.workings.layout.groups)))
        return self.workings.slots

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
        return self.workings.formula(address)

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
        program, places = self.workings.program(tuple(changes), tuple(wanted))
        slots = list(self.workings.ledger.slots)
        for address, si in changes.items():
            slots[places[address]] = si
        program.run(slots)
        return tuple([slots[places[address]] for address in wanted])


def evaluate(
    fences: Iterable[Fence],
    givens: Mapping[str, Given],
    methods: Mapping[str, Method],
    aliases: Mapping[str, str] = MappingProxyType({}),
    store: Store | None = None,
) -> Network:
    """Work all calculations out.

    Args:
        fences: Every calc fence.
        givens: Values that stand outside the fences, by address: of components, and the vessel's
            conditions as `site.name`. `site.atmosphere` stands between gauge and absolute
            pressures; without it 101 325 Pa is taken and the lines say so.
        methods: The bundled methods by name.
        aliases: Other names of addresses or of their owners.
        store: Blocks as they were worked out before; what still holds is taken from it, and what is
            worked out is kept in it. The network is the same with it and without, bit for bit.
    """
    engine = engine_of(methods) if store is not None else ""
    shelf = Shelf(fences, methods, store if engine else None, engine)
    layout = Layout(shelf, Directory(shelf.cards, givens, aliases))
    tour = Round(layout, methods, store if engine else None)
    tour.run()
    standing = tour.workings.reckoner.standing
    values = {
        given.address: value_of(given, standing.broken.get(given.address))
        for given in givens.values()
    }
    parts = {block: tour.parts[block] for block in shelf.fences}
    for part in parts.values():
        values.update((value.address, value) for value in part.values)
    feeds: dict[str, list[str]] = {}
    for value in values.values():
        for used in value.uses:
            feeds.setdefault(used, []).append(value.address)
    found = dict.fromkeys((*shelf.faults, *standing.faults))
    return Network(
        values,
        tuple(each for part in parts.values() for each in part.requirements),
        Sheets(tour),
        tuple(sorted(found, key=lambda each: (each.where, each.code, each.text))),
        {address: tuple(users) for address, users in feeds.items()},
        tour.full_workings(),
        tuple(tour.evaluated),
    )
