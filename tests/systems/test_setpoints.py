"""Where a switch stops and starts its machine, as far as the layout decides it."""

from garboard.systems.finding import Level
from tests.systems.written import found_of, written

COMPRESSOR = "CP-001: {kind: compressor, makes: 42 bar(g)}"
RECEIVER = "AR-001: {kind: receiver, rated: 40 bar(g)}"
LINE = "filling line: {}"


def switch(**numbers: str) -> str:
    """A switch that stops the compressor."""
    said = ", ".join(f"{name}: {number} bar(g)" for name, number in numbers.items())
    return f"PS-001: {{kind: pressure switch, stops: CP-001, {said}}}"


def test_a_cut_out_is_held_against_the_relief_valve_that_opens_first() -> None:
    text = written(
        [
            COMPRESSOR,
            RECEIVER,
            switch(cuts_out="32"),
            "RV-001: {kind: relief valve, set: 33 bar(g)}",
            "RV-002: {kind: relief valve, set: 33 bar(g) +/- 1 bar}",
        ],
        ["CP-001 > AR-001", "AR-001.g > PS-001", "AR-001.a > RV-001", "AR-001.b > RV-002"],
    )

    (found,) = found_of(text, "set-points-crossed")

    assert (found.level, found.about, found.at_fault) == (
        Level.WARNING,
        "SA-PS-001",
        ("SA-RV-002",),
    )


def test_a_trip_above_the_relief_valve_it_is_joined_to_never_comes() -> None:
    text = written(
        [COMPRESSOR, RECEIVER, switch(trip="34"), "RV-001: {kind: relief valve, set: 33 bar(g)}"],
        ["CP-001 > AR-001", "AR-001.g > PS-001", "AR-001.r > RV-001"],
    )

    (found,) = found_of(text, "set-points-crossed")

    assert found.text.startswith("trip of SA-PS-001 is 34 bar(g), setting of SA-RV-001")


def test_what_the_crossed_settings_tell_is_not_told_again_as_a_relief_valve_that_blows() -> None:
    text = written(
        [
            COMPRESSOR,
            RECEIVER,
            switch(cuts_out="33"),
            "RV-001: {kind: relief valve, set: 33 bar(g)}",
            "HV-001: {kind: stop valve}",
            "RV-002: {kind: relief valve, set: 33 bar(g)}",
        ],
        ["CP-001 > AR-001", "AR-001.g > PS-001", "AR-001.r > RV-001", "AR-001.s > HV-001 > RV-002"],
    )

    assert [one.at_fault for one in found_of(text, "set-points-crossed")] == [("SA-RV-001",)]
    assert [one.about for one in found_of(text, "relief-blows")] == ["SA-RV-002"]


def test_a_switch_that_no_receiver_keeps_up_names_the_check_valve_between() -> None:
    text = written(
        [COMPRESSOR, RECEIVER, switch(cuts_in="25", cuts_out="30"), "NV-001: {kind: check valve}"],
        ["CP-001 > line > NV-001 > AR-001", "line > PS-001"],
        "line: {}",
    )

    (found,) = found_of(text, "early-restart")

    assert (found.about, found.at_fault, found.line.shut) == ("SA-PS-001", ("SA-NV-001",), ())


def test_a_switch_behind_a_valve_that_usually_stands_open_is_kept_up() -> None:
    parts = [COMPRESSOR, RECEIVER, switch(cuts_in="25", cuts_out="30")]
    runs = ["CP-001 > filling line > HV-001 > AR-001", "filling line > PS-001"]

    usually_open = written([*parts, "HV-001: {kind: stop valve, usual: open}"], runs, LINE)
    usually_shut = written([*parts, "HV-001: {kind: stop valve, usual: shut}"], runs, LINE)

    assert found_of(usually_open, "early-restart") == []
    assert [one.line.shut for one in found_of(usually_shut, "early-restart")] == [("SA-HV-001",)]


def test_a_temperature_is_no_pressure() -> None:
    text = written(
        [
            "TK-001: {kind: tank}",
            "PU-001: {kind: pump, type: gear, makes: no limit, normal: 60 degC}",
            "RV-001: {kind: relief valve, set: 0.003 bar(g)}",
        ],
        ["TK-001.s > PU-001 > line", "line > RV-001 > drain tank"],
        "line: {}",
        medium="oil",
    )

    assert found_of(text, "relief-blows") == []


def test_a_float_in_a_well_is_not_asked_to_feel_the_tank_that_its_pump_fills() -> None:
    text = written(
        [
            "BW-001: {kind: compartment}",
            "TK-001: {kind: tank, rated: 2 bar(g)}",
            "PU-001: {kind: pump, type: centrifugal, makes: 1 bar(g)}",
            "LS-001: {kind: level switch, watches: BW-001, stops: PU-001, cuts_out: 100 mm}",
        ],
        ["BW-001 > PU-001 > TK-001", "BW-001 > LS-001"],
        medium="bilge water",
    )

    assert found_of(text, "switch-cut-off") == []
