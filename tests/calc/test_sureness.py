"""What must hold of every range, whatever is worked out."""

import math

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from garboard.calc.value import Value
from tests.calc.desk import Desk, desk

ATOM = st.sampled_from(["a", "b", "c", "d", "2", "0.5"])


def formulas(depth: int) -> st.SearchStrategy[str]:
    """Formulas of all functions, smooth or not."""
    if depth == 0:
        return ATOM
    inner = formulas(depth - 1)
    both = st.tuples(inner, inner)
    return st.one_of(
        ATOM,
        both.map(lambda two: f"({two[0]} + {two[1]})"),
        both.map(lambda two: f"({two[0]} - ({two[1]}))"),
        both.map(lambda two: f"({two[0]}) * ({two[1]})"),
        both.map(lambda two: f"({two[0]}) / ({two[1]})"),
        both.map(lambda two: f"min({two[0]}, {two[1]})"),
        inner.map(lambda one: f"abs({one})^1.5"),
        inner.map(lambda one: f"sin({one})"),
        inner.map(lambda one: f"exp(-abs({one}))"),
        inner.map(lambda one: f"floor({one})"),
        inner.map(lambda one: f"round(3 * ({one}))"),
        inner.map(lambda one: f"interpolate(min(max({one}, 0), 9), 0, 1, 3, 6, 9, 2)"),
        st.tuples(both, inner).map(
            lambda three: f"(({three[0][0]}) if ({three[1]}) < 2 else ({three[0][1]}))"
        ),
    )


def work(expressions: list[str], tolerances: list[float]) -> Desk:
    givens = "\n".join(
        f"{name} = {nominal} +/- {tolerance:.3f}"
        for (name, nominal), tolerance in zip(
            {"a": 1.5, "b": 2.5, "c": 3.5, "d": 0.2}.items(), tolerances, strict=True
        )
    )
    found = desk(f"{givens}\np = {expressions[0]}\ny = {expressions[1].replace('d', 'p')}")
    assume(not found.faults)
    return found


def check(value: Value) -> None:
    """Nominal within worst, usual within worst and around nominal, shares one whole."""
    assert value.si is not None
    if value.low is None:
        assert value.usual is None
        return
    assert value.high is not None
    assert value.low <= value.si <= value.high
    if value.usual:
        low, high = value.usual
        assert value.low <= low <= value.si <= high <= value.high
    if value.movers:
        shares = [mover.share for mover in value.movers]
        assert math.isclose(math.fsum(shares), 1.0, rel_tol=1e-12)
        assert shares == sorted(shares, reverse=True)
        assert all(mover.low <= mover.high for mover in value.movers)


TOLERANCES = st.lists(st.floats(0.001, 1.2), min_size=4, max_size=4)


@settings(max_examples=300, deadline=None)
@given(expressions=st.lists(formulas(2), min_size=2, max_size=2), tolerances=TOLERANCES)
def test_nominal_usual_and_worst_lie_within_each_other(
    expressions: list[str], tolerances: list[float]
) -> None:
    found = work(expressions, tolerances)

    check(found.value("p"))
    check(found.value("y"))


@settings(max_examples=200, deadline=None)
@given(expressions=st.lists(formulas(2), min_size=2, max_size=2), tolerances=TOLERANCES)
def test_a_wider_tolerance_never_narrows_the_range_of_a_monotone_value(
    expressions: list[str], tolerances: list[float]
) -> None:
    narrow = work(expressions, [0.5 * size for size in tolerances]).value("y")
    wide = work(expressions, tolerances).value("y")
    assume(not wide.sampled and not narrow.sampled)
    if narrow.low is None or wide.low is None:
        assert wide.low is None
        return

    assert narrow.high is not None
    assert wide.high is not None
    slack = 1e-9 * max(abs(wide.low), abs(wide.high))
    assert wide.low <= narrow.low + slack
    assert wide.high >= narrow.high - slack
