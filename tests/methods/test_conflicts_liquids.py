"""Liquids, tanks and engine-room air where publications disagree or a unit is a trap."""

import pytest

from garboard.calc.method import FormulaMethod
from garboard.methods import METHODS
from tests.methods.said import Work, only_line, reason, shown

PIPE = "D = 10 mm, L = 3 m, rho = 1000 kg/m3, nu = 1 mm2/s"
OIL = "Q = 40 L/min, D = 16 mm, L = 10 m, rho = 870 kg/m3"
ROOM = "dT = 6 K(d), combustion = 12 m3/min, rho = 1.15 kg/m3"


def test_friction_factors_are_worked_out_and_never_read_from_the_table_that_errs(
    work: Work,
) -> None:
    rough = work("x = pipe_pressure_drop(Re = 10000, rel_rough = 0.01)")
    smooth = work("x = pipe_pressure_drop(Re = 1000000, rel_rough = 0.0001)")

    assert (shown(rough, "f"), shown(smooth, "f")) == ("0.0431", "0.0134")


def test_the_factor_is_said_to_be_darcys_and_is_four_of_fannings(work: Work) -> None:
    found = work("x = pipe_pressure_drop(Re = 1600, rel_rough = 0)")

    assert shown(found, "f") == "0.0400"
    method = METHODS["pipe_pressure_drop"]
    assert "Darcy friction factor" in [each.meaning for each in method.results]
    assert any("Fanning" in words for words in method.valid)


def test_between_laminar_and_turbulent_both_drops_stand_and_no_single_one(work: Work) -> None:
    found = work(f"x = pipe_pressure_drop(v = 0.3 m/s, rough = 0 mm, {PIPE})")

    line = only_line(found)
    assert shown(found, "drop_laminar") == "0.288 kPa(d)"
    assert shown(found, "drop_turbulent") == "0.588 kPa(d)"
    assert "case.x.drop" not in found.values
    assert "case.x.f" not in found.values
    assert {"f", "drop"} & {step.name for step in line.steps} == set()
    assert any("both drops are shown" in note for note in line.notes)


def test_a_drop_whose_flow_may_become_either_has_no_range(work: Work) -> None:
    found = work(
        "v = 0.19 m/s +/- 10 %",
        f"x = pipe_pressure_drop(v = v, rough = 0 mm, {PIPE})",
        "require x.drop <= 1 kPa(d)",
    )

    assert found.diagnostics == ()
    assert found.requirements[0].verdict == "holds only at nominal"


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (f"{OIL}, fluid = hydraulic_oil, nu_warm = 46 mm2/s", "cold viscosity missing"),
        (f"{OIL}, fluid = hydraulic_oil, nu = 46 mm2/s", "cold viscosity missing"),
        (f"{OIL}, nu_warm = 46 mm2/s, nu_cold = 800 mm2/s", "say fluid = hydraulic_oil"),
        (f"{OIL}", "give nu"),
        (f"v = 1 m/s, {PIPE}", "roughness of the wall missing"),
        (f"v = 1 m/s, {PIPE}, rough = 0.05 mm, D_from = nominal", "a nominal size is not a bore"),
        ("Q = 40 L/min, D = 32, L = 3 m, rho = 1 kg/L, nu = 1 mm2/s", "is a plain number"),
        (f"v = 3 ft/s, {PIPE.replace('3 m', '3')}, rough = 0 mm", "is a plain number"),
    ],
)
def test_a_drop_is_refused_with_the_cure(work: Work, line: str, said: str) -> None:
    found = work(f"x = pipe_pressure_drop({line})")

    assert said in reason(found)
    assert found.values["case.x.drop"].si is None


def test_cold_oil_asks_for_many_times_the_pressure_of_warm(work: Work) -> None:
    found = work(
        f"x = pipe_pressure_drop({OIL}, fluid = hydraulic_oil, nu_warm = 46 mm2/s, "
        "nu_cold = 800 mm2/s)",
        "y = x.drop_cold / x.drop",
    )

    assert found.values["case.y"].si == pytest.approx(800 / 46)


def test_a_lift_is_negative_and_takes_head_away(work: Work) -> None:
    rest = "h_friction = 0.5 m, h_entry = 0 m, T = 20 degC, fluid = water"
    found = work(
        f"x = suction_head_available(lift = -3 m, {rest})",
        f"y = suction_head_available(h_static = 3 m, {rest})",
        "z = y.head - x.head",
    )

    assert found.values["case.z"].si == pytest.approx(6)
    assert "a lift is negative" in reason(work(f"x = suction_head_available(lift = 3 m, {rest})"))


def test_no_head_is_given_without_what_makes_the_liquid_boil(work: Work) -> None:
    call = "x = suction_head_available(lift = -3 m, h_friction = 0.5 m, h_entry = 0 m, {})"

    assert "temperature or vapour pressure missing" in reason(work(call.format("fluid = water")))
    assert "hot fuel boils early" in reason(work(call.format("fluid = fuel, T = 30 degC")))
    assert "for another liquid give p_vapour" in reason(work(call.format("T = 30 degC")))


def test_no_method_says_that_a_pump_will_prime_or_holds_a_leak(work: Work) -> None:
    flooded = only_line(
        work("x = flooding_rate(d_hole = 20 mm, h = 1 m, Cd = 0.6, pump = 900 L/min)")
    )

    assert (flooded.alarms, flooded.notes) == ((), ())
    assert "state that a pump will prime" in METHODS["suction_head_available"].do_not
    assert "state that a pump can hold a leak" in METHODS["flooding_rate"].do_not


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("flooding_rate(d_hole = 50 mm, h = 1 m)", "a coefficient has a source"),
        ("flooding_rate(d_hole = 50 mm, h = -1 m, Cd = 0.6)", "hole above water"),
        ("flooding_rate(d_hole = 50, h = 1 m, Cd = 0.6)", "is a plain number"),
        ("hydraulic_force_and_power(p = 160 bar, D = 50 mm)", "counted from"),
        ("hydraulic_force_and_power(p = 160 bar(a), D = 50 mm)", "a gauge pressure"),
        ("hydraulic_force_and_power(p = 160 bar(d), D = 50 mm)", "a gauge pressure"),
        ("tank_contents(D = 1 m, L = 2 m, a = 0 m, h = 1.1 m)", "above the diameter"),
        ("free_surface_information(l = 2 m, b = 3 m, rho = 1 t/m3, displacement = 90 ton)", "say"),
        (f"engine_room_air(heat = 10 kW, {ROOM.replace('6 K(d)', '6 degC')})", "difference"),
        ("engine_room_air(power = 100 PS, maker = caterpillar)", "write hp_metric"),
    ],
)
def test_a_trap_is_refused_with_the_cure(work: Work, line: str, said: str) -> None:
    assert said in reason(work(f"x = {line}"))


def test_a_quarter_of_the_depth_is_less_than_a_fifth_of_the_tank(work: Work) -> None:
    found = work(
        "x = tank_contents(D = 1 m, L = 2 m, a = 0 m, h = 0.25 m)",
        "y = tank_contents(D = 1 m, L = 2 m, a = 0 m, h = 1 m)",
        "z = x.volume / y.volume",
    )

    assert found.values["case.z"].si == pytest.approx(0.1955, abs=1e-4)


def test_a_wall_down_the_middle_leaves_a_quarter_of_the_free_surface(work: Work) -> None:
    call = (
        "free_surface_information(l = 3 m, b = 4 m, rho = 0.84 t/m3, displacement = 200 t, n = {})"
    )
    found = work(f"x = {call.format(1)}", f"y = {call.format(2)}", "z = x / y")

    assert found.values["case.z"].si == pytest.approx(4)


def test_rules_of_thumb_stand_under_the_name_of_their_maker_and_four_times_apart(
    work: Work,
) -> None:
    found = work(
        "x = engine_room_air(power = 100 kW, maker = volvo_penta)",
        "y = engine_room_air(power = 100 kW, maker = caterpillar)",
        "low = y.fan_air_low / x.fan_air",
        "high = y.fan_air_high / x.fan_air",
    )

    assert found.diagnostics == ()
    assert found.values["case.low"].si == pytest.approx(4.34, abs=0.005)
    assert found.values["case.high"].si == pytest.approx(5.02, abs=0.005)
    assert (
        set(found.values) & {"case.x.fan_air_low", "case.x.fan_air_high", "case.y.fan_air"} == set()
    )


@pytest.mark.parametrize(
    "line",
    [
        "power = 100 kW",
        "power = 100 kW, T = 30 degC",
        f"heat = 10 kW, heat_from = rule_of_thumb, {ROOM}",
    ],
)
def test_a_rule_of_thumb_without_its_maker_is_refused(work: Work, line: str) -> None:
    assert "factor of four to five" in reason(work(f"x = engine_room_air({line})"))


@pytest.mark.parametrize(
    "item",
    ["thickness_required", "stability_verdict", "damper_area", "hose_size", "relief_setting",
     "freeing_port_area", "battery_space_air", "purge_time"],
)  # fmt: skip
def test_what_is_not_bundled_stays_out(work: Work, item: str) -> None:
    given = {result.name for method in METHODS.values() for result in method.results}

    assert item not in METHODS
    assert item not in given
    assert reason(work(f"x = {item}(a = 1)"))


def test_no_figure_of_the_battery_rule_or_the_freeing_port_is_held() -> None:
    bodies = [each.body for each in METHODS.values() if isinstance(each, FormulaMethod)]

    assert [body for body in bodies if "0.11 *" in body or "4389" in body] == []
