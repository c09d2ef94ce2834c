"""Requirements: at nominal, at the worst corner, jointly, with their margin."""

import pytest

from garboard.calc.value import Verdict
from tests.calc.desk import desk


@pytest.mark.parametrize(
    ("line", "verdict", "margin", "percent"),
    [
        ("require a >= 8", Verdict.HOLDS, "1.00", 12.5),
        ("require a >= 9", Verdict.HOLDS, "0", 0.0),
        ("require a > 9", Verdict.NOMINAL, "0", 0.0),
        ("require a >= 9.5", Verdict.NOMINAL, "-0.500", -5.2631578),
        ("require a >= 10", Verdict.NOMINAL, "-1.00", -10.0),
        ("require a > 10", Verdict.FAILS, "-1.00", -10.0),
        ("require a >= 12", Verdict.FAILS, "-3.00", -25.0),
        ("require a <= 12", Verdict.HOLDS, "1.00", 8.333333),
        ("require a < 11", Verdict.NOMINAL, "0", 0.0),
        ("require 12 > a", Verdict.HOLDS, "1.00", 8.333333),
        ("require a > 0", Verdict.HOLDS, "9.00", None),
    ],
)
def test_a_requirement_is_judged_at_the_worst_corner(
    line: str, verdict: Verdict, margin: str, percent: float | None
) -> None:
    found = desk(f"a = 10.0 +/- 1\n{line}").requirement

    assert found.verdict is verdict
    assert found.margin == margin
    if percent is None:
        assert found.margin_percent is None
    else:
        assert found.margin_percent == pytest.approx(percent, rel=1e-4)


def test_both_sides_are_taken_at_the_same_corner() -> None:
    found = desk("a = 10 +/- 5\nneed = 0.9 * a\nhave = a\nrequire have >= need").requirement

    assert found.verdict is Verdict.HOLDS
    assert found.margin == "0.500"


def test_a_margin_is_a_difference_in_the_unit_of_the_left_side() -> None:
    gauge = desk("p = 30 bar(g) +/- 0.5 bar\nrequire p <= 33 bar(g)").requirement
    warm = desk("t = 100 degC +/- 10 K\nrequire t < 121 degC").requirement

    assert (gauge.left, gauge.right, gauge.margin) == ("30.0 bar(g)", "33.0 bar(g)", "2.50 bar(d)")
    assert gauge.margin_percent == pytest.approx(100 * 2.5 / 33)
    assert (warm.margin, warm.margin_percent) == ("11.0 K(d)", None)


def test_a_number_that_looks_like_its_limit_gets_more_digits() -> None:
    found = desk("p = 33.0004 bar(g)\nrequire p <= 33 bar(g)").requirement

    assert (found.left, found.right) == ("33.0004 bar(g)", "33.0000 bar(g)")
    assert found.verdict is Verdict.FAILS


def test_the_last_figure_of_a_float_decides_nothing() -> None:
    at_limit = desk("p = 1.1 * 30 bar(g)\nrequire p <= 33 bar(g)")

    assert at_limit.si("p") > 33e5
    assert at_limit.requirement.verdict is Verdict.HOLDS
    assert at_limit.requirement.margin == "0 bar(d)"
    assert desk("p = 1.1 * 30 bar(g)\nrequire p > 33 bar(g)").requirement.verdict is Verdict.FAILS


def test_a_count_is_judged_like_any_other_value() -> None:
    found = desk("v = 2.2 +/- 10 %\nn = floor(20 / v)\nrequire n >= 9  # nine starts [X 3]")

    assert found.requirement.verdict is Verdict.NOMINAL
    assert found.requirement.margin == "-1"
    assert found.requirement.why == "nine starts"
    assert found.requirement.sources[0].clause == "3"
    line = found.network.sheets["desk"].lines[-1]
    assert line.worked == "n >= 9: 9 >= 9: holds only at nominal, margin -1"


def test_a_requirement_compares_values_of_one_kind() -> None:
    assert desk("p = 3 bar(g)\nrequire p < 4 bar(a)").fault.family == "DATUM"
    assert desk("p = 3 bar(g)\nrequire p < 4").fault.family == "DIMENSION"


def test_a_requirement_of_expressions_shows_both_ways() -> None:
    found = desk("a = 2\nb = 3\nrequire a * 2 <= b + 2")

    line = found.network.sheets["desk"].lines[-1]
    assert found.requirement.text == "a * 2 <= b + 2"
    assert line.worked == "a * 2 <= b + 2: 4 <= 5: holds at the worst corner, margin 1"
