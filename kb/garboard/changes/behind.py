"""Who moved a number: the records written or moved on since, that set it, name it or answer for it."""

from collections.abc import Iterable

from garboard.book import Book, Mentioned
from garboard.changes.comparison import Entry
from garboard.records.base import bare_id
from garboard.records.change import Change, Concession, TemporaryModification
from garboard.records.decision import Decision
from garboard.records.finding import Action, Finding, Lesson
from garboard.records.inspection import Test

__all__ = ["Behind"]

TELLING = (
    Decision,
    Change,
    TemporaryModification,
    Concession,
    Finding,
    Action,
    Lesson,
    Test,
)
"""Kinds that tell why."""
NAMING = frozenset(("sets", "values", "affects", "answers", "because", "basis", "where"))
"""Fields that name what a record is about."""
REASONS = frozenset(("answers", "because", "basis"))
"""Fields that name what a record answers."""


class Behind:
    """Looks up the records behind a number; fresh ones are those among the entries that differ."""

    def __init__(self, new: Book, entries: Iterable[Entry]) -> None:
        self.new = new
        self.named: dict[str, list[str]] = {}
        """What a fresh record names, to the ids of such records."""
        self.reasons: dict[str, list[str]] = {}
        fresh = {one.name for one in entries}
        for item in new.mentions:
            record = new.records.get(item.by)
            if record is None or not isinstance(record, TELLING) or _top(item) not in NAMING:
                continue
            if _top(item) in REASONS:
                self.reasons.setdefault(item.by, []).append(bare_id(item.to))
            if item.by in fresh:
                self.named.setdefault(bare_id(item.to), []).append(item.by)

    def of(self, address: str) -> tuple[str, ...]:
        """Ids of the records behind a number, the ones that set it first.

        Args:
            address: `SA-PS-001.set`, `receiver-sizing.n`; or the name of a block.
        """
        owner = address.partition(".")[0]
        sheet = self.new.network.sheets.get(owner)
        names = (address, self.new.source_of(address), sheet.owner if sheet else owner)
        found = dict.fromkeys(key for name in names for key in self.named.get(name, ()))
        for key in tuple(found):
            found |= dict.fromkeys(
                one for one in self.reasons.get(key, ()) if one in self.new.records
            )
        return tuple(found)


def _top(item: Mentioned) -> str:
    return item.field.partition(".")[0].partition("[")[0]
