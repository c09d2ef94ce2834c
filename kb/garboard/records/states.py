"""How a record moves from state to state: who may move it, where it rests, what can lapse.

The machine moves records only backwards, at each build, in print, never in the file: to `lapsed`
from the states named, and along the moves whose capacity is `machine`. The rest takes a person.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from garboard.records.base import Class
from garboard.records.moves import LEAVING, TABLE, Row, Who
from garboard.records.signoff import Capacity

__all__ = [
    "LAPSED",
    "LEAVING",
    "MACHINES",
    "Machine",
    "Move",
    "at_rest",
    "legal_moves",
    "start_state",
]

LAPSED = "lapsed"


@dataclass(frozen=True, slots=True)
class Move:
    """One legal move."""

    to: str
    by: Capacity
    only: str = ""
    """The classes (plan lines: the points) that may move so; empty: all."""

    def open_to(self, mark: str) -> bool:
        """Whether a record of this class, or a plan line of this point, may move so."""
        return not self.only or mark in self.only


@dataclass(frozen=True, slots=True)
class Machine:
    """The states of one kind."""

    start: str
    rest: tuple[str, ...]
    """Nothing more is owed."""
    lapses: tuple[str, ...]
    """States from which the machine may move it to `lapsed`."""
    ends: tuple[str, ...]
    """Which ways of leaving are open to it."""
    moves: Mapping[str, tuple[Move, ...]]

    @property
    def states(self) -> tuple[str, ...]:
        """Every state it can stand in, from the start on."""
        reached = (move.to for moves in self.moves.values() for move in moves)
        lapsed = (LAPSED,) if self.lapses else ()
        return tuple(dict.fromkeys((self.start, *self.moves, *reached, *lapsed, *self.ends)))

    def may_lapse(self, state: str) -> bool:
        """Whether a record in this state lapses when what it rests on moves."""
        return state in self.lapses


def _machine(row: Row) -> Machine:
    moves = {state: tuple(_moves(ways)) for state, ways in row.moves.items()}
    return Machine(row.start, _words(row.rest), _words(row.lapses), row.ends, moves)


def _words(text: str) -> tuple[str, ...]:
    return tuple(word.strip() for word in text.split(",") if word.strip())


def _moves(ways: Mapping[str, Who]) -> Iterator[Move]:
    for to, who in ways.items():
        if isinstance(who, Capacity):
            yield Move(to, who)
        else:
            yield from (Move(to, by, only) for by, only in who.items())


MACHINES: Mapping[str, Machine] = {name: _machine(row) for name, row in TABLE.items()}
"""By the name of a kind; `service status` is that of a system."""


def start_state(kind: str) -> str:
    """The state a record of this kind starts in.

    >>> start_state("finding")
    'raised'
    """
    return MACHINES[kind].start


def at_rest(kind: str, state: str) -> bool:
    """Whether nothing more is owed; a record that has left is at rest too.

    >>> at_rest("finding", "closed"), at_rest("decision", "superseded")
    (True, True)
    """
    machine = MACHINES[kind]
    return state in machine.rest or state in machine.ends


def legal_moves(kind: str, state: str, mark: str = Class.A) -> tuple[Move, ...]:
    """Where a record may go from a state, and who may move it.

    Args:
        kind: Name of the kind, or `service status`.
        state: The state it stands in.
        mark: Its class; of a plan line, its point.

    Returns:
        The moves in the order of the table, ways of leaving last; none from a state that is not
        known or that the record has left by.

    >>> [move.to for move in legal_moves("finding", "evaluated", "C")]
    ['action agreed', 'closed']
    """
    machine = MACHINES[kind]
    if state not in machine.states or state in LEAVING:
        return ()
    moves = [move for move in machine.moves.get(state, ()) if move.open_to(mark)]
    if machine.may_lapse(state):
        moves.append(Move(LAPSED, Capacity.MACHINE))
    return (*moves, *(Move(to, Capacity.APPROVER) for to in machine.ends))
