"""What tolerances do to a value: its range when everything is at its worst.

Every corner of the toleranced inputs anywhere upstream is worked out at once, on arrays; the
weather in the vessel's atmosphere is one of them. With more than twelve inputs the two corners are
taken that one-at-a-time differences point to. The nominal point is always among those looked at. A
corner without an answer leaves the range unknown.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import cast

import numpy as np
from numpy.typing import NDArray

from garboard.calc.arithmetic import Closure, Slots
from garboard.calc.corner_arithmetic import CORNERS
from garboard.calc.evaluate import build
from garboard.calc.ledger import Ledger, Root
from garboard.calc.tree import Node, slots_of

__all__ = ["MOST_ROOTS", "Extremes", "Spread"]

Samples = NDArray[np.float64]

MOST_ROOTS = 12
MOST_KEPT = 4
"""Sets of corners held at a time."""


@dataclass(frozen=True, slots=True)
class Extremes:
    """The ends of a range, in SI."""

    low: float | None
    """None: at some corner there is no answer."""
    high: float | None


class Sampled(dict[int, float]):
    """Values by slot: an array where an input reaches, one number of numpy's everywhere else.

    A number of numpy's divides by zero without an exception, as the arrays do.
    """

    def __init__(self, nominal: Slots) -> None:
        super().__init__()
        self.nominal = nominal

    def __missing__(self, slot: int) -> float:
        found = np.float64(self.nominal[slot])
        self[slot] = found
        return found


class Corners:
    """The values of a handbook at many combinations of its toleranced inputs at once."""

    def __init__(self, ledger: Ledger, mask: int, inputs: dict[int, Samples]) -> None:
        self.ledger = ledger
        self.mask = mask
        self.size = len(next(iter(inputs.values())))
        self.sampled = Sampled(ledger.slots)
        for slot, samples in inputs.items():
            self.sampled[slot] = cast("float", samples)

    def read(self, nodes: Sequence[Node], closures: dict[int, Closure]) -> list[Samples]:
        """Some nodes at every combination, an array each; not finite where one has no answer.

        Args:
            nodes: What to work out.
            closures: Of the slots, kept from one set of combinations to the next.
        """
        slots = cast("Slots", self.sampled)
        with np.errstate(all="ignore"):
            for slot in self.cone(slot for node in nodes for slot in slots_of(node)):
                if slot not in closures:
                    closures[slot] = build(self.ledger.formulas[slot].node, CORNERS)
                self.sampled[slot] = closures[slot](slots)
            found = [np.asarray(build(node, CORNERS)(slots), dtype=float) for node in nodes]
        return [own if own.shape else np.broadcast_to(own, (self.size,)) for own in found]

    def cone(self, slots: Iterable[int]) -> list[int]:
        """The slots to be worked out first, in order; what no input here reaches stays as it is."""
        found: set[int] = set()
        waiting = list(slots)
        while waiting:
            slot = waiting.pop()
            if slot in found or slot in self.sampled or not self.ledger.upstream[slot] & self.mask:
                continue
            formula = self.ledger.formulas.get(slot)
            if formula:
                found.add(slot)
                waiting.extend(formula.needs)
        return sorted(found)


class Spread:
    """Ranges of the values of one ledger."""

    def __init__(self, ledger: Ledger) -> None:
        self.ledger = ledger
        self.kept: dict[int, Corners] = {}
        self.closures: dict[int, Closure] = {}

    def range_of(self, node: Node, together: int = 0) -> Extremes:
        """The range of a value.

        Args:
            node: How it is worked out.
            together: Roots of its block, a bit each; values of one block share their corners.
        """
        (samples,) = self.samples((node,), node, together)
        low, high = float(samples.min()), float(samples.max())
        if not math.isfinite(low + high):
            return Extremes(None, None)
        return Extremes(low, high)

    def samples(self, nodes: Sequence[Node], guide: Node, together: int) -> list[Samples]:
        """Some nodes at the same combinations of inputs, one array each.

        Args:
            nodes: What to work out.
            guide: Where there are too many inputs, the value whose ends are looked for.
            together: Roots of the block, a bit each.
        """
        mask = self.mask_of(guide)
        parts = [
            corners.read(nodes, self.closures)
            for corners in self.sets(guide, mask, together | mask)
        ]
        if len(parts) == 1:
            return parts[0]
        return [np.concatenate([part[at] for part in parts]) for at in range(len(nodes))]

    def mask_of(self, node: Node) -> int:
        """The roots upstream of a node, a bit each."""
        mask = 0
        for slot in slots_of(node):
            mask |= self.ledger.upstream[slot]
        return mask

    def sets(self, guide: Node, mask: int, together: int) -> list[Corners]:
        """The combinations to look at."""
        for wanted in (together, mask):
            if wanted.bit_count() <= MOST_ROOTS:
                return [self.all_corners(wanted)]
        singles = self.one_at_a_time(mask)
        return [singles, self.two_corners(guide, mask, singles)]

    def all_corners(self, mask: int) -> Corners:
        """Every combination of the ends of some inputs, and the nominal point."""
        if mask in self.kept:
            return self.kept[mask]
        roots = self.roots(mask)
        which = np.arange(1 << len(roots))
        inputs = {
            root.slot: np.append(
                np.where((which >> at) & 1, root.high, root.low), self.ledger.slots[root.slot]
            )
            for at, root in enumerate(roots)
        }
        return self.keep(mask, Corners(self.ledger, mask, inputs))

    def keep(self, key: int, corners: Corners) -> Corners:
        """Hold a set of corners while its neighbours are worked out."""
        while len(self.kept) >= MOST_KEPT:
            del self.kept[next(iter(self.kept))]
        self.kept[key] = corners
        return corners

    def roots(self, mask: int) -> list[Root]:
        """The inputs of a mask."""
        found = []
        while mask:
            lowest = mask & -mask
            found.append(self.ledger.roots[lowest.bit_length() - 1])
            mask ^= lowest
        return found

    def one_at_a_time(self, mask: int) -> Corners:
        """Each input alone at its low and its high end, and the nominal point."""
        roots = self.roots(mask)
        inputs = {}
        for at, root in enumerate(roots):
            samples = np.full(2 * len(roots) + 1, self.ledger.slots[root.slot])
            samples[2 * at], samples[2 * at + 1] = root.low, root.high
            inputs[root.slot] = samples
        return Corners(self.ledger, mask, inputs)

    def two_corners(self, guide: Node, mask: int, singles: Corners) -> Corners:
        """The corners at which a value is least and greatest, as far as each input alone tells."""
        (moved,) = singles.read((guide,), self.closures)
        inputs = {}
        for at, root in enumerate(self.roots(mask)):
            rises = not moved[2 * at + 1] < moved[2 * at]
            ends = (root.low, root.high) if rises else (root.high, root.low)
            inputs[root.slot] = np.array(ends)
        return Corners(self.ledger, mask, inputs)
