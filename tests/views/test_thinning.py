"""A thinned curve is short, in order, and shows every extreme that the whole one has."""

from hypothesis import given
from hypothesis import strategies as st

from garboard.views.thinning import thinned

HEIGHTS = st.lists(st.floats(-1e6, 1e6), min_size=1, max_size=900)


@given(HEIGHTS, st.integers(1, 60))
def test_no_peak_and_no_trough_of_any_column_is_lost(heights: list[float], columns: int) -> None:
    points = [(float(x), y) for x, y in enumerate(heights)]
    span = max(1, len(points) - 1)

    found = thinned(points, columns)

    for column in range(columns):
        own = [y for x, y in points if min(columns - 1, int(columns * x / span)) == column]
        left = [
            y
            for x, y in found
            if y is not None and min(columns - 1, int(columns * x / span)) == column
        ]
        assert (min(left), max(left)) == (min(own), max(own)) if own else left == []


@given(HEIGHTS, st.integers(1, 60))
def test_what_is_left_is_short_in_order_and_taken_from_the_curve(
    heights: list[float], columns: int
) -> None:
    points = [(float(x), y) for x, y in enumerate(heights)]

    found = thinned(points, columns)

    assert len(found) <= 2 * columns + 2
    assert found == sorted(set(found))
    assert set(found) <= set(points)
    assert (found[0], found[-1]) == (points[0], points[-1])


def test_a_gap_in_a_long_curve_stays_a_gap() -> None:
    points = [(float(x), None if 400 <= x < 500 else 1.0) for x in range(1000)]

    assert any(y is None for _, y in thinned(points, 20))


def test_a_curve_that_stands_still_across_is_left_in_one_column() -> None:
    assert thinned([(5.0, float(y)) for y in range(500)], 10) == [(5.0, 0.0), (5.0, 499.0)]
