"""Proof: a line of the inspection plan, a test, the review before start."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import ClassVar

from garboard.records.base import (
    DateOrText,
    Figure,
    Mention,
    Person,
    Record,
    RecordId,
    Tag,
    asked,
    filled_later,
)

__all__ = [
    "Channel",
    "Confirms",
    "ItemTested",
    "LoggedFile",
    "PlanLine",
    "Point",
    "Reading",
    "Result",
    "Review",
    "Test",
    "TimeUnit",
]


class Point(StrEnum):
    """How a line of the plan binds the work."""

    HOLD = "H"
    """Work stops until the named party releases it."""
    WITNESS = "W"
    """The named party is called and may come; work may go on."""
    REVIEW = "R"
    """The papers are read."""
    SURVEILLANCE = "S"
    """Looked at now and then."""

    @property
    def words(self) -> str:
        """Its letter and its word: `W, witness`."""
        return f"{self.value}, {self.name.lower()}"


class Result(StrEnum):
    """What a test came to."""

    PASS = "pass"  # noqa: S105 - the word of the trade
    FAIL = "fail"
    INCOMPLETE = "incomplete"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanLine(Record):
    """What is inspected, against what, and who must release it before work goes on."""

    letters: ClassVar[str] = "IT"

    activity: Mention | None = asked()
    """What is inspected or tested?"""
    criterion: Mention | None = asked()
    """What must come out? The address of a value, or text."""
    point: Point | None = asked()
    """Hold, witness, review or surveillance?"""
    party: Person | None = asked()
    """Who releases it?"""
    method: Mention | None = None
    """How is it done?"""
    reference: Mention | None = None
    """Which rule or drawing asks for it?"""
    notice: Mention | None = None
    """How long before must the named party be called?"""
    record: tuple[RecordId, ...] = ()
    """Which tests prove it?"""
    before: tuple[RecordId, ...] = ()
    """Which work packages may not go on before it is released?"""
    not_later: Mention | None = None
    """Why can it not be checked afterwards?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemTested:
    """One thing that was tested, by its tag and the serial of the item then fitted."""

    tag: Tag
    """Which component?"""
    serial: str | None = None
    """Which item was fitted? Its serial number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One reading, as it was read."""

    of: Mention
    """What was read, and when?"""
    value: Figure
    """What did it say?"""
    instrument: str | None = None
    """With which instrument? A key of `instruments` in handbook.yml."""


class TimeUnit(StrEnum):
    """In what the numbers of a time column count."""

    SECONDS = "s"
    MINUTES = "min"
    HOURS = "h"


@dataclass(frozen=True, slots=True, kw_only=True)
class Channel:
    """One column of a logged file."""

    of: Mention
    """What does the column hold?"""
    unit: str | None = None
    """In which unit?"""
    instrument: str | None = None
    """With which instrument?"""
    accuracy: str | None = None
    """How far may a reading be out? `0.1 bar`; its values are then quoted with that tolerance."""
    name: str | None = None
    """Under which name are its values quoted, where the column's own is none: `p` for `p [bar]`?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedFile:
    """A file of logged readings."""

    file: str
    """Which CSV file? Its path inside the content folder."""
    time: str
    """Which column holds the time?"""
    channels: Mapping[str, Channel]
    """What does each other column hold?"""
    time_unit: TimeUnit | None = None
    """In what do the numbers of that column count, where its name does not say: s, min or h?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Test(Record):
    """What was tested, against what, with what, and what came out; a failure is kept."""

    __test__: ClassVar[bool] = False
    """Says to a collector of tests that this is none of them."""
    letters: ClassVar[str] = "TR"

    what: Mention | None = asked()
    """What sort of test was it?"""
    on: date | None = asked()
    """On which day?"""
    did: Person | None = asked()
    """Who did it?"""
    tested: tuple[ItemTested, ...] = asked(default=())
    """What was tested? Tags, with the serial number of what was fitted."""
    result: Result | None = asked()
    """Pass, fail or incomplete?"""
    readings: tuple[Reading, ...] = asked(default=())
    """What was read, and with which instrument?"""
    criterion: Mention | None = asked()
    """What had to come out? Fixed before the test."""
    log: LoggedFile | None = None
    """Which file holds logged readings, beside or instead of `readings`?"""
    line: RecordId | None = asked("A")
    """Which line of the inspection plan does it prove?"""
    procedure: RecordId | None = asked("AB")
    """By which procedure, in which revision?"""
    medium: Mention | None = None
    """With what: water, oil, air?"""
    duration: Figure | None = None
    """For how long?"""
    line_up: Mention | None = None
    """How were the valves?"""
    witness: Person | None = None
    """Who watched?"""
    connections: str | None = None
    """For a line trace: the digest of the connections as they were traced."""
    deviations: Mention | None = filled_later()
    """What was not done as the procedure says?"""
    made_good: tuple[Mention, ...] = asked("A", default=(), later=True)
    """What was put back: blanks out, gags off, drains shut?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Confirms:
    """What two persons confirm on their walk: yes, no, or the record that shows it."""

    as_built: bool | RecordId | None = None
    """Is it built as drawn?"""
    procedures: bool | RecordId | None = None
    """Are the procedures in place?"""
    hazards: bool | RecordId | None = None
    """Are the controls of every hazard in place?"""
    changes: bool | RecordId | None = None
    """Is every change closed?"""
    trained: bool | RecordId | None = None
    """Has everybody been trained?"""
    findings: bool | RecordId | None = None
    """Is every finding that must be closed closed?"""
    holds: bool | RecordId | None = None
    """Is every hold point released?"""
    safety_devices: bool | RecordId | None = None
    """Has every safety device been tested?"""
    isolations_off: bool | RecordId | None = None
    """Is every isolation off?"""
    cards: bool | RecordId | None = None
    """Do the cards hang where they should?"""
    labels: bool | RecordId | None = None
    """Does every label hang where it should?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Review(Record):
    """The walk of two persons before something is started."""

    letters: ClassVar[str] = "RW"

    covers: tuple[Tag, ...] = asked(default=())
    """Which components does it cover?"""
    walked_by: tuple[Person, ...] = asked(default=())
    """Who walked? Two persons."""
    confirms: Confirms | None = asked()
    """What do they confirm?"""
    because: tuple[RecordId, ...] = ()
    """Which changes brought it about?"""
    limits: Mention | None = None
    """Under which limits may it run?"""
    until: DateOrText | None = None
    """Until when?"""
