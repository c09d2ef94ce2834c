"""A system as a graph: what stands at each node, and what each part passes in each of its positions.

A node is a stretch of pipe that is one pressure whatever is shut: all ends joined by connections and
named headers. A part is a component between nodes; in each of its positions it is a set of arcs
u -> v, "fluid and pressure can go from u to v". A part of another system that a connection names stands
here with its own behaviour; what it is joined with over there is not seen.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from garboard.errors import Diagnostic, Where
from garboard.records.component import Component
from garboard.records.system import Joins, System
from garboard.systems.behaviour import Behaviour
from garboard.systems.medium import Medium, medium_of
from garboard.systems.settings import NO_LIMIT, Setting

__all__ = ["Arc", "Joint", "Part", "Pipe", "Plant", "Relief", "Source"]

Arc = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Joint:
    """One end of a pipe: a port of a part, a header, or a place outside."""

    joins: Joins
    name: str
    """Full tag, name of the header, or name of the place."""
    port: str = ""
    """Of a part. Of a place outside: the number of its pipe, as each such end is one of its own."""


@dataclass(frozen=True, slots=True)
class Pipe:
    """What one `>` of the connections says: a pipe between two ends."""

    a: Joint
    b: Joint
    """It flows from a to b, as the author wrote it."""
    node: int
    where: Where
    service: str = ""
    size: str = ""
    """As written: `15 mm`."""


@dataclass(frozen=True, slots=True)
class Part:
    """A component between nodes."""

    tag: str
    """In full."""
    kind: str
    ports: Mapping[str, int]
    """Node of each port that is joined or that its kind always has."""
    positions: tuple[tuple[Arc, ...], ...] = ((),)
    """What passes in each position; one position: it cannot be moved."""
    names: tuple[str, ...] = ("",)
    """Of the positions, in the same order: `open`, `shut`."""
    usual: int = 0
    """Number of the position it usually stands in."""
    locked: int | None = None
    """Number of the position it is locked in, where that is secured and looked at on a round."""
    fails: int | None = None
    """Number of the position it goes to when power or air is lost; None: it stays, or needs none."""
    cap: float = NO_LIMIT
    """The most that passes: of a reducing valve [Pa above the atmosphere], of a fuse [A]."""
    carries_relief: bool = True
    """Whether a way to a relief valve, to a switch or to open air may run through it."""
    one_way: bool = False
    """It stops what flows back by itself."""
    lockable: bool = False
    """It counts as isolation."""
    flexible: bool = False
    """It does not carry movement."""

    @property
    def movable(self) -> bool:
        """Whether it has more than one position."""
        return len(self.positions) > 1

    @property
    def coupled(self) -> bool:
        """Whether moving it opens one way as it moves another: three-way and ganged valves."""
        return len(self.positions) > 2 or (
            self.movable and (all(self.positions) or len(self.nodes) > 2)
        )

    @property
    def nodes(self) -> tuple[int, ...]:
        """Its nodes, each once, in the order of its ports."""
        return tuple(dict.fromkeys(self.ports.values()))

    def carrying(self, arc: Arc) -> tuple[int, ...]:
        """The positions in which it passes from one node to another, straight or by a third port.

        Where no single position does, the pressure waits in the part: those that let it out again.
        """
        u, v = arc
        straight = [
            number
            for number, arcs in enumerate(self.positions)
            if arc in arcs or any((u, by) in arcs and (by, v) in arcs for by in self.nodes)
        ]
        last = [n for n, arcs in enumerate(self.positions) if any(to == v for _, to in arcs)]
        return tuple(straight or last)


@dataclass(frozen=True, slots=True)
class Relief:
    """A relief valve or bursting disc at a node."""

    tag: str
    node: int
    """Of its inlet."""
    outlet: int | None
    """Node of a piped outlet; None: it blows free."""
    lifts: float
    """The highest it may lift at [Pa above the atmosphere]; `NO_LIMIT` where no setting is known."""
    opens: float
    """The lowest it may lift at."""


@dataclass(frozen=True, slots=True)
class Source:
    """What makes pressure or drives current at a node."""

    tag: str
    node: int
    makes: float
    """The most it makes [Pa above the atmosphere]; of current, and where nothing is known, `NO_LIMIT`."""
    machine: bool = False
    """A compressor or pump: it can be started and stopped."""
    displacement: bool = False
    """It goes on pushing against a shut outlet: every machine that is not centrifugal."""


@dataclass(frozen=True, slots=True)
class Plant:
    """One system as a graph; it never changes."""

    system: System
    medium: Medium
    count: int
    """Nodes are numbered from 0 to count - 1."""
    parts: tuple[Part, ...]
    """Every component that a connection names, in the order of the file."""
    components: Mapping[str, Component]
    """What is recorded of each part, by tag."""
    settings: Mapping[str, Mapping[str, Setting]]
    """The numbers of each part, by tag and name; of a header by its own name."""
    behaviours: Mapping[str, Behaviour]
    """By tag."""
    pipes: tuple[Pipe, ...]
    joints: tuple[tuple[Joint, ...], ...]
    """What stands at each node, in the order of the connections."""
    headers: Mapping[str, int]
    """Node of each header that a connection names."""
    services: tuple[str, ...]
    """The service of each node; empty where none is written."""
    reliefs: tuple[Relief, ...]
    sources: tuple[Source, ...]
    open_air: frozenset[int]
    """Nodes that are open to the air: outside places, open tanks, compartments, users that exhaust."""
    vented: frozenset[int] = frozenset()
    """Nodes where no pressure can stand: outside places, open tanks, compartments, the sea."""
    harmless: Mapping[Medium, float] = field(default_factory=dict)
    """What may stay shut in, by medium [Pa above the atmosphere]."""
    faults: tuple[Diagnostic, ...] = ()
    """What of the connections could not be understood."""
    numbers: Mapping[str, int] = field(default_factory=dict)
    """Number of each part, by tag."""

    def part(self, tag: str) -> Part | None:
        """A part by its full tag; None where no connection names it."""
        number = self.numbers.get(tag)
        return None if number is None else self.parts[number]

    def owns(self, tag: str) -> bool:
        """Whether a part is of this system; what one of another is joined with over there is not seen."""
        return self.components[tag].system == self.system.code

    def node(self, tag: str) -> int:
        """The first node of a part.

        Raises:
            KeyError: No connection names it.
        """
        return self.parts[self.numbers[tag]].nodes[0]

    def medium_at(self, node: int) -> Medium:
        """What runs at a node: the medium of its service, else that of the system."""
        return medium_of(self.system, self.services[node])

    def setting(self, tag: str, name: str) -> Setting | None:
        """A number of a part or header; None where it is not recorded or not computed."""
        return self.settings.get(tag, {}).get(name)

    def of_kind(self, *kinds: str) -> tuple[Part, ...]:
        """The parts of some kinds, in the order of the file."""
        return tuple(part for part in self.parts if part.kind in kinds)
