"""A reply: what a reviewer wrote into the form of a review pack, as far as it can be read.

The labels of the form stand here, because it is written in one room, read in another and explained
in a third. A reply signs nothing: it waits until somebody confirms it.
"""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from garboard.records.finding import Danger
from garboard.records.signoff import Capacity, Verdict

__all__ = ["SCOPES", "Label", "Point", "Remark", "Reply", "Seal", "Waiting"]

SCOPES = (
    "arithmetic",
    "units",
    "sources",
    "layout",
    "isolation",
    "wording",
    "steps",
    "cautions",
    "loss of air",
    "loss of power",
    "test",
    "plate",
)
"""What can be ticked as checked; anything else is written in words."""


class Label(StrEnum):
    """What stands in front of the colons of the form."""

    REF = "REF"
    NAME = "NAME KEY"
    DATE = "DATE"
    AS = "AS"
    VERDICT = "VERDICT"
    CHECKED = "CHECKED"
    ALSO = "ALSO CHECKED"
    NOT_CHECKED = "NOT CHECKED"
    WORDS = "WORDS"
    WHERE = "WHERE"
    SEEN = "SEEN"
    DANGER = "DANGER"
    SAW = "SAW"


@dataclass(frozen=True, slots=True)
class Seal:
    """What binds a reply to what its writer saw."""

    key: str
    """Id of the record, or path of the written page."""
    own: str
    """The digest of its own words, in short."""
    pack: str
    """The digest of these and of everything that they rest on, in short."""

    @property
    def check(self) -> str:
        """Four signs that tell a slip in the line from something that moved on board."""
        return hashlib.sha256(f"{self.key} {self.own} {self.pack}".encode()).hexdigest()[:4]

    def __str__(self) -> str:
        return f"{self.key} {self.own} {self.pack} {self.check}"


@dataclass(frozen=True, slots=True)
class Point:
    """One thing that the reviewer found."""

    where: str = ""
    seen: str = ""
    danger: Danger | None = None
    line: int = field(default=0, compare=False)
    """On which it starts."""


@dataclass(frozen=True, slots=True)
class Remark:
    """Something in a reply that could not be read as it was meant; it stays in the kept reply."""

    first: int
    last: int
    """Lines, counted from 1."""
    text: str
    """What is, in words."""

    def __str__(self) -> str:
        lines = (
            f"line {self.first}" if self.first == self.last else f"lines {self.first}-{self.last}"
        )
        return f"{lines}: {self.text}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply:
    """One filled form; two that say the same are equal, wherever they stood in a mail."""

    seal: Seal | None = None
    """None: the line is missing, or is not as it was sent."""
    by: str = ""
    """As written; a key of people.yml is wanted."""
    on: date | None = None
    capacity: Capacity | None = None
    verdict: Verdict | None = None
    checked: tuple[str, ...] = ()
    not_checked: tuple[str, ...] = ()
    words: str = ""
    """An objection or a comment, in the reviewer's own words."""
    points: tuple[Point, ...] = ()
    saw: Mapping[str, str] = field(default_factory=dict, compare=False)
    """What it rested on, as it came back with the form."""
    line: int = field(default=1, compare=False)
    """On which its form starts."""
    remarks: tuple[Remark, ...] = field(default=(), compare=False)
    """What in the form could not be read."""


@dataclass(frozen=True, slots=True)
class Waiting:
    """A kept reply that nobody has confirmed yet."""

    path: str
    """Of the kept file."""
    reply: Reply
    by: str
    """Key of the writer; empty where people.yml knows nobody by it."""
