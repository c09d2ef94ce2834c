"""What the connections of a system.yml become as a graph."""

import pytest

from garboard.calc.kinds import PRESSURE, Type, absolute_of
from garboard.calc.units import read_unit
from garboard.calc.value import Value
from garboard.errors import Where
from garboard.records.base import Tag
from garboard.records.component import Component
from garboard.records.component_kinds import COMPONENT_KINDS
from garboard.systems.behaviour import BEHAVIOURS
from garboard.systems.medium import Medium, medium_of
from garboard.systems.settings import NO_LIMIT, settings_of
from tests.systems.pieces import faults_of, plant_of

FILLING = """\
system: SA
title: test piece
medium: air
services:
  start air: {line: heavy}
  oil: {medium: oil}
components:
  CP-001: {kind: compressor, type: piston, makes: 42 bar(g) +/- 1 bar}
  NV-001: {kind: check valve}
  HV-001: {kind: stop valve, usual: open, locked: open, secured: seal 7, round: engine room}
  HV-002: {kind: drain valve}
  AR-001: {kind: receiver, rated: 33 bar(g)}
  RV-001: {kind: relief valve, set: 32 bar(g) +/- 0.5 bar}
  TV-001: {kind: three-way valve, positions: {left: [common-a], right: [common-b]}, usual: right}
  RG-001: {kind: regulator, set: 8 bar(g) +/- 0.3 bar}
  US-001: {kind: consumer, exhausts: yes}
  US-002: {kind: consumer}
headers: {filling line: {service: start air}}
connections:
  - CP-001 > NV-001 > filling line > HV-001 > AR-001
  - AR-001.relief > RV-001
  - AR-001.drain > HV-002 > bilge
  - AR-001 > RG-001 > TV-001.common
  - TV-001.a > US-001
  - TV-001.b > US-002
"""
BAR = 1e5
ABSOLUTE = absolute_of(PRESSURE)


def value(low: float, high: float, of: Type) -> Value:
    """A pressure between two ends."""
    unit = read_unit("bar(a)")
    return Value("x", Where("system.yml"), of, unit, (low + high) / 2, low, high, "34 bar(a)")


def test_every_kind_behaves_somehow() -> None:
    assert set(BEHAVIOURS) == set(COMPONENT_KINDS)


def test_all_that_a_header_joins_is_one_node() -> None:
    plant = plant_of(FILLING)

    check, stop = plant.part("SA-NV-001"), plant.part("SA-HV-001")

    assert check is not None
    assert stop is not None
    assert check.ports["out"] == stop.ports["in"] == plant.headers["filling line"]
    assert check.ports["in"] != check.ports["out"]


def test_the_ports_of_a_vessel_are_nodes_of_their_own_and_always_joined() -> None:
    plant = plant_of(FILLING)

    receiver = plant.part("SA-AR-001")

    assert receiver is not None
    assert set(receiver.ports) == {"in", "relief", "drain", "out"}
    assert len(receiver.nodes) == 4
    assert not receiver.movable
    joined = {node for arc in receiver.positions[0] for node in arc}
    assert joined == set(receiver.nodes)


def test_a_number_is_taken_at_both_ends_of_its_tolerance() -> None:
    plant = plant_of(FILLING)

    (relief,) = plant.reliefs
    (source,) = plant.sources

    assert relief.lifts == pytest.approx(32.5 * BAR)
    assert relief.opens == pytest.approx(31.5 * BAR)
    assert source.makes == pytest.approx(43 * BAR)
    assert source.displacement


def test_an_absolute_rating_is_met_through_the_worse_end_of_the_atmosphere() -> None:
    part = Component(tag=Tag("SA-AR-001"), system="SA", kind="receiver", where=Where("system.yml"))
    values = {
        "SA-AR-001.rated": value(34e5, 34e5, ABSOLUTE),
        "site.atmosphere": value(0.95e5, 1.05e5, ABSOLUTE),
    }

    rated = settings_of(part, values)["rated"]

    assert rated.low == pytest.approx(32.95 * BAR)
    assert rated.high == pytest.approx(33.05 * BAR)


def test_a_relief_valve_that_leads_nowhere_blows_free() -> None:
    plant = plant_of(FILLING)

    assert plant.reliefs[0].outlet is None


def test_a_lock_counts_only_where_it_is_secured_and_on_a_round() -> None:
    held = plant_of(FILLING).part("SA-HV-001")
    loose = plant_of(FILLING.replace(", round: engine room", "")).part("SA-HV-001")

    assert held is not None
    assert loose is not None
    assert held.locked == 0
    assert loose.locked is None


def test_a_round_that_stops_at_a_lock_is_as_good_as_one_its_entry_names() -> None:
    walked = (
        "rounds:\n  wells:\n    every: 4 h\n    order:\n      - {tag: HV-001, look: seal whole}\n"
    )

    held = plant_of(FILLING.replace(", round: engine room", "") + walked).part("SA-HV-001")

    assert held is not None
    assert held.locked == 0


def test_a_drain_valve_is_usually_shut_and_a_stop_valve_open() -> None:
    plant = plant_of(FILLING.replace("usual: open, ", ""))

    drain, stop = plant.part("SA-HV-002"), plant.part("SA-HV-001")

    assert drain is not None
    assert stop is not None
    assert (drain.names[drain.usual], stop.names[stop.usual]) == ("shut", "open")


def test_a_three_way_valve_joins_what_its_positions_say() -> None:
    plant = plant_of(FILLING)

    valve = plant.part("SA-TV-001")

    assert valve is not None
    assert valve.coupled
    assert valve.names == ("left", "right")
    assert valve.usual == 1
    common, a = valve.ports["common"], valve.ports["a"]
    assert set(valve.positions[0]) == {(common, a), (a, common)}


def test_a_reducing_valve_passes_one_way_and_no_more_than_its_setting_at_its_highest() -> None:
    plant = plant_of(FILLING)

    valve = plant.part("SA-RG-001")

    assert valve is not None
    assert valve.positions == (((valve.ports["in"], valve.ports["out"]),),)
    assert valve.cap == pytest.approx(8.3 * BAR)
    assert not valve.carries_relief


def test_open_air_is_where_a_pipe_ends_outside_and_where_a_user_exhausts() -> None:
    plant = plant_of(FILLING)

    drain = plant.part("SA-HV-002")

    assert drain is not None
    assert plant.open_air == {drain.ports["out"], plant.node("SA-US-001")}


def test_a_tank_is_open_to_the_air_unless_it_is_rated() -> None:
    text = """\
system: SA
title: test piece
components: {TK-001: {kind: tank, volume: 1 m3}, US-001: {kind: consumer}}
connections: [TK-001 > US-001]
"""
    closed = text.replace("volume: 1 m3", "rated: 1 bar(g)")

    assert plant_of(text).open_air == {plant_of(text).node("SA-TK-001")}
    assert plant_of(closed).open_air == frozenset()


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("- CP-001 > NV-001.inn > AR-001", "a check valve has no port `inn`; it has in and out"),
        ("- CP-001 > TV-001 > AR-001", "SA-TV-001 is named here without a port"),
        ("- CP-001 > AR-001", "SA-NV-001 is in no connection"),
        ("- CP-001 > AR-001 > HV-001", "nothing is joined to the out of SA-HV-001"),
    ],
)
def test_what_cannot_be_laid_out_is_said_where_it_stands(written: str, said: str) -> None:
    text = FILLING.split("connections:", maxsplit=1)[0] + f"connections:\n  {written}\n"

    faults = faults_of(text)

    assert any(fault.text.startswith(said) for fault in faults), [str(one) for one in faults]


def test_a_port_that_is_not_there_gets_the_nearest_one_named() -> None:
    text = (
        FILLING.split("connections:", maxsplit=1)[0]
        + "connections:\n  - CP-001 > NV-001.inn > AR-001\n"
    )

    fault = next(one for one in faults_of(text) if one.code == "port-unknown")

    assert fault.help == "did you mean in?"
    assert (fault.where.line, fault.where.column) == (20, 14)


def test_a_loaded_text_with_no_connections_is_no_fault_of_its_parts() -> None:
    text = FILLING.split("connections:", maxsplit=1)[0]

    assert faults_of(text) == ()
    assert plant_of(text).count == 0


def test_a_service_may_run_another_medium_than_its_system() -> None:
    system = plant_of(FILLING).system

    assert medium_of(system) is Medium.GAS
    assert medium_of(system, "oil") is Medium.LIQUID


def test_current_has_sources_without_limit_and_caps_in_amperes() -> None:
    plant = plant_of(
        """\
system: DC
title: test piece
medium: direct current
components:
  BA-001: {kind: battery, makes: no limit, capacity: 100 Ah}
  FU-001: {kind: fuse, rated: 160 A}
  SW-001: {kind: switch, usual: open}
  LD-001: {kind: load, draws: 10 A}
connections: [BA-001 > FU-001 > SW-001 > LD-001]
""",
        "DC",
    )

    fuse = plant.part("DC-FU-001")

    assert fuse is not None
    assert plant.medium is Medium.CURRENT
    assert plant.sources[0].makes == NO_LIMIT
    assert (fuse.cap, fuse.names) == (160, ("in", "pulled"))
