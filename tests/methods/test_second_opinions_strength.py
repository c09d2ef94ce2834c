"""Stored energy, welds, motion, expansion and walls by other routes: integrals, real air, thick walls.

Nothing here uses the calculation language to find the other answer.
"""

import itertools
import math
from fractions import Fraction

import numpy as np
import pint
import pytest
from CoolProp.CoolProp import PropsSI
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.spatial.transform import Rotation

from garboard.calc.network import evaluate
from garboard.calc.sheet import Fence
from garboard.errors import Where
from garboard.methods import METHODS

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()
ATMOSPHERE = 1.01325e5
PSI = 6894.757293168361
INCH = 0.0254
READINGS = (0.5, 3, 10, 33, 45)
VOLUMES = (0.05, 0.5)


def ours(call: str, result: str) -> float:
    """One result of a call, in SI."""
    fence = Fence("case", "", (f"x = {call}",), Where("case.md"), "case")
    network = evaluate([fence], {}, METHODS)
    assert network.diagnostics == ()
    found = network.values[f"case.x.{result}" if result else "case.x"].si
    assert found is not None
    return found


def stored(volume: float, reading: float, result: str) -> float:
    call = f"V = {volume} m3, p_test = {reading} bar(g), Pa = 101325 Pa(a)"
    return ours(f"gas_test_stored_energy({call})", result)


@pytest.mark.parametrize(("volume", "reading"), tuple(itertools.product(VOLUMES, READINGS)))
def test_isothermal_energy_is_the_work_of_a_gas_kept_warm(volume: float, reading: float) -> None:
    start = reading * 1e5 + ATMOSPHERE
    work, _ = quad(lambda v: start * volume / v, volume, volume * start / ATMOSPHERE)

    assert stored(volume, reading, "E_isothermal") == pytest.approx(work, rel=1e-9)


@pytest.mark.parametrize(("volume", "reading"), tuple(itertools.product(VOLUMES, READINGS)))
def test_isentropic_energy_is_the_work_of_a_gas_left_to_cool(volume: float, reading: float) -> None:
    start = reading * 1e5 + ATMOSPHERE
    end = volume * (start / ATMOSPHERE) ** (1 / 1.4)
    work, _ = quad(lambda v: start * (volume / v) ** 1.4, volume, end)

    assert stored(volume, reading, "E_isentropic") == pytest.approx(work, rel=1e-9)


@pytest.mark.parametrize(("volume", "reading"), tuple(itertools.product(VOLUMES, READINGS)))
def test_the_three_gas_models_stand_in_their_order(volume: float, reading: float) -> None:
    isentropic, brode, isothermal = (
        stored(volume, reading, f"E_{model}") for model in ("isentropic", "brode", "isothermal")
    )

    assert isentropic < min(brode, isothermal)
    assert brode == pytest.approx(float(Fraction(reading) * 10**5 * Fraction(volume) / 2 * 5))


@pytest.mark.parametrize("reading", READINGS)
def test_real_air_gives_up_a_few_percent_less(reading: float) -> None:
    """Of real air at 15 degC, by the library: 1 percent less at 10 bar gauge, 4 at 45."""
    start = reading * 1e5 + ATMOSPHERE
    density = PropsSI("D", "P", start, "T", 288.15, "Air")
    entropy = PropsSI("S", "P", start, "T", 288.15, "Air")
    inside = PropsSI("U", "P", start, "T", 288.15, "Air")
    left = PropsSI("U", "P", ATMOSPHERE, "S", entropy, "Air")
    real = 0.5 * density * (inside - left)

    ratio = real / stored(0.5, reading, "E_isentropic")

    assert 1 - 0.001 * reading - 0.002 < ratio <= 1.0


@pytest.mark.parametrize("reading", READINGS)
def test_the_water_figure_is_the_work_of_real_water(reading: float) -> None:
    """The library lets the water grow stiffer with pressure; at 20 degC it begins at 2.18 GPa."""
    atmosphere, start = 101325.0, 101325.0 + reading * 1e5
    pressed = PropsSI("D", "P", start, "T", 293.15, "Water")
    work, _ = quad(
        lambda p: (p - atmosphere) * 0.5 * pressed
        * PropsSI("ISOTHERMAL_COMPRESSIBILITY", "P", p, "T", 293.15, "Water")
        / PropsSI("D", "P", p, "T", 293.15, "Water"),
        atmosphere,
        start,
    )  # fmt: skip

    assert stored(0.5, reading, "E_liquid") == pytest.approx(work, rel=0.01)


@pytest.mark.parametrize(
    ("load", "arm", "leg", "length", "joint"),
    [(30e3, 140, 8, 440, 0.7), (5e3, 60, 5, 120, 0.6), (12e3, 0, 6, 200, 1.0), (800, 900, 4, 90, 1)],
)  # fmt: skip
def test_weld_stresses_are_those_of_the_stress_tensor(
    load: float, arm: float, leg: float, length: float, joint: float
) -> None:
    throat = leg * 0.7
    second_moment, _ = quad(lambda y: throat * y * y, -length / 2, length / 2)
    bending = load * arm * (length / 2) / second_moment / joint
    shear = load / (throat * length) / joint
    principal = np.linalg.eigvalsh([[bending, shear], [shear, 0.0]])
    call = f"P = {load} N, e = {arm} mm, leg = {leg} mm, l = {length} mm, joint_eff = {joint}"

    found = {
        name: ours(f"weld_load_estimate({call})", name) / 1e6
        for name in ("f_s", "f_b", "resultant", "max_normal", "max_shear")
    }

    assert found == pytest.approx(
        {
            "f_s": shear,
            "f_b": bending,
            "resultant": math.hypot(shear, bending),
            "max_normal": principal[1],
            "max_shear": (principal[1] - principal[0]) / 2,
        },
        rel=1e-9,
    )


@pytest.mark.parametrize(
    ("angle", "period", "heave"),
    tuple(itertools.product((2, 15, 25, 45), (4, 10), (0.2, -0.2, 0.6))),
)
def test_motion_loads_are_gravity_turned_into_the_deck(
    angle: float, period: float, heave: float
) -> None:
    call = f"ship_motion_load(theta = {angle} deg, T = {period} s, heave = {heave})"
    roll = Rotation.from_euler("x", angle, degrees=True)
    _, along, into = roll.apply([0, 0, 9.80665 * (1 + heave)])
    _, along_other, into_other = roll.apply([0, 0, 9.80665 * (1 - heave)])

    found = [ours(call, name) for name in ("lateral", "normal", "lateral_other", "normal_other")]

    assert found == pytest.approx(
        [abs(along), into, abs(along_other), into_other], rel=1e-9, abs=1e-12
    )


@pytest.mark.parametrize(("angle", "period"), tuple(itertools.product((2, 25, 45), (4, 10))))
def test_the_angular_acceleration_is_the_second_difference_of_a_swing(
    angle: float, period: float
) -> None:
    call = f"ship_motion_load(theta = {angle} deg, T = {period} s, heave = 0)"
    at = np.array([-1e-3, 0, 1e-3]) * period
    swing = np.radians(angle) * np.cos(2 * np.pi * at / period)
    second = abs(swing[0] - 2 * swing[1] + swing[2]) / (1e-3 * period) ** 2

    assert ours(call, "alpha") == pytest.approx(second, rel=1e-4)


@pytest.mark.parametrize(
    ("coefficient", "length", "change"),
    tuple(itertools.product((6.5e-6, 8e-6), (10, 100), (100, 180))),
)
def test_movement_in_fahrenheit_and_feet_is_what_the_units_library_finds(
    coefficient: float, length: float, change: float
) -> None:
    quantity = REGISTRY.Quantity
    other = (
        quantity(coefficient, "1/delta_degF") * quantity(length, "ft") * quantity(change, "delta_degF")
    ).to("m")  # fmt: skip
    call = (
        f"thermal_movement(alpha = {coefficient} 1/degF, L = {length} ft, dT = {change} degF(d), "
        "range_from = 32 degF, range_to = 400 degF)"
    )

    assert ours(call, "") == pytest.approx(other.magnitude, rel=1e-12)


def thick_wall(pressure: float, radius: float, strength: float) -> float:
    """The wall of a thick cylinder whose inside hoop stress is the strength (Lame)."""

    def over(wall: float) -> float:
        ratio = ((radius + wall) / radius) ** 2
        return float(pressure * (ratio + 1) / (ratio - 1) - strength)

    return float(brentq(over, 1e-6 * radius, 2 * radius))


@pytest.mark.parametrize(
    ("pressure", "radius", "stress", "joint"),
    [(100, 48.125, 17500, 0.85), (300, 12, 13800, 0.7), (1357.165, 24.125, 18800, 1), (430, 10, 15000, 1)],
)  # fmt: skip
def test_a_thin_wall_is_that_of_the_thick_cylinder_within_one_percent(
    pressure: float, radius: float, stress: float, joint: float
) -> None:
    call = (
        f"pressure_part_recheck(record = held, P = {pressure} psi(g), R = {radius} inch, "
        f"S = {stress} psi(d), E = {joint})"
    )

    wall = ours(call, "t_shell") / INCH

    assert wall == pytest.approx(thick_wall(pressure, radius, stress * joint), rel=0.01)


@pytest.mark.parametrize("wall", [0.25, 0.906, 2.0])
def test_the_pressure_of_a_wall_and_the_wall_of_a_pressure_are_one_formula(wall: float) -> None:
    common = "record = held, R = 24.344 inch, S = 20000 psi(d), E = 0.85"
    shown = ours(f"pressure_part_recheck({common}, t = {wall} inch)", "P_shown") / PSI

    back = ours(f"pressure_part_recheck({common}, P = {shown:.14g} psi(g))", "t_shell") / INCH

    assert back == pytest.approx(wall, rel=1e-9)


def test_a_foot_of_water_is_the_pressure_the_library_finds() -> None:
    """0.433 psi a foot is the code's rounding of 0.4327 at 20 degC."""
    common = "record = held, P = 100 psi(g), R = 24 inch, S = 20000 psi(d), E = 1"
    dry, wet = (
        ours(f"pressure_part_recheck({common}, static_head = {head} ft)", "t_shell")
        for head in (0, 50)
    )
    column = 50 * 0.3048 * 9.80665 * PropsSI("D", "P", ATMOSPHERE, "T", 293.15, "Water")
    strength = 20000 * PSI
    walls = [p * 24 * INCH / (strength - 0.6 * p) for p in (100 * PSI, 100 * PSI + column)]

    assert wet - dry == pytest.approx(walls[1] - walls[0], rel=0.002)
