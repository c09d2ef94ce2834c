"""The fences of a handbook on their shelf: each is read only when it must be."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from garboard.calc.block_keys import text_key
from garboard.calc.directory import Card, card_of
from garboard.calc.draft import Draft, read_draft
from garboard.calc.fault import Family, fault
from garboard.calc.method import Method, terms_of
from garboard.calc.sheet import Fence
from garboard.calc.store import Store
from garboard.errors import Diagnostic

__all__ = ["Shelf"]


class Shelf:
    """All fences in order of place; the second of two with one name is refused whole."""

    def __init__(
        self,
        fences: Iterable[Fence],
        methods: Mapping[str, Method],
        store: Store | None,
        engine: str,
    ) -> None:
        self.methods = methods
        self.names = tuple((name, terms_of(method)) for name, method in methods.items())
        self.fences: dict[str, Fence] = {}
        self.texts: dict[str, str] = {}
        """By block: the key of its text; empty without a store."""
        self.cards: dict[str, Card] = {}
        self.broken: list[Draft] = []
        """Fences with something in them that cannot be read."""
        self.faults: list[Diagnostic] = []
        for fence in sorted(fences, key=lambda each: each.where):
            first = self.fences.setdefault(fence.name, fence)
            if first is fence:
                self.place(fence, store, engine)
            else:
                self.refuse(fence, first)

    def draft(self, block: str) -> Draft:
        """A fence, read."""
        return read_draft(self.fences[block], self.names)

    def place(self, fence: Fence, store: Store | None, engine: str) -> None:
        """Place a fence with its card; one that was read without fault before is not read again."""
        name = fence.name
        card = None
        if store is not None:
            self.texts[name] = text_key(engine, fence)
            card = store.card(name, self.texts[name])
        if card is None:
            draft = self.draft(name)
            card = card_of(draft, self.methods)
            if draft.faults:
                self.faults += draft.faults
                self.broken.append(draft)
        self.cards[name] = card

    def refuse(self, fence: Fence, first: Fence) -> None:
        """Refuse a fence whose name another has."""
        self.faults += read_draft(fence, self.names).faults
        place = replace(fence.where, line=max(1, fence.where.line - 1), column=1)
        text = f"the block name `{fence.name[:60]}` stands at {first.where} already"
        cure = "name it otherwise; a block name is unique in the handbook"
        self.faults.append(fault(Family.NAME, place, text, cure, fence.name).diagnostic)
