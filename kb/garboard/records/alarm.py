"""What is looked up at night: an alarm as the panel words it, a fault as the crew words it."""

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from garboard.records.base import Address, Figure, Mention, Record, Tag, asked

__all__ = ["Alarm", "Check", "Direction", "Fault", "Priority"]


class Direction(StrEnum):
    """On which side of its setting an alarm comes."""

    LOW = "low"
    HIGH = "high"


class Priority(StrEnum):
    """How soon it must be answered, most urgent first (IMO Res. A.1021(26))."""

    EMERGENCY = "emergency"
    ALARM = "alarm"
    WARNING = "warning"
    CAUTION = "caution"


@dataclass(frozen=True, slots=True, kw_only=True)
class Alarm(Record):
    """One alarm: its words on the panel, what it means, what is done first."""

    letters: ClassVar[str] = "AL"

    wording: str | None = asked()
    """What does the panel say? To the letter."""
    tag: Tag | None = asked()
    """Which component raises it?"""
    set: Address | None = asked()
    """At which value? Its address, such as `SA-PS-001.set`."""
    direction: Direction | None = asked()
    """Does it come below or above that value?"""
    priority: Priority | None = asked()
    """How soon must it be answered?"""
    means: Mention | None = asked()
    """What has happened?"""
    consequence: Mention | None = asked()
    """What comes of it if nobody does anything?"""
    first: tuple[Mention, ...] = asked(default=())
    """What is done first, in order?"""
    time_to_act: Figure | None = asked()
    """How much time is there?"""
    delay: Figure | None = None
    """How long does it wait before it sounds?"""
    confirm: Mention | None = None
    """Where does one see that it is true?"""
    automatic: Mention | None = None
    """What happens by itself?"""
    silence: Mention | None = None
    """How is it silenced, and when may it be?"""
    tested: Mention | None = None
    """How is it tested, or by which test?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One look at one thing, and the way on for both answers."""

    do: str
    """What is done: Read, Look, Feel?"""
    tag: Tag | None = None
    """On which component?"""
    see: Mention | None = None
    """What is to be seen?"""
    yes: Mention | None = None
    """If it is so, what then?"""
    no: Mention | None = None
    """If it is not so, what then?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault(Record):
    """What the crew notices, the safe state first, and the way to the cause."""

    letters: ClassVar[str] = "FT"

    symptoms: tuple[str, ...] = asked(default=())
    """What does the crew say? In their words."""
    safe_first: Mention | None = asked()
    """What makes it safe first?"""
    checks: tuple[Check, ...] = asked(default=())
    """What is looked at, in order?"""
    stop_when: Mention | None = asked()
    """When does one stop and call?"""
    causes: Mention | None = None
    """What can be behind it?"""
    remedy: Mention | None = None
    """What puts it right?"""
    get_home: Mention | None = None
    """How does one get home without it?"""
