"""The walk against brute force: whatever may happen in any completion, the walk has said."""

from collections.abc import Callable
from dataclasses import replace
from random import Random

import pytest

from garboard.systems import walk as walk_module
from garboard.systems.actions import Action
from garboard.systems.forbidden import Fault, find_forbidden
from garboard.systems.plant import Arc
from garboard.systems.state import State
from garboard.systems.walk import Walk, walk
from garboard.systems.ways import Ways
from tests.systems.completions import ByHand, Cause, walk_all_ways
from tests.systems.random_walks import random_plant, random_start, random_steps

PLANTS, WALKS = 150, 10


def is_said(cause: Cause, told: set[Cause]) -> bool:
    """Whether a cause was told; what was opened under pressure was told to be open under pressure."""
    fault, about, by = cause
    opened = (Fault.OPENED, about, by)
    return cause in told or (fault == Fault.REACHED and opened in told)


class Tally:
    """What came out of some random walks."""

    def __init__(self) -> None:
        self.walks = 0
        self.missed: list[str] = []
        self.said = self.true = 0
        self.pressed = self.over = 0

    def count(self, seed: int) -> None:
        rnd = Random(seed)  # noqa: S311 - a test draws the same plants every time
        ways = Ways(random_plant(rnd))
        for number in range(WALKS):
            steps = random_steps(rnd, ways.plant)
            if number % 2:
                steps = [replace(step, sees=None) for step in steps]
            self.walk(seed, ways, steps, random_start(rnd, ways))

    def walk(self, seed: int, ways: Ways, steps: list[Action], begins_at: State) -> None:
        start = ways.begin(begins_at)
        walked = walk(ways, start, steps)
        by_hand = walk_all_ways(ways.plant, start, ways.air, ways.feeds, steps)
        begins: set[Cause] = {one.cause for one in find_forbidden(ways, start)}
        told = begins
        said_by: list[set[Cause]] = []
        for stage in walked.stages:
            told = told | {one.cause for one in stage.troubles}
            said_by.append(told)
        for number, wrong, pressure in by_hand:
            stage = walked.stages[number - 1]
            unsaid = {cause for cause in wrong if not is_said(cause, said_by[number - 1])}
            if unsaid or not pressure <= stage.after.pressure:
                self.missed.append(f"plant {seed}, step {number}: {unsaid}")
        self.walks += 1
        if not any(step.sees for step in steps):
            self.weigh(walked, told - begins, by_hand)

    def weigh(self, walked: Walk, told: set[Cause], by_hand: ByHand) -> None:
        """How much of what a walk says comes about in some completion; readings would end them early."""
        in_any = {cause for _, wrong, _ in by_hand for cause in wrong}
        self.said += len(told)
        self.true += len(told & in_any)
        for stage in walked.stages:
            held = {n for number, _, p in by_hand if number == stage.action.number for n in p}
            self.pressed += len(stage.after.pressure)
            self.over += len(stage.after.pressure - held)


def test_no_trouble_of_any_completion_is_missed_in_fifteen_hundred_random_walks() -> None:
    tally = Tally()

    for seed in range(PLANTS):
        tally.count(seed)

    assert tally.walks >= 1500
    assert tally.missed == []
    assert tally.said > 500
    assert tally.true / tally.said > 0.97
    assert tally.over / tally.pressed < 0.05


def must_by_may(patch: pytest.MonkeyPatch) -> None:
    """An unknown valve counts as open for what goes out."""
    passing = Ways._passing

    def broken(self: Ways, number: int, bits: int) -> tuple[tuple[Arc, ...], frozenset[Arc]]:
        some, _ = passing(self, number, bits)
        return some, frozenset(some)

    patch.setattr(Ways, "_passing", broken)


def may_by_must(patch: pytest.MonkeyPatch) -> None:
    """An unknown valve counts as shut for what comes in."""
    passing = Ways._passing

    def broken(self: Ways, number: int, bits: int) -> tuple[tuple[Arc, ...], frozenset[Arc]]:
        _, every = passing(self, number, bits)
        return tuple(every), every

    patch.setattr(Ways, "_passing", broken)


def nothing_feeds(patch: pytest.MonkeyPatch) -> None:
    """A machine that runs feeds nothing."""
    patch.setattr(Ways, "fed_by", lambda _self, _state: set())


def zero_proves_all(patch: pytest.MonkeyPatch) -> None:
    """A reading of nothing at one place is taken for the whole plant."""
    patch.setattr(
        Ways, "proved", lambda self, state, _: self.settle(replace(state, pressure=frozenset()))
    )


def rush_is_not_seen(patch: pytest.MonkeyPatch) -> None:
    """What rushes out of an open part is gone before anybody looks."""
    patch.setattr(walk_module, "find_reached", lambda *_: iter(()))


def opening_is_not_seen(patch: pytest.MonkeyPatch) -> None:
    """What is opened up is not asked about its pressure."""
    patch.setattr(walk_module, "find_opened", lambda *_: iter(()))


@pytest.mark.parametrize(
    "fault",
    [
        must_by_may,
        may_by_must,
        nothing_feeds,
        zero_proves_all,
        rush_is_not_seen,
        opening_is_not_seen,
    ],
)
def test_a_fault_put_into_the_walk_is_found(
    fault: Callable[[pytest.MonkeyPatch], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    tally = Tally()
    fault(monkeypatch)

    for seed in range(20):
        tally.count(seed)

    assert tally.missed != []
