"""Each system with a known right answer gets that answer, nothing missing and nothing added."""

from dataclasses import replace
from typing import Any

import pytest

from garboard.errors import Where
from garboard.systems.finding import About, Level, PathFinding
from garboard.systems.line_up import LineUp
from tests.systems.known import FILE, Known, differences, known_systems
from tests.systems.pieces import survey_of

KNOWN = known_systems(FILE.read_text("utf-8"))


@pytest.mark.parametrize("known", KNOWN, ids=lambda known: known.name)
def test_a_known_system_gets_its_known_answer(known: Known) -> None:
    found = survey_of(known.text, known.code).findings

    assert differences(known, found) == []


def test_there_are_known_systems_for_every_form_of_an_answer() -> None:
    forms = {form for known in KNOWN for named in known.answer.values() for form in named}

    assert forms == {"shut", "open", "turned", "locks", "name"}
    assert len({known.name for known in KNOWN}) == len(KNOWN) >= 26


# ---- the comparison itself

FOUND = PathFinding(
    code="relief-cut-off",
    level=Level.DANGER,
    of=About("SA", "SA-AR-001", Where("systems/piece/system.yml")),
    text="SA-AR-001 is cut off by SA-HV-001 shut, SA-HV-002 open, SA-TV-001 turned to left; depends on SA-HV-003",
    help="take it out",
    line=LineUp(shut=("SA-HV-001",), open=("SA-HV-002",), turned=(("SA-TV-001", "left"),)),
    locks=("SA-HV-003",),
    at_fault=("SA-NV-001",),
)
RIGHT = Known("one", "system: SA", {("relief-cut-off", "AR-001", "danger"): {}}, frozenset())


def named(**wanted: object) -> Known:
    return replace(RIGHT, answer={("relief-cut-off", "AR-001", "danger"): wanted})


def test_the_right_answer_is_no_difference() -> None:
    known = named(shut=["HV-001"], open=["HV-002"], turned={"TV-001": "left"}, locks=["HV-003"])

    assert differences(known, [FOUND]) == []


def test_an_answer_that_is_missing_is_seen() -> None:
    assert differences(RIGHT, []) == ["missing: relief-cut-off AR-001 danger"]


@pytest.mark.parametrize(
    "other",
    [{"of": replace(FOUND.of, name="SA-AR-002")}, {"level": Level.WARNING}, {"code": "no-drain"}, {"level": Level.ASIDE}],
    ids=str,
)  # fmt: skip
def test_an_answer_about_something_else_is_seen(other: dict[str, Any]) -> None:
    said = differences(RIGHT, [FOUND, replace(FOUND, **other)])

    assert len(said) == 1
    assert said[0].startswith("too much: ")


def test_a_code_that_is_left_out_is_not_compared() -> None:
    known = replace(RIGHT, left_out=frozenset({"cannot-isolate"}))

    assert differences(known, [FOUND, replace(FOUND, code="cannot-isolate")]) == []


def test_an_aside_counts_as_a_note() -> None:
    known = replace(RIGHT, answer={("relief-cut-off", "AR-001", "note"): {}})

    assert differences(known, [replace(FOUND, level=Level.ASIDE)]) == []


@pytest.mark.parametrize(
    ("wanted", "said"),
    [
        ({"shut": ["HV-002"]}, "does not say shut: HV-002"),
        ({"open": ["HV-001"]}, "does not say open: HV-001"),
        ({"turned": {"TV-001": "right"}}, "does not say turned: ('TV-001', 'right')"),
        ({"locks": ["HV-001"]}, "does not say locks: HV-001"),
    ],
    ids=str,
)
def test_a_position_that_is_not_named_is_seen(wanted: dict[str, object], said: str) -> None:
    found = differences(named(**wanted), [FOUND])

    assert found == [f"relief-cut-off AR-001 danger: {said}"]


def test_a_part_that_only_stands_in_a_field_is_not_named() -> None:
    found = differences(named(name=["NV-001"]), [FOUND])

    assert found == ["relief-cut-off AR-001 danger: the sentence has no word of NV-001"]
