"""What may meet what: every row of the table of kinds, and the hidden datum exponents."""

from fractions import Fraction

import pytest

from garboard.calc.kinds import (
    NUMBER,
    PRESSURE,
    TEMPERATURE,
    VOLUME,
    Clash,
    Kind,
    Type,
    absolute_of,
    divide,
    multiply,
    power,
    settle,
    words,
)
from tests.calc.desk import desk

READINGS = """
p = 30 bar(g)
q = 10 bar(g)
pa = 8 bar(a)
qa = 3 bar(a)
dp = 0.5 bar(d)
t = 25 degC
u = 60 degC
T = 300 K(a)
dT = 5 K(d)
V = 500 L
W = 2 m3
x = 1.5
"""


@pytest.mark.parametrize(
    ("expression", "kind", "bar"),
    [
        ("p + dp", Kind.READING, 30.5),
        ("dp + p", Kind.READING, 30.5),
        ("p - dp", Kind.READING, 29.5),
        ("p - q", Kind.PLAIN, 20.0),
        ("pa - qa", Kind.PLAIN, 5.0),
        ("pa + qa", Kind.ABSOLUTE, 11.0),
        ("pa + dp", Kind.ABSOLUTE, 8.5),
        ("dp + pa", Kind.ABSOLUTE, 8.5),
        ("pa - dp", Kind.ABSOLUTE, 7.5),
        ("1.5 * p", Kind.READING, 45.0),
        ("p * x", Kind.READING, 45.0),
        ("p / 2", Kind.READING, 15.0),
        ("pa * 2", Kind.ABSOLUTE, 16.0),
        ("dp + dp", Kind.PLAIN, 1.0),
        ("dp - dp / 2", Kind.PLAIN, 0.25),
        ("-dp", Kind.PLAIN, -0.5),
        ("max(p, q)", Kind.READING, 30.0),
        ("min(pa, qa)", Kind.ABSOLUTE, 3.0),
        ("p if dp < 1 bar(d) else q", Kind.READING, 30.0),
        ("absolute(p)", Kind.ABSOLUTE, 31.01325),
        ("absolute(pa)", Kind.ABSOLUTE, 8.0),
        ("absolute(dp)", Kind.ABSOLUTE, 0.5),
        ("gauge(pa)", Kind.READING, 6.98675),
        ("gauge(p)", Kind.READING, 30.0),
        ("gauge(1025 kg/m3 * 9.81 m/s2 * 10 m)", Kind.READING, 1.005525),
        ("difference(p)", Kind.PLAIN, 30.0),
        ("difference(dp)", Kind.PLAIN, 0.5),
        ("pa * V / W", Kind.ABSOLUTE, 2.0),
        ("sqrt(pa * qa)", Kind.ABSOLUTE, 4.898979),
        ("pa * (qa / pa)", Kind.ABSOLUTE, 3.0),
        ("abs(q - p)", Kind.PLAIN, 20.0),
    ],
)
def test_pressures_meet_as_the_table_says(expression: str, kind: Kind, bar: float) -> None:
    found = desk(f"{READINGS}\nr = {expression}")

    assert found.faults == ()
    assert found.value("r").type.kind is kind
    assert found.si("r") / 1e5 == pytest.approx(bar, rel=1e-6)


@pytest.mark.parametrize(
    ("expression", "kind", "kelvin"),
    [
        ("t + dT", Kind.READING, 303.15),
        ("t - dT", Kind.READING, 293.15),
        ("u - t", Kind.PLAIN, 35.0),
        ("T + dT", Kind.ABSOLUTE, 305.0),
        ("T - 280 K(a)", Kind.PLAIN, 20.0),
        ("absolute(t)", Kind.ABSOLUTE, 298.15),
        ("T * 1.1", Kind.ABSOLUTE, 330.0),
        ("T * (pa / qa)^(0.4 / 1.4)", Kind.ABSOLUTE, 397.034),
        ("max(t, u)", Kind.READING, 333.15),
        ("dT * 3", Kind.PLAIN, 15.0),
    ],
)
def test_temperatures_meet_as_the_table_says(expression: str, kind: Kind, kelvin: float) -> None:
    found = desk(f"{READINGS}\nr = {expression}")

    assert found.faults == ()
    assert found.value("r").type.kind is kind
    assert found.si("r") == pytest.approx(kelvin, rel=1e-5)


@pytest.mark.parametrize(
    ("expression", "says", "cure"),
    [
        ("p + q", "counts the starting point twice", "subtract first"),
        ("t + u", "counts the starting point twice", "subtract first"),
        ("p + pa", "a gauge pressure and an absolute pressure", "absolute(...)"),
        ("p - pa", "a gauge pressure and an absolute pressure", "absolute(...)"),
        ("pa - p", "an absolute pressure and a gauge pressure", "absolute(...)"),
        ("t - T", "a thermometer reading and an absolute temperature", "absolute(...)"),
        ("dp - p", "cannot be taken from", "turn it round"),
        ("dp - pa", "cannot be taken from", "turn it round"),
        ("p * q", "a product with a gauge pressure", "absolute(...)"),
        ("p * V", "a product with a gauge pressure", "difference(...)"),
        ("p / q", "a ratio with a gauge pressure", "absolute(...)"),
        ("V / p", "a ratio with a gauge pressure", "absolute(...)"),
        ("2 / p", "a ratio with a gauge pressure", "absolute(...)"),
        ("p / V", "a ratio with a gauge pressure", "absolute(...)"),
        ("p^2", "a power or root of a gauge pressure", "absolute(...)"),
        ("sqrt(p)", "a power or root of a gauge pressure", "absolute(...)"),
        ("abs(p)", "abs() of a gauge pressure", "absolute(...)"),
        ("-p", "turns the sign of a gauge pressure", "difference(...)"),
        ("-pa", "turns the sign of an absolute pressure", "difference(...)"),
        ("t * 2", "a product with a thermometer reading", "absolute(...)"),
        ("2 * t", "a product with a thermometer reading", "absolute(...)"),
        ("u / t", "a ratio with a thermometer reading", "absolute(...)"),
        ("t / 2", "a ratio with a thermometer reading", "absolute(...)"),
        ("max(p, pa)", "a gauge pressure and an absolute pressure", "absolute(...)"),
        ("min(p, dp)", "a gauge pressure and a pressure difference", "make both the same"),
        ("p if pa < p else q", "cannot compare an absolute pressure", "absolute(...)"),
        ("p if x > 1 else dp", "cannot choose between", "make both the same"),
        ("difference(pa)", "counted from nothing and is no difference", "subtract another"),
        ("difference(t)", "of a thermometer reading has no meaning", "in degC"),
        ("p in bar(a)", "is a gauge pressure, `bar(a)` is an absolute pressure", "absolute(...)"),
        ("pa in bar(g)", "is an absolute pressure, `bar(g)` is a gauge pressure", "gauge(...)"),
        ("p in bar(d)", "is a gauge pressure, `bar(d)` is a pressure difference", "difference"),
        ("dp in bar(g)", "is a pressure difference or stress, `bar(g)`", "gauge(...)"),
        ("dT in degC", "is a temperature difference, `degC` is a thermometer", ""),
        ("free_air(V, dp, t)", "is a pressure difference or stress", "absolute(...)"),
        ("free_air(V, p, dT)", "is a temperature difference", "absolute(...)"),
    ],
)
def test_what_is_counted_from_different_points_is_refused(
    expression: str, says: str, cure: str
) -> None:
    found = desk(f"{READINGS}\nr = {expression}")

    assert found.fault.code == "datum-missing"
    assert found.fault.family == "DATUM"
    assert found.fault.where.line == 23
    assert says in found.fault.text
    assert cure in found.fault.help


@pytest.mark.parametrize(
    "expression",
    ["p + V", "V - dT", "max(V, dp)", "p if V < dT else q", "V in kg", "t in bar(g)", "exp(V)"],
)
def test_different_dimensions_are_a_clash_of_their_own(expression: str) -> None:
    found = desk(f"{READINGS}\nr = {expression}")

    assert found.fault.code == "dimension-clash"
    assert found.fault.family == "DIMENSION"


def test_a_head_of_water_from_a_density_of_gas_is_a_difference() -> None:
    found = desk(
        """
rho = 8 bar(a) / (287 J/(kg.K) * absolute(25 degC))
dp = rho * 9.81 m/s2 * 10 m
"""
    )

    assert found.value("dp").type.kind is Kind.PLAIN
    assert found.text("dp") == "9.17 mbar(d)"


def test_a_temperature_asked_for_in_degrees_changes_its_kind_openly() -> None:
    found = desk("T = 300 K(a)\nt = T in degC\nback = t in K(a)")

    assert found.text("t") == "26.9 degC"
    assert found.value("t").type.kind is Kind.READING
    assert found.value("back").type.kind is Kind.ABSOLUTE


def test_free_air_takes_readings_and_gives_an_amount_of_gas() -> None:
    found = desk(
        "a = free_air(1 m3, 1.01325 bar(a), 273.15 K(a))\nb = free_air(1 m3/h, 9 bar(g), 0 degC)"
    )

    assert found.si("a") == pytest.approx(1.0, rel=1e-15)
    assert found.text("b") == "165 L(n)/min"
    assert found.line("b").worked.startswith(
        "b = free_air(1 m3/h, absolute(9 bar(g)), absolute(0 degC))"
    )


def test_free_air_is_no_volume() -> None:
    found = desk("a = free_air(1 m3, 9 bar(g), 0 degC)\nb = a + 1 m3")

    assert found.fault.text == ("in `a + 1 m3`: cannot add an amount of free air and a volume")


def test_free_air_of_something_else_is_refused() -> None:
    assert "takes a volume or its flow" in desk("a = free_air(1 m2, 9 bar(g), 0 degC)").fault.text
    assert desk("a = free_air(1 m3, 0 degC, 9 bar(g))").fault.family == "DIMENSION"


def test_reference_states_of_free_air_differ_by_their_temperature_and_pressure() -> None:
    found = desk("n = 2 m3(s) in m3(n)\na = 1 m3(anr) in m3(n)")

    assert found.si("n") == pytest.approx(2 * 273.15 / 288.15, rel=1e-15)
    assert found.si("a") == pytest.approx(100000 / 101325 * 273.15 / 293.15, rel=1e-15)


def test_turns_are_counted_apart_from_angles() -> None:
    assert desk("n = 60 rpm in 1/min").fault.family == "DIMENSION"
    assert desk("n = 60 rpm\nr = n * 1 min").text("r") == "60.0 rev"
    assert desk("a = 30 deg\ns = sin(a)").si("s") == pytest.approx(0.5, rel=1e-15)


def test_a_product_with_one_absolute_pressure_is_absolute() -> None:
    pressure = absolute_of(PRESSURE)
    volume = Type(VOLUME)

    work = multiply(pressure, volume)

    assert work.kind is Kind.PLAIN
    assert divide(work, volume) == pressure
    assert divide(pressure, pressure) == Type(NUMBER)
    assert power(multiply(pressure, pressure), Fraction(1, 2)) == pressure


def test_a_temperature_that_holds_a_pressure_datum_is_no_absolute_one() -> None:
    assert settle(TEMPERATURE, Fraction(1), Fraction(1)).kind is Kind.PLAIN
    assert settle(TEMPERATURE, Fraction(0), Fraction(1)).kind is Kind.ABSOLUTE


def test_a_number_that_holds_a_datum_does_not_scale_a_reading() -> None:
    ratio = Type(NUMBER, Kind.PLAIN, Fraction(1))

    with pytest.raises(Clash, match="a product with a gauge pressure"):
        multiply(Type(PRESSURE, Kind.READING), ratio)


def test_types_have_words_of_the_trade() -> None:
    assert words(Type(TEMPERATURE, Kind.READING)) == "a thermometer reading"
    assert words(absolute_of(TEMPERATURE)) == "an absolute temperature"
    assert words(Type(VOLUME)) == "a volume"
