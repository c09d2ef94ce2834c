"""A procedure: one task, step by step, with what is seen after each step and what if it is not."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from garboard.records.base import Figure, Mention, Record, RecordId, Tag, asked

__all__ = ["Procedure", "Second", "See", "Step", "Use"]


class Use(StrEnum):
    """When a procedure is taken in hand."""

    NORMAL = "normal"
    ABNORMAL = "abnormal"
    EMERGENCY = "emergency"
    ISOLATION = "isolation"
    MAINTENANCE = "maintenance"
    TEST = "test"
    COMMISSIONING = "commissioning"
    LAY_UP = "lay-up"


class Second(StrEnum):
    """How a second person looks at a step."""

    NONE = "none"
    CONCURRENT = "concurrent"
    """Beside the doer, while it is done."""
    INDEPENDENT = "independent"
    """Apart in time and place, without the doer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class See:
    """What is seen when a step has worked."""

    tag: Tag | None = None
    """On which component is it seen?"""
    value: Figure | None = None
    """What does it show?"""
    within: Figure | None = None
    """Within which time, or between which readings?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One action; `do` is its verb."""

    do: str
    """What is done? One verb, and what has no tag."""
    tag: Tag | None = None
    """To which component?"""
    to: str | None = None
    """Into which position?"""
    see: See | None = None
    """What is seen when it has worked?"""
    if_not: Mention | None = None
    """What is done if that is not seen?"""
    second: Second | None = None
    """Does a second person look: none, concurrent or independent?"""
    message: RecordId | None = None
    """Which hazard is warned of directly before it?"""
    hold: RecordId | None = None
    """Which line of the inspection plan stops work here?"""
    at: Mention | None = None
    """Where does one stand? A new place starts a group of steps."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Procedure(Record):
    """One task, step by step."""

    letters: ClassVar[str] = "PR"

    purpose: Mention | None = asked()
    """What has been reached when it is done?"""
    use: Use | None = asked()
    """When is it taken in hand?"""
    steps: tuple[Step, ...] = asked(default=())
    """What is done, in order?"""
    restores: Mapping[Tag, str] | Mention | None = asked()
    """How does everything stand at the end? An operating state, or tags with their positions."""
    stop_if: Mention | None = asked("AB")
    """When does one stop and call?"""
    when: Mention | None = None
    """From which operating state does it start?"""
    people: Mention | None = None
    """How many people?"""
    competence: Mention | None = None
    """What must they be able to do?"""
    tools: tuple[str, ...] = ()
    """Which tools?"""
    parts: tuple[Mention, ...] = ()
    """Which parts and stores?"""
    ppe: tuple[str, ...] = ()
    """What do they wear?"""
    time: Figure | None = None
    """How long does it take?"""
    isolation: RecordId | None = None
    """Which isolation procedure must be in force?"""
    basis: Mention | None = None
    """What does it rest on?"""
    isolates: tuple[Tag, ...] = ()
    """For an isolation: which components does it make safe?"""
    points: tuple[Tag, ...] = ()
    """For an isolation: which components are shut, stopped or locked?"""
    minor: tuple[int, ...] = ()
    """Which revisions changed words only, so that whoever was shown the one before can still do it? Their
    numbers. Every other revision has to be shown again."""
