"""What is to be done: a work package, an open item, a maintenance task."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import ClassVar

from garboard.records.base import (
    Figure,
    Interval,
    Mention,
    Person,
    Record,
    RecordId,
    Tag,
    asked,
    filled_later,
)
from garboard.records.inspection import Reading

__all__ = ["Basis", "Completed", "Done", "Effort", "MaintenanceTask", "OpenItem", "WorkPackage"]


class Basis(StrEnum):
    """Where the interval of a task comes from."""

    MAKER = "maker"
    RULE = "rule"
    EXPERIENCE = "experience"


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How long it takes: at best, most likely, at worst."""

    low: Figure
    """At best?"""
    likely: Figure
    """Most likely?"""
    high: Figure
    """At worst?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Completed:
    """Who finished a work package, and when."""

    by: Person
    """Who finished it?"""
    on: date
    """On which day?"""
    note: Mention | None = None
    """What differs from what was planned?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkPackage(Record):
    """A piece of work: what it makes true, what it needs first."""

    letters: ClassVar[str] = "WP"

    makes_true: Mention | None = asked()
    """What is true when it is done?"""
    done_means: Mention | None = asked()
    """By what does one see that it is done?"""
    needs: tuple[Mention, ...] = ()
    """What must be there first? Records, components, or text."""
    effort: Effort | None = None
    """How long does it take?"""
    holds: tuple[RecordId, ...] = ()
    """Which lines of the inspection plan stop it?"""
    hides: tuple[Tag, ...] = ()
    """What can nobody see any more when it is done?"""
    not_before: date | None = None
    """Before which day can it not be done?"""
    crew: Mention | None = None
    """Who does it?"""
    competence: Mention | None = None
    """What must they be able to do?"""
    space: Mention | None = None
    """In which space?"""
    window: Mention | None = None
    """In which window? A key of `windows` in handbook.yml."""
    tools: tuple[str, ...] = ()
    """Which tools?"""
    parts: tuple[Mention, ...] = ()
    """Which parts?"""
    isolation: RecordId | None = None
    """Which isolation procedure must be in force?"""
    done: Completed | None = filled_later()
    """Who finished it, and when?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenItem(Record):
    """Something that is not finished. What is dangerous is raised as a finding."""

    letters: ClassVar[str] = "OI"

    what: Mention | None = asked()
    """What is not finished?"""
    clears_when: Mention | None = asked()
    """When is it finished?"""
    where_: tuple[Tag, ...] = ()
    """At which components?"""
    owner: Person | None = None
    """Who sees to it?"""
    due: date | None = None
    """By which day?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """One time the task was done."""

    on: date
    """On which day?"""
    by: Person
    """By whom?"""
    as_found: Mention | None = None
    """How was it found?"""
    as_left: Mention | None = None
    """How was it left?"""
    readings: tuple[Reading, ...] = ()
    """What was read, and with which instrument?"""
    finding: RecordId | None = None
    """Which finding came of it?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class MaintenanceTask(Record):
    """What is done again and again, and how it was found each time."""

    letters: ClassVar[str] = "MT"

    task: Mention | None = asked()
    """What is done?"""
    tag: Tag | None = asked()
    """On which component?"""
    every: Interval | None = asked()
    """How often?"""
    basis: Basis | None = asked()
    """Where does the interval come from?"""
    procedure: RecordId | None = None
    """By which procedure?"""
    parts: tuple[Mention, ...] = ()
    """Which parts?"""
    competence: Mention | None = None
    """What must one be able to do?"""
    standby: Mention | None = None
    """Which stand-by carries on meanwhile, and when was it last tried?"""
    done: tuple[Done, ...] = filled_later(())
    """When was it done, by whom, how found, how left?"""
