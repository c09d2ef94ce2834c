"""A criterion in words sets a bound only where it says on which side."""

import pytest

from garboard.errors import Where
from garboard.records.criterion import find_bounds, read_number

HERE = Where("a.md")


@pytest.mark.parametrize(
    ("criterion", "shown"),
    [
        ("at least 12 bar(g)", ["at least 12 bar(g)"]),
        ("held above 12 bar(g) for at most 30 min", ["at least 12 bar(g)", "at most 30 min"]),
        ("not below 12 bar(g)", ["at least 12 bar(g)"]),
        ("not above 12 bar(g)", ["at most 12 bar(g)"]),
        ("no less than 12 bar(g)", ["at least 12 bar(g)"]),
        ("not more than 12 bar(g)", ["at most 12 bar(g)"]),
        ("<= 12 bar(g)", ["at most 12 bar(g)"]),
        ("12 bar(g) or more", ["at least 12 bar(g)"]),
        ("a maximum of 12 bar(g)", ["at most 12 bar(g)"]),
        ("29 bar(g) to 31 bar(g)", ["29 bar(g) to 31 bar(g)"]),
        ("lifts at 33 bar(g) +/- 1 bar", ["33 bar(g) +/- 1 bar"]),
    ],
)
def test_a_side_in_words_is_a_bound(criterion: str, shown: list[str]) -> None:
    assert [bound.shown for bound in find_bounds({}, criterion, HERE)] == shown


@pytest.mark.parametrize(
    "criterion",
    [
        "49.5 bar(g) held 30 min",
        "no start under 6 bar(g)",
        "nothing moves at 12 bar(g)",
        "no leak seen",
        "SA-AR-009.test",
        "12 bars",
    ],
)
def test_what_could_be_read_in_two_ways_sets_none(criterion: str) -> None:
    assert find_bounds({}, criterion, HERE) == []


def test_a_reading_on_the_bound_is_within_it() -> None:
    (bound,) = find_bounds({}, "at least 49.5 bar(g)", HERE)
    reading = read_number({}, "4950 kPa(g)", HERE)

    assert reading is not None
    assert bound.holds(reading.low)
    assert not bound.holds(reading.low - 1)


def test_both_ends_of_a_range_bind() -> None:
    (bound,) = find_bounds({}, "between 29 bar(g) and 31 bar(g)", HERE)

    assert [bound.holds(pressure * 1e5) for pressure in (28, 29, 31, 32)] == [
        False,
        True,
        True,
        False,
    ]
