"""One part fails: what rises is what a whole search with the fault in it would find."""

import random

import pytest

from garboard.systems.faults import Fails, faulted, faults_of, risen
from garboard.systems.net import Net
from garboard.systems.plant import Part, Relief
from garboard.systems.search import caps_of, highest
from tests.systems.pieces import plant_of

NETS = 400


def _net(dice: random.Random) -> tuple[Net, list[tuple[int, float]], list[Relief]]:
    """A few nodes with valves, check valves and reducing valves between them."""
    count = dice.randint(3, 8)
    parts = []
    for number in range(dice.randint(3, 11)):
        u, v = dice.sample(range(count), 2)
        both = ((u, v), (v, u))
        tag = f"XX-{number}"
        kind = dice.choice(("stop valve", "check valve", "regulator", "hose", "stop-check valve"))
        if kind == "stop valve":
            parts.append(Part(tag, kind, {}, (both, ()), ("open", "shut")))
        elif kind == "stop-check valve":
            parts.append(Part(tag, kind, {}, (((u, v),), ()), ("open", "shut"), one_way=True))
        elif kind == "check valve":
            parts.append(Part(tag, kind, {}, (((u, v),),), one_way=True))
        elif kind == "regulator":
            cap = float(dice.choice((3, 5, 8)))
            parts.append(Part(tag, kind, {}, (((u, v),),), cap=cap, carries_relief=False))
        else:
            parts.append(Part(tag, kind, {}, (both,)))
    starts = [(dice.randrange(count), float(dice.choice((6, 10, 40)))) for _ in range(2)]
    reliefs = [
        Relief("RV", dice.randrange(count), None, float(setting), float(setting))
        for setting in dice.sample((4, 7, 12), dice.randint(0, 2))
    ]
    return Net(count, parts, {}), starts, reliefs


def test_what_rises_with_a_fault_is_what_a_whole_search_finds() -> None:
    dice = random.Random(81)  # noqa: S311 - a dice, not a key
    faults = raised = 0
    for _ in range(NETS):
        net, starts, reliefs = _net(dice)
        caps = caps_of(net, reliefs)
        before = highest(net, starts, caps).at
        for fault in faults_of(net):
            up = risen(net, net.any_position(), caps, before, fault)

            whole = highest(faulted(net, fault), starts, caps).at
            assert [up.at.get(node, here) for node, here in enumerate(before)] == whole
            faults += 1
            raised += bool(up.at)

    assert faults > 1000
    assert raised > 200


def test_the_way_of_what_rises_runs_through_the_part_that_failed() -> None:
    plant = plant_of(
        "system: SA\nmedium: air\ncomponents:\n"
        "  SH-001: {kind: pressure source, makes: 30 bar(g)}\n"
        "  RG-001: {kind: regulator, set: 8 bar(g)}\n"
        "  HV-001: {kind: stop valve}\n"
        "  US-001: {kind: consumer}\n"
        "connections: [SH-001 > RG-001 > HV-001 > US-001]\n"
    )
    net = Net(plant.count, plant.parts, {})
    caps = caps_of(net, plant.reliefs)
    before = highest(net, [(s.node, s.makes) for s in plant.sources], caps).at
    [fault] = faults_of(net)

    up = risen(net, net.any_position(), caps, before, fault)

    at, behind = plant.parts[plant.numbers["SA-RG-001"]].nodes
    assert (fault.fails, up.at[behind]) == (Fails.JAMS, 30e5)
    assert up.came[behind] == (at, behind, plant.numbers["SA-RG-001"])
    assert up.at[plant.node("SA-US-001")] == 30e5


@pytest.mark.parametrize(("stands", "arcs"), [("open", [((1, 0),)]), ("shut", [()])])
def test_a_stop_check_valve_leaks_back_only_where_it_stands_open(
    stands: str, arcs: list[tuple[tuple[int, int], ...]]
) -> None:
    part = Part("SA-SN-001", "stop-check valve", {}, (((0, 1),), ()), ("open", "shut"))
    held = {0: part.names.index(stands)}

    found = [fault.arcs for fault in faults_of(Net(2, [part], held))]

    assert found == arcs
