"""Everything that was read from a content folder; it never changes.

A file that cannot be read stands here as a Stub with its message; all others are read all the same.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from garboard.errors import Diagnostic, Where
from garboard.reading.allowed_signers import Signers
from garboard.reading.edition_file import Editions
from garboard.reading.fences import Fence
from garboard.reading.reply_form import Forms
from garboard.reading.written import Written
from garboard.records.base import Record
from garboard.records.component import Component
from garboard.records.logged import Log
from garboard.records.pages import WrittenPage
from garboard.records.system import System
from garboard.records.vessel import PersonEntry, Retired, Source, Spare, Term, Vessel

__all__ = ["Content", "Declared", "Photo", "Stub", "Unfiled", "Written"]


class Declared(NamedTuple):
    """One id or tag, where it is declared; a name may be declared twice, which a rule reports."""

    name: str
    where: Where


@dataclass(frozen=True, slots=True, kw_only=True)
class Unfiled(Record):
    """A record without an id: nobody has said yet of which kind it is."""


@dataclass(frozen=True, slots=True)
class Stub:
    """A file that could not be read as a record: its page shows the messages and the text."""

    where: Where
    title: str
    """As written, if a title could be made out; else the name of the file."""
    system: str
    """Code of its system, if it could be made out."""
    id: str
    """Its id as written, if one could be made out."""
    text: str
    """The whole file as far as it is text."""
    diagnostics: tuple[Diagnostic, ...]


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture in the content folder; it is not opened here."""

    path: str
    bytes: int


@dataclass(frozen=True, slots=True)
class Content:
    """Everything that was read, and every fault that was met on the way."""

    vessel: Vessel
    people: Mapping[str, PersonEntry] = field(default_factory=dict)
    sources: Mapping[str, Source] = field(default_factory=dict)
    glossary: Mapping[str, Term] = field(default_factory=dict)
    spares: Mapping[str, Spare] = field(default_factory=dict)
    retired: Mapping[str, Retired] = field(default_factory=dict)
    systems: Mapping[str, System] = field(default_factory=dict)
    """By code, in the order of handbook.yml."""
    components: Mapping[str, Component] = field(default_factory=dict)
    """By full tag; of two with one tag the first."""
    records: Mapping[str, Record] = field(default_factory=dict)
    """Filed records by id; of two with one id the first."""
    unfiled: tuple[Record, ...] = ()
    pages: tuple[WrittenPage, ...] = ()
    stubs: tuple[Stub, ...] = ()
    declared: tuple[Declared, ...] = ()
    """Every id and tag in the order of the files, doubles included."""
    doubles: tuple[Record, ...] = ()
    """Records whose id another one has too."""
    fences: tuple[Fence, ...] = ()
    texts: tuple[Written, ...] = ()
    photos: Mapping[str, Photo] = field(default_factory=dict)
    logs: Mapping[str, str] = field(default_factory=dict)
    """Text of each CSV file, by path."""
    logged: Mapping[str, Log] = field(default_factory=dict)
    """What the logged file of each test holds, by the test's id."""
    replies: Mapping[str, Forms] = field(default_factory=dict)
    """What reviewers wrote back, by the path of the kept file."""
    editions: Editions = field(default_factory=Editions)
    """Every issued edition."""
    signers: Signers = field(default_factory=Signers)
    """Which key speaks for which person."""
    digests: Mapping[str, str] = field(default_factory=dict)
    """SHA-256 of every file that was read, by path: an edit is refused where it no longer fits."""
    diagnostics: tuple[Diagnostic, ...] = ()
