"""What every record has in common, and how a kind says which fields it wants, and when.

A kind is a frozen dataclass. The type of a field says how it is read; `asked()` says when it is
wanted: before the record leaves its start state, or by class before it comes to rest. A key of the
file is the field's name without a trailing underscore, so that `class` and `from` can be keys; what
is no key at all, such as the place in the file, is marked `beside()`. The string under a field is
the question that a started record asks, and the entry of the manual.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import MISSING, dataclass, field
from datetime import date
from enum import StrEnum
from typing import Any, ClassVar, NewType

from garboard.errors import Where
from garboard.records.signoff import SignOff

__all__ = [
    "Address",
    "Asked",
    "CardNumber",
    "Class",
    "DateOrText",
    "Figure",
    "Identifier",
    "Interval",
    "Medium",
    "Mention",
    "Nothing",
    "Person",
    "Record",
    "RecordId",
    "SourceId",
    "StepRange",
    "Tag",
    "asked",
    "bare_id",
    "beside",
    "date_of",
    "filled_later",
    "several",
]

RecordId = NewType("RecordId", str)
"""An id that must be declared: `SA-DD-003`; of a procedure also a revision, `SA-PR-006 r1`."""
Tag = NewType("Tag", str)
"""A component tag that must be declared."""
Identifier = NewType("Identifier", str)
"""An id or a tag; either must be declared."""
Person = NewType("Person", str)
"""A key of people.yml; only the role is ever printed."""
SourceId = NewType("SourceId", str)
"""A key of sources.yml, or a record or tag that proves the number."""
Address = NewType("Address", str)
"""The address of a value, `SA-RV-001.set`."""
Mention = NewType("Mention", str)
"""Free text, or an id, a tag or an address where the text is one."""
Figure = NewType("Figure", str)
"""A quantity, an address, or words such as `lamp out`: what is seen or read."""
DateOrText = NewType("DateOrText", str)
"""A date, or the event that stands in its place, such as `at installation`."""
Interval = NewType("Interval", str)
"""How often: `1 d`, `6 months`, `500 running h`, or an event such as `before each start`."""
CardNumber = NewType("CardNumber", str)
"""The number of a quick card, which is part of the path of its page: `K-01`."""
StepRange = NewType("StepRange", str)
"""Steps in a row, by their numbers: `1-4`; of one step `5-5`."""

REVISION = re.compile(r"(?P<id>[A-Z]{2}-[A-Z]{2}-\d{3})(?: r(?P<revision>\d+))?")


class Class(StrEnum):
    """How much hangs on it."""

    A = "A"
    """Safety-significant: can injure, flood, burn, lose propulsion, steering or power, or defeats a
    safety device."""
    B = "B"
    """Function-significant: changes a number, material, line-up or procedure; cannot hurt."""
    C = "C"
    """Minor or in kind."""


class Nothing(StrEnum):
    """The word for a list that is empty on purpose, unlike one that nobody filled in."""

    NONE = "none"


@dataclass(frozen=True, slots=True)
class Asked:
    """When a field is wanted."""

    before_leaving_start: bool = False
    """Wanted before the record leaves its start state."""
    classes: str = ""
    """Wanted of these classes before the record comes to rest."""
    later: bool = False
    """Filled after the signature, outside its digest."""


def asked(
    classes: str = "",
    *,
    default: Any = None,  # noqa: ANN401 - a field of any type
    later: bool = False,
) -> Any:  # noqa: ANN401 - a field of any type
    """A field that is wanted: of these classes at rest; of none, before the start is left."""
    return field(default=default, metadata={"asked": Asked(not classes, classes, later=later)})


def filled_later(default: Any = None) -> Any:  # noqa: ANN401 - a field of any type
    """An optional field that is filled after the signature, outside its digest."""
    return field(default=default, metadata={"asked": Asked(later=True)})


def beside(
    *,
    default: Any = MISSING,  # noqa: ANN401 - a field of any type
    factory: Callable[[], Any] | None = None,
) -> Any:  # noqa: ANN401 - a field of any type
    """A field that is no key of the file: where it stands, what its name and folder already say."""
    metadata = {"beside": True}
    if factory is not None:
        return field(default_factory=factory, metadata=metadata)
    return (
        field(metadata=metadata)
        if default is MISSING
        else field(default=default, metadata=metadata)
    )


def several() -> Any:  # noqa: ANN401 - a field of any type
    """A list field that may be written without brackets where it holds one thing."""
    return field(default=(), metadata={"several": True})


def bare_id(text: str) -> str:
    """An id without the revision it may carry.

    >>> bare_id("SA-PR-006 r1"), bare_id("SA-TR-001")
    ('SA-PR-006', 'SA-TR-001')
    """
    found = REVISION.fullmatch(text)
    return found["id"] if found else text


def date_of(text: str | None) -> date | None:
    """The date that a date-or-event is, or None where it is an event.

    >>> date_of("2031-12-31"), date_of("at installation")
    (datetime.date(2031, 12, 31), None)
    """
    if text is None or not re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


@dataclass(frozen=True, slots=True, kw_only=True)
class Medium:
    """A photograph or drawing that belongs to a record."""

    photo: str
    """Which file is it? Its path inside the content folder."""
    on: date | None = None
    """On which day was it taken?"""
    tag: Tag | None = None
    """Which component does it show?"""
    view: str | None = None
    """What does it show, and from where? This is also its text for those who cannot see it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """The envelope that every record has."""

    letters: ClassVar[str] = ""

    where: Where = beside()
    """First line of its file."""
    text: str = beside(default="")
    """The Markdown under the front matter, as written."""
    text_line: int = beside(default=1)
    """Line of the file on which the text starts."""
    places: Mapping[str, Where] = beside(factory=dict)
    """Where each field stands: `title`, `options[1].why_not`, `steps[0].see.tag`."""
    unread: tuple[str, ...] = beside(default=())
    """Fields that were written and could not be read, as in `places`; each has its diagnostic."""

    id: RecordId | None = None
    """Which number has it? Left out, it stands on the to-be-filed list and in no edition."""
    title: str = ""
    """What is it about? A noun phrase, no verdict."""
    system: str = ""
    """Which system is it about? Its code, two capital letters."""
    class_: Class | None = None
    """How much hangs on it? A where it can hurt, flood, burn, or take propulsion, steering, power or a
    guard away; B where it changes a number, material, line-up or procedure and cannot hurt; C where it is
    minor or in kind. Left out counts as A."""
    state: str | None = None
    """How far is it? Left out it stands in the start state of its kind."""
    author: Person | None = asked()
    """Who wrote it?"""
    drafted: date | None = asked()
    """On which day was it written? The name of a file in the log says it too."""
    revision: int = 0
    """Which issue is it? Only issued ones count."""
    affects: tuple[Mention, ...] = ()
    """Which systems, components or records does it touch?"""
    sources: tuple[SourceId, ...] = ()
    """What does it rest on? Keys of sources.yml."""
    supersedes: RecordId | None = None
    """Which record of the same kind does it replace?"""
    follows: RecordId | None = None
    """Which record of the same kind does it come after, such as the test that failed?"""
    effective: DateOrText | None = None
    """From when is it true? A date, or `at installation`."""
    media: tuple[Medium, ...] = ()
    """Which photographs and drawings belong to it?"""
    gaps: tuple[str, ...] = ()
    """What is known to be missing?"""
    signed: tuple[SignOff, ...] = ()
    """Who checked, approved or did it? `garboard sign` adds these lines."""

    def place(self, path: str = "") -> Where:
        """Where a field stands; the record's first line where it was not written."""
        return self.places.get(path, self.where)

    @property
    def weight(self) -> Class:
        """Its class; none stated counts as A."""
        return self.class_ or Class.A
