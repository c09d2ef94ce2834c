"""A person, by a key: what they may sign, and what they have shown they can do.

Nothing here is about a person beyond a role: what is not asked for is refused, so that no name,
address or telephone number can slip into a book that is handed round.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from garboard.errors import Where
from garboard.records.base import Class, Person, RecordId, beside
from garboard.records.signoff import Capacity

__all__ = ["Aboard", "Competence", "Orientation", "PersonEntry"]


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
    level: str | None = None
    """How well: with help, alone, can teach it?"""
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
