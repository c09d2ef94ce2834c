"""What one step of a procedure does to a layout, as far as its words say.

Where a position is written in `to` it counts, whatever the verb. A step that cannot be understood moves
nothing and is listed as such; only looking is known to move nothing.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from garboard.calc.value import Value
from garboard.records.procedure import Second, Step
from garboard.systems.behaviour import Passes
from garboard.systems.plant import Part, Plant
from garboard.systems.positions import folded
from garboard.systems.step_words import LOOKS, end_position, opens_up, says_zero, verb

__all__ = ["Action", "Does", "Observed", "actions_of"]

REFITS = ("refit", "fit", "connect", "couple", "close up", "put back")
AT_ONCE = ("replace", "renew")
"""Opened and closed again in one step."""
PULLS = ("pull", "remove", "take out")
USERS = ("consumer", "load", "compartment")


class Does(StrEnum):
    """What a step does."""

    MOVES = "moves"
    STARTS = "starts"
    STOPS = "stops"
    OPENS_UP = "opens up"
    REPLACES = "opens up and refits"
    REFITS = "refits"
    LOOKS = "looks"
    UNKNOWN = "is not understood"


@dataclass(frozen=True, slots=True)
class Observed:
    """What is seen once a step is done, where the layout knows the place."""

    node: int | None = None
    """Where something is read: at a gauge, or with a meter or test gauge put to a part."""
    zero: bool = False
    """It shows nothing: the proof of zero."""
    part: int | None = None
    """Number of a valve whose position is looked at."""
    position: int | None = None
    """The position that is seen."""


@dataclass(frozen=True, slots=True)
class Action:
    """One step, understood."""

    number: int
    """As printed: the first step is 1."""
    does: Does
    part: int | None = None
    """Number of the part in the layout."""
    tag: str = ""
    position: int | None = None
    """Of what is moved: the position it is left in."""
    sees: Observed | None = None
    second: Second = Second.NONE
    """How a second person looks at it."""

    @property
    def moves(self) -> bool:
        """Whether something in the layout is changed."""
        return self.does not in (Does.LOOKS, Does.UNKNOWN)


def actions_of(
    plant: Plant, steps: Iterable[Step], values: Mapping[str, Value]
) -> tuple[Action, ...]:
    """What the steps of a procedure do to a layout.

    Args:
        plant: The layout.
        steps: The steps, in order.
        values: Values by address: what a reading quotes.
    """
    return tuple(_action(plant, step, number, values) for number, step in enumerate(steps, 1))


def _action(plant: Plant, step: Step, number: int, values: Mapping[str, Value]) -> Action:
    at = plant.numbers.get(step.tag or "")
    does, position = _done(plant, at, step)
    sees = _observed(plant, at, step, values)
    second = step.second or Second.NONE
    return Action(number, does, at, str(step.tag or ""), position, sees, second)


def _done(plant: Plant, at: int | None, step: Step) -> tuple[Does, int | None]:
    said = verb(step.do)
    if at is None:
        return (Does.LOOKS if said in LOOKS and step.to is None else Does.UNKNOWN), None
    part = plant.parts[at]
    component = plant.components[part.tag]
    if part.movable and (to := _position(part, step, said)) is not None:
        return (Does.LOOKS if said in LOOKS else Does.MOVES), to
    if plant.behaviours[part.tag].passes is Passes.MACHINE:
        word = folded(end_position(step), part.kind)
        if word in ("running", "stopped"):
            return (Does.STARTS if word == "running" else Does.STOPS), None
    if opens_up(component, step):
        return (Does.REPLACES if said in AT_ONCE else Does.OPENS_UP), None
    if said in REFITS or step.do.casefold().startswith(REFITS):
        return Does.REFITS, None
    looks = said in LOOKS or (said in ("lock", "unlock") and step.to is None)
    return (Does.LOOKS if looks else Does.UNKNOWN), None


def _position(part: Part, step: Step, said: str) -> int | None:
    """The position in which a step leaves a valve; None where it names none that the valve has."""
    word = folded(end_position(step), part.kind)
    if part.kind == "fuse" and not word and said in PULLS:
        word = "pulled"
    if not word and said == "isolate":
        word = "shut"
    return part.names.index(word) if word in part.names else None


def _observed(
    plant: Plant, at: int | None, step: Step, values: Mapping[str, Value]
) -> Observed | None:
    """What is seen when the step has worked: a gauge, or the position of a valve."""
    said = verb(step.do)
    reading = str(step.see.value or "") if step.see else ""
    on = step.see.tag if step.see and step.see.tag else step.tag if said in LOOKS else None
    number = plant.numbers.get(on or "")
    if number is None:
        return None
    part = plant.parts[number]
    if part.movable:
        word = folded(step.to if number == at and step.to else reading, part.kind)
        if word in part.names and (said in LOOKS or number != at):
            return Observed(part=number, position=part.names.index(word))
        return None
    seen_at = plant.behaviours[part.tag].passes in (Passes.MARKS, Passes.JOINED)
    if seen_at and part.kind not in USERS and reading:
        value = values.get(reading)
        zero = value.si == 0 if value is not None else says_zero(reading)
        return Observed(node=part.nodes[0], zero=zero)
    return None
