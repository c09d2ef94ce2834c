"""Where else the same could be, and who looked there."""

from pathlib import Path

import pytest

from garboard.changes.where_else import Elsewhere, Like, Look, WhereElse, where_else
from garboard.handbook import read_book
from garboard.records.finding import Finding
from tests.golden_case import Case

PARTS = """\
status: in test
title: Starting air
components:
  SA-PS-001: {kind: pressure switch, part_no: P-1, item: {maker: invented, type: K2}}
  SA-PS-002: {kind: pressure switch}
  SA-PS-003: {kind: pressure switch, item: {maker: invented, type: K2}}
  SA-PS-004: {kind: pressure switch, part_no: P-1}
  SA-PT-001: {kind: transmitter, part_no: P-1}
  SA-HV-001: {kind: stop valve}
"""
OTHER = "title: Bilge\ncomponents: {BG-PS-001: {kind: pressure switch}}\n"
HEAD = "id: SA-FN-001\ntitle: Behind the stop\nsystem: SA\nclass: A\nstate: evaluated\nwhere: [SA-PS-001]"


def looked(folder: Path, extent: str = "", more: str = "", action: str = "look") -> WhereElse:
    files = {
        "systems/starting-air/system.yml": PARTS,
        "systems/bilge-fire/system.yml": OTHER,
        "log/2031/2031-03-09-f.md": f"---\n{HEAD}\n{more}{extent}\n---\nx\n",
        "log/2031/2031-03-10-a.md": f"---\nid: SA-CA-001\ntitle: Look\nsystem: SA\nfinding: SA-FN-001\naction: {action}\n---\nx\n",
    }
    book = read_book(Case("", "", "", files, "").write(folder))
    assert not book.content.diagnostics
    (finding,) = book.of_kind(Finding)
    return where_else(book, finding)


def test_the_most_alike_stand_first_across_all_systems(tmp_path: Path) -> None:
    found = looked(tmp_path)

    assert [(one.tag, one.like) for one in found.places] == [
        ("SA-PS-004", Like.PART_NO),
        ("SA-PT-001", Like.PART_NO),
        ("SA-PS-003", Like.TYPE),
        ("BG-PS-001", Like.KIND),
        ("SA-PS-002", Like.KIND),
    ]
    assert found.looked == 0
    assert len(found.open) == 5


def test_each_place_says_what_became_of_it(tmp_path: Path) -> None:
    extent = (
        "extent: {asked: others, looked: [SA-PS-002 on the drawing, BG], found: [SA-PS-004, none in SA-PS-003],"
        " not_looked: {transmitter: sealed}}"
    )

    found = looked(tmp_path, extent, action="go and look at SA-PS-003")

    assert found.places == (
        Elsewhere("SA-PS-004", Like.PART_NO, Look.FOUND),
        Elsewhere("SA-PT-001", Like.PART_NO, Look.REASON, "sealed"),
        Elsewhere("SA-PS-003", Like.TYPE, Look.ACTION, "SA-CA-001"),
        Elsewhere("BG-PS-001", Like.KIND, Look.LOOKED),
        Elsewhere("SA-PS-002", Like.KIND, Look.LOOKED),
    )
    assert found.looked == 3
    assert found.open == ()


@pytest.mark.parametrize(
    "words", ["SA-PS-002", "pressure switch", "SA", "Starting air", "all others"]
)
def test_a_reason_is_given_for_a_part_a_kind_a_system_or_the_rest(
    tmp_path: Path, words: str
) -> None:
    found = looked(tmp_path, f"extent: {{asked: others, not_looked: {{{words}: out of reach}}}}")

    (place,) = (one for one in found.places if one.tag == "SA-PS-002")
    assert (place.look, place.by) == (Look.REASON, "out of reach")


def test_words_that_name_no_part_give_no_reason(tmp_path: Path) -> None:
    found = looked(tmp_path, "extent: {asked: others, not_looked: {the others: out of reach}}")

    assert len(found.open) == 5


def test_a_finding_about_papers_has_no_elsewhere(tmp_path: Path) -> None:
    files = {
        "systems/starting-air/system.yml": PARTS,
        "log/2031/2031-03-09-f.md": "---\nid: SA-FN-001\ntitle: Slip\nsystem: SA\n---\nx\n",
    }
    book = read_book(Case("", "", "", files, "").write(tmp_path))
    (finding,) = book.of_kind(Finding)

    assert where_else(book, finding) == WhereElse()
