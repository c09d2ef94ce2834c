"""What falls due: tasks, certificates, things that age, instruments, arrangements that run out.

All of it is told from what was written down; nothing counts hours. A task by running hours has no day,
and says so, because a day that was guessed would be believed.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from garboard.records.base import Record, date_of
from garboard.records.change import Concession, TemporaryModification
from garboard.records.component import Component
from garboard.records.hazard import Hazard
from garboard.records.inspection import Review
from garboard.records.life import end_of_life
from garboard.records.proofs import overtaken
from garboard.records.standing import has_left
from garboard.records.vessel import Instrument
from garboard.records.work import MaintenanceTask, OpenItem

__all__ = [
    "Due",
    "DueSort",
    "due_of_instruments",
    "due_of_parts",
    "due_of_records",
    "due_words",
    "task_due",
]


class DueSort(StrEnum):
    """What sort of thing falls due, in the words of a page."""

    TASK = "task"
    CERTIFICATE = "test or certificate"
    REPLACE = "replace"
    CALIBRATION = "calibration"
    AGAIN = "test again"
    RUNS_OUT = "runs out"
    LOOKED_AT = "look at again"


@dataclass(frozen=True, slots=True)
class Due:
    """One thing that falls due."""

    sort: DueSort
    about: str
    """The record, the tag or the instrument."""
    system: str
    """Code of its system; empty for the vessel."""
    due: date | None
    last: date | None = None
    every: str = ""
    why: str = ""
    """Why it has no day, or what it hangs on."""


def due_of_records(records: Mapping[str, Record], open_: Iterable[Record]) -> Iterator[Due]:
    """Tasks, tests that a change has overtaken, and what runs out.

    Args:
        records: Filed records by id.
        open_: Those of which something is still owed: an arrangement at rest runs out no more.
    """
    for record in records.values():
        if isinstance(record, MaintenanceTask) and not has_left(record):
            yield task_due(record)
    for name, change in overtaken(records).items():
        test = records[name]
        on = getattr(test, "on", None)
        why = f"{change.id} came after it"
        yield Due(DueSort.AGAIN, name, test.system, change.installed, on, why=why)
    for record in open_:
        yield from _ends(record)


def task_due(task: MaintenanceTask) -> Due:
    """When a task is to be done next: its interval after the day it was last done."""
    last = max((one.on for one in task.done), default=None)
    every = str(task.every or "")
    due = end_of_life(last, every) if last else None
    if last is None:
        why = "never done"
    elif due is None:
        why = f"after {every}, which nobody counts here" if every else "no interval recorded"
    else:
        why = ""
    return Due(DueSort.TASK, str(task.id), task.system, due, last, every, why)


def _ends(record: Record) -> Iterator[Due]:
    about, system = str(record.id), record.system
    if isinstance(record, TemporaryModification | Concession | Review):
        until = record.until
        day = until if isinstance(until, date) else date_of(until)
        if until:
            why = "" if day else str(until)
            yield Due(DueSort.RUNS_OUT, about, system, day, why=why)
    elif isinstance(record, Hazard) and record.review_on:
        yield Due(DueSort.LOOKED_AT, about, system, record.review_on)
    elif isinstance(record, OpenItem) and record.due:
        yield Due(DueSort.TASK, about, system, record.due)


def due_of_parts(components: Mapping[str, Component]) -> Iterator[Due]:
    """Certificates and tests of what is fitted, and everything that must be replaced."""
    for tag, part in components.items():
        if part.item and part.item.due:
            yield Due(DueSort.CERTIFICATE, tag, part.system, part.item.due, last=part.item.tested)
        if part.expires:
            yield Due(DueSort.REPLACE, tag, part.system, part.expires, last=part.fitted)


def due_of_instruments(instruments: Mapping[str, Instrument]) -> Iterator[Due]:
    """Calibrations, also of an instrument of which nobody wrote down a day."""
    for name, one in instruments.items():
        why = "" if one.due else "no day recorded"
        yield Due(DueSort.CALIBRATION, name, "", one.due, last=one.calibrated, why=why)


def due_words(one: Due, today: date) -> tuple[str, bool]:
    """How something stands today, and whether it is late.

    Args:
        one: What falls due.
        today: The day by which time is judged.

    >>> due_words(Due(DueSort.TASK, "SA-MT-001", "SA", date(2031, 9, 19)), date(2031, 10, 1))
    ('overdue 12 days', True)
    >>> due_words(Due(DueSort.TASK, "SA-MT-001", "SA", date(2031, 10, 2)), date(2031, 10, 1))
    ('in 1 day', False)
    """
    if one.due is None:
        return one.why or "no day recorded", one.why == "never done"
    left = (one.due - today).days
    days = f"{abs(left)} day{'' if abs(left) == 1 else 's'}"
    if one.sort is DueSort.AGAIN:
        return f"owed for {days}: {one.why}", True
    if left < 0:
        return f"overdue {days}", True
    return (f"in {days}" if left else "due today"), False
