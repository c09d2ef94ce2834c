"""The values of a handbook at many combinations of its toleranced inputs at once.

Each combination is a row. The rows looked at first are all corners (where there are few enough
inputs), the nominal point, each input alone at its two ends, and some points inside the ranges. The
points inside come from numpy's PCG64 with a fixed seed and the address of the input, so that they
are the same on every machine, in whatever order the fences stand.
"""

from collections.abc import Sequence
from functools import lru_cache
from typing import cast

import numpy as np
from numpy.typing import NDArray

from garboard.calc.arithmetic import Closure, Slots
from garboard.calc.corner_arithmetic import CORNERS
from garboard.calc.evaluate import build
from garboard.calc.gradient import Gradient, Pushes
from garboard.calc.ledger import Ledger, Root
from garboard.calc.tree import Node, Reference, can_have_pole, slots_of

__all__ = [
    "SAMPLES",
    "Corners",
    "Kept",
    "Sampled",
    "Samples",
    "between",
    "first_look",
    "uniform",
]

Samples = NDArray[np.float64]

SEED = 20_260_101
"""Of all points inside; any number would do, so long as it stays."""
SAMPLES = 10_000
"""Points inside the ranges where a value goes up and down between its corners."""
INSIDE = 32
"""Points inside the ranges that are looked at to find out whether it does."""


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


class Kept:
    """What serves every set of combinations of one ledger: its closures, built once."""

    def __init__(self, ledger: Ledger) -> None:
        self.ledger = ledger
        self.closures: dict[int, Closure] = {}
        self.pushes: Pushes = {}
        self.divisors: dict[int, bool] = {}

    def closure(self, slot: int) -> Closure:
        """What works a slot out on arrays."""
        found = self.closures.get(slot)
        if found is None:
            found = self.closures[slot] = build(self.ledger.formulas[slot].node, CORNERS)
        return found

    def divides(self, slot: int) -> bool:
        """Whether something in the line that sets a slot can divide by zero."""
        if slot not in self.divisors:
            formula = self.ledger.formulas.get(slot)
            self.divisors[slot] = formula is not None and can_have_pole(formula.node)
        return self.divisors[slot]

    @staticmethod
    def value_of(node: Node, slots: Slots) -> float:
        """A node, once all slots that it uses are worked out."""
        return slots[node.slot] if isinstance(node, Reference) else build(node, CORNERS)(slots)


class Corners:
    """One set of combinations."""

    def __init__(self, kept: Kept, mask: int, inputs: dict[int, Samples]) -> None:
        """Set the inputs.

        Args:
            kept: The closures of the ledger.
            mask: The inputs, a bit each.
            inputs: Their values in SI by slot, one for each combination.
        """
        self.kept = kept
        self.ledger = kept.ledger
        self.mask = mask
        self.size = len(next(iter(inputs.values())))
        self.sampled = Sampled(self.ledger.slots)
        self.sampled.update(cast("dict[int, float]", inputs))
        self.alone: dict[int, int] = {}
        """By slot of an input: the row in which it alone is at its low end; its high end is next."""
        self.given = frozenset(inputs)
        self.sound = set(inputs)
        """Slots that divide by nothing near zero, nor does anything upstream of them."""
        slots = cast("Slots", self.sampled)
        self.gradient = Gradient(self.ledger, slots, kept.pushes)
        self.poles = Gradient(self.ledger, slots, kept.pushes, only_poles=True)

    def has_pole(self, node: Node) -> bool:
        """Whether a value divides by zero between the combinations."""
        self.read((node,))
        slots = self.ledger.moved_cone(slots_of(node), self.sound, self.mask)
        with np.errstate(all="ignore"):
            near = self.poles.walk(node).poles or any(
                self.poles.local(slot).poles for slot in slots if self.kept.divides(slot)
            )
            if not near:
                self.sound.update(slots)
            return bool(near) and self.poles.of(node).pole

    def read(self, nodes: Sequence[Node]) -> list[Samples]:
        """Some nodes at every combination, an array each; not finite where one has no answer."""
        slots, sampled = cast("Slots", self.sampled), self.sampled
        ready = all(isinstance(node, Reference) and node.slot in sampled for node in nodes)
        if not ready:
            wanted = (slot for node in nodes for slot in slots_of(node))
            with np.errstate(all="ignore"):
                for slot in self.ledger.moved_cone(wanted, sampled, self.mask):
                    sampled[slot] = self.kept.closure(slot)(slots)
                return [self.spread_out(self.kept.value_of(node, slots)) for node in nodes]
        return [self.spread_out(slots[cast("Reference", node).slot]) for node in nodes]

    def spread_out(self, own: float) -> Samples:
        """A result as an array, also where no input reaches it."""
        found = own if isinstance(own, np.ndarray) else np.asarray(own, dtype=float)
        return found if found.shape else np.broadcast_to(found, (self.size,))


def first_look(kept: Kept, mask: int, *, corners: bool) -> Corners:
    """The combinations that are looked at first.

    Rows: all corners where wanted; the nominal point; each input alone at its low and its high end;
    points inside.

    Args:
        kept: The closures of the ledger.
        mask: The inputs, a bit each.
        corners: Whether there are few enough inputs for all corners.
    """
    ledger = kept.ledger
    roots = ledger.roots_of(mask)
    count = len(roots)
    table = np.array([(root.low, root.high, ledger.slots[root.slot]) for root in roots])
    shares = inside(tuple(ledger.address_of(root.slot) for root in roots))
    low, width = table[:, :1], table[:, 1:2] - table[:, :1]
    picked = table[np.arange(count)[:, None], pattern(count, corners=corners)]
    rows = np.concatenate((picked, low + shares * width), axis=1)
    found = Corners(kept, mask, {root.slot: rows[at] for at, root in enumerate(roots)})
    alone = picked.shape[1] - 2 * count
    found.alone = {root.slot: alone + 2 * at for at, root in enumerate(roots)}
    return found


LOW, HIGH, NOMINAL = range(3)


@lru_cache(maxsize=64)
def pattern(count: int, *, corners: bool) -> NDArray[np.int_]:
    """Which end of each input stands in which row: the corners, the nominal point, each alone."""
    which = np.arange(1 << count if corners else 0)
    ends = (which >> np.arange(count)[:, None]) & 1
    rest = np.full((count, 1 + 2 * count), NOMINAL)
    for at in range(count):
        rest[at, 1 + 2 * at : 3 + 2 * at] = LOW, HIGH
    return np.concatenate((ends, rest), axis=1)


@lru_cache(maxsize=256)
def inside(addresses: tuple[str, ...]) -> Samples:
    """The points inside that are looked at first, as shares of the ranges, a row for each input."""
    return np.stack([uniform(address)[:INSIDE] for address in addresses])


def between(root: Root, share: Samples) -> Samples:
    """Points of an input, 0 at its low end and 1 at its high one."""
    return root.low + share * (root.high - root.low)


@lru_cache(maxsize=256)
def uniform(address: str) -> Samples:
    """Numbers between 0 and 1, evenly spread, always the same for one address."""
    seeds = np.random.SeedSequence([SEED, *address.encode()])
    found = np.random.Generator(np.random.PCG64(seeds)).random(SAMPLES)
    found.flags.writeable = False
    return found
