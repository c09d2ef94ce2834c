"""What moves a value, and what it usually lies between.

"Usually" assumes three things: that the tolerances are independent of each other; that all are
stated at the same confidence; and that inputs lie near their nominal more often than at their ends.
Then not all of them are at their worst at once, and their effects add up as the root of the sum of
squares, which is stated at that same confidence.

Source: JCGM 100:2008 (GUM), 5.1.2, equation (10), for the sum of squares of slope times uncertainty;
5.1.3 for the slopes.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import cast

from garboard.calc.arithmetic import HAIR, Slots
from garboard.calc.ledger import Ledger, Root
from garboard.calc.spread import LONG_CHAIN, Extremes, Spread
from garboard.calc.tree import Reference
from garboard.calc.value import Mover
from garboard.errors import OutsideValidity

__all__ = ["Likely", "Movers"]


@dataclass(frozen=True, slots=True)
class Likely:
    """How a value usually stands."""

    usual: tuple[float, float] | None
    """What it usually lies between, in SI; None where nothing moves it or an end has no answer."""
    movers: tuple[Mover, ...] = ()
    inputs: tuple[Root, ...] = ()
    """Of the movers, in the same order."""


@dataclass(frozen=True, slots=True)
class Pull:
    """What one input does to a value."""

    root: Root
    address: str
    ends: tuple[float, float]
    """The value, in SI, at the low and the high end of the input, all others nominal."""
    up: float
    """How far it lifts the value at most, by the slope, in SI; 0 or more."""
    down: float
    """How far it lowers it."""
    lifting: float
    """The end of the input that lifts the value, in SI."""
    lowering: float

    @property
    def size(self) -> float:
        """The root of the sum of squares of its two sides."""
        return math.hypot(self.up, self.down)


class Moved(dict[int, float]):
    """Values by slot; those not worked out again stand as they are."""

    def __init__(self, nominal: Slots, inputs: dict[int, float]) -> None:
        super().__init__(inputs)
        self.nominal = nominal

    def __missing__(self, slot: int) -> float:
        return self.nominal[slot]


class Movers:
    """What moves the values of one ledger."""

    def __init__(self, spread: Spread) -> None:
        self.spread = spread
        self.ledger = spread.ledger
        self.known: dict[int, Likely] = {}

    def of(self, reference: Reference, ends: Extremes | None = None, together: int = 0) -> Likely:
        """What moves a value, and what it usually lies between.

        Of `y = 3 * a + 4 * b` with a = 10 +/- 1 and b = 5 +/- 1, 50 at nominal: b moves it 4, a moves
        it 3, the root of 16 + 9 is 5, so usually 45 to 55; b has 16/25 of the sum of squares.

        Args:
            reference: The value.
            ends: Its range, where it is known already.
            together: Toleranced inputs of its block, a bit each.
        """
        slot = reference.slot
        if slot not in self.known:
            mask = self.ledger.upstream[slot]
            formula = self.ledger.formulas.get(slot)
            found = Likely(None)
            if mask and formula and formula.needs:
                ends = ends or self.spread.range_of(reference, together)
                alone = 0 if slot in self.ledger.tabled else together
                known = ends.low is not None
                pulls = self.pulls(reference, mask, alone) if known else None
                if pulls is not None:
                    found = self.likely(slot, mask, pulls, ends)
            self.known[slot] = found
        return self.known[slot]

    def pulls(self, reference: Reference, mask: int, together: int) -> list[Pull] | None:
        """What each input does; None where the value has no answer at an end of one."""
        look = self.spread.first_look(mask, together)
        (values,) = look.read((reference,))
        deep = self.ledger.depth[reference.slot] > LONG_CHAIN
        slope = {} if deep else self.spread.gradient.of(reference).by_slot
        here = self.ledger.slots[reference.slot]
        found = []
        for root in self.ledger.roots_of(mask):
            row = look.alone[root.slot]
            ends = float(values[row]), float(values[row + 1])
            if not all(map(math.isfinite, ends)):
                return None
            own = float(slope.get(root.slot, 0.0))
            found.append(self.pull(root, own, here, ends))
        return found

    def pull(self, root: Root, slope: float, here: float, ends: tuple[float, float]) -> Pull:
        """What one input does: by its slope, each side of its tolerance by itself.

        An input without a slope (a step, the top of a curve) or that moves the value the same way
        at both its ends counts by what it does at its ends.
        """
        below = self.ledger.slots[root.slot] - root.low
        above = root.high - self.ledger.slots[root.slot]
        address = self.ledger.address_of(root.slot)
        hair = HAIR * max(abs(here), *map(abs, ends))
        one_way = (ends[0] - here) * (ends[1] - here) > 0
        if math.isfinite(slope) and abs(slope) * (below + above) > hair and not one_way:
            up, down = (above, below) if slope > 0 else (below, above)
            sides = (root.high, root.low) if slope > 0 else (root.low, root.high)
            return Pull(root, address, ends, abs(slope) * up, abs(slope) * down, *sides)
        up, down = max(ends) - here, here - min(ends)
        lifting = root.low if ends[0] >= ends[1] else root.high
        lowering = root.low if ends[0] <= ends[1] else root.high
        up, down = (size if size > hair else 0.0 for size in (up, down))
        return Pull(root, address, ends, up, down, lifting, lowering)

    def likely(self, slot: int, mask: int, pulls: Sequence[Pull], ends: Extremes) -> Likely:
        """How a value usually stands, from what each input does."""
        moving = sorted((pull for pull in pulls if pull.size), key=rank)
        whole = root_of_squares([pull.size for pull in moving])
        movers = tuple(
            Mover(pull.address, min(pull.ends), max(pull.ends), (pull.size / whole) ** 2)
            for pull in moving
        )
        here = self.ledger.slots[slot]
        lifting = [(one.root, one.up, one.lifting) for one in moving]
        lowering = [(one.root, one.down, one.lowering) for one in moving]
        lifted = self.value_at(slot, mask, lifting, 1.0)
        lowered = self.value_at(slot, mask, lowering, -1.0)
        usual = None
        if lifted is not None and lowered is not None:
            low, high = cast("float", ends.low), cast("float", ends.high)
            points = lowered, here, lifted
            usual = max(low, min(points)), min(high, max(points))
        return Likely(usual, movers, tuple(pull.root for pull in moving))

    def value_at(
        self, slot: int, mask: int, moves: Sequence[tuple[Root, float, float]], side: float
    ) -> float | None:
        """The value at the most likely of the points at which its linear estimate is u away.

        u is the root of the sum of squares of how far each input moves it. At that point each input
        stands as far towards its end as its own part of u. For a sum this gives u exactly; what is
        curved or counted is worked out as it is.

        Args:
            slot: Of the value.
            mask: The inputs upstream, a bit each.
            moves: Inputs, how far each moves the value, and towards which of its ends.
            side: 1 where they lift it, -1 where they lower it.

        Returns:
            None where it has no answer there.

        At the end of a long chain of lines the linear estimate is taken as it is: working all of the
        chain out once more for each of its lines would cost the square of its length.
        """
        root_sum = root_of_squares([size for _, size, _ in moves])
        if not root_sum:
            return self.ledger.slots[slot]
        if self.ledger.depth[slot] > LONG_CHAIN:
            return self.ledger.slots[slot] + math.copysign(root_sum, side)
        inputs = {}
        for root, size, end in moves:
            nominal = self.ledger.slots[root.slot]
            inputs[root.slot] = nominal + (end - nominal) * (size / root_sum)
        return work_out_at(self.ledger, slot, mask, inputs)


def rank(pull: Pull) -> tuple[float, str]:
    """The one that moves a value most first; equals by their addresses."""
    return -pull.size, pull.address


def root_of_squares(sizes: Sequence[float]) -> float:
    """The root of the sum of some squares, in whatever order they come, also where one is huge.

    >>> root_of_squares([3.0, 4.0]), root_of_squares([3e200, 4e200])
    (5.0, 5e+200)
    """
    most = max(sizes, default=0.0)
    if not 0.0 < most < math.inf:
        return most
    return most * math.sqrt(math.fsum((size / most) ** 2 for size in sizes))


def work_out_at(ledger: Ledger, slot: int, mask: int, inputs: dict[int, float]) -> float | None:
    """A value with some inputs moved, in SI; None where it has no answer."""
    moved = Moved(ledger.slots, inputs)
    slots = cast("Slots", moved)
    try:
        for each in ledger.moved_cone((slot,), inputs, mask):
            moved[each] = ledger.formulas[each].closure(slots)
    except (OutsideValidity, ArithmeticError, ValueError, LookupError):
        return None
    return float(moved[slot]) if math.isfinite(moved[slot]) else None
