"""Ratings against what can stand there, where three-way valves and faults make it hard to say."""

from garboard.systems.finding import Level, PathFinding
from tests.systems.pieces import survey_of

THROUGH = """
system: SA
medium: air
components:
  SH-001: {kind: pressure source, makes: 30 bar(g)}
  RG-001: {kind: regulator, set: %s}
  TV-001: {kind: three-way valve, positions: {%s}}
  RV-001: {kind: relief valve, set: 10 bar(g)}
  PI-001: {kind: gauge, rated: 16 bar(g), range: {from: 0 bar(g), to: 16 bar(g)}}
%sconnections:
  - SH-001 > RG-001 > TV-001.a
  - TV-001.b > RV-001
  - TV-001.common > PI-001
%s"""
BOTH = "through: [common-a, a-b], off: [common-b]"
"""The gauge is joined with the relief valve in either position, by different ports."""


def over_rating(text: str) -> list[PathFinding]:
    """What is over its rating in a whole system.yml."""
    return [one for one in survey_of(text).findings if one.code == "over-rating"]


def test_a_part_kept_below_its_rating_in_each_single_line_up_is_left_alone() -> None:
    assert over_rating(THROUGH % ("20 bar(g)", BOTH, "", "")) == []


def test_the_same_part_is_named_where_one_line_up_leaves_it_without_relief() -> None:
    alone = "through: [common-a], off: [common-b]"

    [found] = over_rating(THROUGH % ("20 bar(g)", alone, "", ""))

    assert (found.about, found.line.turned) == ("SA-PI-001", (("SA-TV-001", "through"),))
    assert "can see 20 bar(g), with SA-TV-001 turned to through" in found.text


def test_a_fault_is_settled_by_trying_the_line_ups_as_well() -> None:
    assert over_rating(THROUGH % ("8 bar(g)", BOTH, "", "")) == []


def test_a_fault_is_found_where_without_it_the_quick_search_said_too_much() -> None:
    more = "  SH-002: {kind: pressure source, makes: 18 bar(g)}\n  NV-001: {kind: check valve}\n"
    runs = "  - TV-001.common > NV-001 > high line\n  - SH-002 > high line\n"
    headers = "headers: {high line: {}}\n"
    text = THROUGH % ("20 bar(g)", BOTH + ", shut: []", more + headers, runs)

    [found] = over_rating(text)

    assert (found.about, found.level) == ("SA-PI-001", Level.WARNING)
    assert found.at_fault == ("SA-NV-001",)


def test_reducing_valves_side_by_side_are_named_in_one_finding() -> None:
    text = """
system: SA
medium: air
components:
  SH-001: {kind: pressure source, makes: 30 bar(g)}
  RG-001: {kind: regulator, set: 8 bar(g), rated: 40 bar(g)}
  RG-002: {kind: regulator, set: 9 bar(g), rated: 20 bar(g)}
  US-001: {kind: consumer, rated: 10 bar(g), exhausts: yes}
headers: {high line: {}, low line: {}}
connections:
  - SH-001 > high line
  - high line > RG-001 > low line
  - high line > RG-002 > low line
  - low line > US-001
"""
    by_name = {one.about: one for one in over_rating(text)}

    assert by_name.keys() == {"SA-RG-002", "SA-US-001"}
    assert by_name["SA-US-001"].at_fault == ("SA-RG-001", "SA-RG-002")
    assert "if SA-RG-001 or SA-RG-002 jams wide open" in by_name["SA-US-001"].text
    assert by_name["SA-RG-002"].at_fault == ()


def test_too_many_three_way_valves_are_said_to_be_beyond_trying() -> None:
    valves = range(1, 14)
    parts = "".join(f"  TV-{n:03d}: {{kind: three-way valve}}\n" for n in valves)
    runs = "".join(f"  - TV-{n:03d}.a > TV-{n + 1:03d}.common\n" for n in valves if n < 13)
    ends = "".join(f"  - TV-{n:03d}.b > bilge\n" for n in valves)
    text = (
        "system: SA\nmedium: air\ncomponents:\n"
        "  SH-001: {kind: pressure source, makes: 30 bar(g)}\n"
        f"  US-001: {{kind: consumer, rated: 10 bar(g)}}\n{parts}"
        f"connections:\n  - SH-001 > TV-001.common\n  - TV-013.a > US-001\n{runs}{ends}"
    )

    [found] = over_rating(text)

    assert found.text.endswith("too many three-way valves to try every line-up: check by hand")
