"""Hold the searches against the reference, question by question, on one random system at a time.

For systems without coupled parts, and for what is worked out over sequences of line-ups, the two
answers must be the same. With three-way valves one line-up at a time is asked for less: no answer may be
the more harmless of the two.
"""

import operator
import random
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from garboard.systems import search, sequences
from tests.systems import brute_force
from tests.systems.random_plants import Drawing, Laid, draw

SAME = 1.0
"""Two pressures as near as that are one [Pa]."""


@dataclass(frozen=True)
class Answer:
    """What was said of each node of one system, and what trying everything says."""

    what: str
    seed: int
    ours: Sequence[Any]
    tried: Sequence[Any]
    careful: Callable[[Any, Any], bool] = operator.eq
    """Whether the first of two answers that differ errs on the safe side."""

    def differing(self) -> Iterator[tuple[int, Any, Any]]:
        """Nodes at which the two differ."""
        for node, (ours, tried) in enumerate(zip(self.ours, self.tried, strict=True)):
            if ours != tried:
                yield node, ours, tried

    @property
    def wrong(self) -> list[str]:
        """A sentence for each node at which the two differ."""
        return [self._said(*each) for each in self.differing()]

    @property
    def unsafe(self) -> list[str]:
        """A sentence for each node of which something too harmless is said."""
        return [
            self._said(node, ours, tried)
            for node, ours, tried in self.differing()
            if not self.careful(ours, tried)
        ]

    def _said(self, node: int, ours: object, tried: object) -> str:
        return f"{self.what} at node {node} of system {self.seed}: {ours}, by trying all {tried}"


Question = Callable[[Drawing, Laid], Iterator[Answer]]
Lay = Callable[[Drawing], Laid]


def answers(
    questions: Sequence[Question], lay: Lay, seeds: Iterable[int], *, coupled: bool = False
) -> Iterator[Answer]:
    """Some questions, asked of many systems."""
    for seed in seeds:
        drawing = draw(seed, coupled=coupled)
        laid = lay(drawing)
        for question in questions:
            yield from question(drawing, laid)


def said_of(nodes: Collection[int], laid: Laid) -> list[bool]:
    """Of each node of a rig, whether its place is among some nodes of the plant."""
    return [place in nodes for place in laid.place]


def true_of(nodes: Collection[int], drawing: Drawing) -> list[bool]:
    """Of each node of a rig, whether it is among some."""
    return [node in nodes for node in range(drawing.rig.count)]


def pressures(found: Iterable[float]) -> list[float]:
    """Rounded, so that sums in another order do not count."""
    return [round(pressure / SAME) * SAME for pressure in found]


# ---- the questions


def always_relieved(drawing: Drawing, laid: Laid) -> Iterator[Answer]:
    """Which nodes always reach a relief valve."""
    ours = search.always_reaches(laid.net, {relief.node for relief in laid.reliefs})
    tried = brute_force.always_reaches(drawing.rig, {at for at, _ in drawing.rig.reliefs})
    yield Answer(
        "always relieved", drawing.seed, said_of(ours, laid), true_of(tried, drawing), operator.le
    )


def always_vented(drawing: Drawing, laid: Laid) -> Iterator[Answer]:
    """Which nodes always reach open air."""
    ours = search.always_reaches(laid.net, laid.air)
    tried = brute_force.always_reaches(drawing.rig, drawing.rig.air)
    yield Answer(
        "always vented", drawing.seed, said_of(ours, laid), true_of(tried, drawing), operator.le
    )


def highest_pressure(drawing: Drawing, laid: Laid) -> Iterator[Answer]:
    """The most that can stand at each node."""
    caps = search.caps_of(laid.net, laid.reliefs)
    found = search.highest(laid.net, laid.starts(), caps).at
    ours = pressures(found[place] for place in laid.place)
    tried = pressures(brute_force.highest(drawing.rig))
    yield Answer("highest pressure", drawing.seed, ours, tried, operator.ge)


def fed_while_cut_off(drawing: Drawing, laid: Laid) -> Iterator[Answer]:
    """Which nodes can be fed while they reach no relief valve."""
    rig = drawing.rig
    safe = search.always_reaches(laid.net, {relief.node for relief in laid.reliefs})
    ours, _ = search.fed_outside(laid.net, [source.node for source in laid.sources], safe)
    tried = brute_force.fed_cut_off(rig, *_starts_and_targets(drawing))
    yield Answer(
        "fed while cut off", drawing.seed, said_of(ours, laid), true_of(tried, drawing), operator.ge
    )


def self_acting_barriers(drawing: Drawing, laid: Laid) -> Iterator[Answer]:
    """The fewest parts that must leak back before a node is flooded, every valve free."""
    start = drawing.seed % drawing.rig.count
    parts = laid.net.parts

    def cost(number: int, forwards: bool) -> int | None:  # noqa: FBT001 - as the search calls it
        return 0 if forwards else (1 if parts[number].one_way else None)

    found = search.fewest_barriers(laid.net, [laid.place[start]], cost).count
    ours = [found[place] for place in laid.place]
    tried = brute_force.fewest_leaks(drawing.rig, start)
    yield Answer("self-acting barriers", drawing.seed, ours, tried, _no_more)


def lockable_barriers(drawing: Drawing, laid: Laid) -> Iterator[Answer]:
    """The fewest lockable valves between a node and each of three stores, and the two nearest stores."""
    rig = drawing.rig
    dice = random.Random(drawing.seed)  # noqa: S311 - the same stores at every run
    stores = dict(zip("abc", dice.sample(range(rig.count), 3), strict=True))
    parts = laid.net.parts

    def cost(number: int, forwards: bool) -> int | None:  # noqa: ARG001, FBT001 - as the search calls it
        return int(parts[number].lockable)

    apart = {name: brute_force.fewest_locks(rig, node) for name, node in stores.items()}
    for name, node in stores.items():
        found = search.fewest_barriers(laid.net, [laid.place[node]], cost).count
        ours = [found[place] for place in laid.place]
        yield Answer(f"locks from {name}", drawing.seed, ours, apart[name], _no_more)
    nearest = search.two_nearest(
        laid.net, {name: laid.place[node] for name, node in stores.items()}, cost
    )
    two = [tuple(count for count, _ in nearest[place]) for place in laid.place]
    least = [_two_least(apart, node) for node in range(rig.count)]
    yield Answer("two nearest stores", drawing.seed, two, least)


def _no_more(ours: int | None, tried: int | None) -> bool:
    """Fewer barriers than there are is the safe side."""
    return ours is not None and (tried is None or ours <= tried)


def _two_least(apart: Mapping[str, list[int | None]], node: int) -> tuple[int, ...]:
    return tuple(sorted(there for row in apart.values() if (there := row[node]) is not None)[:2])


def _starts_and_targets(drawing: Drawing) -> tuple[set[int], set[int]]:
    rig = drawing.rig
    return {node for node, _ in rig.sources}, {node for node, _ in rig.reliefs}


ONE_LINE_UP: tuple[Question, ...] = (
    always_relieved,
    always_vented,
    highest_pressure,
    fed_while_cut_off,
    self_acting_barriers,
    lockable_barriers,
)


# ---- over sequences of line-ups


def pressure_over_sequences(drawing: Drawing, laid: Laid) -> Iterator[Answer]:
    """The most that can stand at each node after any sequence of line-ups."""
    tried = drawing.rig.over_sequences
    if tried is not None:
        found = sequences.highest_over_time(laid.net, laid.starts(), laid.reliefs)
        ours = pressures(found[place] for place in laid.place)
        yield Answer("highest over sequences", drawing.seed, ours, pressures(tried), operator.ge)


def relaxed_over_sequences(drawing: Drawing, laid: Laid) -> Iterator[Answer]:
    """The quick answer against the same: it may be too high, and never too low."""
    tried = drawing.rig.over_sequences
    if tried is not None:
        caps = search.caps_of(laid.net, laid.reliefs)
        found = search.highest(laid.net, laid.starts(), caps).at
        ours = pressures(found[place] for place in laid.place)
        yield Answer("relaxed pressure", drawing.seed, ours, pressures(tried), operator.ge)


def fed_over_sequences(drawing: Drawing, laid: Laid) -> Iterator[Answer]:
    """Which nodes can come to be filled while cut off, after any sequence of line-ups."""
    starts = [source.node for source in laid.sources]
    targets = {relief.node for relief in laid.reliefs}
    ours = sequences.fed_over_time(laid.net, starts, targets)
    tried = brute_force.fed_over_sequences(drawing.rig, *_starts_and_targets(drawing))
    yield Answer(
        "fed over sequences",
        drawing.seed,
        said_of(ours, laid),
        true_of(tried, drawing),
        operator.ge,
    )


OVER_SEQUENCES: tuple[Question, ...] = (
    pressure_over_sequences,
    relaxed_over_sequences,
    fed_over_sequences,
)
