"""Questions of isolation with their answers, each worked out by hand and compared whole.

An answer says what to stop, what to shut (`<` the second block behind another), what is emptied, for each side
what lets it out and what shows zero, the blocks to each store that stays alive (`of 2` where two are asked
for), who loses supply, and what stands against it.
"""

import re
import textwrap
from collections.abc import Iterator
from dataclasses import replace

from garboard.errors import Where
from garboard.reading.system_file import read_system
from garboard.systems.enquiry import Enquiry
from garboard.systems.finding import About, Level, PathFinding
from garboard.systems.isolation import Isolation, isolate
from garboard.systems.isolation_order import charging_points, order_of_shutting
from garboard.systems.laying import lay_out_plant
from garboard.systems.left_alive import comes_true
from garboard.systems.line_up import LineUp
from garboard.systems.plant import Plant
from garboard.systems.survey import survey
from tests.systems.pieces import plant_of, short


def answer(text: str, *tags: str, code: str = "SA") -> str:
    """The whole answer to one question, in a line a heading."""
    return told(isolate(plant_of(text, code), *(f"{code}-{tag}" for tag in tags)))


def told(found: Isolation) -> str:
    lines = {
        "stop": " ".join(short(tag) for tag in found.stop),
        "shut": " ".join(
            f"{'<' if one.outer else ''}{short(one.tag)}={one.position}" for one in found.points
        ),
        "empty": " ".join(short(tag) for tag in found.emptied),
        "sides": "; ".join(sides(found)),
        "alive": " ".join(
            f"{short(one.store.tag)}:{one.count}" + (f" of {one.needed}" if one.needed > 1 else "")
            for one in found.blocks
        ),
        "lost": " ".join(short(tag) for tag in found.lost),
        "against": " ".join(f"{one.code}({short(one.about)})" for one in found.faults),
    }
    said = "".join(f"{name}: {words}\n" for name, words in lines.items() if words)
    return re.sub(r"\b[A-Z]{2}-(?=[A-Z]{2}-)|the ", "", said)


def sides(found: Isolation) -> list[str]:
    said = []
    for side in found.sides:
        ways = ", ".join("+".join(short(tag) for tag in bleed.valves) for bleed in side.bleeds)
        shows = " ".join(short(tag) for tag in side.shows)
        way = f"open to {side.opens}" if side.opens else ways or "no bleed"
        said.append(f"{side.name} by {way} at {shows or 'nothing'}")
    return said


def expected(text: str) -> str:
    return textwrap.dedent(text).lstrip("\n")


AIR = """\
system: SA
medium: air
components:
  CP-001: {kind: compressor, type: piston, makes: 42 bar(g)}
  NV-001: {kind: check valve}
  HV-001: {kind: stop valve}
  AR-001: {kind: receiver, rated: 33 bar(g)}
  RV-001: {kind: relief valve, set: 33 bar(g)}
  PI-001: {kind: gauge}
  HV-002: {kind: drain valve}
  HV-003: {kind: stop valve}
  PI-002: {kind: gauge}
  HV-004: {kind: vent valve}
  EN-001: {kind: consumer, exhausts: yes}
headers: {engine line: {}}
connections:
  - CP-001 > NV-001 > HV-001 > AR-001
  - AR-001.relief > RV-001
  - AR-001.gauge > PI-001
  - AR-001.drain > HV-002 > bilge
  - AR-001.out > HV-003 > engine line > EN-001
  - engine line > PI-002
  - engine line > HV-004 > atmosphere
"""


def test_a_receiver_is_cut_off_where_the_compressor_could_fill_it_and_not_towards_its_user() -> (
    None
):
    found = answer(AIR, "AR-001")

    assert found == expected("""
        shut: HV-001=shut
        empty: AR-001
        sides: AR-001 by HV-002 at PI-001
        alive: CP-001:1
        lost: EN-001
    """)


def test_the_relief_valve_of_a_receiver_has_no_valve_of_its_own_so_the_receiver_is_emptied() -> (
    None
):
    found = answer(AIR, "RV-001")

    assert found == expected("""
        shut: HV-001=shut
        empty: AR-001
        sides: AR-001 by HV-002 at PI-001
        alive: CP-001:1
        lost: EN-001
    """)


def test_a_valve_that_is_worked_on_shuts_nothing_and_both_its_sides_are_proved() -> None:
    found = answer(AIR, "HV-003")

    assert found == expected("""
        shut: HV-001=shut
        empty: AR-001
        sides: AR-001 by HV-002 at PI-001; engine line by HV-004 at PI-002
        alive: CP-001:1
        lost: EN-001
    """)


def test_a_check_valve_is_no_isolation_so_the_compressor_behind_it_is_stopped() -> None:
    found = answer(AIR, "NV-001")

    assert found == expected("""
        stop: CP-001
        shut: HV-001=shut
        sides: inlet of NV-001 by no bleed at nothing; outlet of NV-001 by no bleed at nothing
        alive: AR-001:1
        against: isolation-unproved(inlet of NV-001) isolation-unproved(outlet of NV-001)
    """)


def test_a_receiver_behind_a_check_valve_may_leak_back_to_a_compressor_that_is_worked_on() -> None:
    found = answer(AIR, "CP-001")

    assert found == expected("""
        stop: CP-001
        shut: HV-001=shut
        sides: outlet of CP-001 by no bleed at nothing; outlet of NV-001 by no bleed at nothing
        alive: AR-001:1
        against: isolation-unproved(outlet of CP-001) isolation-unproved(outlet of NV-001)
    """)


def test_the_user_is_cut_off_by_one_valve_and_its_line_let_out() -> None:
    found = answer(AIR, "EN-001")

    assert found == expected("""
        shut: HV-003=shut
        sides: engine line by HV-004 at PI-002
        alive: CP-001:1 AR-001:1
        lost: EN-001
    """)


def test_the_drain_of_a_receiver_lets_it_out_before_it_is_taken_apart() -> None:
    found = answer(AIR, "HV-002")

    assert found == expected("""
        shut: HV-001=shut
        empty: AR-001
        sides: AR-001 by HV-002 at PI-001; outlet of HV-002 by open to bilge at nothing
        alive: CP-001:1
        lost: EN-001
    """)


def test_two_parts_worked_on_together_have_one_boundary() -> None:
    found = answer(AIR, "EN-001", "HV-003")

    assert found == answer(AIR, "HV-003")


SEA = """\
system: SA
medium: sea water
components:
  SC-001: {kind: sea}
  HV-001: {kind: stop valve}
  ST-001: {kind: strainer}
  PI-001: {kind: gauge}
  HV-003: {kind: drain valve}
  PU-001: {kind: pump, type: centrifugal, makes: 2 bar(g)}
  NV-001: {kind: check valve}
  HV-002: {kind: stop valve}
  OD-001: {kind: sea}
connections:
  - SC-001 > HV-001 > ST-001 > PU-001 > NV-001 > HV-002 > OD-001
  - ST-001.gauge > PI-001
  - ST-001.drain > HV-003 > bilge
"""


def test_both_openings_in_the_hull_are_shut_as_a_standing_pump_and_a_check_valve_hold_nothing() -> (
    None
):
    found = answer(SEA, "ST-001")

    assert found == expected("""
        stop: PU-001
        shut: HV-001=shut HV-002=shut
        sides: ST-001 by HV-003 at PI-001; outlet of NV-001 by no bleed at nothing
        alive: SC-001:1 OD-001:1
        against: isolation-unproved(outlet of NV-001)
    """)


def test_the_valve_at_the_sea_chest_cannot_be_isolated() -> None:
    found = answer(SEA, "HV-001")

    assert found == expected("""
        stop: PU-001
        shut: HV-002=shut
        sides: inlet of HV-001 by HV-001+HV-003 at nothing; ST-001 by HV-003 at PI-001; outlet of NV-001 by no bleed at nothing
        alive: OD-001:1
        against: isolation-incomplete(SC-001) isolation-unproved(inlet of HV-001) isolation-unproved(outlet of NV-001)
    """)


FUEL = """\
system: SA
medium: diesel fuel
components:
  TK-001: {kind: tank}
  HV-001: {kind: stop valve}
  FI-001: {kind: filter, rated: 6 bar(g)}
  HV-003: {kind: drain valve}
  CK-001: {kind: test cock}
  HV-002: {kind: stop valve}
  EN-001: {kind: consumer}
connections:
  - TK-001.out > HV-001 > FI-001 > HV-002 > EN-001
  - FI-001.drain > HV-003 > drain tank
  - FI-001.top > CK-001
"""


def test_an_open_tank_stands_above_the_filter_and_is_shut_off_for_its_head_alone() -> None:
    found = answer(FUEL, "FI-001")

    assert found == expected("""
        shut: HV-001=shut
        empty: FI-001
        sides: FI-001 by HV-003, CK-001 at CK-001
        alive: TK-001:1
        lost: EN-001
    """)


def test_a_tank_with_no_valve_before_the_filter_is_emptied_with_it() -> None:
    found = answer(FUEL.replace("TK-001.out > HV-001 >", "TK-001.out >"), "FI-001")

    assert found == expected("""
        empty: TK-001 FI-001
        sides: TK-001 by HV-003, CK-001 at CK-001
        lost: EN-001
    """)


def test_an_open_tank_of_a_gas_holds_nothing_and_lets_the_line_out() -> None:
    found = answer(FUEL.replace("diesel fuel", "air"), "FI-001")

    assert found == expected("""
        empty: FI-001
        sides: FI-001 by HV-001, HV-003, CK-001 at CK-001
    """)


def test_a_positive_pump_without_a_suction_valve_leaves_its_tank_to_be_emptied() -> None:
    text = """\
        system: SA
        medium: diesel fuel
        components:
          TK-001: {kind: tank}
          HV-002: {kind: drain valve}
          PU-001: {kind: pump, type: gear, makes: 6 bar(g)}
          HV-001: {kind: stop valve}
          TK-002: {kind: tank}
        connections:
          - TK-001.out > PU-001 > HV-001 > TK-002
          - TK-001.drain > HV-002 > drain tank
        """

    found = answer(textwrap.dedent(text), "PU-001")

    assert found == expected("""
        stop: PU-001
        shut: HV-001=shut
        empty: TK-001
        sides: TK-001 by HV-002 at nothing; outlet of PU-001 by no bleed at nothing
        alive: TK-002:1
        against: isolation-unproved(TK-001) isolation-unproved(outlet of PU-001)
    """)


TWO_RELIEFS = """\
system: SA
medium: air
components:
  CP-001: {kind: compressor, makes: 42 bar(g)}
  AR-001: {kind: receiver, rated: 33 bar(g)}
  TV-001: {kind: three-way valve, positions: {one: [common-a], two: [common-b]}, usual: one}
  RV-001: {kind: relief valve, set: 33 bar(g)}
  RV-002: {kind: relief valve, set: 33 bar(g)}
  HV-001: {kind: vent valve}
  CK-001: {kind: test cock}
connections:
  - CP-001 > AR-001
  - AR-001.relief > TV-001.common
  - TV-001.a > RV-001
  - TV-001.b > RV-002
  - TV-001.b > HV-001
  - TV-001.a > CK-001
"""


def test_a_changeover_under_two_relief_valves_is_turned_to_the_other_and_the_receiver_stays_in_use() -> (
    None
):
    found = answer(TWO_RELIEFS, "RV-001")

    assert found == expected("""
        shut: TV-001=two
        sides: inlet of RV-001 by CK-001 at CK-001
        alive: CP-001:1 AR-001:1
    """)


def test_a_changeover_that_already_points_away_is_locked_as_it_stands() -> None:
    found = answer(TWO_RELIEFS, "RV-002")

    assert found == expected("""
        shut: TV-001=one
        sides: inlet of RV-002 by HV-001 at nothing
        alive: CP-001:1 AR-001:1
        against: isolation-unproved(inlet of RV-002)
    """)


TWO_SUCTIONS = """\
system: SA
medium: sea water
components:
  SC-001: {kind: sea}
  HV-001: {kind: stop valve}
  BW-001: {kind: compartment}
  SN-001: {kind: stop-check valve}
  TV-001: {kind: three-way valve, positions: {sea: [a-common], bilge: [b-common]}, usual: sea}
  PU-001: {kind: pump, type: centrifugal, makes: 2 bar(g)}
  HV-002: {kind: drain valve}
  PI-001: {kind: gauge}
  US-001: {kind: consumer}
headers: {suction line: {}}
connections:
  - SC-001 > HV-001 > TV-001.a
  - BW-001 > SN-001 > TV-001.b
  - TV-001.common > suction line > PU-001 > US-001
  - suction line > HV-002 > bilge
  - suction line > PI-001
"""


def test_a_valve_that_turns_to_something_live_either_way_is_no_point() -> None:
    found = answer(TWO_SUCTIONS, "PU-001")

    assert found == expected("""
        stop: PU-001
        shut: HV-001=shut SN-001=shut
        sides: outlet of HV-001 by no bleed at nothing; outlet of SN-001 by no bleed at nothing; suction line by HV-002 at PI-001
        alive: SC-001:1 BW-001:1
        lost: US-001
        against: isolation-unproved(outlet of HV-001) isolation-unproved(outlet of SN-001)
    """)


def test_with_nothing_live_on_one_of_its_ways_the_same_valve_is_the_only_point() -> None:
    dry = TWO_SUCTIONS.replace("  - BW-001 > SN-001 > TV-001.b", "  - SN-001.out > TV-001.b")

    found = answer(dry.replace("BW-001: {kind: compartment}", "TE-001: {kind: tee}"), "PU-001")

    assert found == expected("""
        stop: PU-001
        shut: TV-001=bilge
        sides: suction line by HV-002 at PI-001
        alive: SC-001:1
        lost: US-001
    """)


LINE = """\
system: SA
medium: air
services: {high air: {medium: air, blocks: 2}}
components:
  AR-001: {kind: receiver, rated: 33 bar(g)}
  HV-001: {kind: stop valve}
  HV-002: {kind: stop valve}
  SV-001: {kind: solenoid valve}
  PI-001: {kind: gauge}
  HV-003: {kind: drain valve}
  US-001: {kind: consumer, exhausts: yes}
headers: {user line: {}}
connections:
  - {run: AR-001.out > WAY > user line, service: SERVICE}
  - user line > PI-001
  - user line > HV-003 > bilge
  - user line > US-001
"""


def line(way: str, service: str = "low air") -> str:
    return LINE.replace("WAY", way).replace("SERVICE", service)


def test_the_nearest_valve_is_the_point_and_the_one_behind_it_is_left_alone() -> None:
    found = answer(line("HV-001 > HV-002"), "US-001")

    assert found == expected("""
        shut: HV-002=shut
        sides: user line by HV-003 at PI-001
        alive: AR-001:1
        lost: US-001
    """)


def test_a_service_that_asks_for_two_blocks_gets_the_one_behind_as_well() -> None:
    found = answer(line("HV-001 > HV-002", "high air"), "US-001")

    assert found == expected("""
        shut: <HV-001=shut HV-002=shut
        sides: user line by HV-003 at PI-001
        alive: AR-001:2 of 2
        lost: US-001
    """)


def test_a_valve_that_turns_is_one_block_although_what_comes_crosses_it_twice() -> None:
    text = TWO_SUCTIONS.replace(
        "system: SA\n", "system: SA\nservices: {bilge: {blocks: 2}}\n"
    ).replace("  - TV-001.common > suction line > PU-001 > US-001", "  - TV-001.common > SC-001")
    text = text.replace(
        "  - BW-001 > SN-001 > TV-001.b", "  - {run: TV-001.b > US-001, service: bilge}"
    )
    text = text.replace("  - SC-001 > HV-001 > TV-001.a", "  - BW-001 > TV-001.a")
    kept = [row for row in text.splitlines() if "suction line" not in row and "> HV-002" not in row]

    found = isolate(plant_of("\n".join(kept) + "\n"), "SA-US-001")

    assert {one.store.tag: (one.count, one.needed) for one in found.blocks} == {
        "SA-SC-001": (1, 2),
        "SA-BW-001": (1, 2),
    }


def test_what_is_shut_in_behind_a_valve_with_nothing_live_beyond_is_named() -> None:
    found = isolate(plant_of(AIR), "SA-AR-001")

    assert found.beside == ("SA-HV-002", "SA-HV-003")
    assert found.shut_in == ("SA-HV-003",)


def test_one_valve_where_two_blocks_are_asked_is_a_single_barrier() -> None:
    found = answer(line("HV-001", "high air"), "US-001")

    assert found == expected("""
        shut: HV-001=shut
        sides: user line by HV-003 at PI-001
        alive: AR-001:1 of 2
        lost: US-001
        against: single-barrier(AR-001)
    """)


def test_a_solenoid_valve_is_no_isolation_so_the_receiver_before_it_is_emptied() -> None:
    found = answer(line("SV-001"), "US-001")

    assert found == expected("""
        empty: AR-001
        sides: AR-001 by no bleed at nothing; user line by HV-003 at PI-001
        lost: US-001
        against: isolation-unproved(AR-001)
    """)


def test_a_solenoid_valve_behind_a_stop_valve_parts_the_stretch_into_two_sides() -> None:
    found = answer(line("HV-001 > SV-001"), "US-001")

    assert found == expected("""
        shut: HV-001=shut
        sides: outlet of HV-001 by no bleed at nothing; user line by HV-003 at PI-001
        alive: AR-001:1
        lost: US-001
        against: isolation-unproved(outlet of HV-001)
    """)


def test_a_bypass_is_shut_with_the_valve_that_it_goes_round() -> None:
    text = line("HV-001") + "  - AR-001.bypass > HV-002 > user line\n"

    found = answer(text, "US-001")

    assert found == expected("""
        shut: HV-001=shut HV-002=shut
        sides: user line by HV-003 at PI-001
        alive: AR-001:1
        lost: US-001
    """)


def test_a_valve_with_both_ends_in_the_stretch_is_nothing_to_shut() -> None:
    text = """\
        system: SA
        medium: air
        components:
          AR-001: {kind: receiver, rated: 33 bar(g)}
          HV-001: {kind: stop valve}
          FI-001: {kind: filter, rated: 33 bar(g)}
          HV-002: {kind: stop valve}
          HV-003: {kind: drain valve}
          PI-001: {kind: gauge}
          US-001: {kind: consumer}
        headers: {before: {}, after: {}}
        connections:
          - AR-001 > HV-001 > before > FI-001 > after > US-001
          - before > HV-002 > after
          - before > HV-003 > bilge
          - after > PI-001
        """

    found = answer(textwrap.dedent(text), "FI-001")

    assert found == expected("""
        shut: HV-001=shut
        empty: FI-001
        sides: before by HV-003 at PI-001
        alive: AR-001:1
        lost: US-001
    """)


def test_a_gauge_behind_its_own_cock_proves_nothing_and_is_named() -> None:
    text = line("HV-001").replace("user line > PI-001", "user line > HV-002 > PI-001")

    found = isolate(plant_of(text), "SA-US-001")

    assert [(one.text, one.help) for one in found.faults] == [
        (
            "the user line has nothing that shows zero",
            "read SA-PI-001 only with SA-HV-002 seen open, or fit a gauge before it",
        )
    ]


def test_a_gauge_whose_scale_begins_above_zero_shows_no_zero() -> None:
    text = line("HV-001").replace(
        "{kind: gauge}", "{kind: gauge, range: {from: 5 bar(g), to: 40 bar(g)}}"
    )

    assert "user line by HV-003 at nothing" in answer(text, "US-001")


def test_neither_a_plug_nor_a_relief_valve_is_a_bleed() -> None:
    text = line("HV-001").replace("HV-003: {kind: drain valve}", "PG-001: {kind: plug}")
    text = text.replace("HV-003 >", "PG-001 >").replace(
        "  US-001:", "  RV-001: {kind: relief valve, set: 9 bar(g)}\n  US-001:"
    )

    found = answer(text + "  - user line > RV-001 > bilge\n", "US-001")

    assert found == expected("""
        shut: HV-001=shut
        sides: user line by no bleed at PI-001
        alive: AR-001:1
        lost: US-001
        against: isolation-unproved(user line)
    """)


def test_a_drain_with_two_valves_in_line_is_opened_from_the_line_on() -> None:
    text = line("HV-001").replace("user line > HV-003 >", "user line > HV-003 > HV-002 >")

    assert "user line by HV-003+HV-002 at PI-001" in answer(text, "US-001")


def test_a_relief_valve_that_blows_into_the_open_pipe_is_told() -> None:
    text = line("HV-001").replace(
        "  US-001:", "  RV-001: {kind: relief valve, set: 33 bar(g)}\n  US-001:"
    )

    found = isolate(plant_of(text + "  - AR-001.relief > RV-001 > user line\n"), "SA-US-001")

    assert [(one.tag, one.side) for one in found.relieving] == [("SA-RV-001", "the user line")]


def test_a_compressor_whose_stop_switch_goes_dead_is_locked_out_too() -> None:
    text = """\
        system: SA
        medium: air
        components:
          CP-001: {kind: compressor, makes: 42 bar(g)}
          HV-001: {kind: stop valve}
          HV-002: {kind: stop valve}
          AR-001: {kind: receiver, rated: 33 bar(g)}
          AR-002: {kind: receiver, rated: 33 bar(g)}
          PS-001: {kind: pressure switch, stops: CP-001, cuts_out: 30 bar(g)}
          PI-001: {kind: gauge}
          HV-003: {kind: drain valve}
        headers: {filling line: {}}
        connections:
          - CP-001 > filling line
          - filling line > HV-001 > AR-001
          - filling line > HV-002 > AR-002
          - AR-001.gauge > PS-001
          - AR-001.gauge > PI-001
          - AR-001.drain > HV-003 > bilge
        """

    found = isolate(plant_of(textwrap.dedent(text)), "SA-AR-001")

    assert told(found) == expected("""
        stop: CP-001
        shut: HV-001=shut
        empty: AR-001
        sides: AR-001 by HV-003 at PI-001
        alive: CP-001:1 AR-002:1
    """)
    assert [(one.tag, one.machines) for one in found.blind] == [("SA-PS-001", ("SA-CP-001",))]


BANKS = """\
system: DC
medium: direct current
components:
  BA-001: {kind: battery, makes: no limit}
  FU-001: {kind: fuse, rated: 100 A}
  SW-001: {kind: switch}
  BB-001: {kind: bus}
  EI-001: {kind: voltmeter}
  GE-001: {kind: alternator, makes: 60 A}
  CW-001: {kind: cable, rated: 100 A}
  FU-002: {kind: fuse, rated: 80 A}
  FU-003: {kind: fuse, rated: 40 A}
  DI-001: {kind: diode}
  BA-002: {kind: battery, makes: no limit}
  CB-001: {kind: breaker, rated: 20 A}
  LD-001: {kind: load}
connections:
  - BA-001 > FU-001 > SW-001 > BB-001
  - GE-001 > CW-001 > FU-002 > BB-001
  - BB-001 > DI-001 > FU-003 > BA-002
  - BB-001 > EI-001
  - BB-001 > CB-001 > LD-001
"""


def test_a_bus_is_cut_off_by_switches_where_there_are_some_and_by_fuses_where_not() -> None:
    found = answer(BANKS, "BB-001", code="DC")

    assert found == expected("""
        shut: SW-001=shut FU-002=pulled FU-003=pulled
        sides: inlet of BB-001 by no bleed at EI-001; inlet of FU-003 by no bleed at nothing
        alive: BA-001:1 GE-001:1 BA-002:1
        lost: LD-001
    """)


def test_the_cable_of_an_alternator_is_made_safe_by_stopping_it_and_pulling_the_fuse_at_the_bus() -> (
    None
):
    found = answer(BANKS, "CW-001", code="DC")

    assert found == expected("""
        stop: GE-001
        shut: FU-002=pulled
        sides: inlet of CW-001 by no bleed at nothing
        alive: BA-001:1 BA-002:1
    """)


def test_a_fuse_at_a_battery_cannot_be_isolated_from_it() -> None:
    found = answer(BANKS, "FU-001", code="DC")

    assert found == expected("""
        shut: SW-001=shut
        sides: inlet of FU-001 by no bleed at nothing; outlet of FU-001 by no bleed at nothing
        alive: GE-001:1 BA-002:1
        against: isolation-incomplete(BA-001)
    """)


def test_a_battery_is_itself_what_is_live() -> None:
    found = isolate(plant_of(BANKS, "DC"), "DC-BA-001")

    assert not found.possible
    assert [(one.text, one.help) for one in found.faults] == [
        (
            "DC-BA-001 is itself what is live, and nothing aboard empties it",
            "leave it to whoever may work on it alive, or exchange it whole",
        )
    ]


def test_a_user_behind_its_breaker_is_cut_off_by_it_alone() -> None:
    found = answer(BANKS, "LD-001", code="DC")

    assert found == expected("""
        shut: CB-001=shut
        sides: LD-001 by no bleed at nothing
        alive: BA-001:1 GE-001:1 BA-002:1
        lost: LD-001
    """)


def test_a_bilge_well_behind_nothing_but_a_foot_valve_says_why_it_is_not_cut_off() -> None:
    found = isolate(plant_of(TWO_SUCTIONS), "SA-SN-001")

    assert [(one.text, one.help) for one in found.faults if one.code == "isolation-incomplete"] == [
        (
            "no valve that can be locked stands between SA-SN-001 and SA-BW-001",
            "fit a valve that can be locked at it, or pump it dry and keep it watched",
        )
    ]


def test_what_goes_on_in_another_system_is_taken_for_live() -> None:
    text = line("HV-001") + "  - user line > BG-TE-001\n"
    other = "system: BG\ncomponents: {TE-001: {kind: tee}}\n"

    found = isolate(plant_of_both(text, other), "SA-US-001")

    assert [one.text for one in found.faults] == [
        "no valve that can be locked stands between SA-US-001 and BG-TE-001"
    ]


def test_machines_stop_first_supply_is_shut_before_what_leaks_back_and_fuses_come_last() -> None:
    sea = isolate(
        plant_of(
            SEA.replace(
                "  OD-001: {kind: sea}", "  OD-001: {kind: sea}\n  HV-009: {kind: stop valve}"
            ).replace("ST-001.drain >", "OD-001 > HV-009 > ST-001.flush\n  - ST-001.drain >")
        ),
        "SA-ST-001",
    )
    bus = isolate(plant_of(BANKS, "DC"), "DC-BB-001")

    assert [short(one.tag) for one in order_of_shutting(sea)] == ["HV-001", "HV-009", "HV-002"]
    assert [short(one.tag) for one in order_of_shutting(bus)] == ["SW-001", "FU-002", "FU-003"]


def test_what_charges_is_switched_off_before_the_battery_it_charges() -> None:
    switched = BANKS.replace(
        "  FU-002: {kind: fuse, rated: 80 A}",
        "  FU-002: {kind: fuse, rated: 80 A}\n  SW-002: {kind: switch}",
    ).replace("FU-002 > BB-001", "FU-002 > SW-002 > BB-001")

    bus = isolate(plant_of(switched, "DC"), "DC-BB-001")

    assert [short(one.tag) for one in order_of_shutting(bus)] == ["SW-002", "SW-001", "FU-003"]
    assert charging_points(bus) == {"DC-SW-002"}


def test_an_alternator_stands_before_any_point_that_parts_it_from_a_battery() -> None:
    plant = plant_of(BANKS, "DC")
    own_switch = plant_of(
        BANKS.replace("FU-002: {kind: fuse, rated: 80 A}", "FU-002: {kind: switch}"), "DC"
    )

    held_by_fuse = isolate(plant, "DC-BB-001")
    at_the_link = isolate(plant, "DC-DI-001")
    switched = isolate(own_switch, "DC-BB-001")
    itself = isolate(plant, "DC-CW-001")
    load = isolate(plant, "DC-LD-001")

    assert held_by_fuse.first == ("DC-GE-001",)
    assert [short(one.tag) for one in order_of_shutting(held_by_fuse)] == [
        "SW-001",
        "FU-002",
        "FU-003",
    ]
    assert switched.first == ("DC-GE-001",)  # its own switch parts it from the battery too
    assert at_the_link.first == ("DC-GE-001",)
    assert (itself.stop, itself.first) == (("DC-GE-001",), ())
    assert load.first == ()


def test_a_charger_is_switched_off_where_it_is_fed_only_where_no_switch_is_its_own() -> None:
    charger = BANKS.replace("kind: alternator", "kind: charger")
    switched = charger.replace("FU-002: {kind: fuse, rated: 80 A}", "FU-002: {kind: switch}")

    assert isolate(plant_of(charger, "DC"), "DC-BB-001").first == ("DC-GE-001",)
    assert isolate(plant_of(switched, "DC"), "DC-BB-001").first == ()


def test_a_battery_that_another_way_could_be_switched_to_counts_as_parted() -> None:
    selector = """\
system: DC
medium: direct current
components:
  GE-001: {kind: alternator, makes: 60 A}
  CW-001: {kind: cable, rated: 100 A}
  SW-001: {kind: switch}
  SW-002: {kind: switch}
  SW-003: {kind: switch, usual: "off"}
  BA-001: {kind: battery, makes: no limit}
headers: {first: {}, second: {}}
connections:
  - GE-001 > first > SW-001 > CW-001 > SW-002 > second > BA-001
  - first > SW-003 > second
"""
    found = isolate(plant_of(selector, "DC"), "DC-CW-001")

    assert found.first == ("DC-GE-001",)


def test_a_finding_that_these_very_valves_bring_about_is_told_and_one_of_the_dead_part_is_not() -> (
    None
):
    plant = plant_of(AIR)
    told_of = survey(plant)
    alive = finding("SA-CP-001", shut=("SA-HV-001",))
    dead = finding("SA-AR-001", shut=("SA-HV-001",))
    elsewhere = finding("SA-CP-001", shut=("SA-HV-001", "SA-HV-003"))

    found = isolate(plant, "SA-AR-001", survey=replace(told_of, findings=(alive, dead, elsewhere)))

    assert found.comes_true == (alive,)


def test_a_point_that_is_locked_open_elsewhere_has_every_check_asked_again() -> None:
    plant = plant_of(
        AIR.replace(
            "HV-001: {kind: stop valve}",
            "HV-001: {kind: stop valve, locked: open, secured: seal, round: watch}",
        )
    )
    asked = []

    def check(enquiry: Enquiry) -> Iterator[PathFinding]:
        asked.append(enquiry.net.held)
        yield finding("SA-CP-001")
        yield finding("SA-AR-001")

    section = isolate(plant, "SA-AR-001").section
    found = comes_true(plant, section, section.held, (), ((check, True),))

    assert asked == [{plant.numbers["SA-HV-001"]: 1}]
    assert [one.about for one in found] == ["SA-CP-001"]


def finding(about: str, shut: tuple[str, ...] = ()) -> PathFinding:
    return PathFinding(
        code="relief-cut-off",
        level=Level.DANGER,
        of=About("SA", about, Where("systems/piece/system.yml", 1, 1)),
        text="it is cut off",
        help="open it, or take it out",
        line=LineUp(shut=shut),
    )


def plant_of_both(text: str, other: str) -> Plant:
    """A system with the parts of another that its connections name."""
    file, beside = (
        read_system(one, "systems/piece/system.yml", code)
        for one, code in ((text, "SA"), (other, "BG"))
    )
    parts = {str(part.tag): part for part in (*file.components, *beside.components)}
    return lay_out_plant(file.system, parts, {})
