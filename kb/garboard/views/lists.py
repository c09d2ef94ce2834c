"""The pages of a system that list its records: what to do, what can go wrong, what was proved."""

from collections.abc import Iterator
from typing import TypeVar

from garboard.book import Book
from garboard.records.alarm import Alarm, Fault
from garboard.records.base import Class, Record
from garboard.records.calculation import Calculation
from garboard.records.change import Concession, TemporaryModification
from garboard.records.finding import Finding
from garboard.records.hazard import Hazard
from garboard.records.inspection import PlanLine, Review, Test
from garboard.records.kinds import kind_of
from garboard.records.procedure import Procedure
from garboard.records.states import at_rest
from garboard.records.system import System
from garboard.records.work import OpenItem
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.inspection_plan import holds_in_the_way, plan_table
from garboard.views.messages import message_of, worst_first
from garboard.views.page import Heading, Link, Paragraph, Strong, Tiles
from garboard.views.safety_devices import safety_device_table
from garboard.views.tables import record_table

__all__ = [
    "alarms",
    "calculations",
    "faults",
    "hazards",
    "open_against",
    "procedures",
    "tests",
    "unfinished",
]

R = TypeVar("R", bound=Record)


def _of(book: Book, system: System, kind: type[R]) -> list[R]:
    return [record for record in book.of_kind(kind) if record.system == system.code]


def unfinished(book: Book, record: Record) -> bool:
    """Whether something is still owed on a record, by the state that it counts as."""
    kind = kind_of(record)
    return kind is not None and not at_rest(kind.name, book.state(record))


def procedures(draft: Draft, system: System) -> None:
    """Procedures by when they are taken in hand."""
    found = _of(draft.book, system, Procedure)
    draft.add(record_table(draft.book, "Procedures", found, "use", "purpose"))


def alarms(draft: Draft, system: System) -> None:
    """A tile for each alarm, in the exact words of the panel."""
    found = _of(draft.book, system, Alarm)
    tiles = tuple(
        (
            Link(str(one.id), one.wording or one.title),
            f"alarm priority: {one.priority or 'not recorded'}",
        )
        for one in found
    )
    draft.add(Tiles(tiles), record_table(draft.book, "Settings", found, "tag", "set", "direction"))


def faults(draft: Draft, system: System) -> None:
    """Faults by what the crew notices."""
    draft.add(record_table(draft.book, "Faults", _of(draft.book, system, Fault), "symptoms"))


def hazards(draft: Draft, system: System) -> None:
    """Every hazard of the system, the worst first."""
    found = worst_first(_of(draft.book, system, Hazard))
    draft.messages = tuple(message_of(draft.book, one) for one in found)
    draft.add(
        record_table(draft.book, "Hazards", found, "source", "where_", "severity", "likelihood")
    )


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


def open_against(draft: Draft, system: System) -> None:
    """May it be run, and under what limits: everything open against the system."""
    book = draft.book
    draft.add(*_verdict(draft, system))
    for kind, caption, names in OPEN_KINDS:
        found = [one for one in _of(book, system, kind) if unfinished(book, one)]
        draft.add(record_table(book, caption, found, *names, empty="none open"))


def _verdict(draft: Draft, system: System) -> Iterator[Paragraph]:
    book = draft.book
    grave = [
        one for one in _of(book, system, Finding) if unfinished(book, one) and one.weight is Class.A
    ]
    if str(system.status) != "in service":
        yield Paragraph((Strong(f"Not for service: this system is {system.status}."),))
    if grave:
        links = [part for one in grave for part in (Link(str(one.id), str(one.id)), " ")]
        yield Paragraph((Strong("Not safe to rely on. Open safety findings: "), *links))
    limits = [one for one in _of(book, system, Review) if one.limits]
    for one in limits:
        yield Paragraph((Link(str(one.id), str(one.id)), " limits it: ", *cell(book, one.limits)))
    yield Paragraph(
        ("This page can only say what was entered. The person in charge decides whether it runs.",),
        quiet=True,
    )
