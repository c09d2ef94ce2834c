"""Quantities as they stand in components and conditions: number, unit, tolerance."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.calc.fault import CalcFault
from garboard.calc.quantity import Quantity, read_quantity
from garboard.errors import Diagnostic, Where

PLACE = Where("systems/starting-air/system.yml", 3, 40)


def read(text: str) -> Quantity:
    return read_quantity(text, PLACE)


def refusal(text: str) -> Diagnostic:
    with pytest.raises(CalcFault) as found:
        read_quantity(text, PLACE, "SA-RV-001")
    return found.value.diagnostic


def test_a_quantity_keeps_what_was_written() -> None:
    found = read("33 bar(g) +/- 0.5 bar")

    assert (found.si, found.low, found.high) == (3_300_000.0, 3_250_000.0, 3_350_000.0)
    assert (found.shown, found.tolerance) == ("33 bar(g)", "0.5 bar")


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("30 bar(g) +/- 0.5 bar", 2_950_000, 3_050_000),
        ("30 bar(g) +/- 0.5 bar(d)", 2_950_000, 3_050_000),
        ("30 bar(g) ± 50 kPa", 2_950_000, 3_050_000),
        ("30 bar(g) +/- 10 %", 2_700_000, 3_300_000),
        ("-0.2 bar(g) +/- 10 %", -22_000, -18_000),
        ("25 degC +/- 10 K", 288.15, 308.15),
        ("25 degC +/- 10 degC", 288.15, 308.15),
        ("25 degC +/- 18 degF", 288.15, 308.15),
        ("300 K(a) +/- 1 %", 297, 303),
        ("0.9 m3(n) +/- 10 %", 0.81, 0.99),
        ("6 +/- 1", 5, 7),
        ("0.85 +/- 10 %", 0.765, 0.935),
        ("12 mm", 0.012, 0.012),
        ("3 %", 0.03, 0.03),
    ],
)
def test_a_tolerance_is_a_difference_in_any_unit_of_its_kind_or_a_share(
    text: str, low: float, high: float
) -> None:
    found = read(text)

    assert found.low == pytest.approx(low, rel=1e-12)
    assert found.high == pytest.approx(high, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "column", "family", "cure"),
    [
        ("30 bar", 43, "DATUM", "bar(g)"),
        ("30bar(g)", 40, "SYNTAX", "30 bar(g), one space"),
        ("30bar", 40, "SYNTAX", "30 bar(g), with a space"),
        ("3%", 40, "SYNTAX", "3 %"),
        ("2x", 40, "SYNTAX", "2 * x"),
        ("30  bar(g)", 40, "SYNTAX", "30 bar(g)"),
        ("3,5 m", 40, "SYNTAX", "3.5"),
        ("1,000 m", 40, "SYNTAX", "1000"),
        ("1,234,567 m", 40, "SYNTAX", "1234567"),
        ("1 000 m", 40, "SYNTAX", "1000"),
        ("1'000 m", 40, "SYNTAX", "1000"),
        ("1_000 m", 40, "SYNTAX", "1000"),
        ("10 bar g", 40, "SYNTAX", "10 bar(g)"),
        ("10 bar (a)", 40, "SYNTAX", "10 bar(a)"),
        ("3 x", 42, "UNIT", "3 * x"),
        ("5.", 40, "SYNTAX", "5.0"),
        (".5 m", 40, "SYNTAX", "0.5"),
        ("1e13 m", 40, "LIMIT", "-12 to 12"),
        ("1234567890123456 m", 40, "LIMIT", "at most 15"),
        ("-1 bar(a)", 40, "RANGE", "sign"),
        ("-300 degC", 40, "RANGE", "sign"),
        ("30 bar(g) +/- 1 bar(g)", 56, "DATUM", "+/- 1 bar"),
        ("30 bar(g) +/- 1 m", 54, "DIMENSION", "same kind"),
        ("30 bar(g) +/- 1", 54, "DIMENSION", "bar(d)"),
        ("25 degC +/- 10 %", 54 - 2, "DATUM", "K or degC"),
        ("3 % +/- 0.5 %", 48, "UNIT", "0.03"),
        ("30 bar(g) +/-", 53, "SYNTAX", "+/- 10 %"),
        ("30 bar(g) +/- -1 bar", 54, "SYNTAX", "+/- 10 %"),
        ("30 bar(g) to 40 bar(g)", 40, "SYNTAX", "two values"),
        ("30 bar(g) + 1 bar(d)", 50, "SYNTAX", "alone"),
        ("", 40, "SYNTAX", "number, one space, unit"),
        ("abc", 40, "SYNTAX", "number, one space, unit"),
        ("5 \u0445", 42, "SYNTAX", "retype"),
        ("5\u00a0m", 41, "SYNTAX", "retype the space"),
        ("5 m\u202e", 43, "SYNTAX", "delete it"),
        ("9" * 500, 40, "LIMIT", "shorten"),
    ],
)
def test_what_is_no_quantity_is_refused_at_its_place(
    text: str, column: int, family: str, cure: str
) -> None:
    found = refusal(text)

    assert (found.where.line, found.where.column) == (3, column)
    assert found.family == family
    assert cure in found.help
    assert found.about == "SA-RV-001"


def test_a_hidden_sign_is_named_by_its_code_point() -> None:
    assert refusal("5 m\u200b").text == "a hidden sign U+200B stands here"
    assert refusal("\u0430 m").text == "`\u0430` U+0430 is no sign of this language"


def test_a_number_is_rounded_once_on_its_way_to_si() -> None:
    assert read("0.1 inch").si == float(Fraction("0.1") * Fraction("0.0254"))
    assert read("0.3 L/min").si == float(Fraction(3, 10) / 60_000)


@given(
    number=st.decimals(-99999, 99999, places=3),
    unit=st.sampled_from(["bar(g)", "mm", "L", "kW", "m3(n)", "%", "K(d)"]),
)
def test_a_typed_quantity_is_read_back_as_typed(number: object, unit: str) -> None:
    text = f"{number} {unit}"

    found = read(text)

    assert found.shown == text
    assert found.si == found.unit.exact(Fraction(str(number)))
    assert found.low == found.si == found.high
