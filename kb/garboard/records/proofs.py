"""Which tests still prove something: passed, not refused, and not overtaken by a later change.

No machine move leads to or from `rejected` or the ways of leaving, so the written state is meant.
"""

from collections.abc import Iterable, Iterator, Mapping

from garboard.records.base import Record, bare_id
from garboard.records.change import Change
from garboard.records.inspection import Result, Test
from garboard.records.standing import has_left, refused, state_of

__all__ = ["is_proof", "overtaken", "proofs_by_tag", "tested_again"]


def is_proof(record: object) -> bool:
    """Whether a record is a test that was passed and has not been rejected or voided."""
    return (
        isinstance(record, Test)
        and record.result is Result.PASS
        and not has_left(record)
        and state_of(record) != "rejected"
    )


def proofs_by_tag(records: Iterable[Record]) -> dict[str, list[Test]]:
    """The proofs of each component, oldest first; a test without a day is none."""
    found: dict[str, list[Test]] = {}
    dated = (one for one in records if isinstance(one, Test) and one.on and is_proof(one))
    for test in sorted(dated, key=lambda one: (one.on, one.id)):
        for item in test.tested:
            found.setdefault(item.tag, []).append(test)
    return found


def overtaken(records: Mapping[str, Record]) -> Mapping[str, Change]:
    """Tests that are older than the last change to what they tested.

    Args:
        records: Filed records by id.

    Returns:
        By id of the test, the first change that overtook it and whose re-tests were not passed.
    """
    proofs = proofs_by_tag(records.values())
    found: dict[str, Change] = {}
    for change in records.values():
        idle = not isinstance(change, Change) or has_left(change) or refused(change)
        if idle or not isinstance(change, Change) or change.installed is None:
            continue
        for test in _touched(records, change, proofs):
            older = test.on is not None and test.on < change.installed
            if older and str(test.id) not in found and not tested_again(records, change):
                found[str(test.id)] = change
    return found


def tested_again(records: Mapping[str, Record], change: Change) -> bool:
    """Whether every re-test that a change asks for was passed after it; not where it asks for none."""
    again = [records.get(bare_id(name)) for name in change.retests]
    day = change.installed
    return bool(again and day) and all(
        isinstance(test, Test) and is_proof(test) and test.on and day and test.on >= day
        for test in again
    )


def _touched(
    records: Mapping[str, Record], change: Change, proofs: Mapping[str, list[Test]]
) -> Iterator[Test]:
    """The newest proof of each component that a change touches, and every test that it voids."""
    for name in (*change.affects, *change.values):
        newest = proofs.get(name.split(".")[0], [])[-1:]
        yield from newest
    for name in change.voids:
        record = records.get(bare_id(name))
        if isinstance(record, Test) and is_proof(record):
            yield record
