"""Whether a record still says how things are, or only how they were.

A procedure, a calculation or a hazard describes the plant and is true until it leaves. All other
kinds tell what happened: once at rest they are history, and what they name is what was so that day.

Everything here goes by the state as written, unless a function is handed another. How a state counts
today, where the machine moves it back in print, is `Book.state`. What may be written into a record,
what it had to say when it got where it says it is, and whether it came about at all go by the written
state; what is still open and what may be leaned on go by the counted one. No machine move leads to or
from a way of leaving or a refusal, so `has_left` and `refused` are the same by both.
"""

from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.calculation import Calculation
from garboard.records.hazard import Hazard
from garboard.records.inspection import PlanLine, Point
from garboard.records.kinds import kind_of
from garboard.records.procedure import Procedure
from garboard.records.states import LEAVING, at_rest, start_state
from garboard.records.work import MaintenanceTask

__all__ = [
    "REFUSED",
    "describes",
    "has_left",
    "is_history",
    "is_live",
    "kind_name",
    "mark_of",
    "refused",
    "state_of",
]

DESCRIBES = (Calculation, Procedure, Hazard, Alarm, Fault, MaintenanceTask)
REFUSED = ("not adopted", "refused", "cancelled", "not accepted", "dropped")


def kind_name(record: Record) -> str:
    """What a record is called in a message: `finding`; `record` where nobody has said yet."""
    kind = kind_of(record)
    return kind.name if kind else "record"


def mark_of(record: Record) -> str:
    """What its moves depend on: the point of a plan line, of all others the class."""
    return str(record.point or Point.HOLD) if isinstance(record, PlanLine) else str(record.weight)


def state_of(record: Record) -> str:
    """The state that is written; left out, the start state of its kind."""
    kind = kind_of(record)
    return record.state or (start_state(kind.name) if kind else "")


def has_left(record: Record) -> bool:
    """Whether it is superseded, withdrawn or void."""
    return record.state in LEAVING


def describes(record: Record) -> bool:
    """Whether it tells how the plant is, and not what happened to it."""
    return isinstance(record, DESCRIBES) and not has_left(record)


def refused(record: Record) -> bool:
    """Whether it was turned down, so that nothing came of it."""
    return record.state in REFUSED


def is_history(record: Record, state: str | None = None) -> bool:
    """Whether it tells what happened and nothing more is owed.

    Args:
        record: The record.
        state: The state that it counts as; left out, the written one.
    """
    kind = kind_of(record)
    rests = kind is not None and at_rest(kind.name, state or state_of(record))
    return rests and not isinstance(record, DESCRIBES)


def is_live(record: Record, state: str | None = None) -> bool:
    """Whether it speaks of how things are now, in a state or as written."""
    return not has_left(record) and not is_history(record, state)
