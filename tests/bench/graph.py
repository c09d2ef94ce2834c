"""How the questions to a layout grow with it: plants like those of a ship, sound and full of mistakes."""

import gc
import math
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial

from garboard.systems.checks import CHECKS
from garboard.systems.enquiry import Check, Enquiry
from garboard.systems.finding import PathFinding
from garboard.systems.laying import lay_out_plant
from garboard.systems.plant import Plant
from garboard.systems.survey import survey
from tests.systems.large_plants import AIR, BILGE, BOARD, Sort
from tests.systems.pieces import read_piece
from tests.systems.steps import steps

__all__ = ["layouts"]

SIZES = (250, 500, 1000, 2000)
SMALL = 200
ROUNDS = 3
LEAST = 0.01
"""A run is repeated until it takes so long [s], so that a short one is not all noise."""
ASKED_RATIO, ASKED_EXPONENT = 15, 1.2


def layouts() -> None:
    """Print how long each question takes, and how that grows."""
    for sort, named in ((AIR, "starting air"), (BILGE, "bilge"), (BOARD, "direct current")):
        for faulty in (False, True):
            print(
                f"\n| {named}, {'full of mistakes' if faulty else 'sound'} | parts | ms |", end=""
            )
            print(
                " t(2,000)/t(200), asked 15 | exponent, asked 1.2 | of steps |\n|---|---|---|---|---|---|"
            )
            for row in _rows(sort, faulty=faulty):
                print(row)


def _rows(sort: Sort, *, faulty: bool) -> Iterator[str]:
    plants = {size: sort.plant(size, faulty=faulty) for size in (SMALL, *SIZES)}
    texts = {size: sort.text(size, faulty=faulty) for size in plants}
    yield _row("laying it out", plants, _laying(texts, sort.code))
    yield _row("highest pressure", plants, lambda plant: Enquiry(plant).relaxed)
    for check, _ in CHECKS:
        said = check.__name__.removeprefix("find_").replace("_", " ")
        yield _row(said, plants, partial(_asked, check))
    yield _row("all questions, locks held and free", plants, survey)


def _asked(check: Check, plant: Plant) -> list[PathFinding]:
    return list(check(Enquiry(plant)))


def _laying(texts: Mapping[int, str], code: str) -> Callable[[Plant], object]:
    """Lay out a text that was read before: only the laying is timed."""
    read = {text: read_piece(text, code) for text in texts.values()}
    by_parts = {len(lay_out_plant(*read[text]).parts): read[text] for text in texts.values()}
    return lambda plant: lay_out_plant(*by_parts[len(plant.parts)])


def _row(said: str, plants: Mapping[int, Plant], ask: Callable[[Plant], object]) -> str:
    times = {size: best(ask, plant) for size, plant in plants.items()}
    ratio = times[SIZES[-1]] / times[SMALL]
    slope = exponent([(len(plants[size].parts), times[size]) for size in SIZES])
    ends = [
        (len(plants[size].parts), steps(partial(ask, plants[size]))) for size in (SMALL, SIZES[-1])
    ]
    worked = exponent(ends)
    over = " **over**" if ratio > ASKED_RATIO or min(slope, worked) > ASKED_EXPONENT else ""
    largest = plants[SIZES[-1]]
    ms = times[SIZES[-1]] * 1000
    return f"| {said} | {len(largest.parts)} | {ms:.1f} | {ratio:.1f} | {slope:.2f} | {worked:.2f}{over} |"


def best(ask: Callable[[Plant], object], plant: Plant) -> float:
    """Seconds of the processor for one answer, the best of a few rounds; no garbage is collected meanwhile."""
    found = math.inf
    gc.collect()
    gc.disable()
    try:
        for _ in range(ROUNDS):
            asked, start = 0, time.process_time()
            while (spent := time.process_time() - start) < LEAST:
                ask(plant)
                asked += 1
            found = min(found, spent / asked)
    finally:
        gc.enable()
    return found


def exponent(points: Sequence[tuple[int, float]]) -> float:
    """The power of the size that fits some times best."""
    xs = [math.log(size) for size, _ in points]
    ys = [math.log(spent) for _, spent in points]
    x, y = sum(xs) / len(xs), sum(ys) / len(ys)
    above = sum((a - x) * (b - y) for a, b in zip(xs, ys, strict=True))
    return above / sum((a - x) ** 2 for a in xs)
