"""The pages of a system that list its records: what to do, what can go wrong, what was proved."""

from typing import TypeVar

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Record
from garboard.records.calculation import Calculation
from garboard.records.change import Concession, TemporaryModification
from garboard.records.finding import Finding
from garboard.records.hazard import Hazard
from garboard.records.inspection import PlanLine, Review, Test
from garboard.records.procedure import Procedure
from garboard.records.system import System
from garboard.records.work import OpenItem
from garboard.views.draft import Draft
from garboard.views.inspection_plan import holds_in_the_way, plan_table
from garboard.views.may_it_run import Answer, verdict
from garboard.views.messages import message_of, worst_first
from garboard.views.night_registers import alarm_settings, alarm_ways
from garboard.views.page import AgainstIt, Heading
from garboard.views.safety_devices import safety_device_table
from garboard.views.tables import record_table
from garboard.views.unfinished import unfinished

__all__ = [
    "alarms",
    "calculations",
    "faults",
    "hazards",
    "open_against",
    "procedures",
    "tests",
]

R = TypeVar("R", bound=Record)


def _of(book: Book, system: System, kind: type[R]) -> list[R]:
    return [record for record in book.of_kind(kind) if record.system == system.code]


def procedures(draft: Draft, system: System) -> None:
    """Procedures by when they are taken in hand."""
    found = _of(draft.book, system, Procedure)
    draft.add(record_table(draft.book, "Procedures", found, "use", "purpose"))


def alarms(draft: Draft, system: System) -> None:
    """A tile for each alarm, in the exact words of the panel, with the first action."""
    found = _of(draft.book, system, Alarm)
    draft.add(alarm_ways(draft.book, found))
    draft.add(AgainstIt(), alarm_settings(draft.book, found))


def faults(draft: Draft, system: System) -> None:
    """Faults by what the crew notices."""
    draft.add(record_table(draft.book, "Faults", _of(draft.book, system, Fault), "symptoms"))


def hazards(draft: Draft, system: System) -> None:
    """Every hazard of the system, the worst first."""
    found = worst_first(_of(draft.book, system, Hazard))
    draft.messages = tuple(message_of(draft.book, one) for one in found)
    draft.add(record_table(draft.book, "Hazards", found, "source", "where_", "severity"))


def calculations(draft: Draft, system: System) -> None:
    """Calculations of the system."""
    found = _of(draft.book, system, Calculation)
    draft.add(record_table(draft.book, "Calculations", found, "purpose", "method"))


def tests(draft: Draft, system: System) -> None:
    """Holds that stand, the inspection and test plan, safety devices, tests with failures kept, reviews."""
    book = draft.book
    lines = _of(book, system, PlanLine)
    draft.add(*holds_in_the_way(book, lines))
    draft.add(
        Heading("Inspection and test plan"),
        plan_table(book, lines, "In its order; criteria as of today, failed tests kept"),
    )
    draft.add(Heading("What was proved"), safety_device_table(book, system.code))
    draft.add(
        record_table(
            book, "Tests, failures kept", _of(book, system, Test), "what", "on", "result", "follows"
        )
    )
    draft.add(
        record_table(book, "Reviews before start", _of(book, system, Review), "covers", "limits")
    )


OPEN_KINDS: tuple[tuple[type[Record], str, tuple[str, ...]], ...] = (
    (Finding, "Open findings", ("danger", "where_")),
    (TemporaryModification, "Temporary modifications", ("what", "tag_hung", "until")),
    (Concession, "Concessions", ("departs_from", "conditions", "until")),
    (OpenItem, "Open items", ("what", "clears_when", "owner")),
)


def open_against(draft: Draft, system: System, answer: Answer) -> None:
    """May it be run, and under what limits: everything open against the system."""
    book = draft.book
    draft.add(*verdict(draft, answer))
    for kind, caption, names in OPEN_KINDS:
        found = [one for one in _of(book, system, kind) if unfinished(book, one)]
        draft.add(record_table(book, caption, found, *names, empty="none open"))
