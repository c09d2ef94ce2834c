"""Liquids, tanks and engine-room air by other libraries and other routes, over small grids.

fluids for friction and tanks, CoolProp for the vapour of water, PsychroLib for moist air, scipy for
integrals and roots, pint for units. None of them knows the calculation language.
"""

import itertools
import math

import pint
import psychrolib
import pytest
from CoolProp.CoolProp import HAPropsSI, PropsSI
from fluids.friction import Colebrook, friction_factor
from fluids.geometry import V_horiz_ellipsoidal
from scipy.integrate import quad
from scipy.optimize import brentq

from tests.methods.said import Work

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()
GRAVITY = 9.80665
FOOT_PER_PSI = 0.3048 / 6894.757293168361


def grid(*axes: tuple[float, ...]) -> tuple[tuple[float, ...], ...]:
    """Every point of a small grid."""
    return tuple(itertools.product(*axes))


def ours(work: Work, call: str, result: str = "") -> float:
    """What a call answers, in SI."""
    found = work(f"x = {call}")
    assert found.diagnostics == ()
    value = found.values[f"case.x.{result}" if result else "case.x"].si
    assert value is not None
    return value


# ---- what a hole lets in


@pytest.mark.parametrize(("bore", "depth", "share"), grid((12, 50, 200), (0.1, 1, 4), (0.6, 0.98)))
def test_a_hole_lets_in_what_falls_through_it(
    work: Work, bore: float, depth: float, share: float
) -> None:
    found = ours(work, f"flooding_rate(d_hole = {bore} mm, h = {depth} m, Cd = {share})")

    speed = brentq(lambda v: v * v / 2 - GRAVITY * depth, 0, 100, xtol=1e-14)
    area = quad(lambda r: 2 * math.pi * r, 0, bore / 2000)[0]
    assert found == pytest.approx(share * area * speed, rel=1e-10)


# ---- pressure lost in a pipe

REYNOLDS = (4000, 4500, 1e4, 7.3e4, 1e6, 1e8)
ROUGHNESS = (0, 1e-6, 1e-4, 0.003, 0.05)


@pytest.mark.parametrize(("reynolds", "rough"), grid(REYNOLDS, ROUGHNESS))
def test_three_tangents_reach_the_root_of_colebrooks_formula(
    work: Work, reynolds: float, rough: float
) -> None:
    found = ours(work, f"pipe_pressure_drop(Re = {reynolds:.0f}, rel_rough = {rough:.6f})", "f")

    def miss(x: float) -> float:
        return x + 2 * math.log10(rough / 3.7 + 2.51 * x / reynolds)

    assert found == pytest.approx(brentq(miss, 1, 20, xtol=1e-13, rtol=1e-14) ** -2, rel=1e-11)
    assert found == pytest.approx(Colebrook(reynolds, rough), rel=1e-9)


@pytest.mark.parametrize("reynolds", [1, 400, 1999])
def test_slow_flow_has_the_laminar_factor(work: Work, reynolds: float) -> None:
    found = ours(work, f"pipe_pressure_drop(Re = {reynolds}, rel_rough = 0)", "f")

    assert found == pytest.approx(friction_factor(reynolds, 0.0), rel=1e-14)


@pytest.mark.parametrize(
    ("flow", "bore", "viscosity"), grid((2, 60, 900), (25, 52.5), (0.9, 4, 60))
)
def test_a_drop_by_hand_from_the_factor_of_another_library(
    work: Work, flow: float, bore: float, viscosity: float
) -> None:
    speed = flow / 60000 / (math.pi / 4 * (bore / 1000) ** 2)
    reynolds = speed * bore / 1000 / (viscosity * 1e-6)
    assert not 2000 < reynolds < 4000
    factor = 64 / reynolds if reynolds <= 2000 else Colebrook(reynolds, 0.05 / bore)
    found = ours(
        work,
        f"pipe_pressure_drop(Q = {flow} L/min, D = {bore} mm, L = 8 m, K = 2.5, rho = 870 kg/m3, "
        f"nu = {viscosity} mm2/s, rough = 0.05 mm)",
        "drop",
    )

    assert found == pytest.approx((factor * 8000 / bore + 2.5) * 870 * speed**2 / 2, rel=1e-9)


# ---- suction head


@pytest.mark.parametrize("degrees", range(1, 101, 9))
def test_the_vapour_of_water_is_within_one_percent_and_never_above(
    work: Work, degrees: int
) -> None:
    without = 101325 * 2.31 * FOOT_PER_PSI
    head = ours(
        work,
        f"suction_head_available(T = {degrees} degC, fluid = water, lift = 0 m, h_friction = 0 m, "
        "h_entry = 0 m, p_atm = 101325 Pa(a))",
        "head",
    )

    vapour = (without - head) / (2.31 * FOOT_PER_PSI)
    real = PropsSI("P", "T", degrees + 273.15, "Q", 0, "Water")
    assert 0.99 * real <= vapour <= 1.0005 * real


@pytest.mark.parametrize(
    ("degrees", "lift", "barometer"), grid((5, 32, 60), (-4, 0), (96000, 103000))
)
def test_the_head_of_water_with_its_true_density_is_no_more_than_a_hand_away(
    work: Work, degrees: int, lift: float, barometer: float
) -> None:
    found = ours(
        work,
        f"suction_head_available(T = {degrees} degC, fluid = water, lift = {lift} m, "
        f"h_friction = 0.5 m, h_entry = 0.1 m, p_atm = {barometer} Pa(a))",
        "head",
    )

    kelvin = degrees + 273.15
    weight = PropsSI("D", "T", kelvin, "P", barometer, "Water") * GRAVITY
    vapour = PropsSI("P", "T", kelvin, "Q", 0, "Water")
    assert found == pytest.approx((barometer - vapour) / weight + lift - 0.6, abs=0.16)


def test_a_gauge_at_the_flange_sees_the_same_head_as_the_tank(work: Work) -> None:
    water = "T = 15 degC, fluid = water, p_atm = 101325 Pa(a)"
    tank = ours(
        work,
        f"suction_head_available({water}, lift = -2 m, h_friction = 0.7 m, h_entry = 0.2 m)",
        "head",
    )

    column = 2.31 * FOOT_PER_PSI
    reading = (-2 - 0.9 - 1.2**2 / (2 * GRAVITY) - 0.25) / column
    gauge = ours(
        work,
        f"suction_head_available({water}, p_gauge = {reading:.6f} Pa(g), v = 1.2 m/s, Y = 0.25 m)",
        "head_by_gauge",
    )

    assert gauge == pytest.approx(tank, abs=1e-6)


# ---- cylinders


@pytest.mark.parametrize(("reading", "bore", "rod"), grid((5, 160, 350), (40, 125), (12, 28)))
def test_forces_and_powers_by_a_library_of_units(
    work: Work, reading: float, bore: float, rod: float
) -> None:
    call = (
        f"hydraulic_force_and_power(p = {reading} bar(g), D = {bore} mm, d_rod = {rod} mm, "
        "Q = 37 L/min, eta = 0.82)"
    )

    ring = REGISTRY(f"{reading} bar * pi / 4 * (({bore} mm)**2 - ({rod} mm)**2)")
    whole = REGISTRY(f"{reading} bar * pi / 4 * ({bore} mm)**2")
    power = REGISTRY(f"37 L/min * {reading} bar")
    assert ours(work, call, "F_push") == pytest.approx(whole.to("N").magnitude, rel=1e-12)
    assert ours(work, call, "F_pull") == pytest.approx(ring.to("N").magnitude, rel=1e-12)
    assert ours(work, call, "P_oil") == pytest.approx(power.to("W").magnitude, rel=1e-12)
    assert ours(work, call, "P_shaft") == pytest.approx(power.to("W").magnitude / 0.82, rel=1e-12)


# ---- tanks

DEPTHS = (0.001, 0.02, 0.25, 0.5, 0.73, 0.98, 0.999, 1)


@pytest.mark.parametrize(("share", "end"), grid(DEPTHS, (0, 0.2, 0.6)))
def test_contents_of_a_lying_tank_by_another_library(work: Work, share: float, end: float) -> None:
    depth = 1.2 * share
    found = ours(
        work, f"tank_contents(D = 1.2 m, L = 2.5 m, a = {end} m, h = {depth:.6f} m)", "volume"
    )

    other = V_horiz_ellipsoidal(1.2, 2.5, end, round(depth, 6))
    assert found == pytest.approx(other, rel=1e-9)


@pytest.mark.parametrize("share", DEPTHS)
def test_contents_of_a_lying_tank_slice_by_slice(work: Work, share: float) -> None:
    depth = round(1.2 * share, 6)
    found = ours(
        work, f"tank_contents(D = 1.2 m, L = 2.5 m, a = 0.3 m, h = {depth:.6f} m)", "volume"
    )

    def slice_at(height: float) -> float:
        half = math.sqrt(max(0.6**2 - (height - 0.6) ** 2, 0))
        return 2 * half * 2.5 + math.pi * half * (0.3 / 0.6 * half)

    assert found == pytest.approx(quad(slice_at, 0, depth, epsabs=1e-13)[0], rel=1e-7)


def test_hours_and_day_tank_by_a_library_of_units(work: Work) -> None:
    engine = "P = 182 kW, sfoc = 224 g/kWh, rho = 0.853 kg/L"
    burn = REGISTRY("182 kW * 224 g/(kW*h) / (0.853 kg/L)")

    hours = ours(work, f"tank_contents(V = 640 L, usable = 0.88, {engine})", "hours")
    needed = ours(work, f"tank_contents(hours = 11 h, {engine})", "day_tank")

    assert hours == pytest.approx((REGISTRY("640 L * 0.88") / burn).to("s").magnitude, rel=1e-12)
    assert needed == pytest.approx((REGISTRY("11 h") * burn).to("m**3").magnitude, rel=1e-12)


# ---- free surface


@pytest.mark.parametrize(("breadth", "parts"), grid((1.5, 6, 10), (1, 2, 3, 5)))
def test_the_free_surface_of_each_division_added_up(work: Work, breadth: float, parts: int) -> None:
    found = ours(
        work,
        f"free_surface_information(l = 3 m, b = {breadth} m, rho = 0.86 t/m3, displacement = 210 t, "
        f"n = {parts})",
    )

    half = breadth / parts / 2
    moment = parts * quad(lambda y: 3 * y * y, -half, half)[0]
    assert found == pytest.approx(moment * 0.86 / 210, rel=1e-12)


# ---- engine room


@pytest.mark.parametrize(
    ("degrees", "share", "barometer"),
    grid((0, 15, 35, 55), (0.1, 0.7, 1), (96000, 101325, 104000)),
)
def test_moist_air_by_another_library(
    work: Work, degrees: int, share: float, barometer: float
) -> None:
    found = ours(
        work, f"engine_room_air(T = {degrees} degC, phi = {share}, p = {barometer} Pa(a))", "rho"
    )

    psychrolib.SetUnitSystem(psychrolib.SI)
    ratio = psychrolib.GetHumRatioFromRelHum(degrees, share, barometer)
    other = psychrolib.GetMoistAirDensity(degrees, ratio, barometer)
    assert found == pytest.approx(other, rel=4e-4)


def test_the_heat_carried_out_warms_the_air_by_the_rise(work: Work) -> None:
    found = ours(
        work,
        "engine_room_air(heat = 24 kW, dT = 8 K(d), combustion = 14 m3/min, T = 30 degC, phi = 0.6, "
        "p = 101325 Pa(a))",
        "air",
    )

    moist = HAPropsSI("W", "T", 303.15, "P", 101325, "R", 0.6)
    volume = HAPropsSI("Vha", "T", 303.15, "P", 101325, "W", moist)
    warm = HAPropsSI("Hha", "T", 311.15, "P", 101325, "W", moist)
    cold = HAPropsSI("Hha", "T", 303.15, "P", 101325, "W", moist)
    carried = 24000 / ((warm - cold) / volume)
    assert found * 60 == pytest.approx(carried * 60 + 14, rel=0.02)
