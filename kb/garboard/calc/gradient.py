"""The gradient: how much a value moves with each toleranced input, in one sweep backwards.

Slots are numbered so that each comes after what it is worked out from. One walk from the highest
slot down to the inputs therefore meets every slot when its own slope is complete. The slopes of one
line are found once and kept for all values downstream of it.
"""

import heapq
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import cast

import numpy as np

from garboard.calc.arithmetic import Slots
from garboard.calc.derivatives import Partials, Push, follow
from garboard.calc.ledger import Ledger
from garboard.calc.tree import Node, Reference

__all__ = ["Gradient", "Pushes", "Slope"]

Pushes = dict[int, Push | None]
"""The closures of the slots, kept from one gradient to the next."""


@dataclass(frozen=True, slots=True)
class Slope:
    """The slope of one value in each toleranced input upstream, in SI."""

    by_slot: dict[int, float]
    """By slot of the input; an array where the gradient was taken at many points; nan where there
    is none."""
    pole: bool = False
    """Between some of the points it divides by zero."""
    fork: bool = False
    """Not all points take the same branch of a choice, or a table goes up and down between them."""
    table: bool = False
    """A table is read on the way."""


class Gradient:
    """Gradients of the values of one ledger, at one point or at many."""

    def __init__(
        self, ledger: Ledger, slots: Slots, pushes: Pushes, *, only_poles: bool = False
    ) -> None:
        """Take the values at which the slopes are wanted.

        Args:
            ledger: How the values are worked out.
            slots: All values, as numbers of numpy's or arrays of them.
            pushes: What is known from other points already.
            only_poles: The slopes themselves are not wanted, and no table is read for them.
        """
        self.only_poles = only_poles
        self.ledger = ledger
        self.slots = slots
        self.pushes = pushes
        self.known: dict[int, Partials] = {}

    def of(self, node: Node) -> Slope:
        """The gradient of one value.

        Of `y = x * (4 - x)` at x = 1 it is 4 - 2 * 1 = 2 in x.

        Args:
            node: How it is worked out.
        """
        with np.errstate(all="ignore"):
            return self.sweep(node)

    def sweep(self, node: Node) -> Slope:
        """Walk from a value back to the inputs."""
        start = self.walk(node)
        arrived = {slot: list(parts) for slot, parts in start.slopes.items()}
        watched = [(1.0, start)]
        waiting = [-slot for slot in arrived]
        heapq.heapify(waiting)
        slopes: dict[int, float] = {}
        while waiting:
            slot = -heapq.heappop(waiting)
            total = added(arrived.pop(slot))
            if slot in self.ledger.inputs:
                slopes[slot] = total
                continue
            local = self.local(slot)
            if local.poles or local.forks or local.tables:
                watched.append((total, local))
            for need, (partial,) in local.slopes.items():
                if need not in arrived:
                    arrived[need] = []
                    heapq.heappush(waiting, -need)
                arrived[need].append(times(total, partial))
        return Slope(
            slopes,
            any(parts(total, side) for total, local in watched for side in local.poles),
            any(parts(total, side) for total, local in watched for side in local.forks),
            any(local.tables for _, local in watched),
        )

    def walk(self, node: Node) -> Partials:
        """The slopes within one line."""
        found = Partials(only_poles=self.only_poles)
        if isinstance(node, Reference):
            found.slopes[node.slot] = [1.0]
            return found
        push = follow(node, self.matters)
        if push:
            push(self.slots, 1.0, found)
        return found

    def matters(self, slot: int) -> bool:
        """Whether a tolerance lies upstream of a slot."""
        return self.ledger.upstream[slot] != 0

    def local(self, slot: int) -> Partials:
        """The slopes within the line that sets a slot, one for each slot it uses."""
        found = self.known.get(slot)
        if found is None:
            found = self.known[slot] = Partials(only_poles=self.only_poles)
            if slot not in self.pushes:
                formula = self.ledger.formulas.get(slot)
                self.pushes[slot] = follow(formula.node, self.matters) if formula else None
            push = self.pushes[slot]
            if push:
                push(self.slots, 1.0, found)
            for need, several in found.slopes.items():
                found.slopes[need] = [added(several)]
        return found


def added(parts: Sequence[float]) -> float:
    """The sum of some slopes; of single numbers the same in whatever order they come."""
    if len(parts) == 1:
        return parts[0]
    if not any(isinstance(part, np.ndarray) for part in parts):
        try:
            return math.fsum(parts)
        except (ValueError, OverflowError):
            return math.nan
    return sum(parts[1:], parts[0])


def times(total: float, partial: float) -> float:
    """A slope handed on; what does not count stays 0, even through something without an answer."""
    found = total * partial
    if math.isfinite(found) if isinstance(found, float) else np.isfinite(found).all():
        return found
    return cast("float", np.where(np.equal(total, 0.0), 0.0, found))


def parts(total: float, watched: tuple[float, float]) -> bool:
    """Whether points that count lie on both sides of something."""
    seed, side = watched
    active = np.not_equal(total, 0.0) & np.not_equal(seed, 0.0)
    return bool(np.any(active & side)) and bool(np.any(active & ~np.asarray(side)))
