"""Compressed air: where publications contradict each other, or a unit is a trap, none is followed."""

import pytest

from garboard.calc.network import Network
from garboard.methods import METHODS
from garboard.methods.publications import PUBLISHED
from tests.methods.said import AIR, Work, reason

LINE = "D = 27 mm, L = 50 m, p = 7 bar(g), rough = 0.045 mm, T = 20 degC, p_atm = 1.01325 bar(a)"


def si(network: Network, name: str) -> float:
    assert network.diagnostics == (), network.diagnostics
    value = network.values[f"case.{name}"].si
    assert value is not None
    return value


def alarms(network: Network) -> tuple[str, ...]:
    assert network.diagnostics == (), network.diagnostics
    return network.sheets["case"].lines[0].alarms


# ---- contradictions


def test_two_rules_of_thumb_for_a_line_stand_within_the_band_and_neither_is_given(
    work: Work,
) -> None:
    found = work(f"x = air_line_pressure_drop(q = 180 m3(n)/h, {LINE})")

    per_minute = 3 * 293.15 / 273.15
    first = 7.57e4 * per_minute**1.85 * 50 / (27**5 * (8.01325 / 0.980665)) * 0.980665
    second = 1.6e12 * (per_minute / 60) ** 1.85 * 50 / (27**5 * 801.325) / 100
    assert second / first == pytest.approx(1.126, abs=0.003)
    low, drop, high = (si(found, f"x.{name}") / 1e5 for name in ("drop_low", "drop", "drop_high"))
    assert low < first < second < high
    assert low == pytest.approx(0.8 * drop)
    assert high == pytest.approx(1.2 * drop)
    assert abs(drop / first - 1) > 1e-3
    assert abs(drop / second - 1) > 1e-3


def test_a_single_number_of_a_rule_of_thumb_is_not_on_offer(work: Work) -> None:
    found = work(f"x = air_line_pressure_drop(q = 180 m3(n)/h, {LINE})", "y = x.empirical")

    assert found.values["case.y"].si is None


def test_a_loss_above_a_tenth_is_refused_and_told_to_name_both_ends(work: Work) -> None:
    found = work(f"x = air_line_pressure_drop(q = 299 m3(n)/h, {LINE})")

    assert "use the compressible form with both ends" in reason(found)
    assert found.values["case.x.drop"].si is None


@pytest.mark.parametrize(
    ("reynolds", "ratio", "printed", "right"),
    [(1e6, 1e-4, 0.012, 0.01344), (1e4, 1e-2, 0.050, 0.04313)],
)
def test_the_friction_of_a_line_is_computed_and_not_that_of_the_wrong_table(
    work: Work, reynolds: float, ratio: float, printed: float, right: float
) -> None:
    kelvin, pressure, bore = 293.15, 2_101_325.0, 0.027
    viscosity = 1.458e-6 * kelvin**1.5 / (kelvin + 110.4)
    mass = reynolds * viscosity * 3.141592653589793 * bore / 4
    flow = mass / (101_325 / (287.05 * 273.15)) * 3600
    found = work(
        f"x = air_line_pressure_drop(q = {flow:.9f} m3(n)/h, D = 27 mm, L = 0.5 m, p = 20 bar(g), "
        f"rough = {ratio * 27:.6f} mm, T = 20 degC)"
    )

    speed = mass / (pressure / (287.05 * kelvin)) / (3.141592653589793 / 4 * bore**2)
    dynamic = pressure / (287.05 * kelvin) * speed**2 / 2
    factor = si(found, "x.drop") / dynamic * bore / 0.5
    assert factor == pytest.approx(right, rel=0.01)
    assert factor != pytest.approx(printed, rel=0.05)


def test_nothing_is_rounded_in_the_middle_of_a_leak_by_loading_time(work: Work) -> None:
    found = work(
        "on = 8 min",
        "off = 48 min",
        "q = 900 ft3(s)/min",
        "x = q * on / (on + off) in ft3(s)/min",
        "power = x / (6.25 ft3(s)/(min.kW)) in kW",
    )

    foot = si(found, "q") / 900
    assert si(found, "x") / foot == pytest.approx(128.5714, abs=1e-4)
    assert si(found, "x") / foot != pytest.approx(127.8, abs=0.1)
    assert si(found, "power") == pytest.approx(20_571.4, abs=0.1)


# ---- traps


def test_a_running_clock_is_read_as_a_difference(work: Work) -> None:
    fall = "V = 629 ft3, p_1 = 40 psi(g), p_2 = 30 psi(g), T_1 = 20 degC, T_2 = 20 degC"
    found = work(
        f"x = leak_by_pressure_decay({fall}, t_1 = 87.4667 min, t_2 = 135.0167 min)",
        f"y = leak_by_pressure_decay({fall}, t_1 = 0 min, t_2 = 47.55 min)",
        f"z = leak_by_pressure_decay({fall}, t_1 = 0 min, t_2 = 135.0167 min)",
    )

    assert si(found, "x.Q") == pytest.approx(si(found, "y.Q"))
    assert si(found, "x.Q") > 2.8 * si(found, "z.Q")


def test_a_receiver_that_only_cools_has_no_leak(work: Work) -> None:
    found = work(
        "sound = closed_volume_temperature(p_1 = 30 bar(g), T_1 = 45 degC, T_2 = 15 degC)",
        "x = leak_by_pressure_decay(V = 500 L, p_1 = 30 bar(g), p_2 = sound, t_1 = 0 min, "
        "t_2 = 45 min, T_1 = 45 degC, T_2 = 15 degC)",
    )

    assert si(found, "x.Q") == pytest.approx(0, abs=1e-12)


def test_a_leak_is_a_number_and_never_a_verdict(work: Work) -> None:
    for method in AIR:
        assert not {"passed", "pass", "ok", "accepted", "tight"} & {
            result.name for result in METHODS[method].results
        }
    assert "call a hold test passed" in METHODS["leak_by_pressure_decay"].do_not
    found = work(
        "x = leak_by_pressure_decay(V = 500 L, p_1 = 30 bar(g), p_2 = 30 bar(g), t_1 = 0 min, "
        "t_2 = 45 min, T_1 = 290 K(a), T_2 = 290 K(a))",
        "y = x.passed",
    )
    assert found.values["case.y"].si is None


def test_free_air_of_another_state_needs_another_receiver(work: Work) -> None:
    call = (
        "receiver_surge_volume(t = 15 min, q_out = 50 {}/h, q_in = 0 m3(n)/h, p_hi = 9 bar(g), "
        "p_lo = 6 bar(g), T_receiver = 5 degC)"
    )
    found = work(
        f"x = {call.format('m3(n)')}", f"y = {call.format('m3(s)')}", f"z = {call.format('L(anr)')}"
    )

    normal, standard, small = (si(found, f"{name}.volume") for name in "xyz")
    assert normal / standard == pytest.approx(288.15 / 273.15)
    assert normal / small / 1000 == pytest.approx(293.15 / 273.15 * 101_325 / 100_000)


def test_the_state_of_the_orifice_table_is_not_that_of_normal_air(work: Work) -> None:
    found = work("x = orifice_air_flow(p = 100 psi(g), d = 0.25 inch, C = 1, p_atm = 14.7 psi(a))")

    assert si(found, "x.Q_printed") / si(found, "x.Q") == pytest.approx(1.0772, abs=0.0005)


def test_turns_of_a_shaft_are_not_radians(work: Work) -> None:
    call = "D = 0.2 m, stroke = 0.3 m, p_1 = 1 bar(a), T_1 = 300 K(a)"
    found = work(f"x = compressor_duty({call}, rpm = 100 rpm)")

    assert si(found, "x.m_dot") * 60 == pytest.approx(1.09444, rel=1e-5)
    refused = reason(work(f"x = compressor_duty({call}, rpm = 100 min^-1)"))
    assert "is a speed of rotation, `100 min^-1` is a rate per time" in refused


def test_a_gauge_reading_as_delivery_is_counted_from_nothing_first(work: Work) -> None:
    rest = "p_1 = 1.01325 bar(a), v_1 = 1 m3/min, n = 1.3"
    found = work(
        f"x = compressor_duty(p_2 = 6 bar(g), {rest})",
        f"y = compressor_duty(p_2 = 7.01325 bar(a), {rest})",
        f"z = compressor_duty(p_2 = 6 bar(a), {rest})",
    )

    assert si(found, "x.P") == pytest.approx(si(found, "y.P"))
    assert si(found, "x.P") > 1.08 * si(found, "z.P")


@pytest.mark.parametrize("stages", [1, 2, 3])
def test_hot_air_from_a_compressor_raises_the_alarm_and_cool_air_does_not(
    work: Work, stages: int
) -> None:
    ratio = 4.0**stages
    call = "x = compressor_duty(p_1 = 1 bar(a), p_2 = {} bar(a), n = 1.3, T_1 = {}, stages = {})"
    hot = work(call.format(ratio, "25 degC", stages))
    cool = work(call.format(ratio, "5 degC", stages))

    assert len(alarms(hot)) == 1
    assert alarms(hot)[0].startswith("delivery above 121 degC")
    assert alarms(cool) == ()


def test_the_temperature_of_a_stage_too_many_stands_in_the_refusal(work: Work) -> None:
    found = work(
        "x = compressor_duty(p_1 = 1.013 bar(a), p_2 = 31.013 bar(a), n = 1.3, T_1 = 288 K(a))"
    )

    assert "T_delivery = 361 degC" in reason(found)
    assert found.values["case.x.T_delivery"].si is None


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            "x = closed_volume_temperature(p_1 = 30 bar(g), T_1 = 45, T_2 = 15)",
            "`45` is a plain number",
        ),
        (
            "x = closed_volume_temperature(p_1 = 30 bar(g), T_1 = 5 K(d), T_2 = 15 degC)",
            "is a temperature difference",
        ),
        (
            "x = closed_volume_temperature(p_1 = 30 bar(g) * (45 degC / 15 degC), "
            "T_1 = 45 degC, T_2 = 15 degC)",
            "a ratio with a thermometer reading has no meaning",
        ),
        ("x = orifice_air_flow(p = 100 psi, d = 0.25 inch, C = 1)", "does not say"),
        (
            "x = orifice_air_flow(p = 100 psi(g), d = 0.25 inch, C = 1, fluid = steam)",
            "takes no `fluid`",
        ),
        (
            "x = compressor_duty(p_1 = 1 bar(a), p_2 = 6 bar(a) * (7 bar(g) / 1 bar(g)), "
            "v_1 = 1 m3/min, n = 1.3)",
            "a ratio with a gauge pressure has no meaning",
        ),
        (
            "x = free_air_delivery(V = 25 gal, p_1 = 85 psi(g), p_2 = 102 psi(g), t = 35 s, "
            "T_2 = 20 degC)",
            "say which gallon",
        ),
        (
            "x = receiver_surge_volume(t = 5 min, q_out = 350 cfm, q_in = 0 m3(n)/h, "
            "p_hi = 100 psi(g), p_lo = 60 psi(g), T_receiver = 20 degC)",
            "write ft3/min",
        ),
        ("x = compressed_air_water(T_1 = 20 degC, phi = 70)", "write 80 %, not 80"),
        (
            "x = compressor_duty(p_1 = 1 bar(a), p_2 = 6 bar(a), q_1 = 16 m3(n)/h, "
            "v_1 = 1 m3/min, T_1 = 20 degC, n = 1.3)",
            "`q_1 = 16 m3(n)/h` leads to no result",
        ),
    ],
)
def test_a_trap_is_refused_with_the_cure(work: Work, line: str, said: str) -> None:
    assert said in reason(work(line))


# ---- what stays out


def test_recalled_figures_for_air_stay_out() -> None:
    said = " ".join(
        f"{proof.value} {proof.note} {proof.source} {' '.join(proof.call.values())}"
        for method in METHODS.values()
        for proof in method.proofs
    )

    assert "13.12 m3" not in said
    assert [name for name in PUBLISHED if "1910.169" in name or "1910.252" in name] == []
    assert [name for name in PUBLISHED if "tip-sheet" in name] == []


def test_no_method_for_air_sizes_a_wall_sets_a_valve_or_breathes() -> None:
    never = ("thickness", "wall", "set", "breath", "oxygen", "purge", "stand_off", "life")
    names = {result.name for method in AIR for result in METHODS[method].results}

    assert [name for name in names if any(word in name.lower() for word in never)] == []
