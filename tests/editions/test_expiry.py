"""An edition ends with the first thing in it that has a day of its own, and says with which."""

from datetime import date
from pathlib import Path

import pytest

from garboard.editions.expiry import past, until
from garboard.handbook import read_book
from tests.editions.small_handbook import SYSTEM, write

LOG = "log/2031/2031-03-01-hose.md"


def rigged(until_day: str, state: str = "fitted") -> str:
    return f"""\
---
id: SA-TM-001
title: Hose across the elbow
system: SA
state: {state}
until: {until_day}
---
As rigged.
"""


def conceded(until_day: str, state: str = "granted") -> str:
    return rigged(until_day, state).replace("SA-TM-001", "SA-CO-001")


def ends(folder: Path) -> tuple[date, str]:
    limit = until(read_book(folder))
    assert limit
    return limit.day, limit.words


def test_with_nothing_else_it_ends_with_its_life(tmp_path: Path) -> None:
    folder = write(tmp_path)

    assert ends(folder) == (date(2032, 9, 15), "a life of 12 months")


@pytest.mark.parametrize(
    ("path", "text", "day", "words"),
    [
        (
            "systems/starting-air/system.yml",
            SYSTEM.replace("2034-01-14", "2032-01-14"),
            date(2032, 1, 14),
            "relief valve SA-RV-001 is due 2032-01-14",
        ),
        (
            LOG,
            rigged("2031-12-31"),
            date(2031, 12, 31),
            "temporary modification SA-TM-001 ends 2031-12-31",
        ),
        (LOG, conceded("2032-02-29"), date(2032, 2, 29), "concession SA-CO-001 ends 2032-02-29"),
        (LOG, rigged("2031-09-15"), date(2031, 9, 15), "temporary modification SA-TM-001 ends 2031-09-15"),
    ],
)  # fmt: skip
def test_what_comes_first_ends_it_and_is_named(
    tmp_path: Path, path: str, text: str, day: date, words: str
) -> None:
    folder = write(tmp_path, **{path: text})

    assert ends(folder) == (day, words)


def test_of_several_the_first_counts(tmp_path: Path) -> None:
    system = SYSTEM.replace("2034-01-14", "2032-01-14")
    folder = write(
        tmp_path, **{LOG: conceded("2031-11-30"), "systems/starting-air/system.yml": system}
    )

    assert ends(folder) == (date(2031, 11, 30), "concession SA-CO-001 ends 2031-11-30")


@pytest.mark.parametrize(
    "text",
    [
        rigged("2031-12-31", "restored"),
        rigged("2031-12-31", "proposed"),
        conceded("2031-12-31", "refused"),
        rigged("at the haul-out"),
    ],
)
def test_what_is_over_not_begun_or_ends_with_an_event_ends_no_edition(
    tmp_path: Path, text: str
) -> None:
    folder = write(tmp_path, **{LOG: text})

    assert ends(folder) == (date(2032, 9, 15), "a life of 12 months")


def test_a_part_that_is_no_safety_device_ends_no_edition(tmp_path: Path) -> None:
    more = "  SA-HV-001: {kind: stop valve, item: {due: 2031-10-01}}\n"
    folder = write(tmp_path, **{"systems/starting-air/system.yml": SYSTEM + more})

    assert ends(folder) == (date(2032, 9, 15), "a life of 12 months")


def test_what_is_past_already_is_told_and_does_not_count(tmp_path: Path) -> None:
    folder = write(tmp_path, **{LOG: rigged("2031-09-01")})

    assert ends(folder) == (date(2032, 9, 15), "a life of 12 months")
    assert [one.words for one in past(read_book(folder))] == [
        "temporary modification SA-TM-001 ends 2031-09-01"
    ]


def test_without_a_life_there_is_no_end(tmp_path: Path) -> None:
    folder = write(tmp_path)
    text = (folder / "handbook.yml").read_text("utf-8")
    (folder / "handbook.yml").write_text(text.replace("edition: {life: 12 months}\n", ""), "utf-8")

    assert until(read_book(folder)) is None
