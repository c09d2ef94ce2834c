"""A hazard: the energy, how it gets out, whom it hurts, and what stands in between.

Severity, likelihood and their letters are those of MIL-STD-882E. The signal word of a message is
computed from them on the page and never typed.
"""

from dataclasses import dataclass
from datetime import date
from enum import IntEnum, StrEnum
from typing import ClassVar

from garboard.records.base import Identifier, Mention, Record, RecordId, asked

__all__ = [
    "Control",
    "Gravity",
    "Harms",
    "Hazard",
    "IfIgnored",
    "Likelihood",
    "Message",
    "Rank",
    "Residual",
]


class Harms(StrEnum):
    """What is hurt. People go before plant."""

    PEOPLE = "people"
    PLANT = "plant"


class Gravity(IntEnum):
    """Severity, 1 the gravest (MIL-STD-882E)."""

    CATASTROPHIC = 1
    CRITICAL = 2
    MARGINAL = 3
    NEGLIGIBLE = 4

    @property
    def words(self) -> str:
        """Its number and the standard's word: `1, catastrophic`."""
        return f"{self.value}, {self.name.lower()}"


class Likelihood(StrEnum):
    """How often, A the most (MIL-STD-882E)."""

    A = "A"
    """Frequent."""
    B = "B"
    """Probable."""
    C = "C"
    """Occasional."""
    D = "D"
    """Remote."""
    E = "E"
    """Improbable."""
    F = "F"
    """Eliminated."""

    @property
    def words(self) -> str:
        """Its letter and the standard's word: `D, remote`."""
        return f"{self.value}, {_LIKELY[self.value]}"


_LIKELY = dict(
    zip("ABCDEF", "frequent probable occasional remote improbable eliminated".split(), strict=True)
)


class IfIgnored(StrEnum):
    """How sure harm is where the message is ignored."""

    WILL = "will"
    COULD = "could"

    @property
    def words(self) -> str:
        """As it reads behind the name of the field: `it could happen`."""
        return f"it {self.value} happen"


class Rank(StrEnum):
    """How much a control is worth, best first."""

    ELIMINATE = "eliminate"
    REDUCE = "reduce"
    GUARD = "guard"
    WARN = "warn"
    WORDS = "words"


@dataclass(frozen=True, slots=True, kw_only=True)
class Control:
    """One thing that stands between the energy and the harm."""

    rank: Rank
    """Does it eliminate, reduce, guard, warn, or is it words?"""
    what: Mention
    """What is it? A tag, a procedure, or text."""
    verified: RecordId | None = None
    """Which test shows that it works?"""
    removed: Mention | None = None
    """Since when does it stand there no more, and why? It stays in the list with that."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Residual:
    """What is left with all controls in place."""

    severity: Gravity
    """How grave is it still? 1 is the gravest."""
    likelihood: Likelihood
    """How likely is it still? A is the most often."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """What the page says before the step; its signal word is computed."""

    hazard: Mention
    """What is it, with its energy?"""
    harm: Mention | None = None
    """What does it do to a body?"""
    avoid: Mention | None = None
    """How is it avoided? An order that can be checked."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazard(Record):
    """The energy, how it gets out, whom it hurts, and what stands in between."""

    letters: ClassVar[str] = "HZ"

    source: Mention | None = asked()
    """Which energy is it?"""
    where_: tuple[Identifier, ...] = asked(default=())
    """Where is it?"""
    who: Mention | None = asked()
    """Who can be hurt?"""
    sequence: Mention | None = asked()
    """What has to happen for it to hurt?"""
    harms: Harms | None = asked()
    """Does it hurt people, or plant only?"""
    severity: Gravity | None = asked()
    """How grave? 1 kills or maims for life, 2 does lasting harm, 3 costs days of work, 4 less than that."""
    likelihood: Likelihood | None = asked()
    """How likely? A again and again, B several times, C now and then, D hardly ever, E next to never, F it
    cannot happen any more."""
    if_ignored: IfIgnored | None = asked()
    """Ignored, will it hurt, or could it?"""
    controls: tuple[Control, ...] = asked(default=())
    """What stands between the energy and the harm?"""
    residual: Residual | None = asked("A")
    """What is left with all of that in place?"""
    review_on: date | None = asked("A")
    """On which day is it looked at again?"""
    message: Message | None = None
    """What does the page say before a step that meets it?"""

    @property
    def in_place(self) -> tuple[Control, ...]:
        """The controls that have not been removed."""
        return tuple(one for one in self.controls if one.removed is None)
