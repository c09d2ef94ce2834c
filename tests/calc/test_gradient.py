"""Gradients: against central differences on random formulas, against slopes derived by hand."""

import math
from collections.abc import Mapping

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from garboard.calc.corners import Corners, Kept, Sampled
from garboard.calc.fault import Span
from garboard.calc.gradient import Gradient
from tests.calc.desk import Desk, desk
from tests.calc.sample_methods import METHODS

NOWHERE = Span(0, 0)


def slopes(found: Desk, name: str) -> dict[str, float]:
    """The gradient of a value, by address without the block."""
    ledger = found.network.ledger
    formula = found.network.formula(f"desk.{name}")
    assert formula, found.faults
    gradient = Gradient(ledger, Sampled(ledger.slots), {})  # type: ignore[arg-type]
    by_slot = gradient.of(formula.reference(NOWHERE)).by_slot
    return {ledger.address_of(slot).removeprefix("desk."): float(s) for slot, s in by_slot.items()}


def difference(found: Desk, name: str, address: str, step: float) -> float:
    """A slope by a central difference, worked out by changing the input and nothing else."""
    here = found.network.values[address].si
    assert here is not None
    ends = [
        found.network.recompute({address: here + way * step}, [f"desk.{name}"])[0]
        for way in (1, -1)
    ]
    return (ends[0] - ends[1]) / (2 * step)


INPUTS = "a = 1.5 +/- 0.4\nb = 2.5 +/- 0.6\nc = 3.5 +/- 20 %\n"


@pytest.mark.parametrize(
    ("expression", "by_hand"),
    [
        ("3 * a - b / 2", {"a": 3.0, "b": -0.5}),
        ("a * b * c", {"a": 2.5 * 3.5, "b": 1.5 * 3.5, "c": 1.5 * 2.5}),
        ("a / b", {"a": 1 / 2.5, "b": -1.5 / 2.5**2}),
        ("-(a - b)", {"a": -1.0, "b": 1.0}),
        ("a^2", {"a": 3.0}),
        ("a^3", {"a": 3 * 1.5**2}),
        ("a^b", {"a": 2.5 * 1.5**1.5, "b": 1.5**2.5 * math.log(1.5)}),
        ("b^-1.5", {"b": -1.5 * 2.5**-2.5}),
        ("sqrt(a * b)", {"a": 2.5 / (2 * math.sqrt(3.75)), "b": 1.5 / (2 * math.sqrt(3.75))}),
        ("a * (4 - a)", {"a": 1.0}),
        ("abs(a - b)", {"a": -1.0, "b": 1.0}),
        ("min(a, b, c)", {"a": 1.0, "b": 0.0, "c": 0.0}),
        ("max(a, b, c)", {"a": 0.0, "b": 0.0, "c": 1.0}),
        ("exp(a) + log(b) + log10(c)", {"a": math.exp(1.5), "b": 0.4, "c": 1 / (3.5 * math.log(10))}),
        ("sin(a) + cos(b) + tan(c)", {"a": math.cos(1.5), "b": -math.sin(2.5), "c": 1 / math.cos(3.5) ** 2}),
        ("a if b > 2 else c", {"a": 1.0, "c": 0.0}),
        ("a if b > 3 else c", {"a": 0.0, "c": 1.0}),
        ("interpolate(a, 0, 1, 1, 5, 2, 7, 3, 0)", {"a": 2.0}),
        ("interpolate(1.25, 1, a, 2, b)", {"a": 0.75, "b": 0.25}),
        ("interpolate(2, a, 10, b, 20)", {"a": -10 * 0.5, "b": -10 * 0.5}),
        ("floor(a * 3) + ceil(b) - round(c)", {"a": 3.0, "b": 1.0, "c": -1.0}),
    ],
)  # fmt: skip
def test_a_gradient_is_the_one_derived_by_hand(
    expression: str, by_hand: Mapping[str, float]
) -> None:
    found = desk(f"{INPUTS}r = {expression}")

    assert slopes(found, "r") == pytest.approx(by_hand, rel=1e-13)


def test_a_gradient_goes_through_other_lines_and_adds_up_all_ways() -> None:
    found = desk("a = 2 +/- 1\nb = 3 * a\nc = a * b\nr = c + b")

    assert slopes(found, "r") == {"a": 6 * 2 + 3}


def test_a_gradient_knows_the_weather() -> None:
    site = {"site.atmosphere": "1000 mbar(a) +/- 50 mbar"}
    found = desk("p = 1 bar(g) +/- 0.1 bar\nq = absolute(p) * 2\nr = gauge(5 bar(a))", site)

    assert slopes(found, "q") == {"p": 2.0, "site.atmosphere": 2.0}
    assert slopes(found, "r") == {"site.atmosphere": -1.0}


def test_free_air_has_the_slopes_of_the_gas_law() -> None:
    found = desk(
        "V = 500 L +/- 1 %\np = 30 bar(a) +/- 1 bar\nT = 300 K(a) +/- 5 K\nr = free_air(V, p, T)"
    )

    r = found.si("r")
    assert slopes(found, "r") == pytest.approx({"V": r / 0.5, "p": r / 30e5, "T": -r / 300})


def test_a_slope_that_there_is_not_is_no_number() -> None:
    found = desk("a = 0 +/- 1\nr = sqrt(a * a)\nq = a^0.5 if a > 1 else a")

    assert math.isnan(slopes(found, "r")["a"])
    assert slopes(found, "q")["a"] == 1.0


def test_a_table_is_differenced_over_a_small_step() -> None:
    text = "f = 3 +/- 1\na = 10 A +/- 1 A\nb = 0 A +/- 2 A\nr = sum_of_loads(factor = f, loads = [a, b])"
    found = desk(text, methods=METHODS)

    assert slopes(found, "r") == pytest.approx({"f": 10.0, "a": 3.0, "b": 3.0}, rel=1e-9)


ATOM = st.sampled_from(["a", "b", "c", "2", "0.7"])


def formulas(depth: int) -> st.SearchStrategy[str]:
    """Formulas that are smooth, or have their kinks elsewhere."""
    if depth == 0:
        return ATOM
    inner = formulas(depth - 1)
    both = st.tuples(inner, inner)
    return st.one_of(
        ATOM,
        both.map(lambda two: f"({two[0]} + {two[1]})"),
        both.map(lambda two: f"({two[0]}) - ({two[1]})"),
        both.map(lambda two: f"({two[0]}) * ({two[1]})"),
        both.map(lambda two: f"({two[0]}) / ({two[1]})"),
        inner.map(lambda one: f"({one})^2"),
        inner.map(lambda one: f"abs({one})^1.5"),
        inner.map(lambda one: f"sin({one})"),
        inner.map(lambda one: f"sqrt(abs({one}) + 1)"),
        inner.map(lambda one: f"log(abs({one}) + 1)"),
        both.map(lambda two: f"max({two[0]}, {two[1]})"),
        st.tuples(both, both).map(
            lambda four: f"(({four[0][0]}) if ({four[1][0]}) < ({four[1][1]}) else ({four[0][1]}))"
        ),
    )


@settings(max_examples=200, deadline=None)
@given(first=formulas(2), second=formulas(2))
def test_a_gradient_agrees_with_central_differences(first: str, second: str) -> None:
    found = desk(f"{INPUTS}q = {first}\nr = {second.replace('b', 'q')}")
    assume(not found.faults)
    own = slopes(found, "r")
    assume(all(map(math.isfinite, own.values())))

    for name, slope in own.items():
        try:
            steps = [difference(found, "r", f"desk.{name}", step) for step in (1e-4, 5e-5)]
        except (ArithmeticError, ValueError):
            continue  # the step itself leaves what the formula can do
        size = max(1.0, *map(abs, steps), abs(found.si("r")))
        if abs(steps[0] - steps[1]) < 1e-6 * size:  # elsewhere a kink lies within the step
            assert slope == pytest.approx(steps[1], rel=1e-5, abs=1e-6 * size)


@settings(max_examples=60, deadline=None)
@given(first=formulas(2), second=formulas(2))
def test_a_gradient_at_many_points_is_that_at_each_of_them(first: str, second: str) -> None:
    found = desk(f"{INPUTS}q = {first}\nr = {second.replace('b', 'q')}")
    assume(not found.faults)
    ledger = found.network.ledger
    formula = found.network.formula("desk.r")
    assert formula
    points = {"desk.a": [1.1, 1.5, 1.9], "desk.b": [3.1, 2.5, 2.0], "desk.c": [3.0, 3.5, 4.1]}
    inputs = {found.network.slots[name]: np.array(at) for name, at in points.items()}
    many = Corners(Kept(ledger), 7, inputs)
    many.read((formula.reference(NOWHERE),))

    together = many.gradient.of(formula.reference(NOWHERE)).by_slot

    for row in range(3):
        one = Corners(Kept(ledger), 7, {slot: at[row : row + 1] for slot, at in inputs.items()})
        one.read((formula.reference(NOWHERE),))
        alone = one.gradient.of(formula.reference(NOWHERE)).by_slot
        for slot in inputs:
            both = [np.ravel(each.get(slot, 0.0)) for each in (together, alone)]
            assert both[0][min(row, len(both[0]) - 1)] == pytest.approx(
                both[1][0], rel=1e-12, abs=1e-12, nan_ok=True
            )
