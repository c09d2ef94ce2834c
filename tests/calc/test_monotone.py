"""Values that go up and down between their corners: found, sampled, and the same on every run."""

import itertools
import math
from collections.abc import Mapping

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from garboard.calc.corners import Kept, first_look, uniform
from garboard.calc.direction import Directions
from garboard.calc.fault import Span
from garboard.calc.method import Answer, Argument, Method, Parameter, Result
from garboard.calc.value import Verdict
from tests.calc import sample_methods
from tests.calc.desk import Desk, desk, network

NOWHERE = Span(0, 0)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("x = 2 +/- 1\ny = x * (4 - x)", 3.0, 4.0),
        ("x = 1.8 +/- 0.9\ny = x * (4 - x)", 0.9 * 3.1, 4.0),
        ("x = 1.5 +/- 1\ny = sin(x)", math.sin(0.5), 1.0),
        ("x = 3 +/- 1\ny = cos(x)", -1.0, math.cos(2.0)),
        ("x = 0.3 +/- 1\ny = abs(x)", 0.0, 1.3),
        ("x = 0.3 +/- 1\ny = x^2", 0.0, 1.69),
        ("x = 2 +/- 1\nq = 4 - x\nr = x * q\ny = 10 / r", 2.5, 10 / 3),
        ("x = 2.2 +/- 1\ny = max(x, 4 - x)", 2.0, 3.2),
        ("x = 2 +/- 1.9\na = 1 +/- 0.1\ny = interpolate(x, 0, 0, 1, 8, 2, 3, 4, 4) * a", 0.72, 8.8),
        ("x = 2.2 +/- 1.9\ny = 7 if x < 1 else 5 if x < 3 else 9", 5.0, 9.0),
    ],
)  # fmt: skip
def test_a_peak_between_the_corners_is_found(text: str, low: float, high: float) -> None:
    found = desk(text)

    assert found.value("y").sampled
    assert found.ends("y") == pytest.approx((low, high), rel=1e-3, abs=1e-3)
    assert found.ends("y")[0] >= low - 1e-9
    assert found.ends("y")[1] <= high + 1e-9


def test_inputs_that_go_one_way_stand_at_their_ends_while_a_peak_is_looked_for() -> None:
    others = "\n".join(f"a{n} = 1 +/- 10 %" for n in range(6))
    product = " * ".join(f"a{n}" for n in range(6))
    found = desk(f"x = 2 +/- 1\n{others}\ny = x * (4 - x) * {product}")

    assert found.ends("y") == pytest.approx((3 * 0.9**6, 4 * 1.1**6), rel=1e-5)


@pytest.mark.parametrize(
    "expression",
    [
        "3 * a - b / c",
        "a * b - b * c",
        "(a - b) * b / c",
        "floor(a * b) + ceil(c)",
        "sqrt(a * b + c^2)",
        "max(a, b) - min(b, c) + a + b",
        "a if b > 1 else c",
        "exp(a) / log(b + c)",
        "interpolate(a, 0, 1, 5, 8) - c",
    ],
)
def test_a_value_that_goes_one_way_is_not_sampled(expression: str) -> None:
    found = desk(f"a = 1.5 +/- 0.4\nb = 2.5 +/- 0.6\nc = 3.5 +/- 20 %\nr = {expression}")

    assert not found.value("r").sampled


@pytest.mark.parametrize(
    "text",
    [
        "x = 2 +/- 1\ny = 1 / (x - 2.5)",
        "x = 2 +/- 1\ny = (x - 2.5)^-1",
        "x = 2 +/- 1\nd = x - 2.5\ny = 1 / d + 3",
        "x = 1.2 +/- 0.6\ny = tan(x)",
        "x = 2 +/- 1\na = 3 +/- 2\ny = a / (x - 2.5)",
        "x = 2 +/- 1\ny = free_air(1 L, 1 bar(a), 2 K(a)) / (x * 3 - 6.3)",
    ],
)
def test_a_value_that_divides_by_zero_between_the_corners_has_no_range(text: str) -> None:
    found = desk(f"{text}\nrequire y > -1e6 * y / y") if "free_air" not in text else desk(text)

    assert found.value("y").low is None
    assert found.value("y").usual is None


def test_a_division_by_zero_in_a_branch_never_taken_there_does_no_harm() -> None:
    found = desk("b = 2.5 +/- 0.6\nq = 1 / (b - 2.2)\ny = q if b > 2.4 else 5")

    assert found.value("q").low is None
    assert found.ends("y") == pytest.approx((1 / 0.9, 5.0), rel=1e-3)


def test_a_requirement_is_judged_between_the_corners_too() -> None:
    found = desk("x = 2.4 +/- 1.4\ny = x * (4 - x)\nrequire y <= 3.9\nrequire y >= 0.7")

    peak, corner = found.network.requirements
    assert peak.verdict is Verdict.NOMINAL
    assert peak.margin == "-0.100"
    assert corner.verdict is Verdict.HOLDS


def test_a_margin_without_a_range_is_unknown() -> None:
    found = desk("x = 2 +/- 1\nrequire 1 / (x - 2.5) <= 100")

    assert found.requirement.verdict is Verdict.NOMINAL
    assert found.requirement.margin == "range unknown"


def hump(asked: Mapping[str, Argument]) -> Answer:
    """A table that rises to a row and falls behind it."""
    width = asked["width"].si
    assert width is not None
    return Answer(results={"load": 3.0 if width < 4 else 9.0 if width < 6 else 2.0})


def test_a_table_that_rises_and_falls_is_sampled() -> None:
    table = sample_methods.table(
        "hump", (Parameter("width", "width", "m"),), (Result("load", "load"),)
    )
    methods: dict[str, Method] = {"hump": sample_methods.replace_reader(table, hump)}
    found = desk("w = 5 m +/- 2.5 m\ny = hump(width = w)\nz = hump(width = 3 m)", methods=methods)

    assert found.value("y").sampled
    assert found.ends("y") == (2.0, 9.0)
    assert not found.value("z").sampled


FENCES = {
    "one": "x = 2 +/- 1\na = 3 +/- 10 %\nb = 5 +/- 10 %\nu = x * (4 - x) + sin(a * b)",
    "two": "v = two-c.c * one.u - one.a * one.b\nw = exp(one.a) * floor(one.b)\nrequire v < 60",
    "two-c": "c = 7 +/- 0.5\nd = c * one.x - one.x^2 * one.a + c^1.5\nrequire d <= 30",
    "three": "s = one.a + one.b + one.x + two-c.c + two-c.d + two.v + two.w\nt = s / one.b - s / one.a",
}


def shuffled(order: tuple[str, ...], *, turn: bool) -> dict[str, str]:
    """The fences in another order, their lines turned round; the order of paths is that of names."""
    return {
        name: "\n".join(reversed(FENCES[name].split("\n"))) if turn else FENCES[name]
        for name in order
    }


def test_the_order_of_lines_and_fences_does_not_change_a_bit() -> None:
    def figures(*, turn: bool, order: tuple[str, ...]) -> dict[str, object]:
        found = network(shuffled(order, turn=turn), paths=order)
        assert found.diagnostics == ()
        values = {
            address: (value.si, value.low, value.high, value.usual, value.movers, value.sampled)
            for address, value in found.values.items()
        }
        required = {
            one.text: (one.verdict, one.margin, one.margin_percent, one.curve)
            for one in found.requirements
        }
        return {**values, **required}

    first = figures(turn=False, order=tuple(FENCES))

    for order in itertools.permutations(FENCES):
        for turn in (False, True):
            assert figures(turn=turn, order=order) == first


def test_the_points_looked_at_are_the_same_on_every_run() -> None:
    """PCG64 and SeedSequence are the same on every machine; these figures hold it."""
    assert uniform("desk.x")[:3].tolist() == POINTS
    assert not np.array_equal(uniform("desk.x"), uniform("desk.y"))


POINTS = [0.2745684805152864, 0.014003456104451084, 0.2282161043522719]


def random_formula(rng: np.random.Generator, names: list[str]) -> str:
    """Monotone or not, of many inputs, each used once or more."""
    parts = []
    for name in names:
        other = names[int(rng.integers(len(names)))]
        shape = int(rng.integers(6))
        parts.append(
            (
                f"+ {name}", f"- {name} * {other}", f"+ {name} / {other}",
                f"- {name}^2", f"+ sqrt({name} * {other})", f"- {other} / {name}",
            )[shape]
        )  # fmt: skip
    return f"100 {' '.join(parts)}"


def exhaustive(found: Desk) -> tuple[float, float]:
    """The range over all corners, without any look at the gradient."""
    ledger = found.network.ledger
    formula = found.network.formula("desk.y")
    assert formula
    look = first_look(Kept(ledger), ledger.upstream[formula.slot], corners=True)
    (values,) = look.read((formula.reference(NOWHERE),))
    return float(values.min()), float(values.max())


def test_with_many_inputs_the_corners_come_to_are_asked_whether_a_value_goes_one_way() -> None:
    inputs = "\n".join(f"x{n} = 0.9 +/- 1" for n in range(14))
    total = " + ".join(f"x{n}" for n in range(14))

    found = desk(f"{inputs}\ns = {total}\ny = s^2")

    assert not found.value("s").sampled
    assert found.value("y").sampled
    assert found.ends("y") == pytest.approx((1.4**2, 26.6**2), rel=1e-12)


@pytest.mark.parametrize("count", range(8, 15))
def test_the_corners_that_the_gradient_points_to_are_the_worst_of_all(
    count: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("garboard.calc.spread.MOST_ROOTS", 0)
    rng = np.random.default_rng(count)
    for _ in range(12):
        names = [f"x{n}" for n in range(count)]
        givens = "\n".join(
            f"{name} = {rng.uniform(2, 9):.3f} +/- {rng.uniform(1, 20):.1f} %" for name in names
        )
        found = desk(f"{givens}\ny = {random_formula(rng, names)}")

        low, high = found.ends("y")

        least, most = exhaustive(found)
        assert low <= least + 1e-9 * abs(least)
        assert high >= most - 1e-9 * abs(most)


@settings(max_examples=150, deadline=None)
@given(
    shape=st.lists(st.sampled_from("+ - * /".split()), min_size=3, max_size=3),
    order=st.lists(st.sampled_from(["a", "b", "c", "abs(a)", "sqrt(b)", "c^2", "max(a, b)", "2", "b^-1"]), min_size=4, max_size=4),
    shift=st.sampled_from(["0", "3", "-4"]),
)  # fmt: skip
def test_what_is_proved_to_go_one_way_stays_within_its_corners(
    shape: list[str], order: list[str], shift: str
) -> None:
    text = (
        f"{order[0]} {shape[0]} ({order[1]} {shape[1]} {order[2]} + {shift}) {shape[2]} {order[3]}"
    )
    found = desk(f"a = 0.5 +/- 1\nb = 2.5 +/- 0.6\nc = 3.5 +/- 20 %\ny = {text}")
    formula = found.network.formula("desk.y")
    if formula is None:
        return
    direction = Directions(found.network.ledger).of(formula.node)
    if direction is None or not direction.proved or found.value("y").low is None:
        return

    low, high = found.ends("y")

    slack = 1e-12 * max(abs(low), abs(high))
    assert direction.low - slack <= low <= high <= direction.high + slack
    rng = np.random.default_rng(1)
    for share in rng.random((40, 3)):
        inputs = {
            "desk.a": -0.5 + 2 * share[0], "desk.b": 1.9 + 1.2 * share[1], "desk.c": 2.8 + 1.4 * share[2],
        }  # fmt: skip
        (value,) = found.network.recompute(inputs, ["desk.y"])
        assert low - slack <= value <= high + slack
