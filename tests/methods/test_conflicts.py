"""Where publications contradict each other, or a unit is a trap, the method takes no side quietly."""

import pytest

from tests.methods.said import Work, only_line, reason, shown


def test_a_dropped_digit_never_gives_the_branch_of_the_design_exercise(work: Work) -> None:
    found = work("x = bilge_pipe_bore(c = 28 m, B = 12 m, D = 6.4 m, L = 78 m)")

    assert shown(found, "d_branch") == "73.8 mm"
    assert "51.3" not in str(found.values)


def test_two_printed_columns_are_quoted_and_never_converted(work: Work) -> None:
    found = work("x = bilge_and_fire_pump_rules(rule = sailing_school_fire, length = 130 ft)")

    assert shown(found, "fire_m3_h") == "14.3 m3/h"
    assert shown(found, "fire_gpm") == "66.6 gal_us/min"


def test_a_gap_of_the_text_is_printed_with_the_larger_figure(work: Work) -> None:
    line = only_line(
        work("x = bilge_and_fire_pump_rules(rule = sailing_school_fire, length = 120 ft)")
    )

    assert line.alarms == (
        "exactly 120 ft is in no row, the text says under and over: the larger figure is shown",
    )
    assert line.table is not None
    assert ("over 120 ft", "fire pump", "14.3 m3/h, 66.6 gal_us/min", "46cfr169.559") in (
        line.table.rows
    )


def test_the_hand_pump_printed_as_a_maximum_goes_to_the_inspector(work: Work) -> None:
    line = only_line(
        work("x = bilge_and_fire_pump_rules(rule = sailing_school_bilge, length = 30 ft)")
    )

    assert any("maximum of 5 gpm" in note and "inspector" in note for note in line.notes)


def test_a_gas_test_at_one_and_a_half_times_is_refused(work: Work) -> None:
    found = work(
        "x = test_pressure_by_code(code = cfr46_pipe_pneumatic, mawp = 30 bar(g), factor = 1.5)"
    )

    assert "pneumatic factor above 1.25: no rule held allows it" in reason(found)
    assert found.values["case.x.p_test"].si is None


def test_no_gas_test_goes_above_one_and_a_quarter_times(work: Work) -> None:
    found = work(
        "x = test_pressure_by_code(code = cfr46_pipe_pneumatic, mawp = 30 bar(g), factor = 1.25)"
    )

    assert shown(found, "p_test_max") == "37.5 bar(g)"


@pytest.mark.parametrize("line", ["opening = 12 mm", "opening = 0.472 inch", "opening = 11 mm"])
def test_a_slot_of_half_an_inch_is_never_given_no_distance(work: Work, line: str) -> None:
    found = work(f"x = guard_opening(table = iso, shape = slot, {line})")

    assert shown(found, "distance_min") == "100 mm"


def test_both_tables_are_shown_and_the_stricter_is_marked(work: Work) -> None:
    line = only_line(work("x = guard_opening(table = both, distance = 100 mm, shape = slot)"))

    assert line.table is not None
    assert line.table.rows == (
        ("iso-13857", "slot opening up to 12 mm: 100 mm away", "12 mm", "stricter"),
        ("29cfr1910.217", "distance over 3.5 up to 5.5 inch", "0.625 inch", ""),
    )


def test_two_gauge_habits_stand_side_by_side(work: Work) -> None:
    found = work("x = gauge_range(working = 30 bar(g))")

    assert shown(found, "scale_max_half") == "60.0 bar(g)"
    assert shown(found, "scale_max_middle") == "120 bar(g)"


def test_one_right_scale_is_not_on_offer(work: Work) -> None:
    found = work("x = gauge_range(working = 30 bar(g))", "y = x.scale")

    assert found.values["case.y"].si is None


def test_the_starts_in_a_receiver_are_never_counted_down_to_zero(work: Work) -> None:
    found = work(
        "x = starting_air_receiver(V = 500 L, p_reading = 30 bar(g), p_min = 10 bar(g), "
        "v_start = 0.8 m3(s), T = 15 degC)"
    )

    assert (shown(found, "starts"), shown(found, "starts_fast")) == ("12", "10.0")


def test_a_receiver_at_its_lowest_starting_pressure_says_zero_starts(work: Work) -> None:
    line = only_line(
        work(
            "x = starting_air_receiver(V = 500 L, p_reading = 10 bar(g), p_min = 10 bar(g), "
            "v_start = 0.8 m3(s), T = 15 degC)"
        )
    )

    assert line.alarms == ("zero starts: do not rely on this receiver",)


def test_free_air_of_another_state_is_another_amount(work: Work) -> None:
    call = (
        "starting_air_receiver(N = 6, v_start = 0.8 {}, p_hi = 30 bar(g), p_lo = 10 bar(g), T = {})"
    )
    found = work(
        f"x = {call.format('m3(n)', '15 degC')}",
        f"y = {call.format('m3(s)', '15 degC')}",
    )

    normal, standard = (found.values[f"case.{name}.volume"].si for name in "xy")
    assert normal is not None
    assert standard is not None
    assert normal / standard == pytest.approx(288.15 / 273.15)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("x = pressure_datum(p_g = 100 psi)", "does not say what it is counted from"),
        ("x = pressure_datum(p_g = 30 bar(g) + 1 atm(a))", "absolute"),
        ("x = pressure_datum(p_g = 10 bar g)", "write 10 bar(g), the tag against the unit"),
        ("x = pressure_datum(p_g = 7 kg/cm2)", "kgf/cm2"),
        ("x = pressure_datum(p_g = 30 Mpa(g))", "write MPa"),
        ("x = unit_conversion(volume = 50 gal, to_unit = L)", "say which gallon"),
        ("x = unit_conversion(length = 3,5 m, to_unit = ft)", "has a comma inside a number"),
        ("x = unit_conversion(flow = 5 cfm, to_unit = m3_per_h)", "write ft3/min"),
        ("x = unit_conversion(length = 5 mil, to_unit = mm)", "write 0.001 inch"),
        ("x = unit_conversion(mass = 5 ton, to_unit = kg)", "say which"),
        ("x = unit_conversion(rise = 5 degC, to_unit = K)", "is a thermometer reading"),
        ("x = unit_conversion(temperature = 5 F, to_unit = degC)", "write degF"),
        ("x = unit_conversion(power = 5 PS, to_unit = kW)", "write hp_metric"),
        ("x = unit_conversion(energy = 5 N.m, to_unit = J)", "torque"),
        ("x = unit_conversion(length = 1 m, volume = 1 L, to_unit = ft)", "one quantity"),
        ("x = unit_conversion(length = 1 m)", "the unit to be shown is not said"),
        ("x = unit_conversion(length = 1 m, to_unit = furlong)", "no word for `to_unit`"),
        ("x = bilge_pipe_bore(L = 14, B = 12 m, D = 6.4 m)", "is a length"),
    ],
)
def test_a_trap_of_units_is_refused_with_the_cure(work: Work, line: str, said: str) -> None:
    assert said in reason(work(line))
