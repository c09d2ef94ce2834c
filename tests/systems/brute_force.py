"""The reference: a small system tried in every combination of positions.

It shares no code and no way of working with the searches it judges: what leads where is a set of bits
that grows until nothing changes, a question about all positions is asked in each of them, and a question
about sequences walks from one state of the whole system to the next.
"""

import math
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations, product

Arc = tuple[int, int]


@dataclass(frozen=True)
class Piece:
    """One component between numbered nodes."""

    tag: str
    positions: tuple[tuple[Arc, ...], ...]
    carries: bool = True
    """A way to a relief valve may run through it."""
    most: float = math.inf
    """The most pressure that passes [Pa above the atmosphere]."""
    held: int | None = None
    stops_back: bool = False
    """It stops by itself what flows back."""
    lockable: bool = False

    @property
    def reachable(self) -> tuple[tuple[Arc, ...], ...]:
        """The positions it can take."""
        return self.positions if self.held is None else (self.positions[self.held],)


@dataclass(frozen=True)
class Standing:
    """A rig with every piece in one position."""

    arcs: tuple[tuple[int, int, Piece], ...]
    relieving: tuple[int, ...]
    """By node: the nodes it leads to by ways that carry relief, one bit each."""
    caps: tuple[float, ...]
    """By node: the lowest setting of a relief valve that it reaches [Pa above the atmosphere]."""


@dataclass(frozen=True)
class Rig:
    """A small system."""

    count: int
    pieces: tuple[Piece, ...]
    reliefs: tuple[tuple[int, float], ...] = ()
    """Node and setting [Pa above the atmosphere]."""
    sources: tuple[tuple[int, float], ...] = ()
    """Node, and what is made there [Pa above the atmosphere]."""
    air: frozenset[int] = frozenset()
    """Nodes where what is shut in gets out."""
    vented: frozenset[int] = frozenset()
    """Nodes where no pressure can stand."""

    @cached_property
    def choices(self) -> tuple[tuple[int, ...], ...]:
        """Every combination of positions, held pieces held."""
        each = [
            range(len(piece.positions)) if piece.held is None else (piece.held,)
            for piece in self.pieces
        ]
        return tuple(product(*each))

    @cached_property
    def standings(self) -> Mapping[tuple[int, ...], Standing]:
        """The rig in each of them."""
        return {choice: self.stand(choice) for choice in self.choices}

    @cached_property
    def over_sequences(self) -> list[float] | None:
        """The most that stands at each node after any sequence of line-ups; None: too many to try."""
        return highest_over_sequences(self)

    def stand(self, choice: Sequence[int]) -> Standing:
        """The rig in one combination."""
        arcs = tuple(
            (u, v, piece)
            for piece, position in zip(self.pieces, choice, strict=True)
            for u, v in piece.positions[position]
        )
        relieving = leads(self.count, ((u, v) for u, v, piece in arcs if piece.carries))
        caps = tuple(
            0.0 if node in self.vented else self._held_to(mask)
            for node, mask in enumerate(relieving)
        )
        return Standing(arcs, relieving, caps)

    def _held_to(self, mask: int) -> float:
        """The lowest setting of a relief valve at some nodes."""
        return min((lifts for node, lifts in self.reliefs if mask >> node & 1), default=math.inf)


def leads(count: int, arcs: Iterable[Arc]) -> tuple[int, ...]:
    """Where each node leads, itself included, one bit a node: grown until nothing changes."""
    rows = [1 << node for node in range(count)]
    known = tuple(arcs)
    before: list[int] = []
    while rows != before:
        before = list(rows)
        for u, v in known:
            rows[u] |= rows[v]
    return tuple(rows)


def bits(nodes: Iterable[int]) -> int:
    """A set of nodes as bits."""
    return sum(1 << node for node in set(nodes))


def nodes_in(mask: int) -> set[int]:
    """Bits as a set of nodes."""
    return {node for node in range(mask.bit_length()) if mask >> node & 1}


# ---- questions about all positions


def always_reaches(rig: Rig, targets: Collection[int]) -> set[int]:
    """The nodes that reach a target in every combination of positions."""
    wanted = bits(targets)
    return {
        node
        for node in range(rig.count)
        if all(standing.relieving[node] & wanted for standing in rig.standings.values())
    }


def highest(rig: Rig) -> list[float]:
    """The most that stands at each node in any one combination [Pa above the atmosphere]."""
    best = [0.0] * rig.count
    for standing in rig.standings.values():
        settled = settle(rig, standing, [0.0] * rig.count)
        best = [max(pair) for pair in zip(best, settled, strict=True)]
    return best


def settle(rig: Rig, standing: Standing, kept: Sequence[float]) -> list[float]:
    """What stands at each node when a line-up has had its time, with what stood there before."""
    caps = standing.caps
    at = [min(pair) for pair in zip(kept, caps, strict=True)]
    for node, makes in rig.sources:
        at[node] = max(at[node], min(makes, caps[node]))
    before: list[float] = []
    while at != before:
        before = list(at)
        for u, v, piece in standing.arcs:
            at[v] = max(at[v], min(at[u], piece.most, caps[v]))
    return at


def fed_cut_off(rig: Rig, starts: Collection[int], targets: Collection[int]) -> set[int]:
    """The nodes that a start feeds in some combination in which nothing on the way reaches a target."""
    fed = 0
    for standing in rig.standings.values():
        fed |= spill(rig, standing, bits(starts), bits(targets))
    return nodes_in(fed)


def spill(rig: Rig, standing: Standing, filled: int, wanted: int) -> int:
    """What is filled in one combination, of the nodes that reach nothing wanted and are not vented."""
    relieved = {node for node, mask in enumerate(standing.relieving) if mask & wanted}
    bare = bits(set(range(rig.count)) - relieved - rig.vented)
    filled &= bare
    before = -1
    while filled != before:
        before = filled
        for u, v, _ in standing.arcs:
            if filled >> u & 1:
                filled |= 1 << v & bare
    return filled


def fewest_leaks(rig: Rig, start: int) -> list[int | None]:
    """By node: the fewest pieces that must leak back before some combination leads there."""
    stopping = [piece for piece in rig.pieces if piece.stops_back]

    def arcs(leaking: Collection[Piece]) -> Iterator[set[Arc]]:
        for standing in rig.standings.values():
            ways = {(u, v) for u, v, _ in standing.arcs}
            yield ways | {(v, u) for u, v, piece in standing.arcs if piece in leaking}

    return _fewest(rig, start, stopping, arcs)


def fewest_locks(rig: Rig, start: int) -> list[int | None]:
    """By node: the fewest lockable pieces that must let through before it is joined with the start.

    Everything else is open, and nothing that stops flow back is trusted.
    """
    locked = [piece for piece in rig.pieces if piece.lockable]

    def arcs(passing: Collection[Piece]) -> Iterator[set[Arc]]:
        ways = {
            arc
            for piece in rig.pieces
            if piece in passing or not piece.lockable
            for arcs in piece.reachable
            for arc in arcs
        }
        yield ways | {(v, u) for u, v in ways}

    return _fewest(rig, start, locked, arcs)


def _fewest(
    rig: Rig,
    start: int,
    pieces: Sequence[Piece],
    arcs: Callable[[Collection[Piece]], Iterator[set[Arc]]],
) -> list[int | None]:
    found: list[int | None] = [None] * rig.count
    for fewest in range(len(pieces) + 1):
        for chosen in combinations(pieces, fewest):
            for ways in arcs(chosen):
                for node in nodes_in(leads(rig.count, ways)[start]):
                    if found[node] is None:
                        found[node] = fewest
        if None not in found:
            break
    return found


# ---- questions about sequences of line-ups


def highest_over_sequences(rig: Rig, most: int = 100) -> list[float] | None:
    """The most that stands at each node after any sequence of line-ups [Pa above the atmosphere].

    Walks from every state of the whole system, what stands at each node, to every state that one more
    line-up makes of it.

    Returns:
        By node; None where there are more line-ups, or more states to be reached, than `most`.
    """
    if len(rig.choices) > most:
        return None
    first = (0.0,) * rig.count
    seen, todo = {first}, [first]
    while todo:
        state = todo.pop()
        for standing in rig.standings.values():
            after = tuple(settle(rig, standing, state))
            if after not in seen:
                seen.add(after)
                todo.append(after)
        if len(seen) > most:
            return None
    return [max(at) for at in zip(*seen, strict=True)]


def fed_over_sequences(rig: Rig, starts: Collection[int], targets: Collection[int]) -> set[int]:
    """The nodes that can come to be filled while they reach no target, after any sequence of line-ups.

    What is filled and comes to reach a target is empty again.
    """
    seen, todo = {0}, [0]
    while todo:
        filled = todo.pop()
        for standing in rig.standings.values():
            after = spill(rig, standing, filled | bits(starts), bits(targets))
            if after not in seen:
                seen.add(after)
                todo.append(after)
    return {node for mask in seen for node in nodes_in(mask)}
