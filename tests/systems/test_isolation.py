"""Questions of isolation with their answers, each worked out by hand and compared whole.

An answer says what to stop, what to shut (`<` the second block behind another), what is emptied, for each side
what lets it out and what shows zero, the blocks to each store that stays alive (`of 2` where two are asked
for), who loses supply, and what stands against it.
"""

import textwrap

from garboard.systems.isolation import Isolation, isolate
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
    return said.replace("SA-", "").replace("the ", "")


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
