"""How a part is made safe to work on: what to stop, to shut, to open and to read, and what stays alive.

Worked out from the list of connections alone. What cannot be cut off, let out or seen at zero is a
fault of the isolation, with its reason; nothing is left out because it is inconvenient.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from garboard.systems.blocks import Blocks, blocks_to, still_joined
from garboard.systems.charging import loses_battery
from garboard.systems.finding import PathFinding
from garboard.systems.isolation_faults import INCOMPLETE, IsolationFault, isolation_faults
from garboard.systems.leaks import Held, Leaks, Way
from garboard.systems.left_alive import Blind, blind_switches, comes_true, lost_users
from garboard.systems.plant import Plant
from garboard.systems.section import Section, section_of
from garboard.systems.sides import Bleed, Side, sides_of
from garboard.systems.stores import Ends, Store
from garboard.systems.survey import Survey

__all__ = ["Isolation", "Point", "Relieving", "isolate"]

FUSE = "fuse"
MOST_BLOCKS = 4
"""How often a further block is looked for."""


@dataclass(frozen=True, slots=True)
class Point:
    """What is put in one position and locked there."""

    tag: str
    kind: str
    position: str
    """In which it cuts off: `shut`, `pulled`, or what it is turned to."""
    usual: str
    """Where it goes back to."""
    against: tuple[str, ...] = ()
    """The live stores that it holds back."""
    supply: bool = False
    """Something live flows through it towards the work, and does not only leak back."""
    outer: bool = False
    """It is the second block, behind another."""


@dataclass(frozen=True, slots=True)
class Relieving:
    """A relief valve that blows into the dead stretch."""

    tag: str
    side: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Isolation:
    """Everything that has to be done to work on some parts."""

    tags: tuple[str, ...]
    """What is worked on."""
    section: Section
    stop: tuple[str, ...]
    """Machines to stop and lock out: those inside, and those that a blind switch would let run."""
    first: tuple[str, ...]
    """What stays alive and is stopped first all the same: it charges, and loses its battery."""
    points: tuple[Point, ...]
    """In the order of the file."""
    sides: tuple[Side, ...]
    beside: tuple[str, ...]
    """What can be locked and has nothing live beyond, by tag."""
    emptied: tuple[str, ...]
    """Receivers, separators and tanks inside."""
    blocks: tuple[Blocks, ...]
    """To each store that stays alive and that some way leads to."""
    blind: tuple[Blind, ...]
    lost: tuple[str, ...]
    """Users without supply."""
    relieving: tuple[Relieving, ...]
    comes_true: tuple[PathFinding, ...]
    """What is found of all that stays alive."""
    faults: tuple[IsolationFault, ...]

    @property
    def possible(self) -> bool:
        """Whether everything live can be cut off."""
        return not any(one.code == INCOMPLETE for one in self.faults)

    @property
    def bleeds(self) -> tuple[Bleed, ...]:
        """Every way to let it out, each once."""
        return tuple(dict.fromkeys(bleed for side in self.sides for bleed in side.bleeds))

    @property
    def shows(self) -> tuple[str, ...]:
        """Every gauge and test cock to read."""
        return tuple(dict.fromkeys(tag for side in self.sides for tag in side.shows))

    @property
    def shut_in(self) -> tuple[str, ...]:
        """Valves with nothing live beyond that are no bleed: what is shut in behind them stays there."""
        bleeds = {tag for bleed in self.bleeds for tag in bleed.valves}
        return tuple(tag for tag in self.beside if tag not in bleeds and tag not in self.shows)

    @property
    def watch(self) -> Mapping[str, tuple[str, ...]]:
        """What fills it again by a small leak: each point that stands alone, with the stores behind it."""
        single = {one.store.tag for one in self.blocks if one.count == 1}
        found = {one.tag: tuple(tag for tag in one.against if tag in single) for one in self.points}
        return {tag: stores for tag, stores in found.items() if stores}

    def holding(self, store: str) -> tuple[str, ...]:
        """The points that hold back one store, by tag: on a way with the fewest, and on all others."""
        fewest = (tag for one in self.blocks if one.store.tag == store for tag in one.points)
        against = (one.tag for one in self.points if store in one.against)
        return tuple(dict.fromkeys((*fewest, *against)))

    @property
    def dead(self) -> frozenset[int]:
        """The nodes that are let out: for the drawing, with the points and the bleeds."""
        return self.section.nodes


def isolate(
    plant: Plant, *tags: str, survey: Survey | None = None, leaks: Leaks | None = None
) -> Isolation:
    """What has to be done to work on some parts.

    Args:
        plant: The plant.
        tags: Full tags of the parts.
        survey: What the checks found of the plant.
        leaks: The plant made ready, where it is asked more than once.

    Raises:
        KeyError: No connection names a part.
    """
    leaks = leaks or Leaks(plant)
    work = tuple(plant.numbers[tag] for tag in tags)
    stores = leaks.stores
    section = _with_switches(leaks, section_of(leaks, work, stores), stores)
    inside = _inside(stores, section)
    outside = tuple(one for one in stores if one not in inside)
    outer, blocks = _further_blocks(leaks, section, outside)
    held = {**section.held, **outer}
    machines = [one.tag for one in inside if one.ends is Ends.STOPPED]
    blind = blind_switches(plant, section, machines)
    stop = tuple(dict.fromkeys([*machines, *(tag for one in blind for tag in one.machines)]))
    sides = sides_of(leaks, section)
    lasting = (*(one for one in inside if one.ends is Ends.NEVER), *outside)
    return Isolation(
        tags=tags,
        section=section,
        stop=stop,
        first=loses_battery(leaks, section, held, outside),
        points=tuple(_points(leaks, section, outer, outside)),
        sides=sides,
        beside=tuple(plant.parts[number].tag for number in section.idle),
        emptied=tuple(one.tag for one in inside if one.ends is Ends.EMPTIED),
        blocks=blocks,
        blind=blind,
        lost=lost_users(leaks, section, held, stop),
        relieving=tuple(_relieving(plant, sides)),
        comes_true=comes_true(plant, section, held, survey.findings if survey else ()),
        faults=isolation_faults(tags, still_joined(leaks, work, held, lasting), sides, blocks),
    )


def _with_switches(leaks: Leaks, section: Section, stores: tuple[Store, ...]) -> Section:
    """The stretch with its fuses left in, where one switch behind each cuts off as well.

    A fuse is pulled without current, so it comes after a switch and not in its stead; but nothing that could
    stay alive is put out for that.
    """

    def price(one: Section) -> tuple[object, ...]:
        lost = lost_users(leaks, one, one.held, ())
        return (_inside(stores, one), lost, len(one.held))

    for number in section.held:
        if leaks.plant.parts[number].kind == FUSE:
            wider = section_of(leaks, section.work, stores, {*section.passed, number})
            if price(wider) == price(section):
                section = wider
    return section


def _inside(stores: Iterable[Store], section: Section) -> tuple[Store, ...]:
    return tuple(one for one in stores if not section.nodes.isdisjoint(one.nodes))


def _further_blocks(
    leaks: Leaks, section: Section, stores: Iterable[Store]
) -> tuple[Held, tuple[Blocks, ...]]:
    """The points behind the first that services ask for, and the blocks to each store with them."""
    live = tuple(stores)
    outer: dict[int, int] = {}
    for _ in range(MOST_BLOCKS):
        held = {**section.held, **outer}
        blocks = tuple(blocks_to(leaks, section.work, held, live))
        thin = [one.store for one in blocks if not one.enough]
        found = section_of(leaks, section.work, thin, {*section.passed, *held}).held if thin else {}
        if not found:
            break
        outer |= found
    return outer, blocks


def _points(
    leaks: Leaks, section: Section, outer: Held, stores: tuple[Store, ...]
) -> Iterator[Point]:
    held = {**section.held, **outer}
    start = leaks.nodes_of(section.work)
    live = [node for one in stores for node in one.nodes]
    flowing = leaks.spread(live, held=held, way=Way.MEANT)
    leading = leaks.spread(start, held=held, way=Way.BACK)
    for number, at in sorted(held.items()):
        part = leaks.plant.parts[number]
        row = outer if number in outer else section.held
        near = leaks.spread(start, held=row)
        far = leaks.spread((node for node in part.nodes if node not in near), held=row, closed=near)
        arcs = [arc for arcs in part.positions for arc in arcs]
        yield Point(
            tag=part.tag,
            kind=part.kind,
            position=part.names[at],
            usual=part.names[part.usual],
            against=tuple(one.tag for one in stores if not far.isdisjoint(one.nodes)),
            supply=any(u in flowing & far and v in leading for u, v in arcs),
            outer=number in outer,
        )


def _relieving(plant: Plant, sides: Iterable[Side]) -> Iterator[Relieving]:
    for side in sides:
        for relief in plant.reliefs:
            if relief.outlet in side.nodes and relief.node not in side.nodes:
                yield Relieving(relief.tag, side.name)
