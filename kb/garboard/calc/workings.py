"""How the values of a handbook are worked out: a reckoning that is filled as far as it is needed.

What was taken from the store has a value but no workings. Where these are asked for, the blocks
upstream are worked out again, and only those.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence

from garboard.calc.directory import Directory
from garboard.calc.evaluate import Program
from garboard.calc.ledger import ATMOSPHERE, Formula, Ledger
from garboard.calc.method import Method
from garboard.calc.order import sort_groups
from garboard.calc.reckoner import Reckoner
from garboard.calc.register import Register
from garboard.calc.shelf import Shelf
from garboard.calc.tree import slots_of
from garboard.calc.value import Value

__all__ = ["Layout", "Workings"]


class Layout:
    """Which block needs which, and the order in which they can be worked out."""

    def __init__(self, shelf: Shelf, directory: Directory) -> None:
        self.shelf = shelf
        self.directory = directory
        self.asked = {block: tuple(directory.asked(block)) for block in shelf.cards}
        """By block: the names it uses from outside, with the addresses they stand for."""
        needs = {
            block: [other for _, address in asked if (other := directory.block_of(address))]
            for block, asked in self.asked.items()
        }
        place = {block: at for at, block in enumerate(shelf.cards)}
        self.groups = [tuple(sorted(group, key=place.__getitem__)) for group in sort_groups(needs)]
        """In order; several blocks in one use each other's lines in both directions."""
        self.group_of = {block: at for at, group in enumerate(self.groups) for block in group}

    def needed(self, group: int) -> Iterable[tuple[str, int]]:
        """The addresses that a group uses of other groups."""
        for block in self.groups[group]:
            for _, address in self.asked[block]:
                owner = self.directory.block_of(address)
                other = self.group_of[owner] if owner else group
                if other != group:
                    yield address, other


class Workings:
    """One reckoning."""

    def __init__(self, layout: Layout, methods: Mapping[str, Method]) -> None:
        self.layout = layout
        self.register = Register(layout.directory, layout.directory.givens, methods)
        self.reckoner = Reckoner(self.register)
        self.reckoner.begin(layout.shelf.broken)
        self.entered: set[int] = set()
        self.programs: dict[tuple[tuple[str, ...], tuple[str, ...]], Program] = {}
        self.air: set[int] = set()
        """Groups that use the atmosphere."""

    @property
    def ledger(self) -> Ledger:
        """Every value that stands so far."""
        return self.reckoner.ledger

    @property
    def slots(self) -> Mapping[str, int]:
        """Address to its place in the ledger, of what stands so far."""
        return self.reckoner.standing.slots

    def enter(
        self,
        groups: Iterable[int],
        known: Mapping[str, Value] | None = None,
        uncertain: Collection[str] = (),
    ) -> None:
        """Work some groups out, and what they need first.

        Args:
            groups: Their places in the order.
            known: Values that need not be worked out again.
            uncertain: Those among them that rest on a tolerance: their ranges are needed, so they
                are worked out again all the same.
        """
        cone: set[int] = set()
        waiting = [group for group in groups if group not in self.entered]
        while waiting:
            group = waiting.pop()
            if group in cone:
                continue
            cone.add(group)
            for address, other in self.layout.needed(group):
                if other in self.entered or other in cone:
                    continue
                value = known.get(address) if known and address not in uncertain else None
                if value is None or value.si is None:
                    waiting.append(other)
                elif address not in self.slots:
                    self.reckoner.standing.enter_known(value)
        for group in sorted(cone):
            self.work_out(group)

    def work_out(self, group: int) -> None:
        """Work one group out; what it needs stands already."""
        blocks = self.layout.groups[group]
        for block in blocks:
            self.register.take(self.layout.shelf.draft(block))
        before = len(self.ledger.slots)
        self.reckoner.work_out(blocks)
        self.entered.add(group)
        fresh = (self.ledger.formulas.get(slot) for slot in range(before, len(self.ledger.slots)))
        if any(each and ATMOSPHERE in each.needs for each in fresh) or self.watches_air(blocks):
            self.air.add(group)

    def watches_air(self, blocks: Sequence[str]) -> bool:
        """Whether an alarm of a method uses the atmosphere."""
        for key in (key for block in blocks for key in self.register.keys_of(block)):
            worked = self.reckoner.worked.get(key)
            watches = worked.bound.watches if worked and worked.bound else ()
            if any(ATMOSPHERE in slots_of(watch.condition) for watch in watches):
                return True
        return False

    def find(self, addresses: Iterable[str]) -> None:
        """Work out all that some values are worked out from."""
        owners = (self.layout.directory.block_of(address) for address in addresses)
        self.enter({self.layout.group_of[owner] for owner in owners if owner})

    def program(
        self, changed: tuple[str, ...], wanted: tuple[str, ...]
    ) -> tuple[Program, Mapping[str, int]]:
        """The steps that work some values out when others are changed; kept, as it is asked again.

        Args:
            changed: Addresses of the values that are not worked out.
            wanted: Addresses of those that are.

        Returns:
            The steps, and the places of all values.

        Raises:
            KeyError: There is no such value.
        """
        places = self.slots
        found = self.programs.get((changed, wanted))
        if found is None:
            missing = [address for address in (*changed, *wanted) if address not in places]
            if missing:
                self.find(missing)
            found = self.ledger.program(
                [places[address] for address in wanted],
                fixed=[places[address] for address in changed],
            )
            self.programs[changed, wanted] = found
        return found, places

    def formula(self, address: str) -> Formula | None:
        """How a value is worked out; None for given and broken ones."""
        self.find([address])
        slot = self.slots.get(address)
        return None if slot is None else self.ledger.formulas.get(slot)
