"""What people can do today, by what they have shown, and what is left of it where a procedure moved on.

The machine moves backwards only: a major revision takes one rank away, two take two, and nothing but
showing it again brings a rank back. A person does what they were shown, not what is written now.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from itertools import islice

from garboard.book import Book
from garboard.changes.minor_revisions import Claim, minor_claims
from garboard.errors import Where
from garboard.records.base import Record
from garboard.records.people import Competence, Level, PersonEntry
from garboard.records.procedure import Procedure
from garboard.records.standing import has_left

__all__ = [
    "NOT_SHOWN",
    "Skill",
    "alone_aboard",
    "helped_aboard",
    "issued_on",
    "skills",
    "skills_by_procedure",
    "skills_of",
]

NOT_SHOWN = "not shown"
MOST_RANKS = 2
"""Ranks there are to lose."""
ALONE = (Level.ALONE, Level.CAN_TEACH)
FALLS_TO = {Level.CAN_TEACH: Level.WITH_HELP, Level.ALONE: Level.WITH_HELP, Level.WITH_HELP: None}
"""Who could teach a procedure is not taken to be able to do the new one alone: they were not shown it."""


@dataclass(frozen=True, slots=True)
class Skill:
    """What one person can do of one procedure."""

    person: PersonEntry
    procedure: Procedure
    shown: Competence
    where: Where
    """Where it is written that it was seen."""
    level: Level | None
    """As it counts today; None where nothing is left."""
    majors: tuple[int, ...] = ()
    """The revisions since that have to be shown, the first ones: after two nothing is left."""
    unproved: tuple[int, ...] = ()
    """Those of them that are claimed minor, with nothing to hold the claim against."""
    since: date | None = None
    """The day the present revision was issued; None where that is not signed."""
    ran_out: bool = False
    """Whether the day until which it held is past."""
    doubt: str = ""
    """Why it cannot be as it is written."""

    @property
    def written(self) -> Level:
        """How well, as it was seen; where nobody wrote it down, with help."""
        return self.shown.level or Level.WITH_HELP

    @property
    def fell(self) -> bool:
        """Whether it counts as less than was seen."""
        return self.level is not self.written

    @property
    def alone(self) -> bool:
        """Whether this person can do it alone today."""
        return self.level in ALONE

    @property
    def counts_as(self) -> str:
        """How well, in words."""
        return str(self.level or NOT_SHOWN)


def skills(book: Book) -> Iterator[Skill]:
    """What everybody in the list of people can do, aboard or ashore, by the newest that was seen."""
    claims: dict[str, tuple[Claim, ...]] = {}
    for person in book.content.people.values():
        for key in person.newest:
            record: Record | None = book.records.get(key)
            if not isinstance(record, Procedure) or has_left(record):
                continue
            if key not in claims:
                claims[key] = minor_claims(book, record)
            yield _weighed(book, person, record, claims[key])


def skills_of(book: Book, procedure: Procedure) -> list[Skill]:
    """What everybody can do of one procedure."""
    claims = minor_claims(book, procedure)
    return [
        _weighed(book, person, procedure, claims)
        for person in book.content.people.values()
        if str(procedure.id) in person.newest
    ]


def _weighed(
    book: Book, person: PersonEntry, record: Procedure, claims: tuple[Claim, ...]
) -> Skill:
    """The newest that was seen of one person, held against the procedure and the day."""
    number, one = person.newest[str(record.id)]
    where = person.places.get(f"competence[{number}]", person.where)
    later = range(one.revision + 1, record.revision + 1)
    minor = {claim.number for claim in claims if claim.believed}
    majors = tuple(islice((number for number in later if number not in minor), MOST_RANKS))
    unproved = tuple(claim.number for claim in claims if claim.unproved and claim.number in majors)
    ran_out = one.until is not None and one.until < book.today
    level: Level | None = one.level or Level.WITH_HELP
    for _ in majors:
        level = FALLS_TO[level] if level else None
    since = issued_on(book, record) if majors else None
    doubt = ""
    if one.revision > record.revision:
        doubt = f"there is no revision {one.revision}"
    elif one.on and one.on > book.today:
        doubt = f"the day it was seen, {one.on}, is yet to come"
    level = None if ran_out or doubt else level
    return Skill(person, record, one, where, level, majors, unproved, since, ran_out, doubt)


def skills_by_procedure(book: Book) -> dict[str, list[Skill]]:
    """What everybody can do, by procedure."""
    found: dict[str, list[Skill]] = {}
    for one in skills(book):
        found.setdefault(str(one.procedure.id), []).append(one)
    return found


def alone_aboard(book: Book, found: Iterable[Skill]) -> list[Skill]:
    """Those of some skills whose people can do it alone and are written down as aboard today."""
    return [one for one in found if one.alone and one.person.time_aboard(book.today)]


def helped_aboard(book: Book, found: Iterable[Skill]) -> list[Skill]:
    """Those whose people are aboard today and can do it with somebody beside who can do it alone."""
    return [
        one for one in found if one.level is Level.WITH_HELP and one.person.time_aboard(book.today)
    ]


def issued_on(book: Book, procedure: Procedure) -> date | None:
    """The day a procedure was issued as it stands; None where that is not signed."""
    reviewed = book.reviews.get(str(procedure.id))
    whole = reviewed.cover.whole if reviewed else ""
    days = (
        line.on
        for line in procedure.signed
        if line.to == "issued" and line.digest and whole.startswith(line.digest)
    )
    return min(days, default=None)
