"""What was measured beside what was designed."""

from pathlib import Path

import pytest

from garboard.book import Book
from garboard.views.component_page import component_draft
from garboard.views.draft import Draft
from garboard.views.limits import normal_values
from garboard.views.measured import measured_table, quantity_ladder
from garboard.views.page import Drawing, Ladder, RungSort, Table
from garboard.views.runs import plain
from tests.views import receiver


def heights(ladder: Ladder) -> dict[str, float]:
    return {f"{rung.word} {plain(rung.cell)}": rung.height for rung in ladder.rungs}


def test_design_limits_and_readings_stand_on_one_scale_that_is_true(book: Book) -> None:
    (ladder,) = quantity_ladder(book, "SA-PS-001.set")
    found = heights(ladder)

    def height(bar: float) -> float:
        return (bar - 17.0) / (33.0 - 17.0)

    assert found == pytest.approx(
        {
            "rating 33 bar(g)": 1.0,
            "relief 33 bar(g)": 1.0,
            "measured 18.4 bar(g)": height(18.4),
            "design 18 bar(g)": height(18),
            "measured 18.0 bar(g)": height(18),
            "at least 17.2 bar(g)": height(17.2),
            "measured 17.0 bar(g)": 0.0,
        }
    )
    (design,) = (rung for rung in ladder.rungs if rung.sort is RungSort.DESIGN)
    assert design.band == pytest.approx((height(17.5), height(18.5)))
    assert {tick.text: tick.height for tick in ladder.ticks} == pytest.approx(
        {"20": height(20), "25": height(25), "30": height(30)}
    )


def test_a_reading_that_is_out_is_marked_otherwise_and_names_its_finding(book: Book) -> None:
    (ladder,) = quantity_ladder(book, "SA-PS-001.set")

    out = [rung for rung in ladder.rungs if rung.sort is RungSort.OUT]
    assert [plain(rung.about) for rung in out] == ["20 Sep 2031, SA-TR-003, out, see SA-FN-001"]


def test_the_table_says_who_measured_with_what_and_how_it_stands(book: Book) -> None:
    readings = [*book.measured["SA-PS-001.set"], *book.measured["SA-PS-002.set"]]

    table = measured_table(book, readings)

    assert [plain(cell) for cell in table.rows[0].cells] == [
        "set of Low air 1: 18 bar(g), 17.5 to 18.5 bar(g)",
        "18.4 bar(g)",
        "in tolerance",
        "2 April 2031, volunteer, SA-TR-001",
        "G-07, calibration in date that day, due 12 August 2031",
    ]
    assert [(plain(row.cells[2]), plain(row.cells[4])) for row in table.rows[2:]] == [
        (
            "outside the tolerance; outside the limit, at least 17.2 bar(g); see SA-FN-001",
            "G-07, calibration lapsed: G-07 was due 2031-08-12, read 2031-09-20",
        ),
        (
            "outside the tolerance; no finding says so",
            "G-99, calibration unknown: G-99 is no instrument of the handbook",
        ),
    ]


def test_a_reading_from_before_a_change_is_told_and_not_drawn(tmp_path: Path) -> None:
    change = """\
---
id: SA-CN-001
title: Set higher
system: SA
values: {SA-PS-001.set: {before: 17 bar(g), after: 18 bar(g)}}
installed: 2031-05-01
---
With a key.
"""
    book = receiver.read(tmp_path, **{"log/2031/2031-05-01-higher.md": change})

    (ladder,) = quantity_ladder(book, "SA-PS-001.set")
    table = measured_table(book, book.measured["SA-PS-001.set"])

    assert "measured 18.4 bar(g)" not in heights(ladder)
    assert plain(table.rows[0].cells[2]) == "read before SA-CN-001 gave it another value"


def test_a_component_page_has_the_scale_the_readings_and_the_drift(book: Book) -> None:
    page = component_draft(book, book.components["SA-PS-001"]).page()

    kinds = [type(one) for one in page.blocks]
    captions = [one.caption for one in page.blocks if isinstance(one, Table | Ladder | Drawing)]
    assert kinds.index(Ladder) < kinds.index(Drawing)
    assert captions[:5] == [
        "Numbers",
        "Set of Low air 1, bar(g): designed, limited, measured",
        "Requirements, judged at the worst corner",
        "Measured: set of Low air 1, designed 18 bar(g), 17.5 to 18.5 bar(g)",
        "Set of Low air 1, over time",
    ]


def test_a_quantity_with_neither_limit_nor_reading_has_no_scale(book: Book) -> None:
    assert list(quantity_ladder(book, "sizing.p_min")) == []
    assert list(quantity_ladder(book, "nothing.x")) == []


def test_normal_values_show_the_newest_reading_in_each_zone_and_what_was_measured(
    book: Book,
) -> None:
    draft = Draft(book, "starting-air/normal-values", "Normal values", "normal values")

    normal_values(draft, book.systems["SA"])

    ladders = [one for one in draft.blocks if isinstance(one, Ladder)]
    tables = {one.caption: one for one in draft.blocks if isinstance(one, Table)}
    newest = [plain(rung.about) for rung in ladders[0].rungs if rung.word == "measured"]
    assert "SA-RV-001, SA-TR-001" in newest
    assert len(tables["Measured against designed"].rows) == 6
    assert [one.caption for one in ladders][-1] == (
        "One start takes, bar(d): designed, limited, measured"
    )
