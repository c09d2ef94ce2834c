"""What a work package needs and has not got."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from garboard.records.base import Record, bare_id
from garboard.records.inspection import PlanLine, Point
from garboard.records.kinds import kind_of
from garboard.records.proofs import is_proof
from garboard.records.standing import has_left, kind_name, refused
from garboard.records.states import at_rest
from garboard.records.work import WorkPackage

__all__ = ["Lack", "is_there", "lacks"]

THERE = {
    "work package": ("complete", "verified"),
    "decision": ("approved", "implemented", "confirmed"),
    "change": ("installed", "proved", "closed"),
    "procedure": ("approved", "issued"),
    "plan line": ("released", "waived", "not attended"),
    "action": ("done", "verified", "effective"),
    "temporary modification": ("fitted",),
}
"""States in which a need is met, by kind; of the others, at rest."""


@dataclass(frozen=True, slots=True)
class Lack:
    """One thing that is not there."""

    path: str
    """Where the package asks for it: `needs[0]`; of a hold in front of it, `state`."""
    text: str
    """What is: `SA-DD-003 is in check`."""
    first: str
    """What to do before the package: `finish SA-DD-003 first`."""


def lacks(
    work: WorkPackage, records: Mapping[str, Record], state: Callable[[Record], str], today: date
) -> Iterator[Lack]:
    """What stands in the way of a work package.

    Args:
        work: The package, in whatever state.
        records: Filed records by id.
        state: The state of a record as it counts: an approval that lapsed meets no need.
        today: The day of the book.
    """
    named = [(f"needs[{number}]", str(need)) for number, need in enumerate(work.needs)]
    if work.isolation:
        named.append(("isolation", str(work.isolation)))
    for path, name in named:
        record = records.get(bare_id(name))
        if record is not None and not is_there(record, state):
            gone = has_left(record) or refused(record)
            first = "name what takes its place" if gone else f"finish {record.id} first"
            yield Lack(path, f"{record.id} is {state(record)}", first)
    if work.not_before and work.not_before > today:
        yield Lack("not_before", f"not before {work.not_before}", f"wait for {work.not_before}")
    for line in records.values():
        if not isinstance(line, PlanLine) or line.point is not Point.HOLD or has_left(line):
            continue
        if str(work.id) in map(bare_id, line.before) and state(line) != "released":
            text = f"{line.id} in front of it is {state(line)}"
            yield Lack("state", text, f"release {line.id} first")


def is_there(record: Record, state: Callable[[Record], str]) -> bool:
    """Whether something that is needed is there: done, proved or in force, by its kind."""
    if has_left(record) or refused(record):
        return False
    kind = kind_of(record)
    if is_proof(record) or kind is None:
        return True
    states = THERE.get(kind_name(record))
    return state(record) in states if states else at_rest(kind.name, state(record))
