"""Conflicts and traps about cables, batteries, threads, relief valves and gas: no side is taken quietly."""

import pytest

from garboard.methods import METHODS
from tests.methods.said import Work, only_line, reason

PUMP = "I = 10 A, run_out = 11 ft, run_back = 10 ft, V = 12 V, drop_fraction = 3 %"


@pytest.mark.parametrize(("standard", "size"), [("AWG", "12 AWG"), ("SAE", "10 SAE")])
def test_the_standard_of_the_conductor_decides_its_size(
    work: Work, standard: str, size: str
) -> None:
    line = only_line(work(f"x = dc_cable_size({PUMP}, standard = {standard})"))

    assert f"size: {size}" in line.notes


def test_no_size_is_named_without_the_standard_of_the_conductor(work: Work) -> None:
    line = only_line(work(f"x = dc_cable_size({PUMP})"))

    assert not any(note.startswith("size: ") for note in line.notes)
    assert any("AWG and SAE areas of the same number differ" in note for note in line.notes)


def test_no_size_is_named_without_a_look_at_the_current_limit(work: Work) -> None:
    line = only_line(work(f"x = dc_cable_size({PUMP}, standard = AWG)"))

    assert line.table is not None
    assert ("smallest for the current", "16 AWG", "33cfr183.425") in line.table.rows
    assert "insulation not stated: the lowest column is taken for the current" in line.notes


@pytest.mark.parametrize(
    "lengths", ["run_out = 11 ft", "run_back = 10 ft", "run_out = 11 ft, L = 21 ft"]
)
def test_a_length_one_way_is_never_taken_for_the_loop(work: Work, lengths: str) -> None:
    found = work(f"x = dc_cable_size(I = 10 A, {lengths}, V = 12 V, drop_fraction = 3 %)")

    assert "say out and back" in reason(found)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("x = dc_cable_size(size = 12 AWG, standard = AWG)", "a wire gauge is no unit"),
        ("x = dc_cable_size(I = 10 A, L = 21, A = 4 mm2)", "is a length"),
        ("x = dc_cable_current_limit(size = 5, insulation_rating = 105 degC)", "no word"),
        ("x = battery_autonomy(C = 400 AH, DoD = 0.5, eta = 1, I = 12 A)", "write Ah"),
        ("x = battery_autonomy(C = 400 Ah, DoD = 50, eta = 1, I = 12 A)", "deeper than"),
    ],
)
def test_a_trap_of_cables_and_batteries_is_refused_with_the_cure(
    work: Work, line: str, said: str
) -> None:
    assert said in reason(work(line))


def test_the_depth_of_discharge_has_no_default() -> None:
    declared = {each.name: each.default for each in METHODS["battery_autonomy"].parameters}

    assert declared == dict.fromkeys(declared)


@pytest.mark.parametrize("rating", [60, 75, 80, 90, 125, 200])
def test_a_factor_of_the_engine_space_that_was_not_read_is_not_held(
    work: Work, rating: int
) -> None:
    found = work(
        f"x = dc_cable_current_limit(size = 6, insulation_rating = {rating} degC, "
        "engine_space = yes)"
    )

    assert "is not held" in reason(found)
    assert found.values["case.x.limit"].si is None


@pytest.mark.parametrize("asked", ["fuse", "breaking_capacity", "peukert", "cells", "gassing"])
def test_what_stays_with_an_electrician_is_no_argument(work: Work, asked: str) -> None:
    for method in ("dc_cable_size", "dc_cable_current_limit", "battery_autonomy"):
        assert "takes no" in reason(work(f"x = {method}({asked} = 1)"))


def test_neither_an_inch_figure_nor_a_dn_number_is_a_bore(work: Work) -> None:
    found = work("x = thread_and_pipe_size(size = 1.25, schedule = 40)")

    bore = found.values["case.x.bore"].si
    assert bore is not None
    assert bore == pytest.approx(0.03505, abs=1e-4)
    assert min(abs(bore - 0.03175), abs(bore - 0.032)) > 0.003


@pytest.mark.parametrize("written", ["1.25 inch", "32 mm", "1/4", "32"])
def test_a_nominal_size_is_a_name_and_no_length(work: Work, written: str) -> None:
    found = work(f"x = thread_and_pipe_size(size = {written}, schedule = 40)")

    assert f"`{written}` is no word for `size` of thread_and_pipe_size" in reason(found)


def test_a_thread_that_two_standards_share_is_not_identified_without_its_angle(work: Work) -> None:
    line = only_line(
        work("x = thread_and_pipe_size(size = 0.5, major = 20.955 mm, tpi = 14 1/inch)")
    )

    assert not any(note.startswith("identified: ") for note in line.notes)
    assert any(note.startswith("not identified: ") for note in line.notes)


@pytest.mark.parametrize("asked", ["rated", "pressure"])
def test_no_fitting_is_rated_for_pressure(work: Work, asked: str) -> None:
    assert "takes no" in reason(
        work(f"x = thread_and_pipe_size(size = 1, schedule = 40, {asked} = 30 bar(g))")
    )


VALVE = "setting = 32 bar(g), mawp = 33 bar(g), valve_between = no"


def test_a_bore_is_never_taken_for_a_capacity(work: Work) -> None:
    found = work(f"x = relief_capacity_check(bore = 12 mm, compressors = [16 m3(n)/h], {VALVE})")

    assert "bore is not capacity" in reason(found)


def test_capacity_and_delivery_meet_only_as_amounts_of_free_air(work: Work) -> None:
    plain = work(
        f"x = relief_capacity_check(stamped = 70 m3/h, compressors = [16 m3(n)/h], {VALVE})"
    )
    found = work(
        f"x = relief_capacity_check(stamped = 30 m3(s)/h, compressors = [30 m3(n)/h], {VALVE})"
    )

    assert "`stamped` of relief_capacity_check is" in reason(plain)
    assert only_line(found).alarms == (
        "STOP: the stamped capacity is below all compressors together",
    )


def test_all_compressors_count_together(work: Work) -> None:
    line = only_line(
        work(
            "x = relief_capacity_check(stamped = 20 m3(n)/h, "
            f"compressors = [16 m3(n)/h, 4.5 m3(n)/h], {VALVE})"
        )
    )

    assert "verdict: stop" in line.notes


def test_every_stop_of_a_relief_valve_is_said_at_once(work: Work) -> None:
    line = only_line(
        work(
            "x = relief_capacity_check(stamped = 20 m3(n)/h, compressors = [30 m3(n)/h], "
            "setting = 34 bar(g), mawp = 33 bar(g), valve_between = yes, overpressure = 10 %)"
        )
    )

    assert len(line.alarms) == 4
    assert all(alarm.startswith("STOP: ") for alarm in line.alarms)
    assert line.table is not None
    assert [row[2] for row in line.table.rows] == ["stop"] * 4


def test_a_tolerance_of_the_stamp_or_the_delivery_reaches_the_margin(work: Work) -> None:
    found = work(
        "one = 16 m3(n)/h +/- 5 %",
        "other = 3.5 m3(n)/h +/- 10 %",
        f"x = relief_capacity_check(stamped = 20 m3(n)/h, compressors = [one, other], {VALVE})",
        "require x.margin >= 0 m3(n)/h",
    )

    margin = found.values["case.x.margin"]
    assert margin.low is not None
    assert margin.low * 3600 == pytest.approx(20 - 16.8 - 3.85)


@pytest.mark.parametrize("service", ["liquid", "two_phase", "fire"])
def test_other_relief_cases_are_not_automated(work: Work, service: str) -> None:
    found = work(
        "x = relief_capacity_check(stamped = 70 m3(n)/h, compressors = [16 m3(n)/h], "
        f"service = {service}, {VALVE})"
    )

    assert "are not automated" in reason(found)


def test_two_published_lower_limits_are_both_shown_and_the_lower_gives_the_alarm(
    work: Work,
) -> None:
    found = work("x = flammable_gas_facts(gas = propane)")

    shown = {name: found.values[f"case.x.{name}"].text for name in ("lower", "lower_other")}
    assert shown == {"lower": "1.7 %", "lower_other": "2.1 %"}
    assert found.values["case.x.alarm"].text == "1700 ppm"
    assert "2100 ppm" not in found.values["case.x.alarm"].text


def test_the_higher_limit_never_raises_the_alarm(work: Work) -> None:
    found = work("x = flammable_gas_facts(gas = propane, V = 20 m3, T = 20 degC, limit = 2.1 %)")

    assert found.values["case.x.alarm"].text == "1700 ppm"


@pytest.mark.parametrize(
    "question",
    ["purge_time", "air_changes", "gas_free", "safe_to_weld", "enter_space", "convert_cylinder"],
)
def test_what_a_certificate_has_to_say_is_never_said_here(work: Work, question: str) -> None:
    found = work(f"x = flammable_gas_facts(gas = propane, question = {question})")

    assert reason(found)
    assert all(value.si is None for value in found.values.values())


@pytest.mark.parametrize("reading", ["0 %", "4 %", "10 %"])
def test_a_low_meter_reading_is_no_leave_to_weld(work: Work, reading: str) -> None:
    line = only_line(work(f"x = flammable_gas_facts(gas = propane, reading = {reading})"))

    assert any("that is no certificate" in note for note in line.notes)


def test_a_meter_above_ten_percent_stops_hot_work(work: Work) -> None:
    line = only_line(work("x = flammable_gas_facts(gas = propane, reading = 12 %)"))

    assert line.alarms == (
        "STOP: the meter reads 12 % of the lower limit: no hot work, get out and air the space",
    )


@pytest.mark.parametrize("gas", ["acetylene", "hydrogen", "butane", "oxygen"])
def test_a_gas_whose_figures_were_not_read_is_refused(work: Work, gas: str) -> None:
    assert "is no word for `gas`" in reason(work(f"x = flammable_gas_facts(gas = {gas})"))
