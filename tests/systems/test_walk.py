"""Procedures walked on a layout: what is understood, what a state may hold, what must never be."""

import pytest

from garboard.records.procedure import Second, See, Step
from garboard.systems.actions import Does, actions_of
from garboard.systems.forbidden import Fault
from garboard.systems.plant import Plant
from garboard.systems.slips import Slip, find_slips
from garboard.systems.state import stands, start_of
from garboard.systems.walk import Walk, walk
from garboard.systems.ways import Ways
from tests.systems.pieces import plant_of

AIR = """\
system: SA
title: test piece
medium: air
components:
  CP-001: {kind: compressor, type: piston, usual: stopped, makes: 42 bar(g)}
  NV-001: {kind: check valve}
  AR-001: {kind: receiver, rated: 33 bar(g)}
  RV-001: {kind: relief valve, set: 32 bar(g)}
  HV-006: {kind: stop valve, usual: open}
  FI-001: {kind: filter, rated: 40 bar(g)}
  PI-003: {kind: gauge, range: {from: 0 bar(g), to: 60 bar(g)}}
  HV-012: {kind: drain valve, usual: shut}
  TV-001: {kind: three-way valve, positions: {left: [common-a], right: [common-b]}, usual: left}
  HV-008: {kind: stop valve, usual: shut}
  US-001: {kind: consumer, exhausts: yes}
  US-002: {kind: consumer}
  FU-001: {kind: fuse, rated: 10 A}
  SW-001: {kind: switch, usual: open}
connections:
  - CP-001 > NV-001 > AR-001
  - AR-001.relief > RV-001
  - AR-001.out > HV-006 > FI-001
  - FI-001.gauge > PI-003
  - FI-001.drain > HV-012 > bilge
  - FI-001.out > TV-001.common
  - TV-001.a > HV-008 > US-001
  - TV-001.b > US-002
  - AR-001.wire > FU-001 > SW-001 > AR-001.wire
operating_states:
  ready: {charged: [AR-001]}
  charging: {running: [CP-001], charged: [AR-001]}
"""
WATER = """\
system: BG
title: test piece
medium: sea water
components:
  SC-001: {kind: sea}
  HV-001: {kind: stop valve, usual: open}
  ST-001: {kind: strainer}
  PI-001: {kind: gauge, range: {from: 0 bar(g), to: 6 bar(g)}}
  HV-009: {kind: drain valve, usual: shut}
  PU-001: {kind: pump, type: centrifugal, usual: stopped, makes: 2 bar(g)}
  HV-002: {kind: stop valve, usual: open}
  TK-001: {kind: tank}
connections:
  - SC-001 > HV-001 > ST-001 > PU-001 > HV-002 > TK-001
  - ST-001.gauge > PI-001
  - ST-001.drain > HV-009 > bilge
operating_states:
  at rest: {}
"""


def plant_air() -> Plant:
    return plant_of(AIR)


def act(do: str, tag: str = "", to: str | None = None, see: tuple[str, str] | None = None) -> Step:
    seen = See(tag=see[0], value=see[1]) if see else None  # type: ignore[arg-type]
    return Step(do=do, tag=tag or None, to=to, see=seen)  # type: ignore[arg-type]


SHUT = act("Shut", "SA-HV-006", "shut")
ZERO = act("Open", "SA-HV-012", "open", ("SA-PI-003", "0 bar(g)"))
COVER = act("Remove the cover", "SA-FI-001")


def walked(*steps: Step, when: str | None = "ready", text: str = AIR) -> tuple[Walk, Plant, Ways]:
    plant = plant_of(text, text[8:10])
    ways = Ways(plant)
    state = (plant.system.operating_states or {}).get(when or "")
    return walk(ways, ways.begin(start_of(plant, state)), actions_of(plant, steps, {})), plant, ways


def faults(
    *steps: Step, when: str | None = "ready", text: str = AIR
) -> list[tuple[int, Fault, str]]:
    found, _, _ = walked(*steps, when=when, text=text)
    return [(met.step, met.trouble.fault, met.trouble.about) for met in found.met]


@pytest.mark.parametrize(
    ("step", "does", "position"),
    [
        (act("Open slowly", "SA-HV-006"), Does.MOVES, 0),
        (act("Close", "SA-HV-006"), Does.MOVES, 1),
        (act("Crack", "SA-HV-012"), Does.MOVES, 0),
        (act("Lock", "SA-HV-006", "shut"), Does.MOVES, 1),
        (act("Unlock", "SA-HV-006", "Closed"), Does.MOVES, 1),
        (act("Turn", "SA-TV-001", "right"), Does.MOVES, 1),
        (act("Isolate", "SA-HV-006"), Does.MOVES, 1),
        (act("Switch off", "SA-SW-001"), Does.MOVES, 1),
        (act("Lock", "SA-SW-001", "off"), Does.MOVES, 1),
        (act("Pull", "SA-FU-001"), Does.MOVES, 1),
        (act("Start", "SA-CP-001", "running"), Does.STARTS, None),
        (act("Wait until it stops by itself", "SA-CP-001", "stopped"), Does.STOPS, None),
        (act("Remove the cover", "SA-FI-001"), Does.OPENS_UP, None),
        (act("Take the cover off", "SA-FI-001"), Does.OPENS_UP, None),
        (act("Remove", "SA-RV-001"), Does.OPENS_UP, None),
        (act("Remove the seal", "SA-RV-001"), Does.UNKNOWN, None),
        (act("Renew", "SA-FI-001"), Does.REPLACES, None),
        (act("Refit", "SA-FI-001"), Does.REFITS, None),
        (act("Read", "SA-PI-003"), Does.LOOKS, None),
        (act("Look at the handle", "SA-TV-001", "left"), Does.LOOKS, 0),
        (act("Lock", "SA-HV-006"), Does.LOOKS, None),
        (act("Count the valves of the chest"), Does.LOOKS, None),
        (act("Turn", "SA-TV-001", "sideways"), Does.UNKNOWN, None),
        (act("Drain", "SA-HV-012"), Does.UNKNOWN, None),
        (act("Fill", "SA-CP-001", "tank full"), Does.UNKNOWN, None),
        (act("Fit a blank"), Does.UNKNOWN, None),
        (act("Open the cock behind the bench"), Does.UNKNOWN, None),
        (act("Open", "BG-HV-001", "open"), Does.UNKNOWN, None),
    ],
)
def test_what_a_step_does_is_told_from_its_words(
    step: Step, does: Does, position: int | None
) -> None:
    (found,) = actions_of(plant_air(), [step], {})

    assert (found.does, found.position) == (does, position)


def test_a_step_that_is_not_understood_moves_nothing_and_is_listed() -> None:
    found, plant, _ = walked(act("Turn", "SA-HV-006", "half"), act("Read", "SA-PI-003"))

    assert found.not_followed == (1,)
    assert stands(plant, found.end, "SA-HV-006") == "open"


def test_a_valve_in_no_list_of_the_state_is_at_its_usual_position() -> None:
    found, plant, _ = walked()

    assert stands(plant, found.start, "SA-HV-006") == "open"
    assert stands(plant, found.start, "SA-HV-012") == "shut"


def test_without_a_state_a_valve_is_not_known_and_a_fuse_is_in() -> None:
    found, plant, _ = walked(when=None)

    assert stands(plant, found.start, "SA-HV-006") == ""
    assert stands(plant, found.start, "SA-TV-001") == ""
    assert stands(plant, found.start, "SA-FU-001") == "in"
    assert stands(plant, found.start, "SA-CP-001") == "stopped"


def test_a_valve_that_is_locked_and_secured_is_known_without_a_state() -> None:
    text = AIR.replace(
        "HV-006: {kind: stop valve, usual: open}",
        "HV-006: {kind: stop valve, usual: open, locked: open, secured: seal 7, round: engine room}",
    )

    found, plant, _ = walked(when=None, text=text)

    assert stands(plant, found.start, "SA-HV-006") == "open"


def test_a_filter_is_opened_safely_once_it_is_shut_off_and_let_out() -> None:
    assert faults(SHUT, ZERO, COVER) == []


def test_a_filter_that_is_shut_off_and_not_let_out_may_still_hold_pressure() -> None:
    assert faults(SHUT, COVER) == [(2, Fault.OPENED, "SA-FI-001")]


def test_a_filter_that_an_open_way_feeds_from_a_machine_holds_pressure_with_its_drain_open() -> (
    None
):
    assert faults(ZERO, COVER, when="charging") == [(2, Fault.OPENED, "SA-FI-001")]


def test_what_stands_open_is_reached_when_the_valve_before_it_is_opened() -> None:
    steps = (SHUT, ZERO, COVER, act("Open", "SA-HV-006", "open"))

    assert faults(*steps) == [(4, Fault.REACHED, "SA-FI-001")]


def test_a_reading_of_nothing_is_the_proof_of_zero() -> None:
    read = act("Read", "SA-PI-003", see=("SA-PI-003", "0 bar(g)"))

    assert faults(SHUT, read, COVER) == []


def test_a_reading_of_nothing_behind_a_shut_valve_proves_nothing_before_it() -> None:
    read = act("Read", "SA-PI-003", see=("SA-PI-003", "0 bar(g)"))

    assert faults(SHUT, read, act("Remove", "SA-RV-001")) == [(3, Fault.OPENED, "SA-RV-001")]


def test_a_user_that_lets_air_out_is_no_vent_to_count_on() -> None:
    opened = act("Open", "SA-HV-008", "open")

    assert faults(SHUT, opened, COVER) == [(3, Fault.OPENED, "SA-FI-001")]


def test_a_machine_that_fills_a_receiver_whose_relief_valve_is_out_must_never_be() -> None:
    text = AIR.replace("NV-001: {kind: check valve}", "NV-001: {kind: stop valve, usual: shut}")
    steps = (
        SHUT,
        act("Read", "SA-PI-003", see=("SA-AR-001", "0 bar(g)")),
        act("Remove", "SA-RV-001"),
        act("Start", "SA-CP-001", "running"),
        act("Open", "SA-NV-001", "open"),
    )

    found = faults(*steps, text=text)

    assert (4, Fault.SHUT_IN, "SA-CP-001") in found
    assert (5, Fault.REACHED, "SA-RV-001") in found
    assert (5, Fault.UNRELIEVED, "SA-AR-001") in found


def test_the_sea_and_an_open_tank_feed_whatever_is_open_to_them() -> None:
    lid = act("Open", "BG-ST-001")
    shut = act("Shut", "BG-HV-001", "shut")
    drain = act("Open", "BG-HV-009", "open", ("BG-PI-001", "0 bar(g)"))
    back = act("Shut", "BG-HV-002", "shut")

    assert faults(back, drain, lid, when="at rest", text=WATER) == [(3, Fault.OPENED, "BG-ST-001")]
    assert faults(shut, drain, lid, when="at rest", text=WATER) == [(3, Fault.OPENED, "BG-ST-001")]
    assert faults(shut, back, drain, lid, when="at rest", text=WATER) == []


def test_the_words_say_from_where_an_open_way_feeds_it() -> None:
    found, _, _ = walked(COVER)

    (met,) = found.met

    assert met.trouble.text == "which an open way feeds from SA-AR-001 through SA-HV-006"
    assert met.trouble.open == ("SA-HV-006",)


def test_a_valve_of_unknown_position_is_named_as_such() -> None:
    found, _, _ = walked(COVER, when=None)

    (met,) = found.met

    assert met.trouble.unknown == ("SA-HV-006",)


def slips_of(*steps: Step) -> dict[tuple[int, ...], Slip]:
    found, _, ways = walked(*steps)
    return {slip.steps: slip for slip in find_slips(ways, found)}


def test_a_valve_left_open_is_caught_by_the_gauge_that_reads_of_it() -> None:
    read = act("Read", "SA-PI-003", see=("SA-PI-003", "0 bar(g)"))
    running = act("Start", "SA-CP-001", "running")

    slips = slips_of(SHUT, running, ZERO, read, COVER)

    assert slips[1,].caught == 3
    assert not slips[1,].uncaught


def test_a_proof_that_is_left_out_is_caught_by_nothing() -> None:
    slips = slips_of(SHUT, ZERO, COVER)

    assert slips[2,].uncaught
    assert slips[2, 3].uncaught


def test_a_second_reading_catches_a_proof_that_is_left_out() -> None:
    read = act("Read", "SA-PI-003", see=("SA-PI-003", "0 bar(g)"))

    slips = slips_of(SHUT, ZERO, read, COVER)

    assert slips[2,].caught == 3
    assert not any(slip.uncaught for slip in slips.values())


def test_an_independent_second_person_catches_what_is_left_out() -> None:
    proof = Step(do=ZERO.do, tag=ZERO.tag, to=ZERO.to, see=ZERO.see, second=Second.INDEPENDENT)

    slips = slips_of(SHUT, proof, COVER)

    assert slips[2,].watched
    assert not slips[2,].uncaught
    assert slips[2, 3].uncaught


def test_a_slip_that_changes_nothing_is_no_slip() -> None:
    look = act("Count the valves")

    slips = slips_of(look, act("Open", "SA-HV-006", "open"), look)

    assert slips == {}
