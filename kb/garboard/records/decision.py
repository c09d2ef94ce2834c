"""A decision: what was chosen, over what, and why; what was refused stays readable."""

from dataclasses import dataclass
from typing import ClassVar

from garboard.records.base import Address, Mention, Person, Record, RecordId, asked

__all__ = ["Decision", "Objection", "Option"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One thing that could have been done; `leave it` is one of them."""

    option: Mention
    """What could be done?"""
    why_not: Mention | None = None
    """Why was it not done? Left out for the one that was chosen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Objection:
    """What somebody had against it, in their words."""

    by: Person
    """Who objects?"""
    words: str
    """What do they say? In their own words."""
    answer: Mention | None = None
    """What was answered?"""
    answered_by: Person | None = None
    """Who answered? Not the author alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision(Record):
    """What was chosen, over what, and why."""

    letters: ClassVar[str] = "DD"

    question: Mention | None = asked()
    """What had to be decided?"""
    options: tuple[Option, ...] = asked(default=())
    """What could have been done? `leave it` among them; each refused one says why not."""
    chosen: Mention | None = asked()
    """Which was chosen?"""
    reasons: Mention | None = asked()
    """Why that one?"""
    need: Mention | None = None
    """Which need does it serve?"""
    assumptions: tuple[Mention, ...] = asked("AB", default=())
    """What was taken to be so?"""
    objections: tuple[Objection, ...] = ()
    """Who was against it, and what was answered?"""
    accepts: Mention | None = None
    """What is knowingly put up with?"""
    sets: tuple[Address, ...] = ()
    """Which values does it fix? Addresses such as `SA-PS-001.set`."""
    reconsider_if: Mention | None = asked("AB")
    """What would have to happen for it to be looked at again?"""
    undo: Mention | None = None
    """How is it undone?"""
    answers: tuple[RecordId, ...] = ()
    """Which findings or open items does it answer?"""
