"""Whether every switch feels what its machine fills, and what it watches."""

import pytest

from garboard.systems.finding import Level
from tests.systems.written import found_of, written

SWITCH = "PS-001: {kind: pressure switch, stops: CP-001, cuts_out: 30 bar(g)}"
PLANT = [
    "CP-001: {kind: compressor, makes: 42 bar(g)}",
    "NV-001: {kind: check valve}",
    *(f"AR-00{n}: {{kind: receiver, rated: 33 bar(g)}}" for n in (1, 2)),
    *(f"HV-00{n}: {{kind: stop valve}}" for n in (1, 2, 3, 4, 5)),
]
RUNS = [
    "CP-001 > NV-001 > filling line",
    "filling line > HV-001 > AR-001",
    "filling line > HV-002 > AR-002",
    "AR-001.out > HV-003 > start header",
    "AR-002.out > HV-004 > start header",
    "start header > HV-005 > deck",
]
HEADERS = "filling line: {}, start header: {}"


def tapped(*taps: str, switches: tuple[str, ...] = (SWITCH,)) -> str:
    """Two receivers, filled from one line and led to one header, with switches tapped somewhere."""
    return written([*PLANT, *switches], [*RUNS, *taps], HEADERS)


def test_on_a_header_beyond_the_vessels_it_is_found_for_each_with_the_valves_that_hide_it() -> None:
    found = found_of(tapped("start header > PS-001"), "switch-cut-off")

    assert [(one.level, one.endangers) for one in found] == [
        (Level.DANGER, ("SA-AR-001",)),
        (Level.DANGER, ("SA-AR-002",)),
    ]
    assert [(one.line.shut, one.line.open) for one in found] == [
        (("SA-HV-002", "SA-HV-003"), ("SA-HV-001",)),
        (("SA-HV-001", "SA-HV-004"), ("SA-HV-002",)),
    ]
    assert all(
        tag in one.text for one in found for tag in (*one.line.shut, *one.line.open, *one.endangers)
    )


def test_moved_onto_one_vessel_it_does_not_feel_the_other() -> None:
    (found,) = found_of(tapped("AR-001.gauge > PS-001"), "switch-cut-off")

    assert (found.level, found.about, found.endangers) == (
        Level.DANGER,
        "SA-PS-001",
        ("SA-AR-002",),
    )


def test_on_the_line_that_every_way_of_filling_passes_it_is_no_more_than_an_aside() -> None:
    found = found_of(tapped("filling line > PS-001"), "switch-cut-off")

    assert [(one.level, one.endangers) for one in found] == [
        (Level.ASIDE, ("SA-AR-001", "SA-AR-002"))
    ]


def test_a_way_round_the_tap_is_found_however_few_valves_it_needs() -> None:
    text = written(
        [*PLANT, SWITCH, "HV-006: {kind: stop valve, usual: shut}"],
        [*RUNS, "filling line > PS-001", "NV-001.out > HV-006 > AR-001.second"],
        HEADERS,
    )
    by_pass = text.replace("CP-001 > NV-001 > filling line", "CP-001 > NV-001").replace(
        "connections:", "connections:\n  - NV-001.out > HV-005 > filling line"
    )
    by_pass = by_pass.replace("  - start header > HV-005 > deck\n", "")

    assert [one.level for one in found_of(text, "switch-cut-off")] == [Level.ASIDE]
    (found,) = [
        one for one in found_of(by_pass, "switch-cut-off") if one.endangers == ("SA-AR-001",)
    ]
    assert (found.level, found.line.open) == (Level.DANGER, ("SA-HV-006",))
    assert "SA-HV-005" in found.line.shut


def test_one_cock_that_hides_both_vessels_is_one_finding() -> None:
    cock = "HV-006: {kind: cock}"

    (found,) = found_of(
        tapped("filling line > HV-006 > PS-001", switches=(SWITCH, cock)), "switch-cut-off"
    )

    assert (found.endangers, found.line.shut) == (("SA-AR-001", "SA-AR-002"), ("SA-HV-006",))


def test_a_switch_on_each_receiver_stops_the_machine_for_that_one() -> None:
    second = SWITCH.replace("PS-001", "PS-002")
    text = tapped("AR-001.gauge > PS-001", "AR-002.gauge > PS-002", switches=(SWITCH, second))

    assert found_of(text, "switch-cut-off") == []


@pytest.mark.parametrize(
    ("blind", "still"), [("PS-001", "PS-002"), ("PS-002", "PS-001")], ids=["cut-out", "trip"]
)
def test_a_blind_switch_is_a_danger_though_the_other_still_stops_it(blind: str, still: str) -> None:
    trip = "PS-002: {kind: pressure switch, stops: CP-001, trip: 31.6 bar(g)}"
    text = tapped(f"start header > {blind}", f"filling line > {still}", switches=(SWITCH, trip))

    found = [one for one in found_of(text, "switch-cut-off") if one.level is not Level.ASIDE]

    assert {(one.level, one.about) for one in found} == {(Level.DANGER, f"SA-{blind}")}
    assert all(f"only SA-{still} would stop it" in one.text for one in found)


def test_two_blind_switches_are_a_danger() -> None:
    trip = "PS-002: {kind: pressure switch, stops: CP-001, trip: 31.6 bar(g)}"
    text = tapped("start header > PS-001", "start header > PS-002", switches=(SWITCH, trip))

    levels = {(one.about, one.level) for one in found_of(text, "switch-cut-off")}

    assert levels == {("SA-PS-001", Level.DANGER), ("SA-PS-002", Level.DANGER)}


def test_one_switch_that_stops_two_machines_is_told_once() -> None:
    both = SWITCH.replace("stops: CP-001", "stops: [CP-001, CP-002]")
    second = "CP-002: {kind: compressor, makes: 36 bar(g)}"
    text = tapped("AR-001.gauge > PS-001", "CP-002 > NV-001.out", switches=(both, second))

    (found,) = found_of(text, "switch-cut-off")

    assert found.text.startswith("SA-CP-001 and SA-CP-002 can fill SA-AR-002")


def test_a_changeover_that_turns_the_switch_to_the_other_receiver_is_named_by_its_position() -> (
    None
):
    turn = "TV-001: {kind: three-way valve, positions: {one: [common-a], two: [common-b]}}"
    text = tapped(
        "AR-001.g > TV-001.a",
        "AR-002.g > TV-001.b",
        "TV-001.common > PS-001",
        switches=(SWITCH, turn),
    )

    found = found_of(text, "switch-cut-off")

    assert {one.endangers[0]: ("SA-TV-001", "two") in one.line.turned for one in found} == {
        "SA-AR-001": True,
        "SA-AR-002": False,
    }


def test_a_level_switch_in_a_tank_is_found_behind_a_cock() -> None:
    text = written(
        [
            "TK-001: {kind: tank}",
            "HV-001: {kind: cock}",
            "LS-001: {kind: level switch, watches: TK-001}",
        ],
        ["TK-001.foot > HV-001 > LS-001"],
        medium="diesel fuel",
    )

    (found,) = found_of(text, "switch-cut-off")

    assert (found.level, found.line.shut) == (Level.DANGER, ("SA-HV-001",))


def test_a_watching_switch_on_another_line_is_joined_to_it_by_nothing() -> None:
    text = written(
        [
            "AR-001: {kind: receiver}",
            "AR-002: {kind: receiver}",
            "PS-001: {kind: pressure switch, watches: AR-001}",
            "PI-001: {kind: gauge}",
        ],
        ["AR-001.g > PI-001", "AR-002.g > PS-001"],
    )

    (found,) = found_of(text, "switch-cut-off")

    assert found.text == "SA-PS-001 watches SA-AR-001 and is joined to it by nothing"


def test_what_stops_and_watches_behind_one_cock_is_told_once() -> None:
    both = SWITCH.replace("stops: CP-001", "stops: CP-001, watches: AR-001")
    text = written(
        [
            "CP-001: {kind: compressor, makes: 42 bar(g)}",
            "AR-001: {kind: receiver}",
            "HV-001: {kind: stop valve}",
            both,
        ],
        ["CP-001 > AR-001", "AR-001.g > HV-001 > PS-001"],
    )

    (found,) = found_of(text, "switch-cut-off")

    assert found.text.startswith("SA-CP-001 can fill SA-AR-001")
