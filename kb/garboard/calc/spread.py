"""What tolerances do to a value: its range when everything is at its worst.

Every corner of the toleranced inputs anywhere upstream is worked out at once, on arrays; the
weather in the vessel's atmosphere is one of them. With more than twelve inputs the two corners are
taken that the gradient points to. The nominal point is always among those looked at.

Corners are the worst that can happen to a value that goes one way with each input. Whether it does
is proved from intervals, and failing that read from the gradient at all points looked at. Where it does
not, 10 000 points inside the ranges are worked out too, and as many again with the inputs that do
go one way at their ends. A point without an answer, or a division by zero between the points,
leaves the range unknown.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import cast

import numpy as np

from garboard.calc.arithmetic import HAIR, Slots
from garboard.calc.corners import (
    SAMPLES,
    Corners,
    Kept,
    Sampled,
    Samples,
    between,
    first_look,
    uniform,
)
from garboard.calc.direction import Direction, Directions
from garboard.calc.gradient import Gradient, Slope
from garboard.calc.ledger import Ledger, Root
from garboard.calc.tree import Node, Reference, reads_table, slots_of

__all__ = ["LONG_CHAIN", "MOST_ROOTS", "Extremes", "Spread"]

MOST_ROOTS = 12
MOST_KEPT = 6
"""Sets of combinations held at a time; the lines of a block mostly share theirs."""
MOST_TABLE_ROOTS = 8
"""A table is read one point at a time: at more uncertain inputs its range stays unknown."""
TABLE_SAMPLES = 128
"""Points inside where a table is read."""
MOST_TURNS = 6
"""Times the gradient is asked again at the corner that it pointed to."""
LONG_CHAIN = 25
"""Lines upstream past which the gradient, which walks them all, is asked once or not at all."""
UPWARD = (1.0, 1.0)
Key = tuple[str | int, ...]
"""Of a set of combinations: what they are and of which inputs."""
STRETCH = 1.25
"""Points of a range are drawn from so much of it and pulled back to its ends: one in five is one."""


@dataclass(frozen=True, slots=True)
class Extremes:
    """The ends of a range, in SI."""

    low: float | None
    """None: at some point there is no answer."""
    high: float | None
    sampled: bool = False
    """Looked for between the corners too."""


@dataclass(frozen=True, slots=True)
class Survey:
    """The combinations at which a value is looked at."""

    sets: tuple[Corners, ...]
    sampled: bool = False
    broken: bool = False
    """It divides by zero between them."""


class Spread:
    """Ranges of the values of one ledger."""

    def __init__(self, ledger: Ledger) -> None:
        self.ledger = ledger
        self.directions = Directions(ledger)
        self.shared = Kept(ledger)
        self.kept: dict[Key, Corners] = {}
        nominal = cast("Slots", Sampled(ledger.slots))
        self.gradient = Gradient(ledger, nominal, self.shared.pushes)
        """At the values as given."""

    def range_of(self, node: Node, together: int = 0) -> Extremes:
        """The range of a value.

        Of `y = x * (4 - x)` with x = 2 +/- 1: from 3, at both corners, to 4 between them.

        Args:
            node: How it is worked out.
            together: Roots of its block, a bit each; values of one block share their corners.
        """
        survey = self.survey(node, together)
        (samples,) = self.read(survey, (node,))
        low, high = float(samples.min()), float(samples.max())
        if not math.isfinite(low + high):
            return Extremes(None, None)
        if isinstance(node, Reference):
            own = self.ledger.slots[node.slot]
            low, high = min(low, own), max(high, own)
            if high - low <= HAIR * abs(own):
                low = high = own
        return Extremes(low, high, survey.sampled)

    def is_sampled(self, node: Node) -> bool:
        """Whether a value goes both ways with some input, so that its corners are not its ends."""
        return bool(self.mask_of(node)) and self.survey(node, 0).sampled

    def samples(self, nodes: Sequence[Node], guide: Node, together: int) -> list[Samples]:
        """Some nodes at the same combinations of inputs, one array each.

        Args:
            nodes: What to work out.
            guide: The value whose ends are looked for.
            together: Roots of the block, a bit each.
        """
        return self.read(self.survey(guide, together), nodes)

    def read(self, survey: Survey, nodes: Sequence[Node]) -> list[Samples]:
        """Some nodes at all combinations; one without an answer more where there is a pole."""
        parts = [corners.read(nodes) for corners in survey.sets]
        if survey.broken:
            parts.append([np.array([np.nan])] * len(nodes))
        if len(parts) == 1:
            return parts[0]
        return [np.concatenate([part[at] for part in parts]) for at in range(len(nodes))]

    def mask_of(self, node: Node) -> int:
        """The roots upstream of a node, a bit each."""
        mask = 0
        for slot in slots_of(node):
            mask |= self.ledger.upstream[slot]
        return mask

    def survey(self, guide: Node, together: int) -> Survey:
        """Where to look for the ends of a value."""
        mask = self.mask_of(guide)
        tabled = reads_table(guide) or not self.ledger.tabled.isdisjoint(slots_of(guide))
        if tabled and mask.bit_count() > MOST_TABLE_ROOTS:
            return Survey((), broken=True)
        first = self.first_look(mask, 0 if tabled else together)
        direction = self.directions.of(guide)
        if direction and direction.proved:
            return self.proved(direction, mask, first)
        if self.chain(guide) > LONG_CHAIN and mask.bit_count() <= MOST_ROOTS:
            return self.sampled(guide, [first], dict.fromkeys(first.given, 0), SAMPLES)
        values = first.read((guide,))[0]
        slope = first.gradient.of(guide)
        if slope.pole:
            return Survey((first,), broken=True)
        signs = self.signs(slope, mask, float(np.abs(values).max()))
        sets = [first]
        if mask.bit_count() > MOST_ROOTS:
            sets.append(self.climbed(guide, mask))
            signs = self.agreed(signs, guide, sets[-1])
        if not slope.fork and all(signs.values()):
            return Survey(tuple(sets))
        return self.sampled(guide, sets, signs, TABLE_SAMPLES if slope.table else SAMPLES)

    def proved(self, direction: Direction, mask: int, first: Corners) -> Survey:
        """The corners of a value that surely goes one way with each input."""
        if mask.bit_count() <= MOST_ROOTS:
            return Survey((first,))
        signs = {
            root.slot: -1 if direction.slopes.get(at, UPWARD)[0] < 0.0 else 1
            for at, root in self.ledger.roots.items()
            if mask >> at & 1
        }
        return Survey((first, self.two_corners(mask, signs, signs)))

    def sampled(
        self, guide: Node, sets: list[Corners], signs: dict[int, int], count: int
    ) -> Survey:
        """Look between the corners too."""
        sets = [*sets, *self.inside(sets[0].mask, signs, count)]
        broken = any(corners.has_pole(guide) for corners in sets)
        return Survey(tuple(sets), sampled=True, broken=broken)

    def chain(self, guide: Node) -> int:
        """How many lines stand between a value and its inputs, one behind another."""
        return max((self.ledger.depth[slot] for slot in slots_of(guide)), default=0)

    def first_look(self, mask: int, together: int) -> Corners:
        """The combinations that are looked at first."""
        for wanted in (together | mask, mask):
            if wanted.bit_count() <= MOST_ROOTS:
                return self.look_at(wanted, corners=True)
        return self.look_at(mask, corners=False)

    def look_at(self, mask: int, *, corners: bool) -> Corners:
        """The combinations looked at first, of some inputs."""
        make = partial(first_look, self.shared, mask, corners=corners)
        return self.keep(("first", mask, corners), make)

    def keep(self, key: Key, make: Callable[[], Corners]) -> Corners:
        """Hold a set of combinations while its neighbours are worked out."""
        if key not in self.kept:
            while len(self.kept) >= MOST_KEPT:
                del self.kept[next(iter(self.kept))]
            self.kept[key] = make()
        return self.kept[key]

    def signs(self, slope: Slope, mask: int, size: float) -> dict[int, int]:
        """Which way each input moves a value at all points: 1, -1, or 0 where both ways.

        What moves it by less than a hair of its size does not count.
        """
        found = {}
        for root in self.ledger.roots_of(mask):
            slopes = np.asarray(slope.by_slot.get(root.slot, 0.0))
            hair = HAIR * size / (root.high - root.low)
            rises, falls = bool((slopes > hair).any()), bool((slopes < -hair).any())
            doubt = (rises and falls) or bool(np.isnan(slopes).any())
            found[root.slot] = 0 if doubt else -1 if falls else 1
        return found

    def agreed(self, signs: dict[int, int], guide: Node, corners: Corners) -> dict[int, int]:
        """Which way each input moves a value, 0 where it is not the same way at some corners."""
        (values,) = corners.read((guide,))
        there = self.signs(corners.gradient.of(guide), corners.mask, float(np.abs(values).max()))
        return {slot: sign if there[slot] == sign else 0 for slot, sign in signs.items()}

    def two_corners(self, mask: int, most: dict[int, int], least: dict[int, int]) -> Corners:
        """The corner at which a value is greatest, and that at which it is least.

        Args:
            mask: The inputs, a bit each.
            most: Which way each input moves it where it is greatest, 1 or -1.
            least: The same where it is least.
        """
        inputs = {}
        for root in self.ledger.roots_of(mask):
            high = root.high if most[root.slot] > 0 else root.low
            low = root.low if least[root.slot] > 0 else root.high
            inputs[root.slot] = np.array((high, low))
        return Corners(self.shared, mask, inputs)

    def climbed(self, guide: Node, mask: int) -> Corners:
        """The two corners that the gradient points to, asked again at each corner come to.

        What stands at the end of a long chain of lines is asked less often.
        """
        roots = self.ledger.roots_of(mask)
        slope = self.gradient.of(guide)
        turns = max(1, min(MOST_TURNS, LONG_CHAIN // max(self.chain(guide), 1)))
        nominal = {root.slot: sign_at(slope, root, 0) for root in roots}
        most, least = nominal, dict(nominal)
        rows: dict[int, list[Samples]] = {root.slot: [] for root in roots}
        for _ in range(turns):
            corners = self.two_corners(mask, most, least)
            for root in roots:
                rows[root.slot].append(cast("Samples", corners.sampled[root.slot]))
            corners.read((guide,))
            there = corners.gradient.of(guide)
            before = most, least
            most = {root.slot: sign_at(there, root, 0) for root in roots}
            least = {root.slot: sign_at(there, root, 1) for root in roots}
            if (most, least) == before:
                break
        else:
            corners = self.two_corners(mask, most, least)
            for root in roots:
                rows[root.slot].append(cast("Samples", corners.sampled[root.slot]))
        inputs = {slot: np.concatenate(parts) for slot, parts in rows.items()}
        return Corners(self.shared, mask, inputs)

    def inside(self, mask: int, signs: dict[int, int], count: int) -> list[Corners]:
        """Points inside the ranges, and such with the inputs that go one way at their ends.

        Where none goes one way the second kind is enough: most of its points lie inside.
        """
        ends = partial(self.scattered, mask, signs, count)
        found = [self.keep(("ends", mask, count, *signs.values()), ends)]
        if any(signs.values()):
            even = partial(self.scattered, mask, {}, count)
            found.append(self.keep(("inside", mask, count), even))
        return found

    def scattered(self, mask: int, signs: dict[int, int], count: int) -> Corners:
        """Points inside the ranges.

        Args:
            mask: The inputs, a bit each.
            signs: Where given, inputs that go one way, 1 or -1, stand at the ends that make the value
                greatest and least in turn; the others, 0, at an end once in five.
            count: How many points.
        """
        inputs = {}
        upper = np.arange(count) % 2 == 0
        for root in self.ledger.roots_of(mask):
            share = uniform(self.ledger.address_of(root.slot))[:count]
            sign = signs.get(root.slot)
            if sign:
                share = np.where(upper == (sign > 0), 1.0, 0.0)
            elif sign == 0:
                share = np.clip((share - 0.5) * STRETCH + 0.5, 0.0, 1.0)
            places = between(root, share)
            inputs[root.slot] = np.where(share == 1.0, root.high, places)
        return Corners(self.shared, mask, inputs)


def sign_at(slope: Slope, root: Root, row: int) -> int:
    """Which way an input moves a value at one point."""
    slopes = np.ravel(slope.by_slot.get(root.slot, 0.0))
    return -1 if slopes[min(row, len(slopes) - 1)] < 0 else 1
