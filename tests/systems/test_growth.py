"""No question costs more than about its share when a plant grows: counted in lines of code that run, not in seconds."""

from collections.abc import Callable
from functools import partial

import pytest

from garboard.systems.checks import CHECKS
from garboard.systems.enquiry import Check, Enquiry
from garboard.systems.finding import PathFinding
from garboard.systems.plant import Plant
from garboard.systems.sequences import MOST_VISITS
from garboard.systems.survey import survey
from tests.systems.large_plants import AIR, BILGE, BOARD, Sort
from tests.systems.steps import steps

SMALL, LARGE = 200, 800
MOST = 1.3
"""Steps of a part in the large plant, of those in the small one; 4 times the parts by the power of 1.2 give 1.32."""
SORTS = pytest.mark.parametrize(
    ("sort", "faulty"),
    [(sort, faulty) for sort in (AIR, BILGE, BOARD) for faulty in (False, True)],
    ids=lambda value: getattr(value, "medium", "full of mistakes" if value else "sound"),
)


def growth(ask: Callable[[Plant], object], small: Plant, large: Plant) -> float:
    """How many times more steps are run for a part of the large plant."""
    each = [steps(partial(ask, plant)) / len(plant.parts) for plant in (small, large)]
    return each[1] / each[0]


def asked(check: Check, plant: Plant) -> list[PathFinding]:
    return list(check(Enquiry(plant)))


@SORTS
def test_every_question_costs_about_as_much_a_part_in_a_large_plant(
    sort: Sort,
    faulty: bool,  # noqa: FBT001 - a parameter of the test
) -> None:
    small, large = (sort.plant(size, faulty=faulty, turning=False) for size in (SMALL, LARGE))

    found = {check.__name__: growth(partial(asked, check), small, large) for check, _ in CHECKS}

    assert {name: round(here, 2) for name, here in found.items() if here > MOST} == {}
    assert len(found) == len(CHECKS) >= 19


def test_three_way_valves_cost_no_more_than_their_share_of_line_ups() -> None:
    """Every line-up of a few is tried, and of many as many as take a few seconds."""
    plain = AIR.plant(LARGE, faulty=True, turning=False)
    turning = AIR.plant(LARGE, faulty=True)

    more = steps(lambda: survey(turning)) - steps(lambda: survey(plain))

    assert 0 < more < 100 * MOST_VISITS


def test_a_question_that_is_asked_anew_for_every_part_is_seen() -> None:
    def anew(plant: Plant) -> None:
        for source in plant.sources:
            Enquiry(plant).always([source.node])

    small, large = (BILGE.plant(size) for size in (SMALL, LARGE))

    assert growth(anew, small, large) > MOST
