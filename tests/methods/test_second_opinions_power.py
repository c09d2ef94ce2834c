"""Cables, batteries, threads, relief valves and gas by another route, over a grid of inputs.

Nothing here uses the calculation language or the tables of the methods: copper by its physical
resistivity, gauge numbers by the law that defines them, time by a slow discharge.
"""

import itertools
import math
from fractions import Fraction
from typing import Any

import pytest
from CoolProp.CoolProp import PropsSI
from fluids.piping import nearest_pipe
from fluids.safety_valve import API520_A_g

from garboard.calc.network import Network
from tests.methods.said import Work

FOOT, MIL = 0.3048, 25.4e-6
CIRCULAR_MIL = 3.141592653589793 / 4 * MIL**2
COPPER_20, PER_KELVIN = 1.7241e-8, 0.00393
"""Annealed copper, IACS: ohm metre at 20 degC, and its rise."""


def si(network: Network, result: str) -> float:
    """One result, in SI."""
    assert network.diagnostics == ()
    found = network.values[f"case.x.{result}"].si
    assert found is not None
    return found


def copper(celsius: float) -> float:
    """Resistivity of annealed copper, by the physical law."""
    return COPPER_20 * (1 + PER_KELVIN * (celsius - 20))


def gauge_cmil(number: int) -> float:
    """Circular mils of an American wire gauge number; 0 is 1/0, -3 is 4/0."""
    return float((5 * 92 ** ((36 - number) / 39)) ** 2)


@pytest.mark.parametrize(
    ("current", "feet", "volts", "share"),
    [*itertools.product((2, 10, 60), (8, 21, 90), (12, 24, 48), (0.03, 0.1))],
)
def test_copper_for_a_drop_is_that_of_the_physical_resistivity(
    work: Work, current: int, feet: int, volts: int, share: float
) -> None:
    found = work(
        f"x = dc_cable_size(I = {current} A, L = {feet} ft, V = {volts} V, drop_fraction = {share})"
    )

    other = copper(29.28) * current * feet * FOOT / (volts * share)

    assert si(found, "area_cmil") == pytest.approx(other, rel=2e-4)


@pytest.mark.parametrize("celsius", [30, 40, 50, 70, 90, 105])
def test_warm_copper_is_never_taken_for_better_than_it_is(work: Work, celsius: int) -> None:
    found = work(f"x = dc_cable_size(I = 10 A, L = 21 ft, A = 4 mm2, T = {celsius} degC)")

    other = copper(celsius) * 10 * 21 * FOOT / 4e-6

    assert 0.996 < si(found, "drop") / other < 1.02


@pytest.mark.parametrize(
    ("size", "number"),
    [(str(n), n) for n in (18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0)]
    + [("00", -1), ("000", -2), ("0000", -3)],
)
def test_listed_copper_is_that_of_the_law_of_the_wire_gauge(
    work: Work, size: str, number: int
) -> None:
    found = work(f"x = dc_cable_size(size = {size}, standard = AWG)")

    assert si(found, "awg_area") / CIRCULAR_MIL == pytest.approx(gauge_cmil(number), abs=0.7)


@pytest.mark.parametrize(
    ("current", "feet", "share"), [*itertools.product((3, 12, 45), (10, 30), (0.03, 0.1))]
)
def test_the_conductor_named_is_the_first_that_stands_the_drop_and_carries_the_load(
    work: Work, current: int, feet: int, share: float
) -> None:
    found = work(
        f"x = dc_cable_size(I = {current} A, L = {feet} ft, V = 24 V, drop_fraction = {share}, "
        "standard = AWG, insulation_rating = 105 degC)"
    )

    amperes = {16: 25, 14: 35, 12: 45, 10: 60, 8: 80, 6: 120, 4: 160, 2: 210}
    needed = copper(29.28) * current * feet * FOOT / (24 * share) / CIRCULAR_MIL
    other = next(n for n, most in amperes.items() if gauge_cmil(n) >= needed and most >= current)

    assert f"size: {other} AWG" in found.sheets["case"].lines[0].notes


@pytest.mark.parametrize(
    ("capacity", "depth", "left", "load"),
    [*itertools.product((100, 440), ("0.5", "0.8"), ("0.8", "1"), (3, 12))],
)
def test_a_bank_let_down_minute_by_minute_lasts_the_hours_that_are_said(
    work: Work, capacity: int, depth: str, left: str, load: int
) -> None:
    found = work(
        f"x = battery_autonomy(C = {capacity} Ah, DoD = {depth}, eta = {left}, I = {load} A)"
    )

    charge, end, minutes = Fraction(capacity) * Fraction(left), Fraction(0), 0
    end = charge * (1 - Fraction(depth))
    while charge > end:
        charge -= Fraction(load, 60)
        minutes += 1

    assert si(found, "hours") / 60 == pytest.approx(minutes, abs=1.001)


def test_a_bank_of_the_size_that_is_asked_for_carries_the_day(work: Work) -> None:
    day = "3 A * 24 h + 8 A * 4 h"
    found = work(
        f"x = battery_autonomy(loads = {day}, DoD = 0.5, eta = 0.8)",
        "y = battery_autonomy(C = x.C_needed, DoD = 0.5, eta = 0.8, I = (3 A * 24 h + 8 A * 4 h) / "
        "(24 h))",
    )

    hours = found.values["case.y.hours"].si

    assert hours == pytest.approx(24 * 3600)


@pytest.mark.parametrize("schedule", ["40", "80"])
@pytest.mark.parametrize("size", ["0.5", "0.75", "1", "1.25", "1.5", "2", "3", "4"])
def test_a_pipe_has_the_diameters_that_another_library_holds(
    work: Work, size: str, schedule: str
) -> None:
    found = work(f"x = thread_and_pipe_size(size = {size}, schedule = {schedule})")

    nominal: Any = float(size)  # the library's stub says int, its tables say 1.25
    _, inside, outside, _ = nearest_pipe(NPS=nominal, schedule=schedule)

    assert si(found, "bore") == pytest.approx(inside, abs=5e-6)
    assert si(found, "outside") == pytest.approx(outside, abs=5e-6)


@pytest.mark.parametrize(
    ("major", "per_inch"),
    [(9.728, 28), (13.157, 19), (16.662, 19), (33.249, 11), (41.91, 11), (47.803, 11)],
)
def test_the_roots_of_a_thread_are_drawn_by_its_flanks(
    work: Work, major: float, per_inch: int
) -> None:
    found = work(f"x = thread_and_pipe_size(major = {major} mm, tpi = {per_inch} 1/inch)")

    pitch = 25.4 / per_inch
    sharp = pitch / 2 / math.tan(math.radians(27.5))
    depth = sharp * 2 / 3

    assert si(found, "minor") == pytest.approx((major - 2 * depth) / 1000, abs=1e-6)


@pytest.mark.parametrize(
    ("flow", "kelvin", "gas", "kilopascal"),
    [
        (24270, 348, (51, 1.11), 670),
        *itertools.product((50, 900), (290, 400), ((28.96, 1.4), (44.1, 1.13)), (500, 3400)),
    ],
)
def test_a_choked_gas_asks_for_the_area_that_another_library_gives(
    work: Work, flow: int, kelvin: int, gas: tuple[float, float], kilopascal: int
) -> None:
    molar, ratio = gas
    found = work(
        f"x = relief_capacity_check(W = {flow} kg/h, T = {kelvin} K(a), M = {molar} g/mol, "
        f"k = {ratio}, Z = 0.9, P1 = {kilopascal} kPa(a), Kd = 0.975)"
    )

    other = API520_A_g(
        m=flow / 3600, T=kelvin, Z=0.9, MW=molar, k=ratio, P1=kilopascal * 1000, Kd=0.975
    )

    # The library carries the constant in SI and exact, the printed formula has it rounded to 520.
    assert si(found, "area") == pytest.approx(other, rel=1.5e-3)


@pytest.mark.parametrize(
    ("minute", "bar", "celsius"), [*itertools.product((0.3, 1, 6), (8, 30), (20, 60))]
)
def test_air_through_an_ideal_throat_asks_for_that_area(
    work: Work, minute: float, bar: int, celsius: int
) -> None:
    found = work(
        f"x = relief_capacity_check(q = {minute} m3(n)/min, setting = {bar} bar(g), "
        f"overpressure = 0.1, T = {celsius} degC, Kd = 1, p_atm = 1.01325 bar(a))"
    )

    density = PropsSI("D", "T", 273.15, "P", 101325, "Air")
    through = density * minute / 60
    pressure, gas, k = bar * 1.1e5 + 101325, 8.314462618 / 0.02896, 1.4
    flux = pressure * math.sqrt(k / (gas * (celsius + 273.15)) * (2 / (k + 1)) ** (2.4 / 0.4))

    assert si(found, "area") == pytest.approx(through / flux, rel=3e-3)


@pytest.mark.parametrize(
    ("limit", "volume", "celsius"), [*itertools.product((0.017, 0.021), (2, 20, 95), (0, 20, 40))]
)
def test_the_gas_that_is_enough_is_that_of_the_real_vapour(
    work: Work, limit: float, volume: int, celsius: int
) -> None:
    found = work(
        f"x = flammable_gas_facts(gas = propane, V = {volume} m3, limit = {limit}, "
        f"T = {celsius} degC, p_atm = 1.01325 bar(a))"
    )

    density = PropsSI("D", "T", celsius + 273.15, "P", 101325, "Propane")

    # The printed 1.55 is rounded; the real vapour is 1.548 times air at 20 degC, 1.555 at 0 degC.
    assert si(found, "mass") == pytest.approx(limit * volume * density, rel=5e-3)


def test_the_vapour_of_propane_is_as_heavy_and_boils_as_another_library_says(work: Work) -> None:
    found = work("x = flammable_gas_facts(gas = propane)")

    air, vapour = (PropsSI("D", "T", 293.15, "P", 101325, each) for each in ("Air", "Propane"))

    assert si(found, "vapour_density") == pytest.approx(vapour / air, abs=0.01)
    assert si(found, "molar_mass") == pytest.approx(PropsSI("M", "Propane"), abs=1e-4)
    assert si(found, "boiling") == pytest.approx(
        PropsSI("T", "P", 101325, "Q", 0, "Propane"), abs=0.3
    )
    assert si(found, "vapour_pressure") == pytest.approx(
        PropsSI("P", "T", 294.26, "Q", 0, "Propane"), rel=0.02
    )
