"""Every move of every kind between an edition and today, judged by a table of its own."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from garboard.book import Book
from garboard.calc.network import evaluate
from garboard.errors import Severity, Where
from garboard.reading.content import Content
from garboard.reading.edition_file import Editions
from garboard.reading.folder import read_folder
from garboard.records.base import Class, Record, RecordId
from garboard.records.edition import Edition, Fired, IssuedRecord, IssuedSystem
from garboard.records.inspection import PlanLine, Point
from garboard.records.kinds import BY_NAME
from garboard.records.signoff import Capacity, SignOff
from garboard.records.system import ServiceStatus, System
from garboard.review.kept import signed_line
from garboard.review.service_status import held_statuses
from garboard.rules import illegal_state_move, status_lowered
from tests.demo_site import DEMO

WRITTEN = yaml.safe_load((Path(__file__).parent / "moves.yml").read_text("utf-8"))
STATUS = "service status"
PERSONS = [one for one in Capacity if one is not Capacity.MACHINE]
ISSUED, SINCE, TODAY = date(2031, 5, 1), date(2031, 6, 1), date(2031, 10, 1)
Line = tuple[str, str]
"""Capacity, and the state moved to."""


def kind_row(name: str) -> dict[str, Any]:
    """What is written of a kind."""
    row = dict(WRITTEN["kinds"][name])
    if "like" in row:
        row = {**WRITTEN["kinds"][row["like"]], "letters": row["letters"], "like": row["like"]}
    return row


def marks(name: str) -> str:
    """Classes; of a plan line its points."""
    return "HWRS" if name == "plan line" else "A" if name == STATUS else "ABC"


@cache
def steps(name: str, state: str, mark: str) -> frozenset[Line]:
    """Every step out of a state, with who may take it."""
    row = kind_row(name)
    leaving = WRITTEN["leaving"][row.get("ends", "all")]
    if state in WRITTEN["leaving"]["all"]:
        return frozenset()
    found = set()
    for to, who in WRITTEN["moves"][row.get("like", name)].get(state, {}).items():
        ways = {who: mark} if isinstance(who, str) else who
        found |= {(by, to) for by, only in ways.items() if mark in only}
    lapses = row["rest"] if row.get("lapses") == "rest" else row.get("lapses", [])
    found |= {("machine", "lapsed")} if state in lapses else set()
    return frozenset(found | {("approver", to) for to in leaving})


def states(name: str) -> list[str]:
    """Every state that is written of a kind."""
    row = kind_row(name)
    moves = WRITTEN["moves"][row.get("like", name)]
    ends = WRITTEN["leaving"][row.get("ends", "all")]
    lapsed = ["lapsed"] if row.get("lapses") else []
    reached = [to for ways in moves.values() for to in ways]
    return list(dict.fromkeys([row["start"], *moves, *reached, *lapsed, *ends]))


def by_itself(name: str, places: Iterable[str], mark: str) -> set[str]:
    """States that are reached by the author's and the machine's own steps."""
    found = set(places)
    while True:
        free = {
            to for one in found for by, to in steps(name, one, mark) if by in ("author", "machine")
        }
        if free <= found:
            return found
        found |= free


def leads(name: str, mark: str, start: str, lines: Iterable[Line], to: str) -> bool:
    """Whether signatures lead from a state to another."""
    at = {start}
    for capacity, state in lines:
        ways = {step for one in by_itself(name, at, mark) for step in steps(name, one, mark)}
        if (capacity, state) not in ways and ("any hand", state) not in ways:
            return False
        at = {state}
    return to in by_itself(name, at, mark)


@cache
def signed_walk(name: str, mark: str, to: str) -> tuple[Line, ...] | None:
    """The shortest signatures that lead to a state; None where none do."""
    start = kind_row(name)["start"]
    waiting: list[tuple[str, tuple[Line, ...]]] = [(start, ())]
    seen = {start}
    while waiting:
        state, lines = waiting.pop(0)
        if state == to:
            return lines
        for by, after in sorted(steps(name, state, mark)):
            if after not in seen:
                seen.add(after)
                free = by in ("author", "machine")
                waiting.append((after, lines if free else (*lines, (by, after))))
    return None


def signed(lines: Iterable[Line], first: date) -> tuple[SignOff, ...]:
    return tuple(
        SignOff(capacity=Capacity(by), by="lead", on=first.replace(day=number), to=to)
        for number, (by, to) in enumerate(lines, start=1)
    )


def record(name: str, mark: str, key: str, state: str, lines: tuple[SignOff, ...]) -> Record:
    kind = BY_NAME[name].record
    made = kind(id=RecordId(key), state=state, signed=lines, where=Where(f"{key}.md"))
    if isinstance(made, PlanLine):
        return replace(made, point=Point(mark))
    return replace(made, class_=Class(mark))


def edition(**held: Any) -> Edition:
    return Edition(
        number=1, issued=ISSUED, by="lead", valid_until=TODAY, ends="", vessel="", **held
    )


@cache
def vessel() -> Content:
    read = read_folder(DEMO)
    return Content(vessel=read.vessel, people=read.people)


def book(issued: Edition, **held: Any) -> Book:
    content = replace(vessel(), editions=Editions((issued,)), **held)
    statuses = held_statuses(content.systems, issued, content.people)
    return Book(content, evaluate([], {}, {}), (), TODAY, held=statuses)


def pairs(name: str, mark: str) -> Iterator[tuple[str, str, str]]:
    """An id for every pair of a state that an edition can have and one that stands there now."""
    reached = [one for one in states(name) if signed_walk(name, mark, one) is not None]
    every = [(before, now) for before in reached for now in states(name)]
    for number, (before, now) in enumerate(every, start=1):
        yield f"SA-{kind_row(name)['letters']}-{number:03}", before, now


KINDS = [name for name in WRITTEN["kinds"] if name != STATUS]
TRIALS = [(name, mark) for name in KINDS for mark in marks(name)]


@pytest.mark.parametrize(("name", "mark"), TRIALS, ids=str)
def test_every_state_since_the_edition_is_judged_as_the_table_has_it(name: str, mark: str) -> None:
    fired = quiet = 0
    for capacity in (None, *PERSONS):
        records, issued, legal = {}, {}, {}
        for key, before, now in pairs(name, mark):
            old = signed_walk(name, mark, before) or ()
            new: tuple[Line, ...] = ((str(capacity), now),) if capacity else ()
            lines = signed(old, date(2031, 2, 1))
            records[key] = record(name, mark, key, now, (*lines, *signed(new, SINCE)))
            issued[key] = IssuedRecord(
                kind=name, title="", weight="A", state=before, revision=0, digest="",
                path="", signed=tuple(map(signed_line, lines)),
            )  # fmt: skip
            start = kind_row(name)["start"]
            legal[key] = leads(name, mark, start, (*old, *new), now) or leads(name, mark, before, new, now)  # fmt: skip

        found = {one.about for one in illegal_state_move.check(book(edition(records=issued), records=records))}  # fmt: skip

        assert found == {key for key, right in legal.items() if not right}
        fired += len(found)
        quiet += len(records) - len(found)

    assert fired > quiet > 0


def test_the_kinds_and_states_of_the_table_are_those_of_the_program() -> None:
    assert set(KINDS) == set(BY_NAME)
    for name in KINDS:
        assert set(states(name)) == set(BY_NAME[name].machine.states)


@pytest.mark.parametrize("name", KINDS)
def test_a_state_that_an_edition_had_without_signatures_is_no_place_to_start_from(
    name: str,
) -> None:
    mark = marks(name)[0]
    records, issued = {}, {}
    for key, before, now in pairs(name, mark):
        records[key] = record(name, mark, key, now, signed(((Capacity.APPROVER, now),), SINCE))
        issued[key] = IssuedRecord(kind=name, title="", weight="A", state=before, revision=0, digest="", path="")  # fmt: skip
    typed = tuple(
        Fired(code="illegal-state-move", severity=Severity.NOTE, about=key, where="", text="", since=1, on=ISSUED)
        for key in records
    )  # fmt: skip

    found = {one.about for one in illegal_state_move.check(book(edition(records=issued, fired=typed), records=records))}  # fmt: skip

    start = kind_row(name)["start"]
    assert found == {
        key
        for key, _, now in pairs(name, mark)
        if not leads(name, mark, start, [("approver", now)], now)
    }


@pytest.mark.parametrize("capacity", [None, *PERSONS])
@pytest.mark.parametrize("on", [date(2031, 4, 30), ISSUED, SINCE])
def test_a_service_status_is_judged_as_the_table_has_it(
    capacity: Capacity | None, on: date
) -> None:
    names = states(STATUS)
    order = {
        name: number for number, name in enumerate(("sketch", "building", "in test", "in service"))
    }
    for before in names:
        for now in names:
            old = signed_walk(STATUS, "A", before) or ()
            new: tuple[Line, ...] = ((str(capacity), now),) if capacity else ()
            lines = signed(old, date(2031, 2, 1))
            after = tuple(replace(one, on=on) for one in signed(new, SINCE))
            system = System(
                code="SA", folder="", where=Where("system.yml"), status=ServiceStatus(now),
                places={"status": Where("system.yml")}, signed=(*lines, *after),
            )  # fmt: skip
            was = IssuedSystem(title="", status=before, signed=tuple(map(signed_line, lines)))
            it = book(edition(systems={"SA": was}), systems={"SA": system})

            lowered = [one.about for one in status_lowered.check(it)]
            illegal = [one.about for one in illegal_state_move.check(it)]

            told = order[now] < order[before]
            since = new if on >= ISSUED and capacity is Capacity.IN_CHARGE else ()
            right = leads(STATUS, "A", before, since, now)
            assert bool(lowered) is (told and not right)
            assert it.status_of("SA-RV-001") == (before if lowered else now)
            walked = leads(STATUS, "A", "sketch", (*old, *new), now)
            assert bool(illegal) is (not walked and not lowered)


def test_a_status_is_not_set_back_by_somebody_who_may_not_be_in_charge() -> None:
    lines = signed((("in charge", "building"),), date(2031, 2, 1))
    was = IssuedSystem(title="", status="building", signed=tuple(map(signed_line, lines)))
    for by, holds in (("lead", False), ("volunteer-1", True), ("nobody", True)):
        line = replace(signed((("in charge", "sketch"),), SINCE)[0], by=by)
        system = System(
            code="SA", folder="", where=Where("system.yml"), status=ServiceStatus.SKETCH,
            places={"status": Where("system.yml")}, signed=(*lines, line),
        )  # fmt: skip

        it = book(edition(systems={"SA": was}), systems={"SA": system})

        assert bool(it.held) is holds, by
