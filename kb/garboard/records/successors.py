"""What took the place of a record or a retired tag, however many came between."""

from collections.abc import Mapping

from garboard.records.base import Record
from garboard.records.standing import has_left, refused
from garboard.records.vessel import Retired

__all__ = ["successors"]


def successors(
    records: Mapping[str, Record], retired: Mapping[str, Retired]
) -> Mapping[str, tuple[str, ...]]:
    """For each name that was replaced those that took its place, one after the other, a live one last.

    What was refused, withdrawn or void took no place. Of two that claim it the later in order
    counts; that there are two has a message of its own.

    Args:
        records: By id.
        retired: By id or tag.
    """
    next_: dict[str, str] = {
        name: str(entry.replaced_by) for name, entry in retired.items() if entry.replaced_by
    }
    for record in records.values():
        passed_on = record.state == "superseded" or not has_left(record)
        if record.supersedes and passed_on and not refused(record):
            next_[record.supersedes] = str(record.id)
    chains = ((name, _chain(name, next_)) for name in next_)
    return {name: chain for name, chain in chains if chain and not _left(records, chain[-1])}


def _chain(name: str, next_: Mapping[str, str]) -> tuple[str, ...]:
    """The names that follow; none where they run in a ring."""
    chain: list[str] = []
    while name in next_:
        name = next_[name]
        if name in chain:
            return ()
        chain.append(name)
    return tuple(chain)


def _left(records: Mapping[str, Record], name: str) -> bool:
    record = records.get(name)
    return record is not None and has_left(record)
