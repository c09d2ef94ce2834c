"""Ranges: every corner against brute force, weather, many inputs, corners without an answer."""

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from garboard.calc.show import show_range
from garboard.calc.value import Verdict
from tests.calc.desk import Desk, desk


def brute(found: Desk, name: str, inputs: list[str]) -> tuple[float, float]:
    """The range by working every corner out on its own, one after the other."""
    ends = []
    for address in inputs:
        value = found.network.values[address]
        assert value.low is not None
        assert value.high is not None
        ends.append((value.low, value.high))
    results = [found.si(name)]
    for corner in itertools.product(*ends):
        changed = dict(zip(inputs, corner, strict=True))
        results.append(found.network.recompute(changed, [f"desk.{name}"])[0])
    return min(results), max(results)


@pytest.mark.parametrize(
    "expression",
    [
        "a + b * c",
        "a * b - b * c",
        "a / b - c / b",
        "(a - b) / (c + b)",
        "a^2 - b^1.5 * c",
        "sqrt(a * b) / c",
        "floor(a * 3) + ceil(b * 2) - round(c * 5)",
        "min(a, b, c) + max(a * 2, b)",
        "a if b > 2 else c",
        "a / (b - 1.5) if a > 0.5 else c",
        "abs(a - b) + exp(c / 10) * log(a + 1) + log10(b)",
        "interpolate(a, 0, 1, 2, 5, 9, 7) * b",
        "sin(a / 2) + cos(b) * tan(c / 10)",
        "exp(a) - exp(a)",
    ],
)
def test_a_range_is_that_of_all_corners(expression: str) -> None:
    found = desk(f"a = 1.5 +/- 0.4\nb = 2.5 +/- 0.6\nc = 3.5 +/- 20 %\nr = {expression}")

    low, high = found.ends("r")
    assert (low, high) == pytest.approx(
        brute(found, "r", ["desk.a", "desk.b", "desk.c"]), rel=1e-13
    )


def test_a_range_follows_inputs_through_other_values() -> None:
    found = desk("a = 2 +/- 1\nb = a\nc = b - a\nd = 2 * b - a")

    assert found.ends("c") == (0.0, 0.0)
    assert found.ends("d") == (1.0, 3.0)


def test_weather_moves_what_stands_between_gauge_and_absolute() -> None:
    site = {"site.atmosphere": "1000 mbar(a) +/- 50 mbar"}
    found = desk("p = 1 bar(g)\nq = absolute(p)\nr = absolute(p) - absolute(0 bar(g))", site)

    assert found.ends("q") == pytest.approx((195_000, 205_000))
    assert found.ends("r") == pytest.approx((100_000, 100_000))
    assert show_range(found.value("q")) == "1.95 to 2.05 bar(a) at worst"


def test_a_value_without_uncertain_inputs_has_no_range() -> None:
    found = desk("a = 2\nb = a * 3")

    assert found.ends("b") == (6.0, 6.0)
    assert show_range(found.value("b")) == ""


def test_the_nominal_value_lies_inside_its_range() -> None:
    assert desk("a = 0 +/- 1\nb = 3 - a^2").ends("b") == (2.0, 3.0)


def test_a_corner_without_an_answer_leaves_the_range_unknown() -> None:
    found = desk("a = 1 +/- 1\nb = 1 / a\nc = 2 * b\nrequire b > 0.1")

    assert found.value("b").low is None
    assert found.value("b").si == 1.0
    assert show_range(found.value("c")) == "range unknown"
    assert found.requirement.verdict is Verdict.NOMINAL
    assert found.requirement.margin == "range unknown"


@pytest.mark.parametrize(
    "expression",
    [
        "1 / (1 / a)",
        "1 / b",
        "1 / exp(1000 * a)",
        "(a^-1)^-1",
        "exp(log(a))",
        "1 if 1 / a > 3 else 2",
        "1 if b > 3 else 2",
        "interpolate(0.5, 0, 1, 1, 2, 3, 1 / a)",
        "min(1 / a, 5)",
        "0 * sqrt(a - 0.5)",
    ],
)
def test_a_corner_that_was_refused_is_not_healed_further_on(expression: str) -> None:
    found = desk(f"a = 1 +/- 1\nb = 1 / a\nc = {expression}\nrequire c >= 0")

    assert found.faults == () or found.fault.family == "RANGE"
    assert found.value("c").low is None
    assert found.requirement.verdict in (Verdict.NOMINAL, Verdict.UNKNOWN)


def test_a_branch_that_no_corner_takes_does_not_spoil_the_range() -> None:
    found = desk("a = 2 +/- 1\nz = 0\nb = a if a > 0 else a / z\nc = 1 / z if a > 9 else a")

    assert found.ends("b") == (1.0, 3.0)
    assert found.ends("c") == (1.0, 3.0)


@pytest.mark.parametrize("count", [12, 13, 25])
def test_with_many_inputs_the_corners_are_found_all_the_same(count: int) -> None:
    inputs = "\n".join(f"x{n} = {n + 1} +/- 10 %" for n in range(count))
    signs = [1 if n % 3 else -1 for n in range(count)]
    total = " ".join(f"{'+' if sign > 0 else '-'} x{n}" for n, sign in enumerate(signs))

    found = desk(f"{inputs}\nr = 1000 {total}\nq = 1000 / r")

    spread = sum((n + 1) * 0.1 for n in range(count))
    nominal = found.si("r")
    assert found.ends("r") == pytest.approx((nominal - spread, nominal + spread), rel=1e-12)
    low, high = found.ends("q")
    assert low == pytest.approx(1000 / (nominal + spread), rel=1e-12)
    assert high == pytest.approx(1000 / (nominal - spread), rel=1e-12)


def test_with_many_inputs_a_requirement_is_judged_at_its_own_worst_corner() -> None:
    inputs = "\n".join(f"x{n} = 10 +/- 1" for n in range(14))
    total = " + ".join(f"x{n}" for n in range(14))

    found = desk(f"{inputs}\nr = {total}\nrequire r > 126.5 + 0 * x0")

    assert found.requirement.verdict is Verdict.NOMINAL
    assert found.requirement.margin == "-0.500"


@settings(max_examples=60)
@given(
    values=st.lists(st.floats(0.5, 9).map(lambda x: round(x, 3)), min_size=4, max_size=4),
    shares=st.lists(st.integers(0, 30), min_size=4, max_size=4),
    signs=st.lists(st.sampled_from("+-*/"), min_size=3, max_size=3),
)
def test_any_range_equals_brute_force(
    values: list[float], shares: list[int], signs: list[str]
) -> None:
    text = "\n".join(f"x{n} = {values[n]} +/- {shares[n]} %" for n in range(4))
    text += f"\nr = x0 {signs[0]} x1 {signs[1]} (x2 {signs[2]} x3) {signs[0]} x1"

    found = desk(text)

    if found.faults:
        assert found.fault.family == "RANGE"
    elif found.value("r").low is not None:
        low, high = found.ends("r")
        own = brute(found, "r", [f"desk.x{n}" for n in range(4)])
        assert low == pytest.approx(own[0], rel=1e-12, abs=1e-12)
        assert high == pytest.approx(own[1], rel=1e-12, abs=1e-12)
        assert math.isfinite(low + high)


def test_the_last_figure_of_another_library_makes_no_range() -> None:
    """The arrays have logarithms of their own, which differ in the last figure for some numbers."""
    numbers = range(3, 110)
    lines = "\n".join(f"y{n} = log10({n}) + 0 * a" for n in numbers)

    found = desk(f"a = 1 +/- 0.5\n{lines}")

    for n in numbers:
        assert found.ends(f"y{n}") == (found.si(f"y{n}"), found.si(f"y{n}"))
