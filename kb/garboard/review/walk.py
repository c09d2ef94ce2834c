"""Whether signatures lead to a state: a walk through the moves of a kind, in order of date.

A step that the author may take needs no signature. What the machine moves back it moves in print
only, so a walk may go on from `lapsed` without a line for it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from garboard.records.signoff import Capacity, SignOff
from garboard.records.states import LAPSED, LEAVING, Machine, Move

__all__ = ["Walk", "walk"]

FREE = (Capacity.AUTHOR, Capacity.MACHINE)
"""Steps that need no line."""


@dataclass(frozen=True, slots=True)
class Walk:
    """How far the signatures lead."""

    leads: bool
    """To the state that is written."""
    reached: str
    """The state that they do lead to."""
    stuck: int | None = None
    """The line that no move fits."""
    open: tuple[str, ...] = ()
    """Where a signature could lead from there: `approved (approver)`."""
    wants: str = ""
    """The capacity in which somebody would have to sign the last step."""


def walk(
    machine: Machine, signed: Sequence[SignOff], state: str, mark: str, start: str = ""
) -> Walk:
    """Walk by the signatures that move a state.

    Args:
        machine: Of the kind.
        signed: The lines to walk by; those without `to` move nothing.
        state: As written.
        mark: Class of the record; of a plan line its point.
        start: The state to set out from; left out, the start of the kind.
    """
    reached = start or machine.start
    at: dict[str, None] = {reached: None}
    moving = sorted(
        (number for number, line in enumerate(signed) if line.to), key=lambda one: signed[one].on
    )
    for number in moving:
        line = signed[number]
        spread = _free(machine, at, mark)
        fits = any(
            move.to == line.to and _may(move, line.capacity)
            for place in spread
            for move in _moves(machine, place, mark)
        )
        if not fits:
            return Walk(
                leads=False, reached=reached, stuck=number, open=_open(machine, spread, mark)
            )
        reached = str(line.to)
        at = {reached: None}
    spread = _free(machine, at, mark)
    if state in spread:
        return Walk(leads=True, reached=state)
    wants = next(
        (
            str(move.by)
            for place in spread
            for move in _moves(machine, place, mark)
            if move.to == state
        ),
        "",
    )
    return Walk(leads=False, reached=reached, wants=wants, open=_open(machine, spread, mark))


def _may(move: Move, capacity: Capacity) -> bool:
    """Whether somebody in this capacity may take a step; the machine signs nothing."""
    return capacity is not Capacity.MACHINE and move.by in (capacity, Capacity.ANY_HAND)


def _free(machine: Machine, places: Iterable[str], mark: str) -> dict[str, None]:
    """Every state that is reached from some without a signature, the nearest first."""
    found = dict.fromkeys(places)
    waiting = list(found)
    while waiting:
        for move in _moves(machine, waiting.pop(0), mark):
            if move.by in FREE and move.to not in found:
                found[move.to] = None
                waiting.append(move.to)
    return found


def _moves(machine: Machine, state: str, mark: str) -> list[Move]:
    """The moves out of a state, with the machine's own and the ways of leaving."""
    if state in LEAVING:
        return []
    moves = [move for move in machine.moves.get(state, ()) if move.open_to(mark)]
    if machine.may_lapse(state):
        moves.append(Move(LAPSED, Capacity.MACHINE))
    return [*moves, *(Move(to, Capacity.APPROVER) for to in machine.ends)]


def _open(machine: Machine, places: Iterable[str], mark: str) -> tuple[str, ...]:
    found = {
        f"{move.to} ({move.by})": None
        for place in places
        for move in _moves(machine, place, mark)
        if move.by not in FREE and move.to not in LEAVING
    }
    return tuple(found)
