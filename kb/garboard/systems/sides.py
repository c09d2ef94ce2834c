"""The sides of a stretch that is cut off: what is bled and seen at zero by itself.

What is shut, passes one way or holds back divides a stretch: a gauge before a check valve says nothing
of the pipe after it. Each side wants a bleed to open air and something that shows zero; of current it wants
to be measured where the work is.
"""

from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass

from garboard.calc.dimensions import dimension
from garboard.calc.kinds import PRESSURE, Type, reading_of
from garboard.records.system import Joins
from garboard.systems.leaks import Leaks
from garboard.systems.medium import Medium, medium_of
from garboard.systems.passing import OPENS_OUT
from garboard.systems.plant import Part, Plant
from garboard.systems.section import Section

__all__ = ["Bleed", "Side", "is_let_out", "sides_of"]

VOLTAGE = Type(dimension(length=2, mass=1, time=-3, current=-1))
SHOWS = ("gauge", "voltmeter")
"""What shows that nothing is left, where it stands on the side itself."""
HOLDS = ("receiver", "separator", "tank", "filter", "cooler", "strainer")
"""What holds a volume that is let out with its side."""
PORTS = {"in": "inlet", "out": "outlet"}
READ_OPEN = "test cock"
"""A drain that can be read."""


@dataclass(frozen=True, slots=True)
class Bleed:
    """A way by which a side is let out: the valves to open on it, the nearest to the work first."""

    valves: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a stretch."""

    name: str
    """As on the drawing: a header, a vessel, or the port of a part."""
    nodes: frozenset[int]
    medium: Medium
    at_work: bool
    """It is joined to what is worked on."""
    vessels: tuple[str, ...]
    """What in it holds a volume, by tag: it is emptied with it."""
    bleeds: tuple[Bleed, ...]
    shows: tuple[str, ...]
    """What shows zero there: gauges and test cocks, by tag."""
    opens: str = ""
    """Where it stands open to the air by itself; then it needs neither."""
    behind: tuple[tuple[str, str], ...] = ()
    """Gauges behind a valve, with that valve: they show nothing while it is shut."""

    @property
    def bled(self) -> bool:
        """Whether it can be let out; current needs no way out."""
        return bool(self.bleeds or self.opens) or self.medium is Medium.CURRENT

    @property
    def shown(self) -> bool:
        """Whether it can be seen at zero; of current a meter is put to it."""
        return bool(self.shows or self.opens) or self.medium is Medium.CURRENT


def sides_of(leaks: Leaks, section: Section) -> tuple[Side, ...]:
    """The sides of a stretch, in the order of its nodes.

    Args:
        leaks: The plant.
        section: The stretch.
    """
    made = (_side(leaks, section, nodes) for nodes in _parted(leaks, section))
    return tuple(side for side in made if side.at_work or not side.opens)


def _parted(leaks: Leaks, section: Section) -> Iterator[frozenset[int]]:
    """The nodes of a stretch, sorted by what is always joined; a port that no pipe leads to is none."""
    piped = {pipe.node for pipe in leaks.plant.pipes}
    parts = leaks.plant.parts
    done: set[int] = set()
    for node in sorted(section.nodes):
        if node not in done:
            nodes = leaks.spread([node], passes=lambda number: _always_joined(parts[number]))
            done |= nodes
            if nodes & piped:
                yield frozenset(nodes)


def _always_joined(part: Part) -> bool:
    """Whether a part joins its nodes whatever happens: a vessel, a hose, a centrifugal pump that stands."""
    arcs = part.positions[0]
    return not part.movable and all((v, u) in arcs for u, v in arcs)


def _side(leaks: Leaks, section: Section, nodes: frozenset[int]) -> Side:
    plant = leaks.plant
    vessels = tuple(part.tag for part in plant.of_kind(*HOLDS) if nodes & set(part.nodes))
    gauges = tuple(one.tag for one in _gauges(plant) if nodes & set(one.nodes))
    service = next((plant.services[node] for node in sorted(nodes) if plant.services[node]), "")
    return Side(
        name=_name(plant, section, nodes, vessels),
        nodes=nodes,
        medium=medium_of(plant.system, service),
        at_work=not nodes.isdisjoint(leaks.nodes_of(section.work)),
        vessels=vessels,
        bleeds=_bleeds(leaks, section, nodes),
        shows=(*gauges, *_cocks(plant, section, nodes)),
        opens=next((name for node in sorted(nodes) if (name := _outside(plant, node))), ""),
        behind=tuple(_behind(plant, section, nodes)),
    )


def _name(plant: Plant, section: Section, nodes: frozenset[int], vessels: tuple[str, ...]) -> str:
    """What a side is called: after its header, else its vessel, else the port that leads to it."""
    header = next((name for name, node in plant.headers.items() if node in nodes), "")
    if header or vessels:
        return f"the {header}" if header else vessels[0]
    at_work = [plant.parts[number] for number in section.work]
    for part in (*at_work, *plant.parts):
        for port, node in part.ports.items():
            if node in nodes:
                named = PORTS.get(port, f"port {port}")
                return f"the {named} of {part.tag}" if len(part.nodes) > 1 else part.tag
    return ""


def _gauges(plant: Plant) -> Iterator[Part]:
    """What shows a pressure or a voltage down to zero; a scale that is not written is taken to do so."""
    shows = VOLTAGE if plant.medium is Medium.CURRENT else reading_of(PRESSURE)
    for part in plant.of_kind(*SHOWS):
        scale = plant.components[part.tag].range
        if scale is None or (scale.from_.type == shows and scale.from_.si <= 0 <= scale.to.si):
            yield part


def _cocks(plant: Plant, section: Section, nodes: frozenset[int]) -> Iterator[str]:
    for number in section.idle:
        part = plant.parts[number]
        if part.kind == READ_OPEN and nodes & set(part.nodes):
            yield part.tag


def _behind(plant: Plant, section: Section, nodes: frozenset[int]) -> Iterator[tuple[str, str]]:
    """Gauges that one valve parts from a side, with that valve."""
    for number in section.idle:
        part = plant.parts[number]
        beyond = set(part.nodes) - nodes
        if beyond != set(part.nodes):
            for gauge in _gauges(plant):
                if beyond & set(gauge.nodes):
                    yield gauge.tag, part.tag


def _bleeds(leaks: Leaks, section: Section, nodes: frozenset[int]) -> tuple[Bleed, ...]:
    """The ways out to open air with the fewest valves, one by each valve on the side that leads there.

    Where there is no other, what is worked on may be one: it is opened before it is taken apart.
    """
    other = tuple(_ways_out(leaks, section, nodes, section.idle))
    found = other or tuple(_ways_out(leaks, section, nodes, section.work))
    fewest = min((len(bleed.valves) for bleed in found), default=0)
    return tuple(bleed for bleed in found if len(bleed.valves) == fewest)


def _ways_out(
    leaks: Leaks, section: Section, nodes: frozenset[int], first: Iterable[int]
) -> Iterator[Bleed]:
    for number in first:
        part = leaks.plant.parts[number]
        if part.lockable and not part.coupled:
            for u, v in part.positions[0]:
                if u in nodes and v not in nodes:
                    rest = _way_out(leaks, section, nodes, v)
                    if rest is not None:
                        yield Bleed((part.tag, *rest))


def _way_out(
    leaks: Leaks, section: Section, nodes: frozenset[int], start: int
) -> tuple[str, ...] | None:
    """The further valves on the shortest way to open air; None where there is none."""
    parts = leaks.plant.parts
    return _way(
        leaks,
        [start],
        nodes,
        lambda n: n not in section.held and (parts[n].lockable or not parts[n].movable),
    )


def is_let_out(leaks: Leaks, nodes: Collection[int], opened: Collection[str]) -> bool:
    """Whether some nodes stand open to the air.

    Args:
        leaks: The plant.
        nodes: The nodes.
        opened: Tags of the valves that stand open; of all others nothing is known.
    """
    parts = leaks.plant.parts
    first = {
        other
        for node in nodes
        for other, n in leaks.from_node(node)
        if other not in nodes and parts[n].tag in opened and _lets_out(parts[n], node, other)
    }
    way = _way(
        leaks, sorted(first), nodes, lambda n: parts[n].tag in opened or not parts[n].movable
    )
    return way is not None or any(_outside(leaks.plant, node) for node in nodes)


def _way(
    leaks: Leaks, starts: Iterable[int], closed: Collection[int], passes: Callable[[int], bool]
) -> tuple[str, ...] | None:
    """The valves on the shortest way to open air, never past a user: what is let out there would move it."""
    users = {node for part in leaks.plant.of_kind("consumer") for node in part.nodes}
    todo = list(starts)
    came: dict[int, tuple[str, ...]] = dict.fromkeys(todo, ())
    for node in todo:
        if node in users:
            continue
        if _outside(leaks.plant, node):
            return came[node]
        for other, number in leaks.from_node(node):
            part = leaks.plant.parts[number]
            if other in came or other in closed or not passes(number):
                continue
            if _lets_out(part, node, other):
                came[other] = (*came[node], part.tag) if part.movable else came[node]
                todo.append(other)
    return None


def _lets_out(part: Part, u: int, v: int) -> bool:
    """Whether a way out may run through a part: a sound pipe, or a valve that stands open."""
    return part.carries_relief and not part.coupled and (u, v) in part.positions[0]


def _outside(plant: Plant, node: int) -> str:
    """The name of the open air at a node; empty where there is none, or liquid stands in a tank."""
    joints = plant.joints[node]
    for joint in joints if node in plant.open_air else ():
        if joint.joins is Joins.OUTSIDE:
            return joint.name
        kind = plant.components[joint.name].kind if joint.joins is Joins.PART else ""
        if kind in OPENS_OUT and len(joints) == 1:
            return "open air"
        if kind == "tank" and plant.medium is Medium.GAS:
            return joint.name
    return ""
