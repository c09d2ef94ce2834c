"""One round through the blocks of a handbook: each is taken from the store or worked out.

Block follows block in the order in which they rest on each other, so that by the time one is come
to, all it uses is known. What a block comes to depends on nothing but that: a block taken from the
store under its key is the block that would be worked out.
"""

import gc
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from garboard.calc.block_keys import BlockKeys
from garboard.calc.method import Method
from garboard.calc.part import Part, Worked
from garboard.calc.sheet import Sheet
from garboard.calc.store import SHEET, Store
from garboard.calc.workings import Layout, Workings

if TYPE_CHECKING:
    from garboard.calc.account import Account

__all__ = ["Round", "Sheets"]


class Round:
    """One round."""

    def __init__(self, layout: Layout, methods: Mapping[str, Method], store: Store | None) -> None:
        self.layout = layout
        self.methods = methods
        self.store = store
        self.keys = BlockKeys(layout.shelf.texts, layout.directory.givens)
        self.workings = Workings(layout, methods)
        self.account: Account | None = None
        self.parts: dict[str, Part] = {}
        self.sheet_lines: dict[str, str] = {}
        """Of blocks taken from the store: the line on which the sheet stood there."""
        self.evaluated: list[str] = []
        """Blocks that were worked out, not taken from the store."""

    def run(self) -> None:
        """Go round; what is read back holds no rings, so nobody need look for them meanwhile."""
        pause = bool(self.store and self.store.lines) and gc.isenabled()
        if pause:
            gc.disable()
        try:
            self.go()
        finally:
            if pause:
                gc.enable()

    def go(self) -> None:
        """Take or work out one group after another."""
        for group in range(len(self.layout.groups)):
            found = self.from_store(group, self.store) if self.store else self.worked(group)
            self.parts.update((block, each.part) for block, each in found.items())
        if self.store:
            self.store.keep_only(self.layout.shelf.fences)

    def from_store(self, group: int, store: Store) -> dict[str, Worked]:
        """Blocks from the store where they stand there under their key; else worked out and kept."""
        blocks = self.layout.groups[group]
        key = self.keys.key_of(blocks, self.layout.asked)
        found = self.kept(blocks, key, store)
        if found is None:
            found = self.worked(group)
            self.keep(found, key, store)
        full = self.keys.full_key(key, air=any(each.air for each in found.values()))
        for each in found.values():
            self.keys.values.update((value.address, value) for value in each.part.values)
            self.keys.uncertain.update(dict.fromkeys(each.uncertain, full))
        return found

    def kept(self, blocks: tuple[str, ...], key: str, store: Store) -> dict[str, Worked] | None:
        """Blocks from the store, if all of them stand there under their key."""
        found: dict[str, Worked] = {}
        for block in blocks:
            each = store.block(self.layout.shelf.fences[block], key, self.keys.air)
            if each is None:
                return None
            found[block] = each
            self.sheet_lines[block] = store.lines[block + SHEET]
        return found

    def worked(self, group: int) -> dict[str, Worked]:
        """Blocks, worked out."""
        workings = self.workings
        workings.enter([group], self.keys.values, self.keys.uncertain)
        if self.account is None:
            from garboard.calc.account import Account  # noqa: PLC0415 - loads numpy

            self.account = Account(workings.reckoner)
        found: dict[str, Worked] = {}
        for block in self.layout.groups[group]:
            part = self.account.part_of(block, workings.register.drafts[block])
            uncertain = tuple(
                value.address
                for value in part.values
                if value.si is not None and workings.ledger.upstream[workings.slots[value.address]]
            )
            found[block] = Worked(part, uncertain, group in workings.air)
        self.evaluated += found
        return found

    def keep(self, found: Mapping[str, Worked], key: str, store: Store) -> None:
        """Keep blocks, unless something in one of them is at fault."""
        if not all(each.part.sound for each in found.values()):
            return
        shelf = self.layout.shelf
        for block, each in found.items():
            keys = (key, self.keys.air)
            store.keep(shelf.fences[block], shelf.texts[block], shelf.cards[block], keys, each)

    def sheet(self, block: str) -> Sheet:
        """The sheet of a block, opened or, where it cannot be, worked out."""
        found = self.parts[block].sheet
        if found is None and self.store is not None:
            fence = self.layout.shelf.fences[block]
            found = self.store.sheet(fence, self.parts[block], self.sheet_lines[block])
        if found is None:
            found = self.worked(self.layout.group_of[block])[block].part.sheet
        if found is None:
            raise KeyError(block)
        return found

    def full_workings(self) -> Workings:
        """Workings in which nothing is taken as known."""
        if self.workings.reckoner.standing.known:
            return Workings(self.layout, self.methods)
        return self.workings


class Sheets(Mapping[str, Sheet]):
    """The sheets of a handbook by block, in order of place; each is opened when it is asked for."""

    def __init__(self, tour: Round) -> None:
        self.tour = tour
        self.opened: dict[str, Sheet] = {}

    def __getitem__(self, block: str) -> Sheet:
        found = self.opened.get(block)
        if found is None:
            if block not in self.tour.layout.shelf.fences:
                raise KeyError(block)
            found = self.opened[block] = self.tour.sheet(block)
        return found

    def __iter__(self) -> Iterator[str]:
        return iter(self.tour.layout.shelf.fences)

    def __len__(self) -> int:
        return len(self.tour.layout.shelf.fences)
