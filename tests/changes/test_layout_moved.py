"""What the search found and finds no more is told, with who mended it; and so is what came."""

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.changes.behind import Behind
from garboard.changes.compare import compare
from garboard.changes.comparison import Comparison, LayoutChange, Sort
from garboard.changes.kept_comparisons import Compared
from garboard.changes.layout_moved import layout_moved
from garboard.cli.edition_diff import comparison_lines
from garboard.handbook import read_book
from garboard.methods import METHODS
from garboard.systems.finding import Level, PathFinding
from garboard.systems.line_up import LineUp
from garboard.views.draft import Draft
from garboard.views.edition_diff import fill
from garboard.views.finding_registers import who_caught_what
from garboard.views.page import Table
from garboard.views.runs import plain
from tests.traced_plant import CUT_OFF, traced, with_findings

CHANGE = """\
---
id: SA-CN-007
title: Gauge tapped at the receiver
system: SA
affects: [SA-PI-001]
---
The root valve came out.
"""
LEVELS = (Level.DANGER, Level.WARNING, Level.NOTE)


@pytest.fixture
def plant(tmp_path: Path) -> Book:
    """A system in which the gauge can be cut off."""
    return with_findings(traced(tmp_path), CUT_OFF)


def mended(folder: Path, *found: PathFinding) -> Book:
    """The same after a change to the gauge."""
    (folder / "log/2031/2031-06-01-gauge.md").write_text(CHANGE, "utf-8")
    return with_findings(read_book(folder), *found)


def moved(old: Book, new: Book) -> list[LayoutChange]:
    """What differs in the layouts."""
    return list(compare(old, new, METHODS).layout)


def test_a_finding_that_is_gone_names_the_change_that_mended_it(
    plant: Book, tmp_path: Path
) -> None:
    found = moved(plant, mended(tmp_path))

    assert found == [
        LayoutChange(
            code="switch-cut-off",
            about="SA-PI-001",
            sort=Sort.GONE,
            level_before="warning",
            before=CUT_OFF.text,
            behind=("SA-CN-007",),
        )
    ]


def test_the_same_finding_in_other_words_is_none(plant: Book, tmp_path: Path) -> None:
    same = replace(CUT_OFF, text="said otherwise", nodes=(1, 2))

    assert moved(plant, mended(tmp_path, same)) == []


def test_one_that_got_graver_is_told_as_one(plant: Book, tmp_path: Path) -> None:
    graver = replace(CUT_OFF, level=Level.DANGER, text="SA-PI-001 is cut off")

    (found,) = moved(plant, mended(tmp_path, graver))

    assert (found.sort, found.level_before, found.level_after) == (
        Sort.CHANGED,
        "warning",
        "danger",
    )


def test_of_two_about_one_part_the_one_that_stayed_is_not_told(plant: Book, tmp_path: Path) -> None:
    other = replace(CUT_OFF, line=LineUp(shut=("SA-HV-002",)), text="by another valve")
    before = with_findings(plant, CUT_OFF, other)

    found = moved(before, mended(tmp_path, other))

    assert [(one.sort, one.before) for one in found] == [(Sort.GONE, CUT_OFF.text)]


@pytest.mark.parametrize("level", Level)
def test_what_is_only_an_aside_is_nobodys_catch(level: Level, plant: Book, tmp_path: Path) -> None:
    before = with_findings(plant, replace(CUT_OFF, level=level))

    assert bool(moved(before, mended(tmp_path))) is (level in LEVELS)


def tables(draft: Draft) -> dict[str, list[str]]:
    """By caption, the rows of the tables of a page as bare words."""
    found = (block for block in draft.blocks if isinstance(block, Table))
    return {
        one.caption or one.columns[0].title: [
            " | ".join(plain(cell) for cell in row.cells) for row in one.rows
        ]
        for one in found
    }


def compared(old: Book, new: Book) -> Comparison:
    """All that differs."""
    return compare(old, new, METHODS)


def test_the_comparison_page_and_the_printed_one_tell_it(plant: Book, tmp_path: Path) -> None:
    new = mended(tmp_path)
    found = compared(plant, new)
    draft = Draft(new, "editions/since-1", "What changed", "edition")

    fill(draft, found)

    assert tables(draft)["question"] == [
        f"switch-cut-off of SA-PI-001 | gone: warning | {CUT_OFF.text} | nothing | SA-CN-007"
    ]
    said = "\n".join(comparison_lines(found))
    assert "- switch-cut-off of SA-PI-001: gone: warning" in said
    assert "findings of the layouts: 1" in said


def caught(book: Book, pairs: Iterable[Compared]) -> list[str]:
    """What the register credits the search with."""
    draft = Draft(book, "registers/who-caught-what", "Who caught what", "register")
    who_caught_what(draft, pairs)
    return tables(draft)["Found in the connections, and gone since"]


def test_the_search_is_a_catcher_too(plant: Book, tmp_path: Path) -> None:
    new = mended(tmp_path)
    found = compared(plant, new)

    assert caught(new, [Compared(1, 2, found)]) == [
        f"switch-cut-off: {CUT_OFF.text} | warning | edition 2 | SA-CN-007"
    ]
    assert caught(new, [Compared(2, 0, found)])[0].split(" | ")[2] == "this book"
    assert caught(new, [Compared(1, 2, None, "lost")]) == []


def test_what_got_lighter_or_came_is_no_catch(plant: Book, tmp_path: Path) -> None:
    lighter = mended(tmp_path, replace(CUT_OFF, level=Level.NOTE))
    found = compared(plant, lighter)

    assert caught(lighter, [Compared(1, 2, found)]) == []
    assert list(layout_moved(lighter, lighter, Behind(lighter, ()))) == []
