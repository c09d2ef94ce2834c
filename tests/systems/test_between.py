"""What stands between a vessel and what must see it, strictly."""

import pytest

from garboard.systems.between import Between, Strictly, find_between
from tests.systems.pieces import plant_of
from tests.systems.written import written

PARTS = [
    "AR-001: {kind: receiver, rated: 33 bar(g)}",
    "CP-001: {kind: compressor, makes: 42 bar(g)}",
    "NV-001: {kind: check valve}",
    "EN-001: {kind: consumer, exhausts: yes}",
    *(f"HV-00{n}: {{kind: stop valve}}" for n in (1, 2, 3)),
]
SWITCH = "PS-001: {kind: pressure switch, watches: AR-001}"
RELIEF = "RV-001: {kind: relief valve, set: 32 bar(g)}"


def seen(sensor: str, runs: list[str], *more: str) -> tuple[tuple[str, ...], tuple[str, ...], str]:
    """What can close, what alone cuts off, and the strict view, of one sensor in a small layout."""
    text = written([*PARTS, sensor, *more], runs, "node: {}, other: {}")
    (found,) = find_between(plant_of(text))
    return (
        tuple(tag.removeprefix("SA-") for tag in found.parts),
        tuple(tag.removeprefix("SA-") for tag in found.alone),
        str(found.strictly),
    )


@pytest.mark.parametrize(
    ("sensor", "runs", "answer"),
    [
        (
            SWITCH,
            [
                "AR-001.o > HV-001 > node > PS-001",
                "node > HV-002 > EN-001",
                "CP-001 > NV-001 > node",
            ],
            (("HV-001",), ("HV-001",), Strictly.FAILS),
        ),
        (
            SWITCH,
            [
                "AR-001.g > PS-001",
                "AR-001.o > HV-001 > node > HV-002 > EN-001",
                "CP-001 > NV-001 > node",
            ],
            ((), (), Strictly.PASSES),
        ),
        (
            RELIEF,
            ["AR-001.o > HV-001 > node > RV-001", "node > HV-002 > EN-001"],
            (("HV-001",), ("HV-001",), Strictly.FAILS),
        ),
        (
            SWITCH,
            ["AR-001.a > HV-001 > node", "AR-001.b > HV-003 > node", "node > PS-001"],
            (("HV-001",), (), Strictly.FAILS),
        ),
        (
            RELIEF,
            ["AR-001.o > HV-001 > node > HV-002 > other > RV-001", "other > HV-003 > EN-001"],
            (("HV-001", "HV-002"), ("HV-001", "HV-002"), Strictly.FAILS),
        ),
        (
            SWITCH,
            ["AR-001.g > NV-001 > PS-001"],
            (("NV-001",), ("NV-001",), Strictly.FAILS),
        ),
    ],
    ids=[
        "behind a stop",
        "direct",
        "relief behind a valve",
        "parallel",
        "in series",
        "check valve",
    ],
)
def test_a_worked_layout_is_judged_as_by_hand(
    sensor: str, runs: list[str], answer: tuple[tuple[str, ...], tuple[str, ...], str]
) -> None:
    assert seen(sensor, runs) == answer


def test_a_locked_valve_and_a_three_way_cock_go_to_a_named_reviewer() -> None:
    lock = "HV-009: {kind: stop valve, locked: open, secured: seal 7, round: engine room}"
    cock = "TV-001: {kind: three-way valve}"

    locked = seen(SWITCH, ["AR-001.g > HV-009 > PS-001"], lock)
    turned = seen(SWITCH, ["AR-001.g > TV-001.a", "TV-001.common > PS-001"], cock)

    assert locked == (("HV-009",), ("HV-009",), Strictly.REVIEWER)
    assert turned == (("TV-001",), ("TV-001",), Strictly.REVIEWER)


def test_a_way_that_a_person_may_judge_comes_before_one_that_just_closes() -> None:
    lock = "HV-009: {kind: stop valve, locked: open, secured: seal 7, round: engine room}"

    found = seen(SWITCH, ["AR-001.a > HV-001 > PS-001", "AR-001.b > HV-009 > PS-001"], lock)

    assert found == (("HV-009",), (), Strictly.REVIEWER)


def test_nothing_is_seen_through_a_machine() -> None:
    text = written(
        [*PARTS, SWITCH, "PU-001: {kind: pump, type: centrifugal}"],
        ["AR-001.o > PU-001 > node > PS-001"],
        "node: {}",
    )

    assert list(find_between(plant_of(text))) == [
        Between("SA-PS-001", "SA-AR-001", (), (), Strictly.APART)
    ]


def test_a_sensor_that_names_no_vessel_is_held_against_the_nearest() -> None:
    text = written(
        [*PARTS, "AR-002: {kind: receiver}", "AR-003: {kind: receiver}", "PI-001: {kind: gauge}"],
        [
            "AR-001.o > HV-001 > node",
            "AR-002.o > HV-002 > node",
            "node > PI-001",
            "AR-003.o > HV-003 > AR-002.second",
        ],
        "node: {}",
    )

    assert [one.vessel for one in find_between(plant_of(text))] == ["SA-AR-001", "SA-AR-002"]
