"""A person, by a key: what they may sign, and what they have shown they can do.

Nothing here is about a person beyond a role: what is not asked for is refused, so that no name,
address or telephone number can slip into a book that is handed round.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from garboard.errors import Where
from garboard.records.base import Class, Person, RecordId, bare_id, beside
from garboard.records.signoff import Capacity

__all__ = ["Aboard", "Competence", "Level", "Orientation", "PersonEntry"]


class Level(StrEnum):
    """How well somebody can do a procedure."""

    WITH_HELP = "with help"
    """With somebody beside who can do it alone."""
    ALONE = "alone"
    CAN_TEACH = "can teach"
    """Alone, and can show it to others."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Aboard:
    """A time somebody was part of the crew."""

    from_: date
    """From which day?"""
    to: date | None = None
    """To which day? Left out: still aboard."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Orientation:
    """Somebody was shown round."""

    on: date
    """On which day?"""
    by: Person
    """By whom?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Competence:
    """What somebody can do, and who saw it."""

    procedure: RecordId
    """Which procedure?"""
    revision: int = 0
    """In which revision?"""
    level: Level | None = None
    """How well: with help, alone, can teach? Left out counts as with help."""
    on: date | None = None
    """On which day was it seen?"""
    by: Person | None = None
    """Who saw it?"""
    how: str | None = None
    """How was it seen?"""
    limits: str | None = None
    """Under which limits?"""
    until: date | None = None
    """Until which day does it hold?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class PersonEntry:
    """One person, by a key; only the role is ever printed."""

    key: str = beside()
    where: Where = beside()
    places: Mapping[str, Where] = beside(factory=dict)
    unread: tuple[str, ...] = beside(default=())

    role: str
    """What is this person's role?"""
    may: tuple[Capacity, ...] = ()
    """In which capacities may this person act?"""
    class_: Class | None = None
    """Up to which class? Left out: every class."""
    systems: tuple[str, ...] = ()
    """In which systems? Left out: in all."""
    disciplines: tuple[str, ...] = ()
    """In which trades?"""
    aboard: tuple[Aboard, ...] = ()
    """When aboard?"""
    orientation: tuple[Orientation, ...] = ()
    """When shown round, and by whom?"""
    competence: tuple[Competence, ...] = ()
    """Which procedures has this person shown to master?"""
    read_to: date | None = None
    """Up to which day has this person read what moved? Left out: up to the last day aboard."""

    def time_aboard(self, day: date) -> Aboard | None:
        """The time aboard that a day falls into; None where none is written that does."""
        return next(
            (one for one in self.aboard if one.from_ <= day and (one.to is None or day <= one.to)),
            None,
        )

    def may_be_aboard(self, day: date) -> bool:
        """Whether nothing says that somebody is not aboard: who keeps no such times may well be."""
        return not self.aboard or self.time_aboard(day) is not None

    def left(self, day: date) -> date | None:
        """The last day of the time aboard that ended last before a day; None where none did."""
        present = self.time_aboard(day)
        ends = (one.to for one in self.aboard if one.to and one.to < day and one is not present)
        return max(ends, default=None)

    def shown_round(self, day: date) -> Orientation | None:
        """When somebody was last shown round, up to a day."""
        done = (one for one in self.orientation if one.on <= day)
        return max(done, key=lambda one: one.on, default=None)

    @property
    def newest(self) -> Mapping[str, tuple[int, Competence]]:
        """What was last seen of each procedure, with its number in the list; undated goes first.

        The newest alone speaks: who was once seen to do it alone, and later only with help, needs help.
        """
        found: dict[str, tuple[int, Competence]] = {}
        for number, one in enumerate(self.competence):
            key = bare_id(one.procedure)
            known = found.get(key)
            if known is None or (one.on or date.min) >= (known[1].on or date.min):
                found[key] = number, one
        return found

    def lacks(self, capacity: Capacity, system: str, weight: Class | None = None) -> str:
        """What this person may not do: to act in a capacity; empty where it may be done.

        Args:
            capacity: In which somebody signs.
            system: Code of the system it is about; empty for the whole vessel.
            weight: Class of what is signed; None for what has none.
        """
        if capacity not in self.may:
            may = ", ".join(self.may) or "sign nothing"
            return f"act so (may: {may})"
        if self.class_ and weight and weight < self.class_:
            return f"do so for class {weight} (up to class {self.class_})"
        if self.systems and system not in self.systems:
            return f"do so in {system} (in {', '.join(self.systems)})"
        return ""
