"""What may pass and what must pass as a layout stands, and what of it may be under pressure then.

*May* uses every position that a valve may stand in, *must* only what all of them share. A node loses
pressure only if it must reach open air and nothing may feed it; the open air is where pressure ends. A
receiver or closed tank takes its time: it goes on feeding what is open to it until a reading of nothing has
proved it empty. A user lets air out while it is used, and nobody can count on that here. In a liquid the sea
and the open tanks feed what they are open to, whatever the heights. Current is not stored: what no source
reaches is dead.
"""

from collections import deque
from collections.abc import Collection, Iterable
from dataclasses import dataclass, replace

from garboard.records.system import Joins
from garboard.systems.behaviour import Passes
from garboard.systems.medium import Medium
from garboard.systems.net import Row, Through, adjacency
from garboard.systems.plant import Arc, Plant, Source
from garboard.systems.state import State, stands

__all__ = ["Came", "Ways", "valves_along"]

Came = dict[int, Through | None]
"""How each node was reached: the last step of the way to it; None where it starts."""
MOST_KEPT = 64
"""So many line-ups are kept laid out at a time."""
STORES = ("receiver", "tank", "separator", "filter", "cooler")


@dataclass(frozen=True, slots=True)
class _Open:
    """What passes in one line-up."""

    may: list[Row]
    venting: list[Row]
    """What must lead to each node, through parts that a way to open air may run through."""
    showing: list[Row]
    """What must lead to each node, so that a reading of nothing here is one of nothing there."""


class Ways:
    """One layout, and what was worked out before of the states it was in."""

    def __init__(self, plant: Plant) -> None:
        """Start with a layout."""
        self.plant = plant
        self.air = frozenset(_lasting_air(plant))
        self.sources = {source.tag: source for source in plant.sources}
        self.feeds = frozenset(_feeds(plant))
        self.slow = frozenset(_slow(plant, self.air))
        self.could_hold = _spread(_everything_open(plant), self._every_source(), self.air)
        self._open: dict[tuple[tuple[int, ...], frozenset[int]], _Open] = {}
        self._settled: dict[State, State] = {}
        self._arcs: dict[tuple[int, int], tuple[tuple[Arc, ...], frozenset[Arc]]] = {}

    def _every_source(self) -> Iterable[int]:
        held = (part.nodes[0] for part in self.plant.of_kind(*STORES))
        return {*(source.node for source in self.plant.sources), *self.feeds, *held}

    def live(self, state: State) -> tuple[Source, ...]:
        """The sources that may be feeding: running machines, and what nobody can stop."""
        opened = {self.plant.parts[number].tag for number in state.opened}
        return tuple(
            source
            for tag, source in self.sources.items()
            if tag not in opened and (not source.machine or tag in state.running)
        )

    def fed_by(self, state: State) -> set[int]:
        """The nodes where something is fed in as long as the state lasts."""
        return {*(source.node for source in self.live(state)), *self.feeds}

    def begin(self, state: State) -> State:
        """A state before the first movement, settled: what nothing lets out may hold pressure."""
        return self.at_rest(replace(state, pressure=frozenset(self.could_hold)))

    def settle(self, state: State) -> State:
        """A state once everything has flowed that flows at once: pipes are let out, receivers not yet."""
        if state not in self._settled:
            self._settled[state] = self._flowed(state, self.slow & state.pressure)
        return self._settled[state]

    def at_rest(self, state: State) -> State:
        """A state once everything has flowed that ever will: receivers are let out as well."""
        return self._flowed(state, frozenset())

    def _flowed(self, state: State, held: frozenset[int]) -> State:
        stored = self.plant.medium is not Medium.CURRENT
        kept = state.pressure - (self.vented(state) - held) if stored else set()
        reached = self.reached(state, {*kept, *self.fed_by(state)})
        return replace(state, pressure=frozenset(reached))

    def proved(self, state: State, node: int) -> State:
        """A state after a reading of nothing at a node: what must show there holds nothing."""
        shown = _spread(self.open(state).showing, [node], self.air)
        return self.settle(replace(state, pressure=state.pressure - shown))

    def vented(self, state: State) -> set[int]:
        """The nodes that must reach open air."""
        air = {*self.air, *self.open_nodes(state)}
        return _spread(self.open(state).venting, air, ())

    def open_nodes(self, state: State) -> set[int]:
        """The nodes of the parts that are opened up."""
        return {node for number in state.opened for node in self.plant.parts[number].nodes}

    def reached(self, state: State, starts: Iterable[int]) -> set[int]:
        """The nodes that starts may feed; it ends where it is open to the air for good."""
        return _spread(self.open(state).may, starts, self.air)

    def must_reach(self, state: State, targets: Iterable[int]) -> set[int]:
        """The nodes that certainly reach one of some targets."""
        return _spread(self.open(state).venting, targets, ())

    def reached_outside(self, state: State, start: int, avoided: Collection[int]) -> set[int]:
        """The nodes that a start may feed by ways that touch no avoided node."""
        if start in avoided:
            return set()
        return _spread(self.open(state).may, [start], {*self.air, *avoided})

    def way(self, state: State, starts: Iterable[int], ends: Collection[int]) -> Came:
        """How some starts may reach the nearest of some ends."""
        came: Came = {node: None for node in starts if node not in self.air or node in self.feeds}
        todo = deque(came)
        while todo:
            node = todo.popleft()
            if node in ends:
                return _steps_to(came, node)
            for other, number in self.open(state).may[node]:
                if other not in came and (other not in self.air or other in ends):
                    came[other] = (node, other, number)
                    todo.append(other)
        return {}

    def open(self, state: State) -> _Open:
        """What passes in a state."""
        key = (state.at, state.opened)
        if key not in self._open:
            if len(self._open) >= MOST_KEPT:
                self._open.clear()
            self._open[key] = self._opened(state)
        return self._open[key]

    def _opened(self, state: State) -> _Open:
        may: list[Through] = []
        venting: list[Through] = []
        showing: list[Through] = []
        for number, part in enumerate(self.plant.parts):
            if number in state.opened:
                continue
            some, every = self._passing(number, state.at[number])
            may += [(u, v, number) for u, v in some]
            if part.carries_relief:
                venting += [(u, v, number) for u, v in every]
            machine = self.plant.behaviours[part.tag].passes is Passes.MACHINE
            if part.carries_relief or (machine and not part.one_way):
                showing += [(u, v, number) for u, v in every]
        count = self.plant.count
        return _Open(
            adjacency(count, may),
            adjacency(count, venting, back=True),
            adjacency(count, showing, back=True),
        )

    def _passing(self, number: int, bits: int) -> tuple[tuple[Arc, ...], frozenset[Arc]]:
        """What a part may pass in some positions, and what it passes in all of them."""
        if (number, bits) not in self._arcs:
            positions = self.plant.parts[number].positions
            these = [set(arcs) for at, arcs in enumerate(positions) if bits >> at & 1]
            some = tuple(sorted(set.union(*these)))
            self._arcs[number, bits] = some, frozenset(set.intersection(*these))
        return self._arcs[number, bits]


def _lasting_air(plant: Plant) -> Iterable[int]:
    """What is open to the air whatever is used: not a user that lets air out."""
    used = {part.nodes[0] for part in plant.of_kind("consumer")}
    for node in plant.open_air:
        if node not in used or any(end.joins is Joins.OUTSIDE for end in plant.joints[node]):
            yield node


def _feeds(plant: Plant) -> Iterable[int]:
    """What feeds by itself, beside the sources: of a liquid the sea and what stands in open tanks."""
    if plant.medium is Medium.LIQUID:
        yield from (part.nodes[0] for part in plant.of_kind("sea"))
        tanks = (part for part in plant.of_kind("tank") if part.nodes[0] in plant.open_air)
        yield from (part.nodes[0] for part in tanks)


def _slow(plant: Plant, air: Collection[int]) -> Iterable[int]:
    """The nodes of what takes its time to be let out: receivers and closed tanks."""
    for part in plant.of_kind("receiver", "tank"):
        if part.nodes[0] not in air:
            yield from part.nodes


def _everything_open(plant: Plant) -> list[Row]:
    arcs = [
        (u, v, number)
        for number, part in enumerate(plant.parts)
        for passing in part.positions
        for u, v in passing
    ]
    return adjacency(plant.count, arcs)


def _spread(rows: list[Row], starts: Iterable[int], ends: Collection[int]) -> set[int]:
    """Where some starts lead; what they meet of the ends is neither entered nor counted."""
    seen = set(starts)
    todo = list(seen)
    while todo:
        for node, _ in rows[todo.pop()]:
            if node not in seen and node not in ends:
                seen.add(node)
                todo.append(node)
    return seen


def _steps_to(came: Came, node: int) -> Came:
    """Of how everything was reached, the way to one node alone, from its start on."""
    way: list[tuple[int, Through | None]] = [(node, came[node])]
    while (step := way[-1][1]) is not None:
        way.append((step[0], came[step[0]]))
    return dict(reversed(way))


def valves_along(plant: Plant, state: State, way: Came) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The valves on a way: those known to stand so, and those that nobody said the position of."""
    numbers = dict.fromkeys(step[2] for step in way.values() if step is not None)
    tags = [plant.parts[number].tag for number in numbers if plant.parts[number].movable]
    known = tuple(tag for tag in tags if stands(plant, state, tag))
    return known, tuple(tag for tag in tags if tag not in known)
