"""Cables against the currents of all that can feed them."""

import pytest

from garboard.systems.finding import PathFinding
from tests.systems.pieces import survey_of

BANKS = """
system: DC
medium: direct current
components:
  BA-001: {kind: battery, makes: 90 A}
  BA-002: {kind: battery}
  FU-001: {kind: fuse, rated: 100 A}
  FU-002: {kind: fuse, rated: 100 A}
%sconnections:
  - BA-001 > FU-001 > %s
  - BA-002 > FU-002 > %s
%s"""


def above_fuse(text: str) -> list[PathFinding]:
    """The cables that can be fed too much in a whole system.yml."""
    return [one for one in survey_of(text, "DC").findings if one.code == "cable-above-fuse"]


def test_a_battery_is_without_limit_whatever_its_plate_says() -> None:
    parts = "  CW-001: {kind: cable, rated: 95 A}\n  LD-001: {kind: load}\n  BB-001: {kind: bus}\n"

    found = above_fuse(BANKS % (parts, "CW-001", "BB-001", "  - CW-001 > LD-001\n"))

    assert [(one.about, one.at_fault) for one in found] == [("DC-CW-001", ("DC-FU-001",))]
    assert "can be fed 100 A" in found[0].text


@pytest.mark.parametrize(("makes", "names"), [("60 A", []), ("100 A", ["DC-CW-001"])])
def test_an_alternator_gives_what_it_makes_and_its_bus_what_its_fuse_passes(
    makes: str, names: list[str]
) -> None:
    parts = (
        f"  GE-001: {{kind: alternator, makes: {makes}}}\n"
        "  CW-001: {kind: cable, rated: 80 A}\n"
        "  FU-003: {kind: fuse, rated: 80 A}\n"
        "  BB-001: {kind: bus, rated: 400 A}\n"
    )

    found = above_fuse(
        BANKS % (parts, "BB-001", "BB-001", "  - GE-001 > CW-001 > FU-003 > BB-001\n")
    )

    assert [one.about for one in found] == names


CHANGED = """
system: DC
medium: direct current
components:
  BA-001: {kind: battery}
  BA-002: {kind: battery}
  FU-001: {kind: fuse, rated: 100 A}
  FU-002: {kind: fuse, rated: 130 A}
  XO-001: {kind: changeover, positions: {one: [a-common], two: [b-common]}, usual: one}
  CW-001: {kind: cable, rated: 120 A}
  LD-001: {kind: load}
%sconnections:
  - BA-001 > FU-001 > XO-001.a
  - BA-002 > FU-002 > XO-001.b
  - XO-001.common > CW-001 > LD-001
%s"""


def test_the_position_of_a_changeover_is_named_that_feeds_too_much() -> None:
    [found] = above_fuse(CHANGED % ("", ""))

    assert found.line.turned == (("DC-XO-001", "two"),)
    assert "can be fed 130 A: DC-FU-002 rated 130 A, with DC-XO-001 turned to two" in found.text


def test_more_changeovers_than_can_be_tried_are_said_to_be() -> None:
    more = "".join(f"  XO-{n:03d}: {{kind: changeover}}\n" for n in range(2, 10))
    runs = "".join(
        f"  - XO-{n:03d}.common > bilge\n  - XO-{n:03d}.a > bilge\n  - XO-{n:03d}.b > bilge\n"
        for n in range(2, 10)
    )

    [found] = above_fuse(CHANGED % (more, runs))

    assert found.text.endswith("too many changeovers to try every position: check by hand")
    assert "can be fed 230 A" in found.text


def test_current_through_a_diode_counts_one_way_only() -> None:
    parts = (
        "  DI-001: {kind: diode, rated: 200 A}\n  CW-001: {kind: cable, rated: 120 A}\n"
        "  BB-001: {kind: bus, rated: 500 A}\n  LD-001: {kind: load}\n"
    )
    runs = "  - BB-001 > %s > LD-001\n"

    away = above_fuse(BANKS % (parts, "BB-001", "LD-001", runs % "CW-001 > DI-001"))
    towards = above_fuse(
        BANKS % (parts, "BB-001", "LD-001", "  - LD-001 > DI-001 > CW-001 > BB-001\n")
    )

    assert away == []
    assert towards == []
