"""Steps of the demo's procedures as rows to tick, and how everything stands after them."""

from dataclasses import replace

import pytest

from garboard.book import Book
from garboard.records.base import Mention
from garboard.records.procedure import Procedure, See, Step
from garboard.views.end_state import end_state
from garboard.views.page import Link, Steps
from garboard.views.runs import plain
from garboard.views.steps import LONGEST_GROUP, step_rows
from tests.demo_site import demo_handbook


@pytest.fixture(scope="module")
def demo() -> Book:
    return demo_handbook().book


def procedure(book: Book, name: str) -> Procedure:
    record = book.records[name]
    assert isinstance(record, Procedure)
    return record


def rows(book: Book, name: str, **changed: object) -> Steps:
    return step_rows(book, replace(procedure(book, name), **changed))  # type: ignore[arg-type]


def stands(book: Book, name: str) -> Steps:
    (found,) = (one for one in end_state(book, procedure(book, name)) if isinstance(one, Steps))
    return found


def test_a_new_place_heads_its_group_and_is_not_said_again_in_the_row(demo: Book) -> None:
    made = rows(demo, "SA-PR-004").steps

    assert [step.under for step in made] == [
        "At: receiver 1", "", "", "At: receiver 2", "", "At: separator", "",
    ]  # fmt: skip
    assert made[0].place == ""
    assert made[1].place == "under receiver 1"


def test_more_rows_than_stand_together_are_parted_evenly(demo: Book) -> None:
    made = rows(demo, "SA-PR-006").steps
    heads = [number for number, step in enumerate(made) if step.under]

    assert len(made) > LONGEST_GROUP
    assert [made[number].under for number in heads] == [
        "At: receiver 1", "At: receiver 1, continued",
    ]  # fmt: skip
    assert heads == [0, 6]


def test_a_branch_begins_with_if_and_what_it_names_is_a_link(demo: Book) -> None:
    made = rows(demo, "SA-PR-001").steps

    assert all(plain(step.if_not).startswith("If ") for step in made)
    assert [run.target for run in made[4].if_not if isinstance(run, Link)] == ["SA-FT-002"]
    assert plain(made[4].if_not).startswith("If not: SA-FT-002 Compressor runs")


@pytest.mark.parametrize(
    ("written", "targets"),
    [("go back to step 2", ["SA-PR-001#step-2"]), ("step 2 of SA-PR-004", ["SA-PR-004#step-2", "SA-PR-004"]),
     ("If it stays, step 99", []), ("step 0 or step 1, then step 3", ["SA-PR-001#step-1", "SA-PR-001#step-3"])],
)  # fmt: skip
def test_a_step_that_a_branch_names_is_a_link_where_there_is_one(
    demo: Book, written: str, targets: list[str]
) -> None:
    first, *others = procedure(demo, "SA-PR-001").steps
    made = (
        rows(demo, "SA-PR-001", steps=(replace(first, if_not=Mention(written)), *others))
        .steps[0]
        .if_not
    )

    assert [run.target for run in made if isinstance(run, Link)] == targets
    assert plain(made).endswith(written)


@pytest.mark.parametrize(
    ("within", "seconds"),
    [("60 s", 60), ("1.5 min", 90), ("2 h", 7200), ("soon", 0), ("5 bar(g)", 0)],
)
def test_only_a_time_has_a_clock(demo: Book, within: str, seconds: int) -> None:
    step = Step(do="Wait", see=See(value="0 bar(g)", within=within))  # type: ignore[arg-type]

    assert rows(demo, "SA-PR-001", steps=(step,)).steps[0].seconds == seconds


def test_a_hold_point_says_who_releases_it(demo: Book) -> None:
    said = plain(rows(demo, "SA-PR-006").steps[7].hold)

    assert said == (
        "Hold point: do not go on before the surveyor has released SA-IT-004 Pressure test of receiver 1"
    )


def test_the_mode_that_is_restored_lists_every_position_those_first_that_were_moved(
    demo: Book,
) -> None:
    found = stands(demo, "SA-PR-001")

    said = [f"{plain(step.item).split(' ')[0]} {plain(step.see)}" for step in found.steps]
    assert said[:3] == ["SA-CP-001 stopped", "SA-HV-001 shut", "SA-CP-002 stopped"]
    assert {"SA-HV-006 open", "SA-HV-007 shut", "SA-HV-010 open"} <= set(said)
    assert len(said) == 18
    assert [step.under for step in found.steps if step.under] == [
        "What the steps moved", "All the others",
    ]  # fmt: skip
    assert found.steps[0].ticked == "SA-CP-001 stopped, seen"


def test_positions_that_are_written_in_words_are_rows_too(demo: Book) -> None:
    assert [step.ticked for step in stands(demo, "DC-PR-003").steps] == [
        "DC-XO-001 main, seen", "DC-CB-013 off, seen",
    ]  # fmt: skip
