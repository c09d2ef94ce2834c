"""A sign-off: who checked what, as it then stood."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

__all__ = ["Capacity", "SignOff", "Verdict"]


class Capacity(StrEnum):
    """In what capacity somebody acts."""

    AUTHOR = "author"
    CHECKER = "checker"
    APPROVER = "approver"
    DOER = "doer"
    VERIFIER = "verifier"
    WITNESS = "witness"
    NAMED_PARTY = "named party"
    IN_CHARGE = "in charge"
    ANY_HAND = "any hand"
    MACHINE = "machine"


class Verdict(StrEnum):
    """What a check came to."""

    NO_FINDINGS = "no findings"
    COMMENTS = "comments"
    FINDING = "finding"
    OBJECT = "object"


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOff:
    """One person's word that one thing, as it then stood, was checked."""

    capacity: Capacity
    """In what capacity does somebody sign?"""
    by: str
    """A key of people.yml, one person; only the role is ever printed."""
    on: date
    """On which day?"""
    to: str | None = None
    """The state moved to."""
    digest: str | None = None
    """Of the record and all it rests on. When it moves, the sign-off lapses."""
    saw: Mapping[str, str] | None = None
    """Values and records cited, as they stood."""
    scope: tuple[str, ...] = ()
    """What was checked: arithmetic, units, sources, layout, isolation, wording, steps ..."""
    not_checked: tuple[str, ...] = ()
    """What was not, so that a page can say so."""
    verdict: Verdict | None = None
    """What it came to."""
    band: str | None = None
    """How far a value may move before it lapses: `1 %`."""
    evidence: str | None = None
    """Photograph of the signed sheet, wanted where another person enters it."""
    words: str | None = None
    """An objection in the signer's own words."""
