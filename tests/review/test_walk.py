"""Signatures lead to a state along the table of moves, and no other way."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache

import pytest

from garboard.calc.network import evaluate
from garboard.errors import Where
from garboard.reading.content import Content
from garboard.reading.folder import read_folder
from garboard.records.base import Class, RecordId
from garboard.records.kinds import KINDS, Kind
from garboard.records.moves import TABLE
from garboard.records.signoff import Capacity, SignOff
from garboard.records.states import LAPSED, LEAVING, MACHINES
from garboard.review.signoffs import weigh
from garboard.review.walk import walk
from tests.demo_site import DEMO

FIRST = date(2031, 3, 1)
LONGEST = 6
MOST = 250
"""Walks that are followed for one kind and class, the shortest first."""
UNSIGNED = (Capacity.AUTHOR, Capacity.MACHINE)


@dataclass(frozen=True)
class Step:
    """One way out of a state, as the table has it."""

    to: str
    by: Capacity


def marks_of(name: str) -> str:
    return "HWRS" if name == "plan line" else "ABC"


BOTH = [(kind.name, mark) for kind in KINDS for mark in marks_of(kind.name)]


@cache
def ways(name: str, mark: str) -> Mapping[str, tuple[Step, ...]]:
    """The ways out of every state for a class, read from the table as it is written."""
    row = TABLE[name]
    found: dict[str, list[Step]] = {state: [] for state in (row.start, *row.moves)}
    for state, targets in row.moves.items():
        for to, who in targets.items():
            found.setdefault(to, [])
            able = {who: mark} if isinstance(who, Capacity) else who
            found[state] += [Step(to, by) for by, classes in able.items() if mark in classes]
    for state in [word.strip() for word in row.lapses.split(",") if word]:
        found[state].append(Step(LAPSED, Capacity.MACHINE))
        found.setdefault(LAPSED, [])
    for steps in found.values():
        steps += [Step(to, Capacity.APPROVER) for to in row.ends]
    return {
        **{state: tuple(steps) for state, steps in found.items()},
        **dict.fromkeys(row.ends, ()),
    }


def without_signature(name: str, mark: str, state: str) -> set[str]:
    """The states that are reached from one with nobody's signature."""
    found = {state}
    while True:
        more = {
            step.to for one in found for step in ways(name, mark)[one] if step.by in UNSIGNED
        } - found
        if not more:
            return found
        found |= more


def may_sign(name: str, mark: str, state: str, line: SignOff) -> bool:
    """Whether the table lets somebody take a record from a state to where a line says."""
    if line.capacity is Capacity.MACHINE:
        return False
    return any(
        step.to == line.to and step.by in (line.capacity, Capacity.ANY_HAND)
        for one in without_signature(name, mark, state)
        for step in ways(name, mark)[one]
    )


def leads(name: str, mark: str, lines: list[SignOff], state: str) -> bool:
    """Whether lines in order of their days lead to a state."""
    at = TABLE[name].start
    for _, _, line in sorted((line.on, number, line) for number, line in enumerate(lines)):
        if not may_sign(name, mark, at, line):
            return False
        at = str(line.to)
    return state in without_signature(name, mark, at)


def line(capacity: Capacity, to: str, day: int) -> SignOff:
    return SignOff(capacity=capacity, by="reviewer-1", on=FIRST + timedelta(days=day), to=to)


def walks(name: str, mark: str) -> Iterator[tuple[list[SignOff], str]]:
    """Legal walks from the start, the shortest first, each with the state it ends in."""
    waiting: list[tuple[list[SignOff], str, int]] = [([], TABLE[name].start, 0)]
    for count in range(MOST):
        if count >= len(waiting):
            return
        lines, state, steps = waiting[count]
        yield lines, state
        if steps == LONGEST:
            continue
        for step in ways(name, mark)[state]:
            unsigned = step.by in UNSIGNED
            capacity = Capacity.WITNESS if step.by is Capacity.ANY_HAND else step.by
            more = [] if unsigned else [line(capacity, step.to, steps)]
            waiting.append(([*lines, *more], step.to, steps + 1))


@pytest.mark.parametrize(("name", "mark"), BOTH)
def test_every_legal_walk_leads_to_its_state(name: str, mark: str) -> None:
    for lines, state in walks(name, mark):
        found = walk(MACHINES[name], lines, state, mark)

        assert found.leads, (lines, state)
        assert found.reached == state


@pytest.mark.parametrize(("name", "mark"), BOTH)
def test_every_single_step_is_judged_as_the_table_has_it(name: str, mark: str) -> None:
    machine = MACHINES[name]
    refused = 0
    to_each = {state: lines for lines, state in reversed(list(walks(name, mark)))}
    for state, lines in to_each.items():
        for to in machine.states:
            for capacity in Capacity:
                step = line(capacity, to, LONGEST)
                found = walk(machine, [*lines, step], to, mark)

                legal = may_sign(name, mark, at_end(name, lines), step)
                assert found.leads is legal, (state, capacity, to)
                assert found.leads or found.stuck == len(lines)
                refused += not legal

    assert refused > 50


def at_end(name: str, lines: list[SignOff]) -> str:
    return str(lines[-1].to) if lines else TABLE[name].start


@pytest.mark.parametrize(("name", "mark"), BOTH)
def test_a_line_that_is_missing_or_out_of_order_is_judged_by_what_is_left(
    name: str, mark: str
) -> None:
    machine = MACHINES[name]
    for lines, state in walks(name, mark):
        for number in range(len(lines)):
            left = lines[:number] + lines[number + 1 :]
            assert walk(machine, left, state, mark).leads is leads(name, mark, left, state)
        days = [one.on for one in lines]
        turned = [line(one.capacity, str(one.to), -number) for number, one in enumerate(lines)]
        assert walk(machine, turned, state, mark).leads is leads(name, mark, turned, state), days


@pytest.mark.parametrize(("name", "mark"), BOTH)
def test_a_state_that_is_only_typed_leads_nowhere_new(name: str, mark: str) -> None:
    machine = MACHINES[name]
    typed = {state for state in machine.states if walk(machine, [], state, mark).leads}

    assert typed == without_signature(name, mark, TABLE[name].start)


@pytest.mark.parametrize("mark", "BC")
def test_what_another_class_may_do_class_a_may_not(mark: str) -> None:
    lines = [line(Capacity.CHECKER, "approved", 1)]

    assert walk(MACHINES["calculation"], lines, "approved", mark).leads
    assert not walk(MACHINES["calculation"], lines, "approved", "A").leads


def test_a_hold_point_is_not_waived() -> None:
    lines = [line(Capacity.DOER, "called", 1), line(Capacity.NAMED_PARTY, "waived", 2)]

    assert walk(MACHINES["plan line"], lines, "waived", "W").leads
    assert not walk(MACHINES["plan line"], lines, "waived", "H").leads


@pytest.mark.parametrize(("name", "mark"), BOTH)
def test_an_approver_may_end_it_at_any_time_and_nobody_else(name: str, mark: str) -> None:
    machine = MACHINES[name]
    for lines, state in walks(name, mark):
        if state in LEAVING:
            continue
        for to in LEAVING:
            for capacity in Capacity:
                ended = [*lines, line(capacity, to, LONGEST)]
                may = to in machine.ends and capacity is Capacity.APPROVER
                assert walk(machine, ended, to, mark).leads is may


def test_nothing_leads_on_from_an_end() -> None:
    lines = [line(Capacity.APPROVER, "withdrawn", 1), line(Capacity.CHECKER, "checked", 2)]

    assert not walk(MACHINES["calculation"], lines, "checked", "A").leads


@pytest.mark.parametrize(("name", "mark"), BOTH)
def test_only_the_machine_moves_to_lapsed_and_it_signs_nothing(name: str, mark: str) -> None:
    machine = MACHINES[name]
    for lines, _ in walks(name, mark):
        for capacity in Capacity:
            signed = [*lines, line(capacity, LAPSED, LONGEST)]
            assert not walk(machine, signed, LAPSED, mark).leads
        for to in machine.states:
            signed = [*lines, line(Capacity.MACHINE, to, LONGEST)]
            assert not walk(machine, signed, to, mark).leads


def test_a_line_that_moves_nothing_is_passed_over() -> None:
    seen = SignOff(capacity=Capacity.WITNESS, by="surveyor-1", on=FIRST)

    assert walk(MACHINES["test"], [seen], "open", "A").leads


def test_lines_of_one_day_count_in_the_order_they_are_written() -> None:
    first, second = line(Capacity.CHECKER, "checked", 1), line(Capacity.APPROVER, "approved", 1)

    assert walk(MACHINES["calculation"], [first, second], "approved", "A").leads
    assert not walk(MACHINES["calculation"], [second, first], "approved", "A").leads


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
@pytest.mark.parametrize("digest", ["0123456789abcdef", None])
def test_the_machine_moves_a_record_to_lapsed_or_leaves_it(kind: Kind, digest: str | None) -> None:
    vessel = read_folder(DEMO).vessel
    network = evaluate([], {}, {})
    key = f"SA-{kind.letters}-099"
    lapsed = set()
    for mark in Class:
        for state in kind.machine.states:
            for capacity in Capacity:
                signed = SignOff(
                    capacity=capacity, by="reviewer-1", on=FIRST, to=state, digest=digest
                )
                record = kind.record(
                    id=RecordId(key),
                    class_=mark,
                    state=state,
                    signed=(signed,),
                    where=Where("a.md"),
                )
                reviewed = weigh(Content(vessel=vessel, records={key: record}), network)[key]

                assert reviewed.state in (state, LAPSED)
                if reviewed.state != state:
                    lapsed.add(state)

    assert lapsed == set(kind.machine.lapses)
