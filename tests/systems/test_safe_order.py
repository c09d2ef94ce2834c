"""The order in which one line-up is turned into another."""

from itertools import permutations
from random import Random

from garboard.systems.forbidden import find_forbidden
from garboard.systems.safe_order import Goal, between_states, safe_order
from garboard.systems.state import State, only, position_in
from garboard.systems.ways import Ways
from tests.systems.pieces import plant_of
from tests.systems.random_walks import random_plant

TWO_RELIEF_VALVES = """\
system: SA
title: test piece
medium: air
components:
  CP-001: {kind: compressor, type: piston, makes: 42 bar(g), usual: stopped}
  AR-001: {kind: receiver, rated: 33 bar(g)}
  HV-001: {kind: stop valve, usual: open}
  RV-001: {kind: relief valve, set: 32 bar(g)}
  HV-002: {kind: stop valve, usual: shut}
  RV-002: {kind: relief valve, set: 32 bar(g)}
connections:
  - CP-001 > AR-001
  - AR-001.relief > HV-001 > RV-001
  - AR-001.relief > HV-002 > RV-002
operating_states:
  charging: {running: [CP-001], charged: [AR-001]}
  charging under the other: {open: [HV-002], shut: [HV-001], running: [CP-001], charged: [AR-001]}
  under none: {shut: [HV-001, HV-002], running: [CP-001]}
"""
TWO_BANKS = """\
system: DC
title: test piece
medium: direct current
components:
  BA-001: {kind: battery, makes: no limit}
  BA-002: {kind: battery, makes: no limit}
  SW-001: {kind: switch, usual: shut}
  SW-002: {kind: switch, usual: open}
  LD-001: {kind: load}
headers:
  bus: {}
connections:
  - BA-001 > SW-001 > bus
  - BA-002 > SW-002 > bus
  - bus > LD-001
operating_states:
  on the second: {charged: [BA-001, BA-002], supplies: [LD-001]}
  on the first: {open: [SW-001], shut: [SW-002], charged: [BA-001, BA-002], supplies: [LD-001]}
"""


def order_of(text: str, one: str, other: str, code: str = "SA") -> tuple[list[str], bool]:
    plant = plant_of(text, code)
    states = plant.system.operating_states or {}
    found = between_states(Ways(plant), states[one], states[other])
    return [f"{step.tag[3:]} {step.to}" for step in found.movements], found.found


def test_the_second_relief_valve_is_opened_before_the_first_is_shut() -> None:
    steps, found = order_of(TWO_RELIEF_VALVES, "charging", "charging under the other")

    assert found
    assert steps == ["HV-002 open", "HV-001 shut"]


def test_no_order_leads_to_a_state_that_must_never_be() -> None:
    steps, found = order_of(TWO_RELIEF_VALVES, "charging", "under none")

    assert not found
    assert steps == []


def test_a_user_is_not_left_dark_where_an_order_keeps_it_alive() -> None:
    steps, found = order_of(TWO_BANKS, "on the second", "on the first", "DC")

    assert found
    assert steps == ["SW-001 open", "SW-002 shut"]


def test_the_alternator_is_taken_off_before_the_battery() -> None:
    text = """\
system: DC
title: test piece
medium: direct current
components:
  BA-001: {kind: battery, makes: no limit}
  SW-001: {kind: switch, usual: open}
  GE-001: {kind: alternator, makes: 100 A}
  SW-004: {kind: switch, usual: open}
  BB-001: {kind: bus, rated: 600 A}
connections:
  - BA-001 > SW-001 > BB-001
  - GE-001 > SW-004 > BB-001
operating_states:
  at sea: {charged: [BA-001]}
  dead: {shut: [SW-001, SW-004]}
"""

    down, _ = order_of(text, "at sea", "dead", "DC")
    up, _ = order_of(text, "dead", "at sea", "DC")

    assert down == ["SW-004 shut", "SW-001 shut"]
    assert up == ["SW-001 open", "SW-004 open"]


def test_a_user_whom_no_order_keeps_supplied_is_named() -> None:
    text = TWO_BANKS.replace("bus > LD-001", "bus > SW-003 > LD-001")
    text = text.replace("  LD-001", "  SW-003: {kind: switch, usual: open}\n  LD-001")
    shut = text.replace("shut: [SW-002]", "shut: [SW-002, SW-003]")
    plant = plant_of(shut, "DC")
    states = plant.system.operating_states or {}

    found = between_states(Ways(plant), states["on the second"], states["on the first"])

    assert found.found
    assert found.loses == ("DC-LD-001",)


def test_it_says_when_it_gives_up() -> None:
    plant = plant_of(TWO_RELIEF_VALVES)
    ways = Ways(plant)
    start = ways.begin(State(tuple(only(part.usual) for part in plant.parts)))

    found = safe_order(ways, start, Goal({2: 1, 4: 0}, frozenset({"SA-CP-001"}), most=2))

    assert not found.found
    assert found.gave_up


def by_trying_all(ways: Ways, start: State, wanted: dict[int, int]) -> bool:
    """Whether some order of the movements, each once, meets no forbidden state."""
    for order in permutations(wanted.items()):
        state = start
        for number, at in order:
            state = ways.settle(state.moved(number, at))
            if any(find_forbidden(ways, state)):
                break
        else:
            return True
    return False


def test_it_finds_an_order_exactly_where_trying_all_of_them_finds_one() -> None:
    found_some = refused_some = 0
    for seed in range(120):
        rnd = Random(seed)  # noqa: S311 - a test draws the same plants every time
        ways = Ways(random_plant(rnd))
        movable = [n for n, part in enumerate(ways.plant.parts) if part.movable]
        at = tuple(only(rnd.randrange(len(part.positions))) for part in ways.plant.parts)
        start = ways.begin(State(at, frozenset({ways.plant.of_kind("compressor")[0].tag})))
        if any(find_forbidden(ways, start)):
            continue
        chosen = rnd.sample(movable, min(4, len(movable)))
        wanted = {n: rnd.randrange(len(ways.plant.parts[n].positions)) for n in chosen}
        wanted = {n: at for n, at in wanted.items() if position_in(start, n) != at}

        found = safe_order(ways, start, Goal(wanted, start.running))

        assert found.found == by_trying_all(ways, start, wanted)
        assert not found.found or len(found.movements) == len(wanted)
        found_some += found.found
        refused_some += not found.found
    assert found_some > 10
    assert refused_some > 5
