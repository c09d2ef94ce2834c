"""What every way runs through, against taking each place out in turn."""

import random

from garboard.systems.dominators import shared_before

GRAPHS = 600


def _reached(rows: list[list[int]], start: int, out: int | None = None) -> set[int]:
    seen = {start} - {out}
    todo = list(seen)
    while todo:
        for other in rows[todo.pop()]:
            if other not in seen and other != out:
                seen.add(other)
                todo.append(other)
    return seen


def _chain(nearest: list[int | None], place: int) -> set[int]:
    found = set()
    before = nearest[place]
    while before is not None:
        found.add(before)
        before = nearest[before]
    return found


def test_the_tree_names_exactly_the_places_without_which_a_place_is_not_reached() -> None:
    dice = random.Random(14)  # noqa: S311 - a dice, not a key
    shared = 0
    for _ in range(GRAPHS):
        count = dice.randint(2, 12)
        rows = [[dice.randrange(count) for _ in range(dice.randint(0, 3))] for _ in range(count)]
        reached = _reached(rows, 0)

        nearest = shared_before(rows, 0)

        for place in range(count):
            wanted = {
                out
                for out in reached - {place}
                if place in reached and place not in _reached(rows, 0, out)
            }
            assert _chain(nearest, place) == wanted
            shared += len(wanted)
    assert shared > 2000


def test_a_chain_of_many_places_is_walked_without_a_call_for_each() -> None:
    count = 20_000
    rows = [[one + 1] for one in range(count - 1)] + [[]]

    nearest = shared_before(rows, 0)

    assert nearest == [None, *range(count - 1)]
