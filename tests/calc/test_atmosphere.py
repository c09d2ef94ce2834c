"""The weather changes readings and nothing else.

The same state is restated under another atmosphere: every gauge reading goes down by what the
atmosphere went up. Absolutes and differences must not move, gauge results must move by the shift.
Left out on purpose are the casts by which an author says otherwise: `difference()` and `1.5 *` of a
reading take the reading itself as a number.
"""

from dataclasses import dataclass

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from garboard.calc.kinds import Kind
from tests.calc.desk import desk

SHIFT = 4_000.0


@dataclass(frozen=True)
class State:
    """One state of a plant under one atmosphere."""

    atmosphere: float

    def text(self, expression: str) -> str:
        lowered = (self.atmosphere - 101_325.0) / 1e5
        return f"""
g = {30 - lowered:.5f} bar(g)
h = {12 - lowered:.5f} bar(g)
a = 8 bar(a)
d = 0.5 bar(d)
V = 500 L
W = 2 m3
t = 25 degC
rho = 1025 kg/m3 * 9.81 m/s2
r = {expression}
"""

    @property
    def site(self) -> dict[str, str]:
        return {"site.atmosphere": f"{self.atmosphere:.0f} Pa(a)"}


GAUGE = st.sampled_from(["g", "h"])
PLAIN = st.sampled_from(["d", "g - h", "a - absolute(h)", "rho * 3 m", "absolute(g) - a"])
ABSOLUTE = st.sampled_from(["a", "absolute(g)", "absolute(h)"])
NUMBER = st.sampled_from(["2", "0.5", "(a / absolute(g))", "(g - h) / (4 bar(d))", "V / W"])


def join(*parts: str) -> str:
    return " ".join(parts)


def pressures(depth: int) -> st.SearchStrategy[str]:
    """Expressions that a page could hold; which of them are accepted is for the kinds to say."""
    leaf = st.one_of(GAUGE, PLAIN, ABSOLUTE)
    if depth == 0:
        return leaf
    inner = pressures(depth - 1)
    both = st.tuples(inner, inner)
    return st.one_of(
        leaf,
        both.map(lambda two: f"({two[0]} + {two[1]})"),
        both.map(lambda two: f"({two[0]}) - ({two[1]})"),
        both.map(lambda two: f"max({two[0]}, {two[1]})"),
        both.map(lambda two: f"min({two[0]}, {two[1]})"),
        inner.map(lambda one: f"absolute({one})"),
        st.tuples(ABSOLUTE, NUMBER).map(" * ".join),
        st.tuples(ABSOLUTE, ABSOLUTE).map(lambda two: f"sqrt({two[0]} * {two[1]})"),
        st.tuples(ABSOLUTE, ABSOLUTE).map(lambda two: f"{two[0]} * V / ({two[1]} * W) * {two[1]}"),
        st.tuples(both, both)
        .map(lambda four: f"{four[0][0]} if {four[1][0]} < {four[1][1]} else {four[0][1]}")
        .map(lambda text: f"({text})"),
        ABSOLUTE.map(lambda one: f"gauge({one})"),
    )


@settings(max_examples=400)
@given(expression=pressures(2))
def test_restating_a_state_under_another_atmosphere_moves_readings_alone(expression: str) -> None:
    before, after = State(101_325.0), State(101_325.0 + SHIFT)
    calm = desk(before.text(expression), before.site)
    assume(not calm.faults)

    stormy = desk(after.text(expression), after.site)

    moved = stormy.si("r") - calm.si("r")
    reading = calm.value("r").type.kind is Kind.READING
    assume("absolute(d" not in expression)  # an author who says that d is counted from nothing
    assert moved == pytest.approx(-SHIFT if reading else 0.0, abs=1e-3)


def test_the_amount_of_air_in_a_receiver_does_not_depend_on_the_weather() -> None:
    before, after = State(101_325.0), State(97_000.0)
    expression = "free_air(V, g, t) - free_air(V, h, t)"

    calm, stormy = (desk(state.text(expression), state.site).si("r") for state in (before, after))

    assert calm == pytest.approx(stormy, rel=1e-9)
