"""A component: one place in a system, by its tag, and the thing fitted there.

A number of a component is a value like any other: it has an address, `SA-RV-001.set`, and is either
given here with its source or drawn from a calculation by that address.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, fields
from datetime import date
from enum import StrEnum
from typing import NewType, get_args

from garboard.calc.value import Given
from garboard.errors import Where
from garboard.records.assembly import Clearance, Joint, assembly_givens
from garboard.records.base import Address, Mention, SourceId, Tag, beside, several

__all__ = ["QUANTITIES", "Component", "Fails", "Item", "PortPair", "Scale", "Unlimited"]

PortPair = NewType("PortPair", str)
"""Two ports that a position joins: `common-a`."""


class Fails(StrEnum):
    """What a powered part does when its power or air goes."""

    OPEN = "open"
    SHUT = "shut"
    STAYS = "stays"


class Unlimited(StrEnum):
    """The word for a source that nothing limits."""

    NO_LIMIT = "no limit"


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """The scale of a gauge."""

    from_: Given
    """Where does it begin?"""
    to: Given
    """Where does it end?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """The thing fitted in a place; certificates follow it, settings stay with the tag."""

    maker: str | None = None
    """Who made it?"""
    type: str | None = None
    """Which type?"""
    serial: str | None = None
    """Which serial number?"""
    certificate: str | None = None
    """Which certificate?"""
    tested: date | None = None
    """On which day was it last tested?"""
    due: date | None = None
    """On which day is it due again?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Component:
    """One place in a system, and the thing fitted there."""

    tag: Tag = beside()
    """In full: `SA-RV-001`."""
    system: str = beside()
    """Code of its system."""
    where: Where = beside()
    """Where its tag stands."""
    places: Mapping[str, Where] = beside(factory=dict)
    unread: tuple[str, ...] = beside(default=())

    kind: str = ""
    """What is it? A kind of the table."""
    name: str | None = None
    """What is it called, as on its label?"""
    place: str | None = None
    """Where is it?"""
    photo: str | None = None
    """Which photograph shows it? Its path inside the content folder."""
    plate: SourceId | None = None
    """Which source is its maker's plate? It stands for every number without a source of its own."""
    mount: str | None = None
    """What does it stand on? A key of `mounts`."""
    type: str | None = None
    """Of which type: piston, gear, centrifugal?"""
    part_no: str | None = None
    """Which part number?"""
    item: Item | None = None
    """Which thing is fitted?"""
    fitted: date | None = None
    """On which day was it fitted?"""
    expires: date | None = None
    """On which day must it be replaced?"""

    usual: str | None = None
    """How does it usually stand? A valve open or shut, a switch on or off, a machine running or stopped."""
    fails: Fails | None = None
    """What does it do when power or air goes?"""
    locked: str | None = None
    """In which position is it locked?"""
    secured: str | None = None
    """How is it held there: seal, lock, strap?"""
    round: str | None = None
    """On which watch round is it looked at?"""
    key: str | None = None
    """Who has the key, or where does it hang? A role or a place, never a name."""
    positions: Mapping[str, tuple[PortPair, ...]] | None = None
    """Which positions has it, and which ports does each join?"""

    essential: bool = False
    """Must it never lose its supply?"""
    start_air: bool = False
    """Does it start an engine on air?"""
    exhausts: bool = False
    """Does opening the way to it let pressure out?"""
    watches: tuple[Tag, ...] = several()
    """Which vessel does it watch?"""
    stops: tuple[Tag, ...] = several()
    """Which machine does it stop?"""
    protects: tuple[Tag, ...] = several()
    """What does it protect?"""
    note: Mention | None = None
    """What else must be known?"""
    joints: Mapping[str, Joint] | None = None
    """Which joints are opened when it is taken apart, each by a short name, and how are they closed?"""
    clearances: Mapping[str, Clearance] | None = None
    """Which gaps are measured when it is apart, each by a short name?"""
    renew: tuple[str, ...] = several()
    """Which part numbers are always renewed when it was open: rings, locking plates?"""
    special_tools: tuple[str, ...] = several()
    """Which tools does it take beside the usual ones?"""
    at: tuple[float, float] | None = None
    """Where does it stand on the drawing? Column, row."""

    rated: Given | Address | None = None
    """What is it rated for?"""
    test: Given | Address | None = None
    """With what is it tested?"""
    set: Given | Address | None = None
    """At what is it set?"""
    makes: Given | Address | Unlimited | None = None
    """How much can it make at most? `no limit` where nothing holds it back."""
    delivers: Given | Address | None = None
    """How much does it deliver?"""
    passes: Given | Address | None = None
    """How much can it pass, as stamped?"""
    draws: Given | Address | None = None
    """How much does it draw?"""
    volume: Given | Address | None = None
    """How much does it hold?"""
    capacity: Given | Address | None = None
    """How much can it store?"""
    size: Given | Address | None = None
    """Which size or bore?"""
    height: Given | Address | None = None
    """How high does it stand above the waterline?"""
    range: Scale | None = None
    """What does its scale span?"""
    accuracy: Given | Address | None = None
    """How far may it be out?"""
    cuts_in: Given | Address | None = None
    """At what does it start its machine?"""
    cuts_out: Given | Address | None = None
    """At what does it stop its machine?"""
    normal: Given | Address | None = None
    """What is normal?"""
    low: Given | Address | None = None
    """Below what is it no longer normal?"""
    high: Given | Address | None = None
    """Above what is it no longer normal?"""
    alarm_low: Given | Address | None = None
    """At what does the low alarm come?"""
    alarm_high: Given | Address | None = None
    """At what does the high alarm come?"""
    trip: Given | Address | None = None
    """At what does it shut down by itself?"""

    def on_round(self, stops: Collection[str]) -> bool:
        """Whether somebody looks at it: its entry names a round, or a round stops at it.

        Args:
            stops: The parts that the watch rounds of the vessel stop at.
        """
        said = (self.secured or "").casefold()
        return bool(self.round) or str(self.tag) in stops or "round" in said

    def at_place(self, path: str = "") -> Where:
        """Where a property stands; the tag where it was not written."""
        return self.places.get(path, self.where)

    def address(self, name: str) -> Address:
        """The address of one of its properties.

        Args:
            name: `set`; of a scale `range.to`.
        """
        return Address(f"{self.tag}.{name}")

    def givens(self) -> Iterator[tuple[str, Given]]:
        """Every number written here, by the name of its property."""
        for name in QUANTITIES:
            value = getattr(self, name)
            if isinstance(value, Given):
                yield name, value
        if self.range is not None:
            yield "range.from", self.range.from_
            yield "range.to", self.range.to
        yield from assembly_givens(self.joints, self.clearances)

    @property
    def number_names(self) -> tuple[str, ...]:
        """The names of all numbers it may have a value of, in the order in which pages list them."""
        apart = (name for name, _ in assembly_givens(self.joints, self.clearances))
        return (*QUANTITIES, "range.from", "range.to", *apart)

    def aliases(self) -> Iterator[tuple[str, Address]]:
        """Every property that is drawn from elsewhere, with the address it is drawn from."""
        for name in QUANTITIES:
            value = getattr(self, name)
            if isinstance(value, str) and not isinstance(value, Unlimited):
                yield name, Address(value)


QUANTITIES: tuple[str, ...] = tuple(
    item.name for item in fields(Component) if Given in get_args(item.type)
)
"""The properties that are numbers, apart from the scale."""
