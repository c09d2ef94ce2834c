"""Compressed air by other routes: libraries of fluids and of moist air, a simulation, a fit, a solver.

Nothing here uses the calculation language to reach its number. Where a library knows real air and the
method takes an ideal gas, the difference is stated: up to two percent to 40 bar, and less below.
"""

import math
from itertools import pairwise

import fluids
import psychrolib
import pytest
from CoolProp.CoolProp import HAPropsSI, PropsSI
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, minimize_scalar
from scipy.stats import linregress

from tests.methods.said import Work

ATMOSPHERE = 101_325.0
GAS = 287.05
"""Specific gas constant of dry air, J/(kg.K)."""
NORMAL = ATMOSPHERE / (GAS * 273.15)
"""Mass of a cubic metre of normal air."""
PSI = 6894.757293168361
psychrolib.SetUnitSystem(psychrolib.SI)


def ours(work: Work, call: str, result: str = "") -> float:
    """What a call gives, in SI; free air in normal cubic metres."""
    found = work(f"x = {call}")
    assert found.diagnostics == (), found.diagnostics
    value = found.values[f"case.x.{result}" if result else "case.x"].si
    assert value is not None
    return value


def real_mass(volume: float, pressure: float, temperature: float) -> float:
    """Mass of real air in a volume."""
    return volume * float(PropsSI("D", "P", pressure, "T", temperature, "Air"))


# ---- surge


@pytest.mark.parametrize(("high", "low"), [(9, 6), (30, 18), (39, 10)])
@pytest.mark.parametrize("celsius", [0, 25, 45])
def test_a_receiver_drained_by_small_steps_lasts_as_long_as_the_surge(
    work: Work, high: float, low: float, celsius: float
) -> None:
    volume = ours(
        work,
        f"receiver_surge_volume(t = 12 min, q_out = 60 m3(n)/h, q_in = 15 m3(n)/h, "
        f"p_hi = {high} bar(g), p_lo = {low} bar(g), T_receiver = {celsius} degC)",
        "volume",
    )

    kelvin = celsius + 273.15
    draw = 45 * NORMAL / 3600
    per_pascal = volume / (GAS * kelvin)
    run = solve_ivp(lambda *_: [-draw / per_pascal], (0, 12 * 60), [high * 1e5], max_step=30)

    assert run.y[0][-1] == pytest.approx(low * 1e5, rel=1e-9)


def test_real_air_needs_almost_the_surge_volume_of_the_ideal_one(work: Work) -> None:
    volume = ours(
        work,
        "receiver_surge_volume(t = 5 min, q_out = free_air(350 ft3/min, 14.7 psi(a), 21 degC), "
        "q_in = free_air(250 ft3/min, 14.7 psi(a), 21 degC), p_hi = 100 psi(g), p_lo = 60 psi(g), "
        "T_receiver = 21 degC, p_atm = 14.7 psi(a))",
        "volume",
    )

    kelvin = 294.15
    drawn = real_mass(500 * 0.3048**3, 14.7 * PSI, kelvin)
    given = real_mass(1, 114.7 * PSI, kelvin) - real_mass(1, 74.7 * PSI, kelvin)

    assert volume == pytest.approx(drawn / given, rel=0.006)


# ---- leak and closed volume

ROWS = [(90, 80, 0, 10.7), (80, 70, 10.7, 23.2833), (60, 50, 38.5667, 58.9333)]


@pytest.mark.parametrize("row", ROWS)
@pytest.mark.parametrize(("warm", "cold"), [(294, 294), (310, 285), (280, 300)])
def test_a_leak_counted_in_kilograms_is_the_leak_found(
    work: Work, row: tuple[float, float, float, float], warm: float, cold: float
) -> None:
    start, end, begun, ended = row
    call = (
        f"leak_by_pressure_decay(V = 629 ft3, p_1 = {start} psi(g), p_2 = {end} psi(g), "
        f"t_1 = {begun} min, t_2 = {ended} min, T_1 = {warm} K(a), T_2 = {cold} K(a), "
        f"p_atm = 14.7 psi(a))"
    )
    volume = 629 * 0.3048**3
    held = (start + 14.7) * PSI * volume / (GAS * warm)
    left = (end + 14.7) * PSI * volume / (GAS * cold)
    lost = (held - left) / ((ended - begun) * 60)

    assert ours(work, call, "Q") * NORMAL == pytest.approx(lost, rel=1e-9)
    here = lost * GAS * warm / (14.7 * PSI)
    assert ours(work, call, "Q_volume") == pytest.approx(here, rel=1e-9)


MIDS = (85.0, 75.0, 55.0, 45.0, 35.0)
LEAKS = (40.0, 34.0, 21.0, 15.0, 9.0)


@pytest.mark.parametrize("pairs", [2, 3, 4, 5])
@pytest.mark.parametrize("working", [30.0, 100.0, 120.0])
@pytest.mark.parametrize("leaks", [LEAKS, (40.0, 31.0, 26.0, 11.0, 12.5)])
def test_the_line_through_the_leaks_is_that_of_least_squares(
    work: Work, pairs: int, working: float, leaks: tuple[float, ...]
) -> None:
    handed = ", ".join(
        f"p_mid_{each} = {MIDS[each - 1]} psi(g), leak_{each} = {leaks[each - 1]} L(n)/min"
        for each in range(1, pairs + 1)
    )
    fit = linregress(MIDS[:pairs], leaks[:pairs])

    found = ours(
        work,
        f"leak_by_pressure_decay(p_working = {working} psi(g), {handed})",
        "Q_at_working_pressure",
    )

    assert found * 60_000 == pytest.approx(fit.intercept + fit.slope * working, rel=1e-9)


@pytest.mark.parametrize("reading", [2, 10, 30, 39])
@pytest.mark.parametrize(("first", "second"), [(45, 15), (20, 15), (-20, 10)])
def test_real_air_in_a_shut_receiver_follows_within_a_percent_and_a_half(
    work: Work, reading: float, first: float, second: float
) -> None:
    if reading == 39 and second > first:
        reading = 34
    density = real_mass(1, reading * 1e5 + ATMOSPHERE, first + 273.15)
    real = float(PropsSI("P", "D", density, "T", second + 273.15, "Air"))

    found = ours(
        work,
        f"closed_volume_temperature(p_1 = {reading} bar(g), T_1 = {first} degC, "
        f"T_2 = {second} degC)",
    )

    assert found + ATMOSPHERE == pytest.approx(real, rel=0.015)


# ---- orifice


def real_nozzle(bore: float, pressure: float, kelvin: float) -> float:
    """Most mass of real air that an ideal nozzle of this bore passes to one atmosphere."""
    entropy = PropsSI("S", "P", pressure, "T", kelvin, "Air")
    rest = PropsSI("H", "P", pressure, "T", kelvin, "Air")

    def flux(throat: float) -> float:
        moving = rest - PropsSI("H", "P", throat, "S", entropy, "Air")
        return -math.sqrt(2 * max(moving, 0)) * float(
            PropsSI("D", "P", throat, "S", entropy, "Air")
        )

    lowest = max(14.7 * PSI, 0.3 * pressure)
    best = minimize_scalar(flux, bounds=(lowest, pressure * 0.99999), method="bounded")
    return -min(float(best.fun), flux(lowest)) * math.pi / 4 * bore**2


@pytest.mark.parametrize("gauge", [1, 3, 7, 14, 15, 30, 60, 100, 125])
@pytest.mark.parametrize("inch", [0.0625, 0.5])
def test_a_nozzle_of_real_air_passes_up_to_one_percent_more(
    work: Work, gauge: float, inch: float
) -> None:
    found = ours(
        work,
        f"orifice_air_flow(p = {gauge} psi(g), d = {inch} inch, C = 1, p_atm = 14.7 psi(a))",
        "Q_printed",
    )

    real = real_nozzle(inch * 0.0254, (gauge + 14.7) * PSI, 530 / 1.8) / 0.45359237 * 0.3048**3
    assert 0.989 < found * 0.07494 / real < 1.002


def test_at_the_pressure_of_starting_air_real_air_passes_three_percent_more(work: Work) -> None:
    found = ours(work, "orifice_air_flow(p = 30 bar(g), d = 1 mm, C = 1, T = 25 degC)", "Q")

    real = real_nozzle(0.001, 30e5 + ATMOSPHERE, 298.15)

    assert 0.96 < found * NORMAL / real < 1


# ---- water


@pytest.mark.parametrize("celsius", [0.02, 10, 20, 35, 45, 59.9])
def test_the_saturation_pressure_is_that_of_a_library_for_moist_air(
    work: Work, celsius: float
) -> None:
    vapour = ours(work, f"compressed_air_water(T_1 = {celsius} degC, phi = 1)", "vapour_density")

    kelvin = celsius + 273.15
    assert vapour * 461.5 * kelvin == pytest.approx(psychrolib.GetSatVapPres(celsius), rel=1e-9)
    real = float(PropsSI("P", "T", kelvin, "Q", 1, "Water"))
    assert vapour * 461.5 * kelvin == pytest.approx(real, rel=1e-3)


@pytest.mark.parametrize(("drain", "gauge"), [(20, 0), (20, 4), (40, 8), (60, 8), (5, 9)])
def test_real_moist_air_holds_up_to_four_percent_more_at_ten_bar(
    work: Work, drain: float, gauge: float
) -> None:
    held = ours(work, f"compressed_air_water(T_2 = {drain} degC, p_2 = {gauge} bar(g))", "held")

    pressure = gauge * 1e5 + ATMOSPHERE
    library = psychrolib.GetSatHumRatio(drain, pressure) * 1.2041
    real = HAPropsSI("W", "T", drain + 273.15, "P", pressure, "R", 1) * 1.2041
    assert held == pytest.approx(library, rel=1e-4)
    assert 0.96 < held / real < 1


def test_real_moist_air_holds_a_tenth_more_at_thirty_bar(work: Work) -> None:
    held = ours(work, "compressed_air_water(T_2 = 20 degC, p_2 = 30 bar(g))", "held")

    real = HAPropsSI("W", "T", 293.15, "P", 30e5 + ATMOSPHERE, "R", 1) * 1.2041
    assert real / held == pytest.approx(1.10, abs=0.01)


@pytest.mark.parametrize("humidity", [0.5, 0.8, 1.0])
@pytest.mark.parametrize("intake", [15, 30, 45])
def test_water_left_at_thirty_bar_is_that_of_real_moist_air_within_half_a_percent(
    work: Work, humidity: float, intake: float
) -> None:
    found = ours(
        work,
        f"compressed_air_water(T_1 = {intake} degC, phi = {humidity}, T_2 = {intake} degC, "
        "p_2 = 30 bar(g))",
        "condensed",
    )

    kelvin, pressure = intake + 273.15, 30e5 + ATMOSPHERE
    taken = HAPropsSI("W", "T", kelvin, "P", ATMOSPHERE, "R", humidity)
    kept = HAPropsSI("W", "T", kelvin, "P", pressure, "R", 1)
    dry = 1 / HAPropsSI("Vda", "T", kelvin, "P", ATMOSPHERE, "R", humidity)
    assert found == pytest.approx(dry * (taken - kept), rel=0.005)


# ---- compressor


@pytest.mark.parametrize("exponent", [1.2, 1.3, 1.4])
@pytest.mark.parametrize(("delivery", "stages"), [(3, 1), (7, 1), (31, 2), (31, 3)])
def test_power_and_heat_are_those_of_the_library_stage_by_stage(
    work: Work, exponent: float, delivery: float, stages: int
) -> None:
    call = (
        f"compressor_duty(p_1 = 1 bar(a), p_2 = {delivery} bar(a), q_1 = 16 m3(n)/h, "
        f"n = {exponent}, T_1 = 25 degC, stages = {stages})"
    )
    mass = 16 / 3600 * NORMAL
    ends = [1e5 * delivery ** (each / stages) for each in range(stages + 1)]
    work_done = sum(
        fluids.compressible.isentropic_work_compression(
            T1=298.15, k=exponent, Z=1, P1=start, P2=end, eta=1
        )
        for start, end in pairwise(ends)
    )
    hot = fluids.compressible.isentropic_T_rise_compression(
        T1=298.15, P1=ends[0], P2=ends[1], k=exponent, eta=1
    )
    least = fluids.compressible.isothermal_work_compression(P1=1e5, P2=delivery * 1e5, T=298.15)

    # The library works with the universal gas constant for a mole of air.
    per_mass = GAS / 8.31446261815324
    assert ours(work, call, "P") == pytest.approx(mass * work_done * per_mass, rel=1e-6)
    assert ours(work, call, "T_2") == pytest.approx(hot, rel=1e-9)
    assert ours(work, call, "P_isothermal") == pytest.approx(mass * least * per_mass, rel=1e-6)
    assert ours(work, call, "m_dot") == pytest.approx(mass, rel=1e-9)


def test_equal_ratios_take_the_least_power_of_all_divisions(work: Work) -> None:
    call = (
        "compressor_duty(p_1 = 1.013 bar(a), p_2 = 31.013 bar(a), v_1 = 1 m3/min, n = 1.3, "
        "stages = 2)"
    )

    def power(between: float) -> float:
        ratios = (between / 1.013, 31.013 / between)
        return sum(1.3 / 0.3 * 101_300 / 60 * (math.pow(each, 0.3 / 1.3) - 1) for each in ratios)

    best = minimize_scalar(power, bounds=(2, 20), method="bounded", options={"xatol": 1e-9})

    assert ours(work, call, "p_between") == pytest.approx(best.x * 1e5, rel=1e-5)
    assert ours(work, call, "P") == pytest.approx(best.fun, rel=1e-9)


def test_the_indicator_diagram_of_a_cylinder_encloses_the_power(work: Work) -> None:
    call = (
        "compressor_duty(D = 0.2 m, stroke = 0.24 m, rpm = 300 rpm, p_1 = 1.01325 bar(a), "
        "p_2 = 8.106 bar(a), n = 1.35, T_1 = 15 degC)"
    )
    swept = math.pi / 4 * 0.2**2 * 0.24
    steps = 20_000
    pressures = [ATMOSPHERE + (810_600 - ATMOSPHERE) * each / steps for each in range(steps + 1)]
    volumes = [swept * (ATMOSPHERE / each) ** (1 / 1.35) for each in pressures]
    ends = pairwise(zip(pressures, volumes, strict=True))
    enclosed = sum((p2 - p1) * (v1 + v2) / 2 for (p1, v1), (p2, v2) in ends)

    assert ours(work, call, "P") == pytest.approx(enclosed * 5, rel=1e-6)


@pytest.mark.parametrize("clearance", [0, 0.05, 0.2])
@pytest.mark.parametrize("exponent", [1.2, 1.35])
def test_what_expands_out_of_the_clearance_leaves_less_room(
    work: Work, clearance: float, exponent: float
) -> None:
    call = f"compressor_duty(c = {clearance}, p_1 = 1 bar(a), p_2 = 5 bar(a), n = {exponent})"

    grown = brentq(lambda room: 5 * 1.0**exponent - room**exponent, 1, 10) if clearance else 1

    assert ours(work, call, "eta_v") == pytest.approx(1 - clearance * (grown - 1), rel=1e-9)


# ---- delivery


@pytest.mark.parametrize(("start", "end"), [(0, 5), (10, 20), (10.2, 29.1)])
@pytest.mark.parametrize("receiver", [288.15, 323.0])
def test_air_pumped_in_is_the_mass_gained_of_real_air(
    work: Work, start: float, end: float, receiver: float
) -> None:
    call = (
        f"free_air_delivery(V = 0.5 m3, p_1 = {start} bar(g), p_2 = {end} bar(g), t = 8 min, "
        f"T_2 = {receiver} K(a), T_intake = 293 K(a))"
    )
    before, after = (real_mass(0.5, each * 1e5 + ATMOSPHERE, receiver) for each in (start, end))
    gained = (after - before) / (8 * 60)

    assert ours(work, call, "FAD") * NORMAL == pytest.approx(gained, rel=0.015)
    taken = gained / real_mass(1, ATMOSPHERE, 293)
    assert ours(work, call, "FAD_intake") == pytest.approx(taken, rel=0.015)


# ---- air line


@pytest.mark.parametrize("flow", [20, 60, 165])
@pytest.mark.parametrize("length", [2, 12, 40])
@pytest.mark.parametrize("rough", [0, 0.045, 0.2])
@pytest.mark.parametrize("gauge", [8, 28])
def test_the_loss_of_a_line_is_that_of_the_library(
    work: Work, flow: float, length: float, rough: float, gauge: float
) -> None:
    found = ours(
        work,
        f"air_line_pressure_drop(q = {flow} m3(n)/h, D = 27 mm, L = {length} m, "
        f"p = {gauge} bar(g), rough = {rough} mm, T = 20 degC)",
        "drop",
    )

    pressure, mass = gauge * 1e5 + ATMOSPHERE, flow / 3600 * NORMAL
    density = pressure / (GAS * 293.15)
    speed = mass / density / (math.pi / 4 * 0.027**2)
    reynolds = density * speed * 0.027 / fluids.ATMOSPHERE_1976.viscosity(293.15)
    colebrook = fluids.friction.Colebrook(reynolds, rough / 27)
    squared = density * speed**2 / pressure

    def left(ratio: float) -> float:
        return 1 - ratio**2 - squared * (colebrook * length / 0.027 - 2 * math.log(ratio))

    ratio = brentq(left, 0.8, 1, xtol=1e-15)
    assert found == pytest.approx((1 - ratio) * pressure, rel=5e-5)


@pytest.mark.parametrize("reynolds", [4.1e3, 1e4, 1e5, 1e6, 1e7])
@pytest.mark.parametrize("ratio", [0, 1e-5, 1e-4, 1e-3, 1e-2, 0.05])
def test_the_explicit_factor_is_colebrooks_within_five_parts_in_a_hundred_thousand(
    reynolds: float, ratio: float
) -> None:
    explicit = fluids.friction.Serghides_1(reynolds, ratio)

    assert explicit == pytest.approx(fluids.friction.Colebrook(reynolds, ratio), rel=5e-5)


@pytest.mark.parametrize("downstream", [9.9, 9, 5])
@pytest.mark.parametrize("factor", [0.00185, 0.02])
def test_mass_between_two_pressures_is_that_of_the_library(
    work: Work, downstream: float, factor: float
) -> None:
    found = ours(
        work,
        f"air_line_pressure_drop(rho = 11.3 kg/m3, f = {factor}, P_1 = 10 bar(a), "
        f"P_2 = {downstream} bar(a), L = 1000 m, D = 0.5 m)",
        "m_dot",
    )

    library = fluids.isothermal_gas(
        rho=11.3, fd=factor, P1=10e5, P2=downstream * 1e5, L=1000, D=0.5
    )
    assert found == pytest.approx(library, rel=1e-9)
