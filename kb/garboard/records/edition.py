"""An issued edition: what every holder was given, frozen, in one file that proves itself.

It keeps the text of every file of the content, so that its records, calculations and pages can be
made again from it alone, and beside that what was worked out on the day, so that a later build can
see what became of it without reading all of it anew. Photographs are kept by their digest only.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from garboard.errors import Severity

__all__ = [
    "FORM",
    "Edition",
    "Fired",
    "IssuedCard",
    "IssuedHolder",
    "IssuedPage",
    "IssuedRecord",
    "IssuedSystem",
    "IssuedText",
    "IssuedValue",
]

FORM = "garboard edition, form 1"


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedRecord:
    """A record as it was issued."""

    kind: str
    title: str
    weight: str
    """Its class; none stated counts as A."""
    state: str
    revision: int
    digest: str
    """Of its own words, in full length."""
    path: str
    """The file it stood in."""
    signed: tuple[str, ...] = ()
    """Each signature in one canonical line."""
    kept: Mapping[str, str] = field(default_factory=dict)
    """What must never be lost, by field, each in its canonical form."""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedSystem:
    """A system as it was issued."""

    title: str
    status: str
    """The one that bound it, which is not always the one that was written."""
    signed: tuple[str, ...] = ()
    """Each signature on its status in one canonical line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedText:
    """A written page as it was issued, as far as people signed it."""

    page: str
    """What it is for: a page kind; empty for a page without front matter."""
    system: str
    """Code of its system; empty where it belongs to the whole vessel."""
    signed: tuple[str, ...] = ()
    """Each signature in one canonical line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedValue:
    """A number as it was issued."""

    text: str
    label: str = ""
    given: bool = False
    """Somebody wrote it down; else it was worked out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedPage:
    """One line of the list of effective pages."""

    key: str
    path: str
    title: str
    review: str
    """Its review state, in words."""
    trusted: bool
    digest: str
    """Of what the page says."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fired:
    """What a rule said against it, and which edition said so first."""

    code: str
    severity: Severity
    about: str
    where: str
    text: str
    since: int
    """Number of the first edition that carried it."""
    on: date
    """The day that edition was issued."""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedHolder:
    """Somebody who was to get a copy."""

    copy: str
    where: str
    medium: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedCard:
    """A card that hangs somewhere, with the digest of what it is of."""

    card: str
    of: str
    place: str
    digest: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Edition:
    """One issued edition."""

    form: str = FORM
    number: int
    issued: date
    by: str
    """A key of people.yml; only the role is ever printed."""
    valid_until: date
    ends: str
    """Why on that day, in words."""
    previous: str = ""
    """The seal of the edition before it; empty for the first."""
    vessel: str
    defers_to: tuple[str, ...] = ()
    systems: Mapping[str, IssuedSystem] = field(default_factory=dict)
    records: Mapping[str, IssuedRecord] = field(default_factory=dict)
    written: Mapping[str, IssuedText] = field(default_factory=dict)
    """Written pages by the path of their file."""
    components: Mapping[str, str] = field(default_factory=dict)
    """Tag to the digest of what was recorded of it."""
    values: Mapping[str, IssuedValue] = field(default_factory=dict)
    answers: Mapping[str, str] = field(default_factory=dict)
    """`block: n >= 6` to how the requirement stood."""
    pages: tuple[IssuedPage, ...] = ()
    """The list of effective pages."""
    fired: tuple[Fired, ...] = ()
    people: Mapping[str, str] = field(default_factory=dict)
    """Key to role."""
    holders: tuple[IssuedHolder, ...] = ()
    cards: tuple[IssuedCard, ...] = ()
    gaps: tuple[str, ...] = ()
    files: Mapping[str, str] = field(default_factory=dict)
    """Path to the SHA-256 of every file of the content, photographs too, editions not."""
    texts: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """SHA-256 to the lines of a text that no earlier edition holds."""
    proof: str = ""
    """The issuer's own signature over the digest of all else, as base64; empty where no key was used."""
    seal: str = ""
    """SHA-256 of this file with the seal left empty."""
