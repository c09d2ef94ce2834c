"""What is supplied, filled, drained, flooded and shut off: the cases beside the golden ones."""

import pytest

from garboard.systems.finding import PathFinding
from tests.systems.pieces import survey_of


def found_in(code: str, text: str, system: str = "SA") -> dict[str, PathFinding]:
    """The findings of one code in a whole system.yml, by what they are about."""
    found = survey_of(f"system: {system}\n{text}", system).findings
    return {one.about: one for one in found if one.code == code}


IN_LINE = """medium: air
components:
  AR-001: {kind: receiver}
  SV-001: {kind: solenoid valve, fails: %s}
  SV-002: {kind: solenoid valve, fails: %s}
  SV-003: {kind: solenoid valve, fails: shut}
  EN-001: {kind: consumer, essential: yes, exhausts: yes}
  EN-002: {kind: consumer, exhausts: yes}
connections:
  - AR-001 > SV-001 > SV-002 > EN-001
  - AR-001 > SV-003 > EN-002
"""


@pytest.mark.parametrize(
    ("first", "second", "lost"),
    [
        ("shut", "shut", ("SA-SV-001", "SA-SV-002")),
        ("open", "shut", ("SA-SV-002",)),
        ("stays", "open", None),
    ],
)
def test_every_part_that_takes_the_supply_away_is_named(
    first: str, second: str, lost: tuple[str, ...] | None
) -> None:
    found = found_in("lost-supply", IN_LINE % (first, second))

    assert {about: one.at_fault for about, one in found.items()} == (
        {"SA-EN-001": lost} if lost else {}
    )


def test_a_pump_supplies_from_the_sea_and_from_no_store_of_its_own() -> None:
    text = """medium: sea water
components:
  SC-001: {kind: sea}
  PU-001: {kind: pump, type: centrifugal}
  US-001: {kind: consumer, essential: yes, exhausts: yes}
connections: [SC-001 > PU-001 > US-001]
"""
    found = found_in("single-point", text, "BG")

    assert found["BG-US-001"].at_fault == ("BG-SC-001", "BG-PU-001")
    assert found_in("lost-supply", text, "BG") == {}


def test_of_two_users_each_has_its_own_single_parts() -> None:
    text = """medium: air
components:
  AR-001: {kind: receiver}
  AR-002: {kind: receiver}
  HV-001: {kind: stop valve}
  HV-002: {kind: stop valve}
  EN-001: {kind: consumer, essential: yes}
  EN-002: {kind: consumer, essential: yes}
headers: {start header: {}}
connections:
  - AR-001 > start header
  - AR-002 > start header
  - start header > HV-001 > EN-001
  - start header > EN-001
  - start header > HV-002 > EN-002
"""
    found = found_in("single-point", text)

    assert {about: one.at_fault for about, one in found.items()} == {"SA-EN-002": ("SA-HV-002",)}


PUMPED = """medium: sea water
components:
  SC-001: {kind: sea}
  HV-001: {kind: stop valve, usual: shut, locked: shut, secured: seal 3, round: watch}
  PU-001: {kind: pump, type: %s}
  BW-001: {kind: compartment}
rounds: {watch: {every: 4 h, order: [{tag: HV-001, look: sealed}]}}
connections:
  - BW-001 > PU-001 > HV-001 > SC-001
"""


@pytest.mark.parametrize(
    ("pump", "level", "only"), [("centrifugal", "danger", ()), ("gear", "warning", ("BG-PU-001",))]
)
def test_water_runs_back_through_a_standing_centrifugal_pump_and_past_any_lock(
    pump: str, level: str, only: tuple[str, ...]
) -> None:
    found = found_in("back-flooding", PUMPED % pump, "BG")

    assert (found["BG-BW-001"].level, found["BG-BW-001"].at_fault) == (level, only)
    assert found["BG-BW-001"].line.open == ("BG-HV-001",)


def test_a_centrifugal_pump_that_reaches_only_its_own_suction_fills_nothing() -> None:
    text = """medium: fresh water
components:
  TK-001: {kind: tank}
  PU-001: {kind: pump, type: centrifugal}
  NV-001: {kind: check valve}
  TK-002: {kind: tank}
connections:
  - TK-001.out > PU-001 > delivery
  - TK-002.in > NV-001 > delivery
headers: {delivery: {}}
"""
    found = found_in("cannot-fill", text)

    assert found["SA-PU-001"].at_fault == ("SA-NV-001",)


def test_a_bottle_filled_ashore_is_not_held_to_be_unfilled() -> None:
    text = "medium: air\ncomponents:\n  AR-001: {kind: receiver}\nconnections: [AR-001 > deck]\n"

    assert found_in("cannot-fill", text) == {}


def test_each_mount_that_moves_wants_a_hose_of_its_own() -> None:
    text = """medium: oil
mounts: {hull: {moves: never}, engine: {moves: always}, pump frame: {moves: always}}
components:
  TK-001: {kind: tank, mount: hull}
  PU-001: {kind: pump, type: gear, mount: pump frame}
  RV-001: {kind: relief valve, set: 4 bar(g)}
  HS-001: {kind: hose, mount: hull}
  EN-001: {kind: consumer, mount: engine}
connections:
  - TK-001.out > PU-001 > EN-001
  - PU-001.out > RV-001
  - TK-001.hose > HS-001 > EN-001
"""
    found = found_in("no-flexible", text)

    assert {about: one.endangers for about, one in found.items()} == {
        "SA-PU-001": ("SA-TK-001",),
        "SA-EN-001": ("SA-PU-001",),
    }


def test_what_hangs_on_a_store_is_told_once_for_the_store() -> None:
    text = """medium: sea water
components:
  SC-001: {kind: sea}
  ST-001: {kind: strainer}
  HV-001: {kind: stop valve}
  PU-001: {kind: pump, type: centrifugal}
connections: [SC-001 > ST-001 > HV-001 > PU-001 > overboard]
"""
    found = found_in("cannot-isolate", text, "BG")

    assert {about: one.endangers for about, one in found.items()} == {"BG-SC-001": ("BG-ST-001",)}


def test_no_question_of_pressure_is_asked_of_a_direct_current_system() -> None:
    text = """medium: direct current
mounts: {hull: {moves: never}, engine: {moves: always}}
components:
  GE-001: {kind: alternator, makes: 60 A, mount: engine}
  CW-001: {kind: cable, rated: 100 A}
  BB-001: {kind: bus, rated: 200 A, mount: hull}
  SW-001: {kind: switch}
  LD-001: {kind: load}
connections: [GE-001 > CW-001 > BB-001 > SW-001 > LD-001]
"""
    assert survey_of(f"system: DC\n{text}", "DC").findings == ()
