"""The eighteen kinds of record, by hand: name, letters, where its file lies, how it moves.

The letters of an id say the kind. Kinds that describe the system as it is lie in its folder; kinds
that tell what happened lie in the log, by date.
"""

from dataclasses import dataclass
from enum import StrEnum

from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.calculation import Calculation
from garboard.records.change import Change, Concession, TemporaryModification
from garboard.records.decision import Decision
from garboard.records.finding import Action, Finding, Lesson
from garboard.records.hazard import Hazard
from garboard.records.inspection import PlanLine, Review, Test
from garboard.records.procedure import Procedure
from garboard.records.states import MACHINES, Machine
from garboard.records.work import MaintenanceTask, OpenItem, WorkPackage

__all__ = ["BY_LETTERS", "BY_NAME", "KINDS", "Kind", "Place", "kind_of"]


class Place(StrEnum):
    """Where the file of a record lies."""

    SYSTEM = "system"
    """In the folder of its system."""
    LOG = "log"
    """In the log, in the folder of its year."""


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of record."""

    name: str
    letters: str
    record: type[Record]
    plural: str
    place: Place

    @property
    def machine(self) -> Machine:
        """How its state moves."""
        return MACHINES[self.name]


KINDS = (
    Kind("decision", "DD", Decision, "decisions", Place.LOG),
    Kind("change", "CN", Change, "changes", Place.LOG),
    Kind("finding", "FN", Finding, "findings", Place.LOG),
    Kind("action", "CA", Action, "actions", Place.LOG),
    Kind("calculation", "CL", Calculation, "calculations", Place.SYSTEM),
    Kind("plan line", "IT", PlanLine, "plan lines", Place.SYSTEM),
    Kind("test", "TR", Test, "tests", Place.SYSTEM),
    Kind("procedure", "PR", Procedure, "procedures", Place.SYSTEM),
    Kind("hazard", "HZ", Hazard, "hazards", Place.SYSTEM),
    Kind("alarm", "AL", Alarm, "alarms", Place.SYSTEM),
    Kind("fault", "FT", Fault, "faults", Place.SYSTEM),
    Kind("lesson", "LL", Lesson, "lessons", Place.LOG),
    Kind("open item", "OI", OpenItem, "open items", Place.LOG),
    Kind("concession", "CO", Concession, "concessions", Place.LOG),
    Kind(
        "temporary modification", "TM", TemporaryModification, "temporary modifications", Place.LOG
    ),
    Kind("work package", "WP", WorkPackage, "work packages", Place.LOG),
    Kind("review", "RW", Review, "reviews", Place.LOG),
    Kind("maintenance task", "MT", MaintenanceTask, "maintenance tasks", Place.SYSTEM),
)

BY_LETTERS = {kind.letters: kind for kind in KINDS}
BY_NAME = {kind.name: kind for kind in KINDS}
BY_RECORD = {kind.record: kind for kind in KINDS}


def kind_of(record: Record) -> Kind | None:
    """The kind of a record; None for an unfiled one whose kind nobody has said yet."""
    return BY_RECORD.get(type(record))
