"""What was found, what was done about it, and what was learned.

The first words stay as they were said; a later view of the matter stands in fields of its own.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import ClassVar

from garboard.records.base import (
    Identifier,
    Mention,
    Person,
    Record,
    RecordId,
    asked,
    filled_later,
)

__all__ = [
    "Action",
    "Aim",
    "Danger",
    "Disposition",
    "Extent",
    "Finding",
    "Found",
    "Grade",
    "Interim",
    "Lesson",
]


class Grade(StrEnum):
    """What sort of finding it is."""

    NONCONFORMITY = "nonconformity"
    """Something is not as it must be."""
    OBSERVATION = "observation"
    """Worth saying; nothing is broken yet."""
    OCCURRENCE = "occurrence"
    """It happened: an accident, a near miss, a failure."""


class Danger(StrEnum):
    """Whether anybody or anything is in danger from it now."""

    NONE = "none"
    POSSIBLE = "possible"
    IMMEDIATE = "immediate"


class Disposition(StrEnum):
    """What is done with the thing found."""

    CORRECT = "correct"
    REWORK = "rework"
    REPAIR = "repair"
    ACCEPT = "accept as is"
    SCRAP = "scrap"


class Aim(StrEnum):
    """What an action is for."""

    REMEDY = "remedy"
    """Puts this one right."""
    CORRECT_CAUSE = "correct cause"
    """Takes away why it happened."""
    PREVENT_ELSEWHERE = "prevent elsewhere"
    """Looks for the same thing in other places."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Who found it, when, and doing what."""

    by: Person
    """Who found it?"""
    on: date
    """On which day?"""
    during: Mention | None = None
    """During what: design review, rounds, a test?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Interim:
    """What keeps people safe until it is put right."""

    measure: Mention
    """What was done at once?"""
    by: Person
    """Who did it?"""
    on: date
    """On which day?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Extent:
    """Where else it could be, where that was looked for, and what was found there."""

    asked: Mention
    """What was asked: where else could the same be?"""
    looked: tuple[Mention, ...] = ()
    """Where was it looked for?"""
    found: tuple[Mention, ...] = ()
    """Where was it found?"""
    not_looked: Mapping[Mention, Mention] | None = None
    """Where was it not looked for, and why not? A tag, a kind of part, a system or `all others`, each with
    its reason."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding(Record):
    """Something that is not as it should be, in the first words it was said in."""

    letters: ClassVar[str] = "FN"

    words: str | None = asked()
    """What was seen? In the finder's own words, never changed later."""
    grade: Grade | None = asked()
    """What sort of finding is it?"""
    where_: tuple[Identifier, ...] = asked(default=())
    """Where is it? Components or records."""
    found: Found | None = asked()
    """Who found it, when, and doing what?"""
    danger: Danger | None = asked()
    """Is anybody in danger from it now?"""
    interim: Interim | None = filled_later()
    """What keeps people safe until it is put right? Wanted where the danger is immediate."""
    against: tuple[RecordId, ...] = ()
    """Which records is it against?"""
    requirement: Mention | None = None
    """What does it fall short of? A text, or the code of a rule."""
    cause: Mention | None = asked("A", later=True)
    """Why did it come about?"""
    escaped: tuple[RecordId, ...] = ()
    """Which checks should have caught it, and did not?"""
    extent: Extent | None = asked("A", later=True)
    """Where else could it be, and was it looked for there?"""
    disposition: Disposition | None = filled_later()
    """What is done with the thing found?"""
    actions: tuple[RecordId, ...] = filled_later(())
    """Which actions came of it?"""
    effective_on: date | None = asked("A", later=True)
    """On which day is it looked at whether the cure worked?"""
    credit: Person | None = None
    """Who deserves thanks for catching it?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Action(Record):
    """What somebody does about a finding, by when, and how one will know that it worked."""

    letters: ClassVar[str] = "CA"

    finding: RecordId | None = asked()
    """Which finding is it for?"""
    action: Mention | None = asked()
    """What is to be done?"""
    owner: Person | None = asked()
    """Who sees to it?"""
    due: date | None = asked()
    """By which day?"""
    aim: Aim | None = asked()
    """What is it for?"""
    evidence: tuple[RecordId, ...] = filled_later(())
    """Which records show that it was done?"""
    look_for: Mention | None = asked("A")
    """What will be looked for, to see whether it worked?"""
    look_on: date | None = asked("A")
    """On which day will that be looked for?"""
    result: Mention | None = filled_later()
    """What did that show?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson(Record):
    """What an event taught, and where it is built in."""

    letters: ClassVar[str] = "LL"

    event: tuple[RecordId, ...] = asked(default=())
    """Which findings or tests taught it?"""
    learned: Mention | None = asked()
    """What was learned?"""
    recommend: Mention | None = asked()
    """What should be done from now on?"""
    told: Mention | None = None
    """Who was told, and how?"""
    keywords: tuple[str, ...] = ()
    """By which words should it be found?"""
    into: tuple[Mention, ...] = ()
    """Into what was it built? A record, the code of a rule, a watch round or the path of a page."""
