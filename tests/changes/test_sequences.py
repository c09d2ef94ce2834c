"""Rows of lines held together: each line of both exactly once, and the same pairs the other way round."""

import random

from garboard.changes.sequences import Pair, pair_up

LINES = [
    "Shut SA-HV-001",
    "Shut SA-HV-002",
    "Read the gauge at the header",
    "Read the gauge of the header slowly",
    "Hang a card",
    "Tell the watch",
]


def test_a_line_that_went_up_is_one_line_that_moved() -> None:
    found = pair_up(["one thing", "two of them", "third"], ["third", "one thing", "two of them"])

    assert [one for one in found if one.moved] == [Pair(2, 0, moved=True)]


def test_every_line_is_paired_once_and_the_other_way_round_alike() -> None:
    chance = random.Random(5)  # noqa: S311 - the same rows every time
    for _ in range(400):
        old = chance.choices(LINES, k=chance.randint(0, 6))
        new = chance.choices(LINES, k=chance.randint(0, 6))

        found = pair_up(old, new)
        back = pair_up(new, old)

        assert sorted(one.before for one in found if one.before is not None) == list(
            range(len(old))
        )
        assert sorted(one.after for one in found if one.after is not None) == list(range(len(new)))
        if old != new:
            assert {(one.before, one.after, one.moved) for one in found} == {
                (one.after, one.before, one.moved) for one in back
            }


def test_lines_that_have_little_in_common_are_two_lines() -> None:
    assert pair_up(["Hang a card"], ["Tell the watch"]) == (Pair(0, None), Pair(None, 0))
