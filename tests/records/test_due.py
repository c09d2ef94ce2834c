"""What falls due, and how it stands today."""

from datetime import date

import pytest

from garboard.errors import Where
from garboard.records.base import DateOrText, Interval, Mention, Person, RecordId, Tag
from garboard.records.change import TemporaryModification
from garboard.records.component import Component, Item
from garboard.records.due import (
    Due,
    DueSort,
    due_of_instruments,
    due_of_parts,
    due_of_records,
    due_words,
    task_due,
)
from garboard.records.stock import stock_of
from garboard.records.vessel import Instrument, Spare
from garboard.records.work import Done, MaintenanceTask

HERE = Where("x.md")
TODAY = date(2031, 10, 1)


def _task(every: str, *days: date, state: str | None = None) -> MaintenanceTask:
    done = tuple(Done(on=day, by=Person("volunteer-1")) for day in days)
    return MaintenanceTask(
        where=HERE,
        id=RecordId("SA-MT-001"),
        system="SA",
        every=Interval(every),
        done=done,
        state=state,
    )


@pytest.mark.parametrize(
    ("every", "last", "says", "late"),
    [
        ("1 d", date(2031, 8, 30), "overdue 31 days", True),
        ("1 weeks", date(2031, 9, 24), "due today", False),
        ("1 months", date(2031, 9, 2), "in 1 day", False),
        (
            "250 running h",
            date(2031, 7, 19),
            "after 250 running h, which nobody counts here",
            False,
        ),
    ],
)
def test_a_task_is_due_its_interval_after_it_was_last_done(
    every: str, last: date, says: str, *, late: bool
) -> None:
    task = _task(every, date(2031, 1, 1), last, date(2031, 2, 2))

    assert due_words(task_due(task), TODAY) == (says, late)


def test_a_task_that_was_never_done_is_late() -> None:
    assert due_words(task_due(_task("1 d")), TODAY) == ("never done", True)


def test_a_task_that_left_is_due_no_more() -> None:
    left = _task("1 d", state="withdrawn")

    assert list(due_of_records({"SA-MT-001": left}, ())) == []


def test_a_certificate_and_a_life_are_two_days() -> None:
    part = Component(
        tag=Tag("SA-HS-001"), system="SA", where=HERE, expires=date(2031, 9, 30), fitted=date(2026, 9, 30),
        item=Item(tested=date(2031, 1, 1), due=date(2032, 1, 1)),
    )  # fmt: skip

    found = {one.sort: due_words(one, TODAY) for one in due_of_parts({"SA-HS-001": part})}

    assert found == {
        DueSort.CERTIFICATE: ("in 92 days", False),
        DueSort.REPLACE: ("overdue 1 day", True),
    }


def test_an_instrument_without_a_day_says_so() -> None:
    [one] = due_of_instruments({"G-07": Instrument(what="gauge")})

    assert due_words(one, TODAY) == ("no day recorded", False)


def test_an_arrangement_until_an_event_has_no_day_and_names_the_event() -> None:
    rigged = TemporaryModification(
        where=HERE, id=RecordId("SA-TM-001"), system="SA", until=DateOrText("first sea trial")
    )

    [one] = due_of_records({}, [rigged])

    assert (one.due, due_words(one, TODAY)) == (None, ("first sea trial", False))


def test_a_test_that_a_change_overtook_is_owed_since_the_change() -> None:
    one = Due(DueSort.AGAIN, "SA-TR-001", "SA", date(2031, 9, 21), why="SA-CN-002 came after it")

    assert due_words(one, TODAY) == ("owed for 10 days: SA-CN-002 came after it", True)


@pytest.mark.parametrize(
    ("aboard", "least", "low"),
    [(0, 1, True), (1, 1, False), (None, 1, True), (0, None, True), (2, None, False)],
)
def test_a_spare_is_short_below_its_least_or_uncounted(
    aboard: int | None, least: int | None, *, low: bool
) -> None:
    spare = Spare(key="X", where=HERE, name=Mention("hose"), aboard=aboard, least=least)

    assert stock_of(spare).low is low
