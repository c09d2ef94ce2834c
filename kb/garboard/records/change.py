"""What changes the vessel: a change notice, a temporary modification, a concession.

A change says what was so before, because the old number is what a later reader looks for.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum
from typing import ClassVar

from garboard.records.base import (
    Address,
    Class,
    DateOrText,
    Figure,
    Identifier,
    Mention,
    Nothing,
    Person,
    Record,
    RecordId,
    Tag,
    asked,
    filled_later,
)
from garboard.records.in_kind import differences

__all__ = ["Change", "Concession", "Fitted", "InKind", "Lasts", "Shift", "TemporaryModification"]


class Lasts(StrEnum):
    """How long a change stays, where no date is given."""

    PERMANENT = "permanent"


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """One value, before and after."""

    before: Figure
    """What was it before?"""
    after: Figure
    """What is it now?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class InKind:
    """Each attribute that must be alike: one value where they are, `{before, after}` where not."""

    rating: Shift | Figure | None = None
    """Is the rating the same?"""
    material: Shift | Figure | None = None
    """Is the material the same?"""
    size: Shift | Figure | None = None
    """Is the size the same?"""
    connection: Shift | Figure | None = None
    """Is the connection the same?"""
    fails: Shift | Figure | None = None
    """Does it fail to the same position?"""
    setting: Shift | Figure | None = None
    """Is the setting the same?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """Who put it in, and when."""

    by: Person
    """Who fitted it?"""
    on: date
    """On which day?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change(Record):
    """What becomes different on the vessel, who must know, and which proofs it voids."""

    letters: ClassVar[str] = "CN"

    basis: Mention | None = asked()
    """What does it rest on? The decision, or for class C a sentence."""
    safety: Mention | None = asked()
    """What does it do to safety and health?"""
    lasts: date | Lasts | None = asked()
    """How long does it last? `permanent`, or a date."""
    procedures: tuple[RecordId, ...] | Nothing | None = asked("AB")
    """Which procedures, alarms and tasks must be changed with it? Ids, or `none`."""
    informs: Mention | None = asked("AB")
    """Who must be told or trained before it is used?"""
    because: tuple[RecordId, ...] = ()
    """Which records brought it about?"""
    values: Mapping[Address, Shift] = field(default_factory=dict)
    """Which values does it move, from what to what?"""
    voids: tuple[RecordId, ...] = ()
    """Which tests prove nothing any more?"""
    retests: tuple[RecordId, ...] = ()
    """Which tests take their place?"""
    installed: date | None = filled_later()
    """On which day did it become true?"""
    in_kind: InKind | None = asked("C")
    """Is it really in kind? Each attribute, old and new."""
    looked_at: tuple[Mention, ...] = filled_later(())
    """What else does it reach that was looked at and needs no change? Ids, tags, part numbers, numbers of
    cards, codes of systems, paths of pages."""

    @property
    def weight(self) -> Class:
        """Its class; none stated counts as A, and C counts as B where it is not in kind."""
        written = self.class_ or Class.A
        return Class.B if written is Class.C and any(differences(self)) else written


@dataclass(frozen=True, slots=True, kw_only=True)
class TemporaryModification(Record):
    """What is rigged for now, where its tag hangs, and until when."""

    letters: ClassVar[str] = "TM"

    what: Mention | None = asked()
    """What was rigged?"""
    where_: tuple[Tag, ...] = asked(default=())
    """At which components?"""
    tag_hung: str | None = asked()
    """Which number does the hung tag have, and where does it hang?"""
    until: DateOrText | None = asked()
    """Until when? A date, or an event."""
    restore: tuple[Mention, ...] = asked(default=())
    """What must be done to make it as it was?"""
    watch: Mention | None = asked()
    """What is looked at on the rounds?"""
    compensates: Mention | None = asked("AB")
    """What makes up for it meanwhile?"""
    fitted: Fitted | None = filled_later()
    """Who fitted it, and when?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Concession(Record):
    """Leave to depart from a rule or requirement, under conditions, for a time."""

    letters: ClassVar[str] = "CO"

    departs_from: Mention | None = asked()
    """Which rule or requirement is departed from? The code of a rule, or its text."""
    why: Mention | None = asked()
    """Why can it not be met?"""
    conditions: Mention | None = asked()
    """On what conditions?"""
    where_: tuple[Identifier, ...] = asked(default=())
    """For which components or records?"""
    until: DateOrText | None = asked()
    """Until when? A date for class A; else a date or an event."""
    fingerprint: str | None = None
    """Which path finding does it waive? The fingerprint printed with it; a new layout ends it."""
