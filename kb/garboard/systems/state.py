"""One moment of a walk: where everything may stand, what runs, what may be under pressure, what is open.

A valve has a set of positions that it may stand in: one where it is known, all where nobody said. What
*may* pass goes by every position, what *must* pass only by what all of them share.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from garboard.records.component_kinds import COMPONENT_KINDS
from garboard.records.system import OperatingState
from garboard.systems.behaviour import Passes
from garboard.systems.plant import Part, Plant
from garboard.systems.positions import folded, positions_of

__all__ = ["State", "only", "position_in", "stands", "start_of"]


@dataclass(frozen=True, slots=True)
class State:
    """How a layout may stand."""

    at: tuple[int, ...]
    """By number of the part: the positions it may stand in, one bit for each."""
    running: frozenset[str] = frozenset()
    """Tags of machines."""
    pressure: frozenset[int] = frozenset()
    """Nodes that may hold pressure, or be live."""
    opened: frozenset[int] = frozenset()
    """Numbers of parts that are opened up or taken out."""

    def moved(self, number: int, position: int) -> "State":
        """The same with one part in one position."""
        at = (*self.at[:number], only(position), *self.at[number + 1 :])
        return replace(self, at=at)


def only(position: int) -> int:
    """The bits of one position."""
    return 1 << position


def any_of(part: Part) -> int:
    """The bits of every position of a part."""
    return (1 << len(part.positions)) - 1


def position_in(state: State, number: int) -> int | None:
    """Where a part certainly stands; None where it may stand in several positions."""
    bits = state.at[number]
    return bits.bit_length() - 1 if bits & (bits - 1) == 0 else None


def stands(plant: Plant, state: State, tag: str) -> str:
    """Where a valve or machine certainly stands, in words; empty where it is not known."""
    number = plant.numbers.get(tag)
    if number is None:
        return ""
    part = plant.parts[number]
    if plant.behaviours[tag].passes is Passes.MACHINE:
        return "running" if tag in state.running else "stopped"
    at = position_in(state, number) if part.movable else None
    return "" if at is None else part.names[at]


def start_of(plant: Plant, line_up: OperatingState | None) -> State:
    """How a layout stands before the first movement, as far as it is said; its pressures are not settled.

    With an operating state, a valve in none of its lists is at its usual position. Without one, a valve is not
    known, but for what is locked and secured and what nobody usually moves, such as a fuse; a machine stands
    as it usually does.

    Args:
        plant: The layout.
        line_up: The operating state; None where there is none.
    """
    named = positions_of(line_up) if line_up else {}
    at = tuple(_stands_at(plant, part, named, known=line_up is not None) for part in plant.parts)
    machines = [part for part in plant.parts if plant.behaviours[part.tag].passes is Passes.MACHINE]
    if line_up:
        running = frozenset(str(tag) for tag in line_up.running)
    else:
        usual = ((part.tag, plant.components[part.tag].usual) for part in machines)
        running = frozenset(tag for tag, word in usual if folded(word) == "running")
    return State(at, running)


def _stands_at(plant: Plant, part: Part, named: Mapping[str, str], *, known: bool) -> int:
    if not part.movable:
        return only(0)
    word = folded(named.get(part.tag), part.kind)
    if word in part.names:
        return only(part.names.index(word))
    if part.locked is not None:
        return only(part.locked)
    kind = COMPONENT_KINDS.get(part.kind)
    asked = kind is not None and "usual" in kind.wants
    said = folded(plant.components[part.tag].usual, part.kind) in part.names
    return only(part.usual) if not asked or (known and said) else any_of(part)
