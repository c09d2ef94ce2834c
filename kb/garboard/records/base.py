"""What every record has in common, and how a kind says which fields it wants, and when.

A kind is a frozen dataclass. The type of a field says how it is read; `asked()` says when it is wanted:
before the record leaves its start state (`!` on the design pages), or by class before it comes to rest.
A key of the file is the field's name without a trailing underscore, so that `class` and `from` can be keys.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum
from typing import Any, ClassVar, NewType

from garboard.errors import Where
from garboard.records.signoff import SignOff

__all__ = [
    "Address",
    "Asked",
    "Class",
    "DateOrText",
    "Figure",
    "Identifier",
    "Medium",
    "Mention",
    "Person",
    "Record",
    "RecordId",
    "SourceId",
    "Tag",
    "asked",
    "keep",
]

RecordId = NewType("RecordId", str)
"""An id that must be declared: `SA-DD-003`; a procedure's may carry its revision, `SA-PR-006 r1`."""
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


class Class(StrEnum):
    """How much hangs on it."""

    A = "A"
    """Safety-significant: can injure, flood, burn, lose propulsion, steering or power, or defeats a safety device."""
    B = "B"
    """Function-significant: changes a number, material, line-up or procedure; cannot by itself hurt."""
    C = "C"
    """Minor or in kind."""


@dataclass(frozen=True, slots=True)
class Asked:
    """When a field is wanted."""

    before_leaving_start: bool = False
    """Wanted before the record leaves its start state."""
    classes: str = ""
    """Wanted of these classes before the record comes to rest."""
    kept: bool = False
    """Never lost: what it once said stays."""
    later: bool = False
    """Filled after the signature, outside its digest."""


def asked(
    classes: str = "", *, default: Any = None, kept: bool = False, later: bool = False
) -> Any:  # noqa: ANN401 - a field of any type
    """A field that is wanted: of the given classes at rest, or (none given) before the start state is left."""
    return field(
        default=default, metadata={"asked": Asked(not classes, classes, kept=kept, later=later)}
    )


def keep(*, default: Any = None, later: bool = False) -> Any:  # noqa: ANN401 - a field of any type
    """An optional field that is kept for ever, or filled later."""
    return field(default=default, metadata={"asked": Asked(kept=not later, later=later)})


@dataclass(frozen=True, slots=True, kw_only=True)
class Medium:
    """A photograph or drawing that belongs to a record."""

    photo: str
    """Path inside the content folder."""
    on: date | None = None
    tag: Tag | None = None
    view: str | None = None
    """What it shows: also its text alternative."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """The envelope that every record has."""

    letters: ClassVar[str] = ""

    where: Where
    """First line of its file."""
    text: str = ""
    """The Markdown under the front matter, as written."""
    text_line: int = 1
    """Line of the file on which the text starts."""
    places: Mapping[str, Where] = field(default_factory=dict)
    """Where each field stands: `title`, `options[1].why_not`, `steps[0].see.tag`."""

    id: RecordId | None = None
    """None: unfiled; it stands on the to-be-filed list and in no edition."""
    title: str = ""
    system: str = ""
    class_: Class | None = None
    """None counts as A."""
    state: str | None = None
    """None: the start state of its kind."""
    author: Person | None = asked()
    drafted: date | None = asked()
    revision: int = 0
    affects: tuple[Mention, ...] = ()
    sources: tuple[SourceId, ...] = ()
    supersedes: RecordId | None = None
    follows: RecordId | None = None
    effective: DateOrText | None = None
    media: tuple[Medium, ...] = ()
    gaps: tuple[str, ...] = ()
    """What is known to be missing."""
    signed: tuple[SignOff, ...] = ()

    def place(self, path: str = "") -> Where:
        """Where a field stands; the record's first line where it was not written."""
        return self.places.get(path, self.where)

    @property
    def weight(self) -> Class:
        """Its class; none stated counts as A."""
        return self.class_ or Class.A
