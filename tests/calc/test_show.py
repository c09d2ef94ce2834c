"""What a reader sees: numbers, ranges, worked lines, MathML."""

import re
from dataclasses import replace
from fractions import Fraction
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.calc.mathml import unit_text
from garboard.calc.quantity import read_quantity
from garboard.calc.show import (
    Towards,
    show_against,
    show_in,
    show_mover,
    show_number,
    show_range,
    show_usual,
)
from garboard.calc.units import read_unit
from garboard.errors import Where
from tests.calc.desk import desk


@pytest.mark.parametrize(
    ("number", "digits", "text"),
    [
        (13.4567, 3, "13.5"), (9.995, 3, "10.0"), (9.996, 3, "10.0"), (0.0, 3, "0"),
        (1234.5, 3, "1230"), (1_234_567.0, 3, "1230000"), (12_345_678.0, 3, "1.23e7"),
        (0.000123456, 3, "0.000123"), (0.0000123456, 3, "1.23e-5"), (-2.5, 2, "-2.5"),
        (100.0, 3, "100"), (99.96, 3, "100"), (0.5, 1, "0.5"), (2 / 3, 6, "0.666667"),
        (-0.0, 3, "0"), (1e-300, 3, "1.00e-300"),
    ],
)  # fmt: skip
def test_a_number_has_its_significant_digits(number: float, digits: int, text: str) -> None:
    assert show_number(number, digits) == text


def test_a_count_is_plain() -> None:
    assert show_number(9.0, whole=True) == "9"
    assert show_number(12345678.0, whole=True) == "12345678"


@pytest.mark.parametrize(
    ("number", "up", "down"),
    [(13.41, "13.5", "13.4"), (13.4, "13.4", "13.4"), (-13.41, "-13.4", "-13.5"),
     (0.1 + 0.2, "0.300", "0.300"), (999.1, "1000", "999")],
)  # fmt: skip
def test_a_number_is_rounded_to_the_safe_side(number: float, up: str, down: str) -> None:
    assert show_number(number, 3, towards=Towards.UP) == up
    assert show_number(number, 3, towards=Towards.DOWN) == down


@given(number=st.floats(1e-9, 1e9), digits=st.integers(1, 9))
def test_what_is_shown_can_be_read_back(number: float, digits: int) -> None:
    text = show_number(number, digits, "bar(g)")

    assert read_quantity(text, Where("")).si == pytest.approx(
        number * 1e5, rel=10.0 ** (1 - digits)
    )


@given(number=st.floats(1e-6, 1e9), digits=st.integers(2, 9))
def test_the_safe_sides_hold_the_number_between_them(number: float, digits: int) -> None:
    low = Fraction(show_number(number, digits, towards=Towards.DOWN))
    high = Fraction(show_number(number, digits, towards=Towards.UP))

    assert low * (1 - Fraction(1, 10**11)) <= Fraction(number) <= high * (1 + Fraction(1, 10**11))


def test_a_value_and_its_limit_are_told_apart() -> None:
    assert show_against(3.0004e5, 3e5, read_unit("bar(g)")) == ("3.0004 bar(g)", "3.0000 bar(g)")
    assert show_against(3e5, 3e5, read_unit("bar(g)")) == ("3.00 bar(g)", "3.00 bar(g)")
    assert show_against(9.0, 8.5, read_unit(""), 3, (True, False)) == ("9", "8.50")


def test_a_given_value_is_shown_as_typed_and_a_worked_one_rounded() -> None:
    found = desk("p = 30 bar(g)\nq = p\nr = p / 7\ns = 25.40 mm\nt = 1/3\nu = 30 bar(g) in psi(g)")

    shown = [found.text(name) for name in "pqrstu"]
    assert shown == ["30 bar(g)", "30 bar(g)", "4.29 bar(g)", "25.40 mm", "0.333", "435 psi(g)"]
    assert [found.value(name).given for name in "pqrstu"] == [True, False, False, True, True, True]


@pytest.mark.parametrize(
    ("expression", "text"),
    [
        ("2 * 250 L", "500 L"),
        ("250 L + 1 m3", "1250 L"),
        ("pi / 4 * (12 mm)^2", "113 mm2"),
        ("(2 m)^3", "8.00 m3"),
        ("3 m * 2 m", "6.00 m2"),
        ("2 kW * 3 h", "21.6 MJ"),
        ("12 V * 5 A", "60.0 W"),
        ("12 V / 5 A", "2.40 ohm"),
        ("10 L / 2 min", "5.00 L/min"),
        ("100 m3 / 2 h", "50.0 m3/h"),
        ("1025 kg/m3 * 9.81 m/s2 * 10 m", "1.01 bar(d)"),
        ("60 degC - 20 degC", "40.0 K(d)"),
        ("absolute(3 bar(g))", "4.01 bar(a)"),
        ("absolute(20 degC)", "293 K(a)"),
        ("60 rpm * 2", "120 rpm"),
        ("5 rev / 2 s", "150 rpm"),
        ("2 * 10 %", "20.0 %"),
        ("6 kg / 2 m3", "3.00 kg/m3"),
        ("1 / (2 K(d))", "0.500 1/K"),
        ("2 kg * 3 m2", "6.00 m2.kg"),
        ("2 kg^2 / (1 m * 1 s)", "2.00 kg2/(m.s)"),
        ("sqrt(2 m)", "1.41 m^(1/2)"),
        ("max(3 inch, 2 cm)", "3.00 inch"),
        ("interpolate(2, 1, 3 L, 3, 5 L)", "4.00 L"),
        ("3 L/min if 1 > 2 else 5 L/min", "5.00 L/min"),
        ("0 m + 0 mm", "0 m"),
        ("0.2 m * 1 m * 1 m", "200 L"),
        ("5 * 6", "30"),
        ("5 * 6.0", "30.0"),
        ("floor(7 / 2)", "3"),
        ("7 / 2", "3.50"),
    ],
)
def test_a_result_is_shown_in_the_unit_a_builder_would_use(expression: str, text: str) -> None:
    assert desk(f"r = {expression}").text("r") == text


def test_a_value_is_shown_in_another_unit_of_its_kind_or_not_at_all() -> None:
    found = desk("p = 30 bar(g)\nt = 25 degC\nn = 6\nV = 500 L\nx = 3 q")

    assert show_in(found.value("p"), "psi(g)") == "435 psi(g)"
    assert show_in(found.value("p"), "bar(g)") == "30 bar(g)"
    assert show_in(found.value("p"), "bar(a)") is None
    assert show_in(found.value("p"), "L") is None
    assert show_in(found.value("p"), "furlong") is None
    assert show_in(found.value("t"), "degF") == "77.0 degF"
    assert show_in(found.value("t"), "K(a)") == "298 K(a)"
    assert show_in(found.value("V"), "gal_us") == "132 gal_us"
    assert show_in(found.value("x"), "L") == "not computed"


def test_a_usual_range_and_its_movers_are_rounded_outwards() -> None:
    value = desk("a = 10 m +/- 1 m\nb = 5 m +/- 1.111 m\ny = a + b\nz = 2 * a").value

    assert show_usual(value("y")) == "usually 13.5 to 16.5 m"
    assert show_mover(value("y"), value("y").movers[0]) == (
        "desk.b, 55 % of the usual range, alone 13.8 to 16.2 m"
    )
    assert show_usual(value("a")) == ""
    assert show_usual(value("z")) == ""


def test_a_range_is_rounded_outwards() -> None:
    value = desk("p = 3.3333 bar(g) +/- 0.5 bar\nn = 6 +/- 1\nm = 6.5 +/- 1").value

    assert show_range(value("p")) == "2.83 to 3.84 bar(g) at worst"
    assert show_range(value("n")) == "5 to 7 at worst"
    assert show_range(value("m")) == "5.50 to 7.50 at worst"
    assert show_range(replace(value("p"), low=None, high=None)) == "range unknown"
    assert show_range(replace(value("p"), si=None)) == ""


@pytest.mark.parametrize(
    ("line", "worked"),
    [
        ("r = a", "r = a = 2"),
        ("r = 3", "r = 3"),
        ("r = 3.0 +/- 0.5", "r = 3.0 +/- 0.5"),
        ("r = a * (b + 1)", "r = a * (b + 1) = 2 * (-3 + 1) = -4"),
        ("r = a - b", "r = a - b = 2 - (-3) = 5"),
        ("r = a - (b - a)", "r = a - (b - a) = 2 - (-3 - 2) = 7"),
        ("r = a / (b / a)", "r = a / (b / a) = 2 / (-3 / 2) = -1.33"),
        ("r = -a", "r = -a = -2"),
        ("r = -(a + b)", "r = -(a + b) = -(2 + (-3)) = 1"),
        ("r = b^2", "r = b^2 = (-3)^2 = 9.00"),
        ("r = d^2", "r = d^2 = (12 mm)^2 = 144 mm2"),
        ("r = 2^(a + 1)", "r = 2^(a + 1) = 2^(2 + 1) = 8.00"),
        ("r = a if a > b else b", "r = a if a > b else b = 2 if 2 > -3 else -3 = 2"),
        ("r = max(a, b)", "r = max(a, b) = max(2, -3) = 2"),
        ("r = gauge(q)", "r = gauge(q) = 5 bar(a) - 101325 Pa(a) = 3.99 bar(g)"),
        ("r = difference(p)", "r = difference(p) = difference(3 bar(g)) = 3.00 bar(d)"),
        (
            "r = 2 * absolute(p)",
            "r = 2 * absolute(p) = 2 * (3 bar(g) + 101325 Pa(a)) = 8.03 bar(a)",
        ),
        ("r = q in psi(a)", "r = q = 5 bar(a) = 72.5 psi(a)"),
        ("r = pi * a", "r = pi * a = pi * 2 = 6.28"),
    ],
)
def test_a_worked_line_is_symbols_numbers_result(line: str, worked: str) -> None:
    found = desk(f"a = 2\nb = -3\nd = 12 mm\np = 3 bar(g)\nq = 5 bar(a)\n{line}")

    assert found.line("r").worked == worked


LINES = [
    "r_a = p_max + 1 bar(d)", "r = absolute(p_max)", "r = gauge(absolute(p_max))",
    "r = difference(p_max) * A / rho", "r = sqrt(rho * rho)", "r = abs(x) + exp(x) - log(x)",
    "r = x / (x + 1)^2", "r = x if x < 2 else -x", "r = max(x, 2, 3)", "r = floor(x)",
    "r = free_air(1 m3, p_max, 20 degC)", "r = interpolate(x, 0, 1, 9, 2)", "r = sin(x)",
    "r = -(x + 1) * pi", "r = 1.5e-6 m2/s", "r = 20 degC in K(a)", "require x <= 3",
    "require x * 2 > rho / (1 kg/m3)", "r = site.T_room",
]  # fmt: skip


@pytest.mark.parametrize("line", LINES)
def test_mathml_is_well_formed_and_holds_no_raw_text(line: str) -> None:
    found = desk(
        f"p_max = 30 bar(g)\nA = 2 m2\nrho = 1025 kg/m3\nx = 1.5\n{line}",
        {"site.T_room": "20 degC"},
    )

    mathml = found.network.sheets["desk"].lines[-1].mathml

    assert found.faults == ()
    root = ElementTree.fromstring(mathml)  # noqa: S314 - our own output
    assert root.tag == "math"
    assert not re.search(r"(?<![a-z])on\w+=", mathml)


def test_names_show_their_index_and_greek_letters() -> None:
    mathml = desk("p_max_cold = 3\nrho_w = 4\nr = p_max_cold * rho_w").line("r").mathml

    assert "<msub><mi>p</mi><mtext>max cold</mtext></msub>" in mathml
    assert "<msub><mi>\u03c1</mi><mtext>w</mtext></msub>" in mathml


def test_units_are_printed_with_raised_powers_and_dots() -> None:
    units = [
        "m2",
        "m/s^2",
        "kJ/(kg.K)",
        "degC",
        "m3(n)/h",
        "s^-1",
        "gal_us",
        "mH2O(g)",
        "ohm",
        "deg",
    ]

    assert [unit_text(unit) for unit in units] == [
        "m\u00b2", "m/s\u00b2", "kJ/(kg\u00b7K)", "\u00b0C", "m\u00b3(n)/h", "s\u207b\u00b9",
        "gal_us", "mH2O(g)", "\u03a9", "\u00b0",
    ]  # fmt: skip
