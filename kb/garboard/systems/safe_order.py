"""The shortest order of movements from one line-up to another in which no state on the way must never be.

The fewest are as many as things stand otherwise, so that a search which always goes on from the state
with the fewest movements left finds an order at once where nearly every order is safe, and still looks at
all of them where few are. Valves that stand alike in both line-ups are not touched. Between two operating
states, an order that keeps every user supplied whom both of them supply is looked for first.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from heapq import heappop, heappush
from itertools import count

from garboard.records.system import OperatingState
from garboard.systems.forbidden import find_forbidden
from garboard.systems.opened import find_reached
from garboard.systems.plant import Plant
from garboard.systems.state import State, position_in, start_of
from garboard.systems.ways import Ways

__all__ = ["MOST_STATES", "Goal", "Movement", "Order", "Supply", "between_states", "safe_order"]

MOST_STATES = 4000
"""Above it the search gives up."""


@dataclass(frozen=True, slots=True)
class Movement:
    """One thing moved."""

    tag: str
    to: str
    """Name of a position; of a machine `running` or `stopped`."""


@dataclass(frozen=True, slots=True)
class Goal:
    """Where an order shall lead."""

    wanted: Mapping[int, int]
    """Position in which each part shall end, by number; no other part is moved."""
    running: frozenset[str] = frozenset()
    """Machines that shall run at the end."""
    allows: Callable[[State], bool] | None = None
    """What else must hold of every state on the way."""
    most: int = MOST_STATES
    """How many states are looked at before it gives up."""

    def left(self, state: State) -> int:
        """How many things still stand otherwise."""
        valves = sum(position_in(state, number) != at for number, at in self.wanted.items())
        return valves + len(state.running ^ self.running)


@dataclass(frozen=True, slots=True)
class Order:
    """What the search came to."""

    movements: tuple[Movement, ...]
    """In order; empty where nothing is to be moved, or where none was found."""
    found: bool
    loses: tuple[str, ...] = ()
    """Users whom both line-ups supply, and whom no order keeps supplied on the way."""
    gave_up: bool = False
    """Whether it stopped before it had looked at all of them."""
    tried: int = 0
    """States looked at."""


def between_states(ways: Ways, one: OperatingState, other: OperatingState) -> Order:
    """The order from one operating state to another."""
    start = ways.begin(start_of(ways.plant, one))
    end = start_of(ways.plant, other)
    wanted = {
        number: at
        for number in range(len(end.at))
        if (at := position_in(end, number)) is not None and end.at[number] != start.at[number]
    }
    users = [tag for tag in one.supplies if tag in other.supplies and ways.plant.part(tag)]
    stores = [tag for tag in (*one.charged, *other.charged) if ways.plant.part(tag)]
    supply = Supply(ways, users, stores)
    kept = safe_order(ways, start, Goal(wanted, end.running, supply.lasts))
    if kept.found or not users:
        return kept
    any_order = safe_order(ways, start, Goal(wanted, end.running, supply.is_steady))
    return replace(any_order, loses=tuple(users))


class Supply:
    """Users who shall have something all the time, and what charges them."""

    def __init__(self, ways: Ways, users: Iterable[str], stores: Iterable[str]) -> None:
        """Start.

        Args:
            ways: The layout.
            users: Tags of users, each in the layout.
            stores: Tags of what is charged.
        """
        self.ways = ways
        self.users = [frozenset(ways.plant.parts[ways.plant.numbers[tag]].nodes) for tag in users]
        self.stores = {ways.plant.node(tag) for tag in stores}

    def lasts(self, state: State) -> bool:
        """Whether every user is reached by something that is charged or runs, and it is steady."""
        running = {one.node for one in self.ways.live(state) if one.machine}
        reached = self.ways.reached(state, {*self.stores, *running})
        return self.is_steady(state) and all(user & reached for user in self.users)

    def is_steady(self, state: State) -> bool:
        """Whether no alternator or charger is left on a board without a battery: its voltage would run away."""
        plant = self.ways.plant
        batteries = [part.nodes[0] for part in plant.of_kind("battery")]
        boards = {part.nodes[0] for part in plant.of_kind("bus", "load")}
        steadied = self.ways.reached(state, batteries)
        for charging in plant.of_kind("alternator", "charger"):
            node = charging.nodes[0]
            if self.ways.reached(state, [node]) & boards and node not in steadied:
                return False
        return True


def safe_order(ways: Ways, start: State, goal: Goal) -> Order:
    """The shortest safe order of movements.

    Args:
        ways: The layout.
        start: How it stands, settled.
        goal: Where the order shall lead.
    """
    allowed = {one.cause for one in find_forbidden(ways, start)}
    number = count()
    left = goal.left(start)
    todo: list[tuple[int, int, int, State, tuple[Movement, ...]]] = []
    heappush(todo, (left, left, next(number), start, ()))
    seen = {start}
    while todo:
        _, left, _, state, done = heappop(todo)
        if not left:
            return Order(done, found=True, tried=len(seen))
        for movement, moved in _movements(ways.plant, state, goal):
            after = ways.settle(moved)
            if after in seen:
                continue
            if len(seen) >= goal.most:
                return Order((), found=False, gave_up=True, tried=len(seen))
            seen.add(after)
            harms = any(one.cause not in allowed for one in find_forbidden(ways, after))
            if (
                harms
                or any(find_reached(ways, state, moved))
                or (goal.allows and not goal.allows(after))
            ):
                continue
            still = goal.left(after)
            far = len(done) + 1 + still
            heappush(todo, (far, still, next(number), after, (*done, movement)))
    return Order((), found=False, tried=len(seen))


def _movements(plant: Plant, state: State, goal: Goal) -> Iterator[tuple[Movement, State]]:
    """What may be moved next: machines stopped, valves shut, turned, opened, machines started."""
    for tag in sorted(state.running - goal.running):
        yield Movement(tag, "stopped"), replace(state, running=state.running - {tag})
    valves = [
        (bool(plant.parts[number].positions[at]), number, at)
        for number, at in goal.wanted.items()
        if position_in(state, number) != at
    ]
    for _, number, at in sorted(valves):
        part = plant.parts[number]
        yield Movement(part.tag, part.names[at]), state.moved(number, at)
    for tag in sorted(goal.running - state.running):
        yield Movement(tag, "running"), replace(state, running=state.running | {tag})
