"""A system: what it is for, how far it is, how its parts are joined and lined up.

The connections are kept as they were written, one run a line, because a drawing, a message and a
person tracing pipe all follow the author's line.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from garboard.calc.value import Given
from garboard.errors import Where
from garboard.records.base import Address, Figure, Interval, Mention, Tag, beside
from garboard.records.signoff import SignOff

__all__ = [
    "OUTSIDE",
    "End",
    "Header",
    "Joins",
    "Loss",
    "Mount",
    "Moves",
    "OperatingState",
    "Round",
    "RoundStop",
    "Run",
    "Service",
    "ServiceStatus",
    "System",
]

OUTSIDE = ("bilge", "deck", "overboard", "drain tank", "atmosphere")
"""Places a connection may end in; all of them are open air."""


class ServiceStatus(StrEnum):
    """How far a system is, in order."""

    SKETCH = "sketch"
    BUILDING = "building"
    IN_TEST = "in test"
    IN_SERVICE = "in service"

    @property
    def order(self) -> int:
        """1 for a sketch to 4 in service."""
        return list(ServiceStatus).index(self) + 1


class Moves(StrEnum):
    """Whether a mount moves."""

    NEVER = "never"
    ALWAYS = "always"


@dataclass(frozen=True, slots=True, kw_only=True)
class Service:
    """What runs in certain pipes, and how they are drawn."""

    what: str | None = None
    """What runs in it?"""
    medium: str | None = None
    """Which medium, where it is not that of the system?"""
    pressure: Given | Address | None = None
    """At which pressure?"""
    line: str | None = None
    """How is it drawn: heavy, medium, thin, dashed, dash-dot?"""
    blocks: int | None = None
    """How many shut valves must stand between it and somebody at work?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mount:
    """What parts stand on, and whether it moves."""

    moves: Moves
    """Does it move: never or always?"""
    why: str | None = None
    """Why does it move?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Header:
    """A named run of pipe that others join."""

    tag: Tag | None = None
    """Which tag has it?"""
    service: str | None = None
    """Which service runs in it?"""
    size: Given | None = None
    """Which bore or nominal size?"""
    rated: Given | Address | None = None
    """What is it rated for?"""
    place: str | None = None
    """Where does it run?"""
    from_: tuple[float, float] | None = None
    """Where does its bar start on the drawing? Column, row."""
    to: tuple[float, float] | None = None
    """Where does it end? Column, row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OperatingState:
    """How the system is lined up for one way of running; a valve in no list is at its `usual`."""

    open: tuple[Tag, ...] = ()
    """Which valves are open?"""
    shut: tuple[Tag, ...] = ()
    """Which are shut?"""
    on: tuple[Tag, ...] = ()
    """Which switches and breakers are on? Read as open: they pass."""
    off: tuple[Tag, ...] = ()
    """Which are off? Read as shut."""
    turned: Mapping[Tag, str] | None = None
    """Which are turned, and to what?"""
    running: tuple[Tag, ...] = ()
    """Which machines run?"""
    charged: tuple[Tag, ...] = ()
    """Which stores are charged?"""
    supplies: tuple[Tag, ...] = ()
    """Which users are supplied?"""
    note: str | None = None
    """When is this used?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundStop:
    """One stop of a watch round."""

    tag: Tag | None = None
    """At which component?"""
    look: str | None = None
    """What is looked at?"""
    read: Figure | None = None
    """What is read?"""
    within: Figure | None = None
    """Between which values?"""
    low: Figure | None = None
    """Below what is it no longer right? The address of a value, or a quantity."""
    high: Figure | None = None
    """Above what is it no longer right?"""
    at: str | None = None
    """Where does one stand? Left out: where the component is."""
    if_not: Mention | None = None
    """What is done if it is not?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """A watch round, in walking order."""

    every: Interval
    """How often?"""
    order: tuple[RoundStop, ...]
    """At what does one stop, in walking order?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Loss:
    """What happens when the system, or what it lives on, is gone."""

    of: str
    """What is lost: the system, its air, its power?"""
    then: Mention
    """What happens then?"""
    how_soon: Figure | None = None
    """How soon?"""
    do: Mention | None = None
    """What is done about it?"""


class Joins(StrEnum):
    """What a name in a run is."""

    PART = "part"
    """A component, by its tag."""
    HEADER = "header"
    OUTSIDE = "outside"
    """Open air: bilge, deck, overboard, drain tank, atmosphere."""
    UNKNOWN = "unknown"
    """Neither a tag nor a header of this system."""


@dataclass(frozen=True, slots=True)
class End:
    """One name in a run."""

    name: str
    """The full tag, or the name of the header or place."""
    port: str
    """The port of a part; empty where none is written."""
    joins: Joins
    where: Where
    written: str
    """As it stands in the file: `AR-001.drain`."""


@dataclass(frozen=True, slots=True)
class Run:
    """One line of the connections: names that fluid passes from left to right."""

    ends: tuple[End, ...]
    where: Where
    written: str
    service: str | None = None
    size: Given | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class System:
    """What a system.yml says, less its components."""

    code: str = beside()
    """Two capital letters, as handbook.yml has them."""
    folder: str = beside()
    """Path of its folder in the content, `systems/starting-air`."""
    where: Where = beside()
    places: Mapping[str, Where] = beside(factory=dict)
    unread: tuple[str, ...] = beside(default=())
    runs: tuple[Run, ...] = beside(default=())
    """The connections, read."""

    title: str = ""
    """What is it called?"""
    status: ServiceStatus = ServiceStatus.SKETCH
    """How far is it: sketch, building, in test, in service?"""
    purpose: Mention | None = None
    """What is it for?"""
    medium: str | None = None
    """What runs in it? Air, gas and steam are gases; all else is a liquid, or direct current."""
    services: Mapping[str, Service] | None = None
    """Which services are there?"""
    mounts: Mapping[str, Mount] | None = None
    """What do the parts stand on?"""
    headers: Mapping[str, Header] | None = None
    """Which runs of pipe have names?"""
    operating_states: Mapping[str, OperatingState] | None = None
    """In which ways is it lined up?"""
    rounds: Mapping[str, Round] | None = None
    """Which rounds are walked, in which order?"""
    loss: tuple[Loss, ...] = ()
    """What happens when it is lost, and how soon?"""
    gaps: tuple[str, ...] = ()
    """What is known to be missing?"""
    signed: tuple[SignOff, ...] = ()
    """Who moved its status? `garboard sign` adds these lines."""

    def place(self, path: str = "") -> Where:
        """Where a field stands; the first line of the file where it was not written."""
        return self.places.get(path, self.where)

    @property
    def stops(self) -> frozenset[str]:
        """The parts that a watch round stops at, by full tag."""
        walked = (self.rounds or {}).values()
        return frozenset(str(stop.tag) for one in walked for stop in one.order if stop.tag)
