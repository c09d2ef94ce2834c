"""The machine moves records only backwards; everything else takes a person in a capacity."""

import pytest

from garboard.records.kinds import KINDS
from garboard.records.signoff import Capacity
from garboard.records.states import (
    LAPSED,
    LEAVING,
    MACHINES,
    Machine,
    Move,
    at_rest,
    legal_moves,
    start_state,
)

NAMES = sorted(MACHINES)


def reachable(machine: Machine, mark: str) -> set[str]:
    """Every state that a record of a class can come to."""
    found: set[str] = set()
    waiting = [machine.start]
    while waiting:
        state = waiting.pop()
        if state not in found:
            found.add(state)
            ways = [move.to for move in machine.moves.get(state, ()) if move.open_to(mark)]
            waiting += ways + ([LAPSED] if machine.may_lapse(state) else [])
    return found


def test_every_kind_has_a_machine_and_the_service_status_too() -> None:
    assert set(MACHINES) == {kind.name for kind in KINDS} | {"service status"}


@pytest.mark.parametrize("name", NAMES)
def test_every_state_can_be_reached_by_a_record_of_some_class(name: str) -> None:
    machine = MACHINES[name]
    marks = "HWRS" if name == "plan line" else "ABC"

    reached = set().union(*(reachable(machine, mark) for mark in marks))

    assert reached | set(machine.ends) == set(machine.states)


@pytest.mark.parametrize("name", [name for name in NAMES if name != "service status"])
def test_a_record_of_class_a_can_come_to_rest(name: str) -> None:
    machine = MACHINES[name]
    mark = "H" if name == "plan line" else "A"

    assert reachable(machine, mark) & set(machine.rest)


@pytest.mark.parametrize("name", NAMES)
def test_a_state_that_can_lapse_has_a_way_back(name: str) -> None:
    machine = MACHINES[name]

    assert bool(machine.lapses) == (LAPSED in machine.moves)
    assert set(machine.lapses) <= set(machine.states)
    assert set(machine.rest) <= set(machine.states)


@pytest.mark.parametrize("name", NAMES)
def test_the_machine_moves_nothing_into_rest(name: str) -> None:
    machine = MACHINES[name]

    moved = {
        move.to for moves in machine.moves.values() for move in moves if move.by is Capacity.MACHINE
    }

    assert moved.isdisjoint(machine.rest)


def test_the_machine_never_lowers_a_service_status() -> None:
    moves = MACHINES["service status"].moves.values()

    assert {move.by for ways in moves for move in ways} == {Capacity.IN_CHARGE}


@pytest.mark.parametrize(
    ("kind", "state", "mark", "expected"),
    [
        ("decision", "drafted", "A", [("in check", Capacity.AUTHOR)]),
        (
            "decision",
            "in check",
            "A",
            [
                ("drafted", Capacity.CHECKER),
                ("checked", Capacity.CHECKER),
                ("not adopted", Capacity.APPROVER),
            ],
        ),
        (
            "decision",
            "in check",
            "B",
            [
                ("drafted", Capacity.CHECKER),
                ("checked", Capacity.CHECKER),
                ("approved", Capacity.CHECKER),
                ("not adopted", Capacity.APPROVER),
            ],
        ),
        (
            "change",
            "checked",
            "B",
            [
                ("authorised", Capacity.APPROVER),
                ("authorised", Capacity.IN_CHARGE),
                ("refused", Capacity.APPROVER),
                ("cancelled", Capacity.AUTHOR),
                ("lapsed", Capacity.MACHINE),
            ],
        ),
        ("plan line", "planned", "H", [("called", Capacity.DOER)]),
        (
            "plan line",
            "planned",
            "R",
            [("called", Capacity.DOER), ("released", Capacity.NAMED_PARTY)],
        ),
        ("test", "lapsed", "A", []),
        (
            "finding",
            "closed",
            "A",
            [("reopened", Capacity.ANY_HAND), ("reopened", Capacity.MACHINE)],
        ),
        (
            "service status",
            "in test",
            "A",
            [("in service", Capacity.IN_CHARGE), ("building", Capacity.IN_CHARGE)],
        ),
    ],
)
def test_a_move_is_open_to_a_capacity_and_a_class(
    kind: str, state: str, mark: str, expected: list[tuple[str, Capacity]]
) -> None:
    found = [
        (move.to, move.by) for move in legal_moves(kind, state, mark) if move.to not in LEAVING
    ]

    assert found == expected


def test_a_record_may_leave_by_an_approver_at_any_time() -> None:
    assert legal_moves("decision", "drafted")[-3:] == (
        Move("superseded", Capacity.APPROVER),
        Move("withdrawn", Capacity.APPROVER),
        Move("void", Capacity.APPROVER),
    )
    assert legal_moves("change", "closed") == (Move("void", Capacity.APPROVER),)
    assert legal_moves("finding", "not accepted") == (Move("raised", Capacity.ANY_HAND),)


def test_nothing_moves_from_a_state_that_is_left_or_unknown() -> None:
    assert legal_moves("decision", "superseded") == ()
    assert legal_moves("decision", "aproved") == ()


def test_rest_is_said_by_kind() -> None:
    assert at_rest("decision", "confirmed")
    assert not at_rest("decision", "approved")
    assert at_rest("decision", "withdrawn")
    assert not at_rest("finding", "withdrawn")


def test_states_start_with_the_start() -> None:
    assert {MACHINES[name].states[0] for name in NAMES} == {start_state(name) for name in NAMES}
    assert MACHINES["review"].states == (
        "called",
        "walked",
        "lapsed",
        "passed",
        "limited",
        "failed",
        "void",
    )
