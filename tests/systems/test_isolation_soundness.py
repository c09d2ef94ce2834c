"""Random plants: with the points out, nothing live reaches the work, by a search of its own.

The search here knows nothing of sections: it walks from every store through whatever any position passes,
both ways, past everything but the points in the position they are locked in.
"""

import random
from dataclasses import replace
from functools import cache

import pytest

from garboard.systems.isolation import Isolation, isolate
from garboard.systems.plant import Part, Plant
from garboard.systems.stores import stores_of
from tests.systems.pieces import plant_of

PLANTS = 150
BATCH = 30
PARTS = (
    ("HV", "{kind: stop valve}"),
    ("HV", "{kind: stop valve}"),
    ("SN", "{kind: stop-check valve}"),
    ("NV", "{kind: check valve}"),
    ("SV", "{kind: solenoid valve}"),
    ("RG", "{kind: regulator, set: 8 bar(g)}"),
    ("PU", "{kind: pump, type: centrifugal, makes: 2 bar(g)}"),
    ("FI", "{kind: filter, rated: 10 bar(g)}"),
)
ENDS = (
    ("SC", "{kind: sea}"),
    ("TK", "{kind: tank}"),
    ("AR", "{kind: receiver, rated: 10 bar(g)}"),
    ("US", "{kind: consumer}"),
    ("PI", "{kind: gauge}"),
)


def random_plant(seed: int) -> Plant:
    """Four to eight headers, joined at random by parts, with stores, users and gauges hung on them."""
    draw = random.Random(seed)  # noqa: S311 - plants, not secrets
    headers = [f"h{number}" for number in range(draw.randint(4, 8))]
    components, runs = [], []
    for number in range(draw.randint(5, 14)):
        letters, words = draw.choice(PARTS)
        tag = f"{letters}-{number + 1:03}"
        components.append(f"  {tag}: {words}")
        runs.append(f"  - {draw.choice(headers)} > {tag} > {draw.choice(headers)}")
    for number in range(draw.randint(0, 2)):
        tag = f"TV-{number + 1:03}"
        joins = draw.choice(
            ("one: [a-common], two: [b-common]", "one: [a-common], all: [a-common, b-common]")
        )
        components.append(f"  {tag}: {{kind: three-way valve, positions: {{{joins}}}, usual: one}}")
        runs += [f"  - {draw.choice(headers)} > {tag}.{port}" for port in ("common", "a", "b")]
    for number in range(draw.randint(2, 5)):
        letters, words = draw.choice(ENDS)
        tag = f"{letters}-{number + 101}"
        components.append(f"  {tag}: {words}")
        runs.append(f"  - {draw.choice(headers)} > {tag}")
    for number in range(draw.randint(0, 3)):
        tag = f"HV-{number + 201}"
        components.append(f"  {tag}: {{kind: drain valve}}")
        runs.append(f"  - {draw.choice(headers)} > {tag} > bilge")
    lines = ["system: SA", "medium: sea water", "components:", *components]
    lines += [
        f"headers: {{{', '.join(f'{name}: {{}}' for name in headers)}}}",
        "connections:",
        *runs,
    ]
    return plant_of("\n".join(lines) + "\n")


def reaching(plant: Plant, found: Isolation) -> set[str]:
    """The stores from which something live reaches the work."""
    points = {one.tag: one.position for one in found.points}
    work = {node for tag in found.tags for node in plant.parts[plant.numbers[tag]].nodes}
    reached = set()
    for store in stores_of(plant):
        harmless = store.tag in found.stop or store.tag in found.emptied
        seen = set(store.nodes)
        grown = not harmless
        while grown:
            before = len(seen)
            for part in plant.parts:
                for u, v in passing(part, points):
                    if u in seen or v in seen:
                        seen |= {u, v}
            grown = len(seen) > before
        if not harmless and seen & work:
            reached.add(store.tag)
    return reached


def passing(part: Part, points: dict[str, str]) -> list[tuple[int, int]]:
    if part.tag in points:
        return list(part.positions[part.names.index(points[part.tag])])
    return [arc for arcs in part.positions for arc in arcs]


@cache
def every_isolation(first: int) -> list[tuple[Plant, Isolation]]:
    """Every part of a batch of plants, isolated."""
    plants = [random_plant(seed) for seed in range(first, first + BATCH)]
    return [
        (plant, isolate(plant, part.tag))
        for plant in plants
        for part in plant.parts
        if part.kind not in ("sea", "compartment")
    ]


@pytest.mark.parametrize("first", range(0, PLANTS, BATCH))
def test_nothing_live_reaches_the_work_unless_it_says_so(first: int) -> None:
    for plant, found in every_isolation(first):
        said = {one.about for one in found.faults if one.code == "isolation-incomplete"}

        assert reaching(plant, found) == said, (plant.system, found.tags)


@pytest.mark.parametrize("first", range(0, PLANTS, BATCH))
def test_no_point_is_shut_for_nothing(first: int) -> None:
    """Left out, each point of the nearest block lets something live in."""
    for plant, found in every_isolation(first):
        said = reaching(plant, found)
        for point in found.points:
            fewer = [one for one in found.points if one is not point]
            without = replace(found, points=tuple(fewer))

            assert reaching(plant, without) > said, (found.tags, point.tag)


def test_the_plants_are_no_idle_trial() -> None:
    found = [one for first in range(0, PLANTS, BATCH) for _, one in every_isolation(first)]
    points = [point for one in found for point in one.points]

    assert sum(one.possible for one in found) > 1000
    assert sum(not one.possible for one in found) > 300
    assert sum(len(one.points) > 1 for one in found) > 300
    assert sum(point.kind == "three-way valve" for point in points) > 20
