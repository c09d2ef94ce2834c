"""What the checks of one plant ask together, each answer worked out once.

A check is a function of an Enquiry that yields findings. The same check is asked twice, once with
secured locked valves held and once with every valve free; `survey.py` sets the two side by side.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property

from garboard.systems.finding import PathFinding
from garboard.systems.net import Net, Through, net_of
from garboard.systems.plant import Part, Plant, Relief
from garboard.systems.search import (
    Always,
    Highest,
    caps_of,
    fed_outside,
    highest,
)
from garboard.systems.sequences import can_settle, fed_over_time, highest_over_time

__all__ = ["VESSELS", "Check", "Enquiry", "Fed"]

VESSELS = ("receiver", "separator", "filter", "cooler", "tank")
"""What is a vessel where it has a rating."""


@dataclass(frozen=True, slots=True)
class Fed:
    """What can be fed while it is cut off."""

    nodes: frozenset[int]
    came: list[Through | None]
    """The last step of a way to each node."""
    settled: bool
    """False: too many coupled parts to be sure; it may be less, and a person must check."""


class Enquiry:
    """One plant, with its locks held or free, and what was asked of it before."""

    def __init__(self, plant: Plant, *, locks: bool = True, net: Net | None = None) -> None:
        """Start.

        Args:
            plant: The plant.
            locks: Whether secured locked valves stay as they are locked.
            net: Another net over the same nodes and parts: with points of an isolation held.
        """
        self.plant = plant
        self.locks = locks
        self.net = net or net_of(plant, locks=locks)
        self._always: dict[tuple[frozenset[int], frozenset[int]], frozenset[int]] = {}
        self._laid: dict[frozenset[int], Always] = {}
        self._fed: dict[tuple[frozenset[int], frozenset[int]], Fed] = {}

    @cached_property
    def unlocked(self) -> Net:
        """The net with its locked valves free as well: for what is asked of every valve."""
        free = {n: at for n, at in self.net.held.items() if self.net.parts[n].locked != at}
        return Net(self.net.count, self.net.parts, free, self.net.vented)

    @cached_property
    def vessels(self) -> tuple[Part, ...]:
        """Receivers, separators, filters, coolers and closed tanks that have a rating."""
        found = self.plant.of_kind(*VESSELS)
        return tuple(part for part in found if self.plant.setting(part.tag, "rated"))

    def reliefs_within(self, limit: float) -> tuple[Relief, ...]:
        """The relief valves that lift, at their highest, at or below a pressure [Pa above the atmosphere]."""
        return tuple(relief for relief in self.plant.reliefs if relief.lifts <= limit)

    def always(self, targets: Iterable[int], out: Iterable[int] = ()) -> frozenset[int]:
        """The nodes that always reach one of some targets.

        Args:
            targets: Nodes.
            out: Numbers of parts that no way may run through.
        """
        key = frozenset(targets), frozenset(out)
        if key not in self._always:
            if key[1] not in self._laid:
                self._laid[key[1]] = Always(self.net, out=key[1])
            self._always[key] = frozenset(self._laid[key[1]].reaches(key[0]))
        return self._always[key]

    def fed_outside(self, starts: Iterable[int], targets: Iterable[int]) -> Fed:
        """The nodes that starts can feed while they are cut off from every target, over any line-ups."""
        key = frozenset(starts), frozenset(targets)
        if key not in self._fed:
            self._fed[key] = self._feed(*key)
        return self._fed[key]

    def _feed(self, starts: frozenset[int], targets: frozenset[int]) -> Fed:
        nodes, came = fed_outside(self.net, starts, self.always(targets))
        settled = True
        if nodes and self.net.coupled and can_settle(self.net, len(self._fed) + 1):
            nodes &= fed_over_time(self.net, starts, targets)
        elif nodes and self.net.coupled:
            settled = False
        return Fed(frozenset(nodes), came, settled)

    @cached_property
    def caps(self) -> list[float]:
        """The lowest relief setting that each node always reaches [Pa above the atmosphere]."""
        return caps_of(self.net, self.plant.reliefs)

    @cached_property
    def relaxed(self) -> Highest:
        """The most that can stand at each node; with coupled parts it may be more than there can be."""
        return highest(self.net, self.starts, self.caps)

    @property
    def starts(self) -> tuple[tuple[int, float], ...]:
        """Where pressure is made, with how much [Pa above the atmosphere]."""
        return tuple((source.node, source.makes) for source in self.plant.sources)

    @cached_property
    def highest(self) -> list[float]:
        """The most that can stand at each node, over any sequence of line-ups [Pa above the atmosphere]."""
        if not self.net.coupled or not can_settle(self.net):
            return self.relaxed.at
        return highest_over_time(self.net, self.starts, self.plant.reliefs)

    @property
    def settled(self) -> bool:
        """Whether `highest` is exact; else it may be more than there can be, and a person must check."""
        return not self.net.coupled or can_settle(self.net)


Check = Callable[[Enquiry], Iterator[PathFinding]]
