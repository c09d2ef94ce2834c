"""A sign-off: who checked what, as it then stood."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

__all__ = ["Capacity", "SignOff", "Verdict", "standing_objections"]


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
    entered_by: str | None = None
    """Who typed the line, where it was not the signer: a key of people.yml."""
    evidence: str | None = None
    """Photograph of the signed sheet, wanted where another person enters it."""
    words: str | None = None
    """An objection in the signer's own words."""
    proof: str | None = None
    """A signature over the whole line, made with the signer's own key by ssh-keygen."""


def standing_objections(signed: Sequence[SignOff]) -> tuple[SignOff, ...]:
    """The objections that their signers have not taken back, in the order of the lines.

    Nobody else's signature ends an objection: it stands until the same person signs in the same
    capacity again, and no longer objects.

    Args:
        signed: Every line of one record or written page.
    """
    last: dict[tuple[str, Capacity], tuple[date, int]] = {}
    for number, line in enumerate(signed):
        who = (line.by, line.capacity)
        last[who] = max(last.get(who, (date.min, -1)), (line.on, number))
    newest = {number for _, number in last.values()}
    return tuple(
        line
        for number, line in enumerate(signed)
        if number in newest and line.verdict is Verdict.OBJECT
    )
