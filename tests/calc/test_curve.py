"""The curve of a requirement: one side against what moves it most, with the limit in sight."""

import pytest

from garboard.calc.value import Curve
from tests.calc.desk import Desk, desk


def curve(found: Desk) -> Curve:
    drawn = found.requirement.curve
    assert drawn is not None
    return drawn


def span(drawn: Curve) -> tuple[float, float]:
    return drawn.points[0][0], drawn.points[-1][0]


AIR = """
stored = 9 +/- 1
each = 1.2 +/- 2 %
n = stored / each
"""


def test_the_left_side_is_drawn_against_what_moves_it_most() -> None:
    drawn = curve(desk(f"{AIR}require n >= 6"))

    assert (drawn.address, drawn.across) == ("desk.n", "desk.stored")
    assert (drawn.at, drawn.limit) == ((9.0, 7.5), 6.0)
    assert len(drawn.points) == 61
    assert all(value == pytest.approx(place / 1.2) for place, value in drawn.points)
    places = [place for place, _ in drawn.points]
    assert places == sorted(places)


def test_tolerance_working_point_and_crossing_stand_in_the_picture() -> None:
    low, high = span(curve(desk(f"{AIR}require n >= 6")))

    assert low == pytest.approx(7.2 - 0.15 * 2.8, abs=0.05)
    assert high == pytest.approx(10 + 0.15 * 2.8, abs=0.05)


def test_a_limit_far_away_leaves_the_tolerance_in_sight() -> None:
    assert span(curve(desk(f"{AIR}require n <= 600"))) == pytest.approx((6.0, 12.0))


def test_a_limit_on_the_left_draws_the_right_side() -> None:
    drawn, turned = curve(desk(f"{AIR}require 6 <= n")), curve(desk(f"{AIR}require n >= 6"))

    assert drawn == turned


def test_a_curve_does_not_go_past_zero_to_a_sign_that_its_input_has_not() -> None:
    above = curve(desk("a = 1 +/- 0.8\ny = a^2 + 1\nrequire y >= 1.0001"))
    below = curve(desk("a = -1 +/- 0.8\ny = a * 3\nrequire y <= 0.5"))
    both = curve(desk("a = 0.5 +/- 0.8\ny = a * 3\nrequire y >= -2"))

    assert span(above)[0] == 0.0
    assert span(below)[1] == 0.0
    assert span(both)[0] < -2 / 3


def test_where_the_value_has_no_answer_the_curve_has_a_gap() -> None:
    drawn = curve(desk("a = 1.2 +/- 0.3\ny = sqrt(a - 0.8)\nrequire y >= -0.5"))

    assert drawn.points[0][1] is None
    assert drawn.points[-1][1] is not None
    assert all((value is None) == (place < 0.8) for place, value in drawn.points)


@pytest.mark.parametrize(
    "text",
    [
        "a = 3\ny = 2 * a\nrequire y <= 7",
        "a = 3 +/- 1\nrequire a <= 7",
        "a = 3 +/- 1\ny = 2 * a\nrequire y <= 3 * a",
        "a = 3 +/- 1\nb = 9 +/- 1\nx = 2 * a\ny = 3 * a + b\nrequire x <= y",
        "a = 3 +/- 1\nrequire 2 * a <= 7",
    ],
)
def test_where_there_is_nothing_to_see_no_curve_is_drawn(text: str) -> None:
    assert desk(text).requirement.curve is None


def test_a_limit_that_something_else_moves_is_drawn_where_it_stands() -> None:
    drawn = curve(desk("a = 3 +/- 1\nb = 9 +/- 1\ny = 2 * a\nrequire y <= b"))

    assert (drawn.across, drawn.limit) == ("desk.a", 9.0)


def test_a_count_is_drawn_in_steps() -> None:
    drawn = curve(desk("stored = 9 +/- 1\nn = floor(stored / 1.2)\nrequire n >= 6"))

    assert {value for _, value in drawn.points} >= {6.0, 7.0, 8.0}
    assert min(place for place, value in drawn.points if value == 6.0) == pytest.approx(
        7.2, abs=0.1
    )
    assert span(drawn)[0] < 7.2
