"""How far a value may move under a signature."""

import pytest

from garboard.calc.value import Value
from garboard.review.band import has_moved, read_band
from garboard.review.covers import as_seen
from tests.calc.desk import desk


def given(text: str) -> Value:
    """A value that somebody wrote down."""
    value = desk(f"x = {text}").value("x")
    assert value.si is not None
    return value


def worked(text: str, options: str = "") -> Value:
    """A value that is worked out."""
    return desk(f"none = 0\nx = {text} + none * {text}", options=options).value("x")


def test_a_band_is_a_share() -> None:
    assert read_band("1 %") == 0.01
    assert read_band("0.5%") == 0.005


@pytest.mark.parametrize("text", [None, "", "1", "one %", "-1 %", "1 % more"])
def test_what_is_no_band_allows_nothing(text: str | None) -> None:
    assert read_band(text) == 0


SAME = (
    "30 bar(g)", "30.0 bar(g)", "0 bar(g)", "-0.6 bar(g)", "1013 mbar(a)", "-5 degC", "0 degC", "4 K(d)",
    "12", "0", "-3", "4.5 %", "1.2e-5 m3", "500 L", "12300 L", "0.5 bar(d)", "25 degC +/- 10 K",
    "30 bar(g) +/- 10 %", "2 m3(n)",
)  # fmt: skip


@pytest.mark.parametrize("text", SAME)
def test_what_has_just_been_signed_has_not_moved(text: str) -> None:
    value = given(text)

    assert not has_moved(as_seen(value), value)


@pytest.mark.parametrize(
    "text", ["12345.6 L", "99.96 L", "0.0123456 L", "1234567.8 L", "9.96 bar(d)"]
)
@pytest.mark.parametrize("options", ["digits 2", "digits 3", "digits 5"])
def test_rounding_for_the_eye_is_no_move(text: str, options: str) -> None:
    value = worked(text, f"; {options}")

    assert not has_moved(as_seen(value), value)


@pytest.mark.parametrize(
    ("signed", "inside", "outside"),
    [
        ("18 bar(g)", "18.5 bar(g)", "18.6 bar(g)"),
        ("18 bar(g)", "17.5 bar(g)", "17.4 bar(g)"),
        ("18.0 bar(g)", "18.05 bar(g)", "18.06 bar(g)"),
        ("-0.6 bar(g)", "-0.64 bar(g)", "-0.66 bar(g)"),
        ("0 bar(g)", "0.4 bar(g)", "-0.6 bar(g)"),
        ("0.00 bar(g)", "0.005 bar(g)", "0.006 bar(g)"),
        ("20 degC", "20.4 degC", "20.6 degC"),
        ("-5 degC", "-5.4 degC", "-4.4 degC"),
        ("0 degC", "-0.4 degC", "0.6 degC"),
        ("12", "12", "13"),
        ("1.2e-5 m3", "1.24e-5 m3", "1.26e-5 m3"),
        ("500 L", "0.5004 m3", "0.501 m3"),
        ("12300 L", "12300.4 L", "12301 L"),
    ],
)
def test_half_of_the_last_figure_is_no_move(signed: str, inside: str, outside: str) -> None:
    assert not has_moved(signed, given(inside))
    assert has_moved(signed, given(outside))


def test_noughts_that_rounding_made_are_no_figures() -> None:
    assert not has_moved("12300 L", worked("12349 L"))
    assert has_moved("12300 L", worked("12351 L"))
    assert has_moved("12346 L", worked("12349 L"))
    assert has_moved("12300 L", worked("12349 L", "; digits 5"))


def test_a_count_moves_by_one() -> None:
    count = desk("V = 1000 L\neach = 10 L\nx = floor(V / each)").value("x")

    assert count.text == "100"
    assert not has_moved("100", count)
    assert has_moved("101", count)
    assert has_moved("99", count)


@pytest.mark.parametrize(
    ("signed", "inside", "outside"),
    [
        ("30.00 bar(g)", "30.29 bar(g)", "30.32 bar(g)"),
        ("30.00 bar(g)", "29.71 bar(g)", "29.68 bar(g)"),
        ("-30.00 kPa(g)", "-30.29 kPa(g)", "-30.32 kPa(g)"),
        ("500.0 L", "505.0 L", "505.1 L"),
    ],
)
def test_the_band_of_the_signer_widens_it(signed: str, inside: str, outside: str) -> None:
    assert has_moved(signed, given(inside))
    assert not has_moved(signed, given(inside), 0.01)
    assert has_moved(signed, given(outside), 0.01)


def test_a_share_of_a_thermometer_reading_has_no_meaning() -> None:
    assert has_moved("20 degC", given("21 degC"), 0.01)
    assert not has_moved("20.0 K(d)", given("20.1 K(d)"), 0.01)


def test_ten_small_steps_are_weighed_together() -> None:
    steps = [f"{18 + number / 10:.1f} bar(g)" for number in range(1, 11)]

    each_from_the_last = [
        has_moved(f"{18 + number / 10:.1f} bar(g)", given(step), 0.01)
        for number, step in enumerate(steps)
    ]
    each_from_what_was_signed = [has_moved("18.0 bar(g)", given(step), 0.01) for step in steps]

    assert not any(each_from_the_last)
    assert each_from_what_was_signed == [False] + [True] * 9


@pytest.mark.parametrize(
    ("signed", "now"),
    [
        ("30 bar(g)", "30 bar(a)"),
        ("30 bar(g)", "30 bar(d)"),
        ("20 K(d)", "20 degC"),
        ("20 degC", "20 K(d)"),
        ("500 L", "500 L/min"),
        ("2 m3", "2 m3(n)"),
        ("12", "12 L"),
        ("12 L", "12"),
        ("3 bar(d)", "0.3 MPa(g)"),
    ],
)
def test_another_kind_of_quantity_is_a_move_however_wide_the_band(signed: str, now: str) -> None:
    assert has_moved(signed, given(now), 10.0)


def test_another_unit_of_the_same_kind_is_none() -> None:
    assert not has_moved("30 bar(g)", given("3000 kPa(g)"))
    assert has_moved("30 bar(g)", given("30 kPa(g)"))


def test_a_value_that_is_gone_has_moved() -> None:
    assert has_moved("30 bar(g)", None, 10.0)


def test_a_value_that_can_no_longer_be_worked_out_has_moved() -> None:
    broken = desk("a = 0\nx = 1 / a").value("x")

    assert broken.text == "not computed"
    assert has_moved("9", broken, 10.0)
    assert not has_moved("not computed", broken)
    assert has_moved("not computed", given("9"), 10.0)
    assert has_moved("", given("9"), 10.0)
    assert has_moved("about nine", given("9"), 10.0)


def test_a_written_value_that_became_less_sure_has_moved() -> None:
    assert as_seen(given("25 degC +/- 10 K")) == "25 degC +/- 10 K"
    assert not has_moved("25 degC +/- 10 K", given("25 degC +/- 10 K"))
    assert not has_moved("30 bar(g) +/- 0.5 bar", given("30 bar(g) +/- 500 mbar"))
    assert not has_moved("30.0 bar(g) +/- 10 %", given("30.2 bar(g) +/- 10 %"), 0.01)
    assert has_moved("25 degC +/- 10 K", given("25 degC +/- 15 K"))
    assert has_moved("25 degC +/- 10 K", given("25 degC"))
    assert has_moved("25 degC", given("25 degC +/- 10 K"))
