"""A fitter expects: the trunk straight, relief and instruments above, drains below, pins kept."""

from dataclasses import replace

from garboard.schematic.layout import lay_out_sheets
from garboard.schematic.sheet import COLUMN, ROW, STEP, Heading, Placed, Sheet
from tests.systems.pieces import AIR, plant_of

PIECE = """components:
  CP-001: {kind: compressor, makes: 42 bar(g)}
  RV-001: {kind: relief valve, set: 33 bar(g)}
  HV-001: {kind: stop valve}
  AR-001: {kind: receiver, rated: 33 bar(g)}
  PI-001: {kind: gauge}
  HV-002: {kind: drain valve}
headers: {delivery line: {}}
connections:
  - CP-001 > delivery line > HV-001 > AR-001
  - delivery line > RV-001
  - AR-001.gauge > PI-001
  - AR-001.drain > HV-002 > bilge
"""


def drawn(text: str) -> Sheet:
    plant = plant_of(AIR + text)
    (sheet,) = lay_out_sheets(plant, plant.components)
    return sheet


def symbol(sheet: Sheet, tag: str) -> Placed:
    return next(one for one in sheet.symbols if one.tag == tag)


def test_the_trunk_runs_straight_from_left_to_right() -> None:
    sheet = drawn(PIECE)

    trunk = [symbol(sheet, tag).at for tag in ("SA-CP-001", "SA-HV-001", "SA-AR-001")]

    assert trunk == sorted(trunk)
    assert len({y for _, y in trunk}) == 1


def test_relief_valves_and_instruments_stand_above_and_drains_hang_below() -> None:
    sheet = drawn(PIECE)
    level = symbol(sheet, "SA-AR-001").at[1]

    assert symbol(sheet, "SA-RV-001").at[1] < level
    assert symbol(sheet, "SA-PI-001").at[1] < level
    assert symbol(sheet, "SA-HV-002").at[1] > level
    assert symbol(sheet, "SA-HV-002").heading is Heading.DOWN


def test_labels_leave_out_the_letters_of_the_system_and_give_the_setting() -> None:
    sheet = drawn(PIECE)

    labels = {label.of: label.lines for label in sheet.labels}

    assert labels["SA-RV-001"] == ("RV-001", "33 bar(g)")
    assert labels["SA-AR-001"] == ("AR-001", "33 bar(g)")


def test_a_pinned_part_keeps_its_place_among_the_others() -> None:
    pinned = PIECE.replace("makes: 42 bar(g)", "makes: 42 bar(g), at: [1, 2]")
    pinned = pinned.replace("{kind: stop valve}", "{kind: stop valve, at: [4, 2]}")

    sheet = drawn(pinned)
    one, other = symbol(sheet, "SA-CP-001"), symbol(sheet, "SA-HV-001")

    assert one.pinned
    assert other.at[0] - one.at[0] == 3 * COLUMN * STEP
    assert other.at[1] == one.at[1]
    assert other.draft[1] * ROW == 2 * ROW


def test_a_header_with_three_branches_is_a_standing_bar() -> None:
    text = PIECE + "  - delivery line > HV-003 > AR-002\n"
    text = text.replace(
        "headers:", "  HV-003: {kind: stop valve}\n  AR-002: {kind: receiver}\nheaders:"
    )

    (bar,) = drawn(text).bars

    assert bar.header == "delivery line"
    assert bar.start[0] == bar.end[0]


def test_the_flow_of_every_pipe_is_that_of_the_author() -> None:
    sheet = drawn(PIECE)
    valve = symbol(sheet, "SA-HV-001")
    enters = dict(valve.ports)["in"]

    (line,) = [line for line in sheet.lines if enters in line.points]

    assert line.points[-1] == enters


def test_a_system_without_connections_has_no_sheet() -> None:
    plant = plant_of(AIR + "components:\n  BW-001: {kind: compartment}\n")

    assert lay_out_sheets(plant, plant.components) == ()


def test_a_part_of_another_system_is_a_named_end() -> None:
    plant = plant_of(AIR + PIECE)
    other = replace(plant.components["SA-PI-001"], system="BG")

    (sheet,) = lay_out_sheets(plant, {**plant.components, "SA-PI-001": other})

    assert [(end.name, end.sheet) for end in sheet.off_sheet] == [("SA-PI-001", 0)]
    assert "SA-PI-001" not in {one.tag for one in sheet.symbols}
