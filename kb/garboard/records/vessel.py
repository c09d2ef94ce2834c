"""What belongs to the whole vessel: the handbook's own facts, sources, words, spares."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from garboard.calc.value import Given
from garboard.errors import Where
from garboard.records.base import (
    CardNumber,
    DateOrText,
    Figure,
    Identifier,
    Interval,
    Mention,
    Person,
    RecordId,
    StepRange,
    Tag,
    beside,
)
from garboard.records.people import PersonEntry

__all__ = [
    "Card",
    "EditionTerms",
    "Holder",
    "Instrument",
    "Milestone",
    "Notice",
    "PersonEntry",
    "Retired",
    "Seen",
    "Source",
    "Spare",
    "Term",
    "Vessel",
    "Window",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class EditionTerms:
    """What holds for every edition."""

    life: Interval | None = None
    """How long may an edition be relied on?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Instrument:
    """A measuring instrument that tests are made with."""

    what: str
    """What is it, and over which range?"""
    calibrated: date | None = None
    """On which day was it calibrated?"""
    due: date | None = None
    """On which day is it due again?"""
    serial: str | None = None
    """Which serial number?"""
    certificate: str | None = None
    """Which certificate says so?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Holder:
    """Somebody who holds a controlled copy."""

    copy: str
    """Which number has the copy?"""
    where: str
    """Where is it?"""
    medium: str | None = None
    """Paper, phone, memory stick?"""
    given: date | None = None
    """On which day was it given?"""
    edition: str | None = None
    """Which edition is it?"""
    acknowledged: str | None = None
    """Which edition or notice was last acknowledged?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """A card that hangs somewhere on the vessel."""

    card: CardNumber
    """Which number has the card?"""
    of: RecordId
    """Which procedure or alarm is it of? For an isolation the written procedure that governs it."""
    place: str
    """Where does it hang?"""
    holder: Person | None = None
    """Who sees to it that it hangs there?"""
    steps: StepRange | None = None
    """Which steps stand on it, where they do not fit on one: `1-4`? Left out: all."""
    first: int | None = None
    """How many of its rows come under Do first? Left out: those at the first place, five at most."""
    printed: date | None = None
    """On which day was it printed?"""
    edition: str | None = None
    """From which edition?"""
    digest: str | None = None
    """The digest code on its foot."""
    removed: date | None = None
    """On which day was it taken down?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """Something told to every holder, between editions."""

    number: str
    """Which number has it?"""
    on: date
    """On which day was it sent?"""
    says: Mention
    """What does it say? Short enough for a satellite message."""
    against: tuple[Identifier, ...] = ()
    """Which records or components must not be relied on?"""
    until: DateOrText | None = None
    """Until when?"""
    withdrawn: date | None = None
    """On which day was it withdrawn?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """A time in which certain work can be done, such as a haul-out."""

    from_: date
    """From which day?"""
    to: date
    """To which day?"""
    what: str | None = None
    """What for?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Milestone:
    """Something the work leads to."""

    needs: tuple[Mention, ...]
    """What must be done for it? Work packages, records, or text."""
    by: DateOrText | None = None
    """By when?"""
    what: str | None = None
    """What is reached?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Vessel:
    """What handbook.yml says."""

    where: Where = beside()
    places: Mapping[str, Where] = beside(factory=dict)
    unread: tuple[str, ...] = beside(default=())

    vessel: str = ""
    """What is the vessel called?"""
    defers_to: tuple[str, ...] = ()
    """Who decides, whatever this book says?"""
    systems: Mapping[str, str] | None = None
    """Which systems are there? Two capital letters, and the name of the folder."""
    edition: EditionTerms | None = None
    """What holds for every edition?"""
    site: Mapping[str, Given] | None = None
    """In which conditions does the vessel work? Each a quantity with its source."""
    instruments: Mapping[str, Instrument] | None = None
    """Which instruments are tests made with?"""
    as_of: date | None = None
    """By which day are time rules judged? Left out: today."""
    holders: tuple[Holder, ...] = ()
    """Who holds a copy?"""
    cards: tuple[Card, ...] = ()
    """Which cards hang where?"""
    notices: tuple[Notice, ...] = ()
    """What was told to the holders?"""
    windows: Mapping[str, Window] | None = None
    """In which times can certain work be done?"""
    milestones: Mapping[str, Milestone] | None = None
    """What does the work lead to?"""
    orientation: tuple[Mention, ...] = ()
    """What is a newcomer shown on the first day? One thing or place a line, with its tags."""
    emergencies: Mapping[str, tuple[RecordId, ...]] | None = None
    """What does one see or hear in an emergency, and which records help then, the first first?"""
    rounds: Mapping[str, tuple[str, ...]] | None = None
    """Which places does a round past several systems come to, in walking order? Rounds of one name
    are walked as one."""

    def place(self, path: str = "") -> Where:
        """Where a field stands; the first line of the file where it was not written."""
        return self.places.get(path, self.where)

    @property
    def folders(self) -> Mapping[str, str]:
        """Folder of each system, by code."""
        return self.systems or {}

    @property
    def conditions(self) -> Mapping[str, Given]:
        """Conditions of the vessel, by name."""
        return self.site or {}


class Seen(StrEnum):
    """How a source was read."""

    ORIGINAL = "original"
    """The document itself, or a true copy."""
    SECONDARY = "secondary"
    """Something that restates it."""
    REMEMBERED = "remembered"
    """From memory: it bears nothing of class A."""
    CONSTRUCTED = "constructed"
    """Made up, to pin something down."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where a number or a demand comes from."""

    key: str = beside()
    where: Where = beside()
    places: Mapping[str, Where] = beside(factory=dict)
    unread: tuple[str, ...] = beside(default=())

    title: str
    """What is it called?"""
    edition: str | None = None
    """Which edition, revision or year?"""
    seen: Seen | None = None
    """How was it read: original, secondary or remembered?"""
    by: Person | None = None
    """Who read it?"""
    on: date | None = None
    """On which day?"""
    kept: str | None = None
    """Where is the copy?"""
    photo: str | None = None
    """Which photograph shows it? Its path inside the content folder."""
    superseded_by: str | None = None
    """Which source replaces it?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """A word of the trade, and what the crew says for it."""

    key: str = beside()
    where: Where = beside()
    places: Mapping[str, Where] = beside(factory=dict)
    unread: tuple[str, ...] = beside(default=())

    means: str
    """What does it mean?"""
    crew_words: tuple[str, ...] = ()
    """What does the crew say for it?"""
    abbreviation: str | None = None
    """How is it shortened?"""
    see: tuple[str, ...] = ()
    """Which other words belong to it?"""
    not_: str | None = None
    """What must it not be taken for?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spare:
    """A spare part, by its part number."""

    key: str = beside()
    where: Where = beside()
    places: Mapping[str, Where] = beside(factory=dict)
    unread: tuple[str, ...] = beside(default=())

    name: str
    """What is it?"""
    fits: tuple[Tag, ...] = ()
    """Which components does it fit?"""
    aboard: int | None = None
    """How many are aboard?"""
    least: int | None = None
    """How many must there be at least?"""
    where_: str | None = None
    """Where do they lie?"""
    lead_time: Figure | None = None
    """How long does it take to get one?"""
    interchange: tuple[str, ...] = ()
    """Which other part numbers do as well?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Retired:
    """An id or a tag that must never be used again."""

    key: str = beside()
    where: Where = beside()
    places: Mapping[str, Where] = beside(factory=dict)
    unread: tuple[str, ...] = beside(default=())

    on: date | None = None
    """On which day?"""
    why: str | None = None
    """Why?"""
    replaced_by: Identifier | None = None
    """What took its place?"""
