"""A sheet as SVG: whole without a style, harmless whatever is written in it, every part a named link."""

import re
from dataclasses import replace
from xml.etree import ElementTree as Tree

import pytest

from garboard.errors import Where
from garboard.schematic.overlays import (
    Mark,
    Overlay,
    finding_overlay,
    gone_overlay,
    isolation_overlay,
    new_overlay,
    state_overlay,
)
from garboard.schematic.pipe_strokes import draw_pipes
from garboard.schematic.svg import (
    base_id,
    draw_sheet,
)
from garboard.schematic.title_block import TitleBlock
from garboard.systems.finding import About, Level, PathFinding
from garboard.systems.line_up import LineUp
from garboard.systems.plant import Plant
from tests.schematic.pieces import HOSTILE, PIECE, piece, sheet_of
from tests.systems.pieces import plant_of

TITLE = TitleBlock(
    "Starting air: schematic", "NOT REVIEWED. Nobody has checked it.", "Lines never traced"
)


def drawn(plant: Plant | None = None, overlay: Overlay | None = None) -> Tree.Element:
    plant = plant or piece()
    return Tree.fromstring(draw_sheet(sheet_of(plant), plant, TITLE, overlay).svg)  # noqa: S314 - our own


def texts(svg: Tree.Element) -> str:
    return " ".join(one.text or "" for one in svg.iter("text"))


def finding(plant: Plant) -> PathFinding:
    return PathFinding(
        code="relief-cut-off",
        level=Level.DANGER,
        of=About("SA", "SA-AR-001", Where("systems/piece/system.yml", 1)),
        text="SA-CP-001 can fill SA-AR-001 past its rating",
        help="take the valve away",
        line=LineUp(shut=("SA-HV-001",), open=("SA-HV-002",)),
        nodes=(plant.node("SA-CP-001"), plant.node("SA-AR-001")),
    )


def test_every_part_is_a_link_named_in_words_in_the_order_of_flow() -> None:
    links = list(drawn().iter("a"))

    assert [one.get("href") for one in links] == [
        f"find:SA-{tag}" for tag in ("CP-001", "HV-001", "AR-001", "RV-001", "PI-001", "HV-002")
    ]
    assert (
        links[1].get("aria-label")
        == "SA-HV-001 Filling valve, stop valve, usually open, locked open"
    )
    assert "set 32 bar(g)" in str(links[3].get("aria-label"))
    assert "usually shut" in str(links[5].get("aria-label"))


def test_a_sheet_says_what_it_is_and_what_it_is_not() -> None:
    svg = drawn()

    assert svg.get("role") == "graphics-document"
    ids = {one.get("id"): one for one in svg.iter() if one.get("id")}
    assert ids[str(svg.get("aria-labelledby"))].text == "Starting air: schematic, sheet 1 of 2"
    assert "6 parts" in str(ids[str(svg.get("aria-describedby"))].text)
    said = texts(svg)
    for words in (
        TITLE.title,
        TITLE.review,
        TITLE.trace,
        "SA, sheet 1 of 2; all tags SA-",
        "not to scale",
    ):
        assert words in said


def test_a_plain_renderer_has_all_it_needs() -> None:
    text = draw_sheet(sheet_of(piece()), piece(), TITLE).svg

    assert not re.search(r"<style|style=|var\(|<script|\son\w+=", text)
    for one in drawn().iter():
        if one.get("class") in ("o", "paper", "tint", "mark"):
            assert (one.get("fill") or one.get("stroke") or "").startswith("#")


def test_what_a_contributor_writes_cannot_leave_its_place() -> None:
    hostile = PIECE.replace("name: Filling valve", f"name: '{HOSTILE}'").replace(
        "usual: open", "usual: open, place: '<b>&'"
    )
    plant = plant_of(hostile)
    sheet = sheet_of(plant)
    label = replace(sheet.labels[5], lines=(HOSTILE,))
    frame = replace(sheet.frames[0], words=HOSTILE)
    sheet = replace(sheet, labels=(label,), frames=(frame,))
    overlay = replace(finding_overlay(plant, finding(plant)), words=(HOSTILE,))

    text = draw_sheet(sheet, plant, TitleBlock(HOSTILE, HOSTILE, HOSTILE), overlay).svg

    assert "<script" not in text
    assert "<b>" not in text
    links = Tree.fromstring(text).iter("a")  # noqa: S314 - our own
    assert any(HOSTILE in str(one.get("aria-label")) for one in links)


def test_ids_are_unlike_over_all_sheets_of_a_page() -> None:
    plant = piece()
    sheet = sheet_of(plant)
    overlays = (finding_overlay(plant, finding(plant)), new_overlay(plant, ["SA-HV-001"]))

    text = (
        draw_sheet(sheet, plant, TITLE).svg + draw_sheet(replace(sheet, number=2), plant, TITLE).svg
    )
    text += "".join(draw_sheet(sheet, plant, TITLE, one, on_base=True).svg for one in overlays)

    ids = re.findall(r'\sid="([^"]*)"', text)
    assert len(ids) == len(set(ids))
    assert all(target in ids for target in re.findall(r'href="#([^"]*)"', text))


def test_a_drawing_is_whole_and_names_no_address() -> None:
    svg = draw_sheet(sheet_of(piece()), piece(), TITLE).svg

    assert "http" not in svg
    assert Tree.fromstring(svg).tag == "svg"  # noqa: S314 - our own


def test_the_bytes_depend_on_the_data_alone() -> None:
    once, again = (draw_sheet(sheet_of(piece()), piece(), TITLE).svg for _ in range(2))

    assert once == again


def test_a_further_drawing_of_a_sheet_takes_it_from_the_page() -> None:
    plant = piece()
    sheet = sheet_of(plant)
    overlay = finding_overlay(plant, finding(plant))

    alone = draw_sheet(sheet, plant, TITLE, overlay).svg
    after = draw_sheet(sheet, plant, TITLE, overlay, on_base=True).svg

    assert f'<use href="#{base_id(sheet)}"/>' in after
    assert "<use" not in alone
    assert len(after) < 0.7 * len(alone)


def test_the_legend_explains_what_is_used_and_nothing_else() -> None:
    said = texts(drawn())

    for words in (
        "start air",
        "drain",
        "sensing",
        "relief valve",
        "gauge (PI)",
        "stop valve, open, locked",
        "drain valve, shut",
    ):
        assert words in said
    assert "check valve" not in said


def test_each_service_has_its_own_line_and_pipes_run_on_to_what_is_drawn() -> None:
    plant = piece()

    paths = draw_pipes(sheet_of(plant), plant.system.services)

    assert 'stroke-width="4.4" d="M107,240H' in paths
    assert 'stroke-dasharray="12 4 2 4"' in paths
    assert 'stroke-dasharray="6 4"' in paths
    assert "A6,6 0 0 1" in paths


def test_a_finding_shows_the_way_the_positions_and_what_is_in_danger() -> None:
    plant = piece()
    overlay = finding_overlay(plant, finding(plant))

    svg = drawn(plant, overlay)

    assert overlay.marks == {
        "SA-AR-001": Mark.DANGER,
        "SA-HV-001": Mark.SHUT,
        "SA-HV-002": Mark.OPEN,
    }
    assert [one for one in svg.iter() if one.get("class") == "tint"]
    said = texts(svg)
    assert "As drawn here: SA-HV-001 shut and SA-HV-002 open" in said
    assert "the way in danger" in said
    names = {one.get("href"): str(one.get("aria-label")) for one in svg.iter("a")}
    assert set(names) == {"find:SA-AR-001", "find:SA-HV-001", "find:SA-HV-002"}
    assert "shown shut" in names["find:SA-HV-001"]
    assert names["find:SA-AR-001"].endswith("in danger")


def test_an_isolation_breaks_up_the_dead_section_and_frames_its_points() -> None:
    plant = piece()
    receiver = plant.parts[plant.numbers["SA-AR-001"]]
    overlay = isolation_overlay(plant, "SA-AR-001", receiver.nodes, ["SA-HV-001"], ["SA-HV-002"])

    text = draw_sheet(sheet_of(plant), plant, TITLE, overlay).svg

    assert 'stroke-width="2" stroke-dasharray="4 6"' in text
    assert overlay.marks == {"SA-HV-001": Mark.SHUT, "SA-HV-002": Mark.OPEN}
    assert overlay.positions == {"SA-HV-001": "shut", "SA-HV-002": "open"}


def test_a_line_up_shows_what_stands_otherwise_and_what_is_under_pressure() -> None:
    states = "operating_states:\n  ready: {open: [HV-002], running: [CP-001], charged: [AR-001]}\n"
    plant = plant_of(PIECE + states)
    state = (plant.system.operating_states or {})["ready"]

    overlay = state_overlay(plant, "ready", state)

    assert overlay.marks == {"SA-HV-002": Mark.OPEN, "SA-CP-001": Mark.RUNNING}
    assert plant.node("SA-AR-001") in overlay.bands
    assert plant.part("SA-HV-002").ports["out"] in overlay.bands  # type: ignore[union-attr]


def test_a_line_up_does_not_charge_what_a_shut_valve_keeps_apart() -> None:
    states = "operating_states:\n  apart: {shut: [HV-001], running: [CP-001]}\n"
    plant = plant_of(PIECE + states)
    state = (plant.system.operating_states or {})["apart"]

    overlay = state_overlay(plant, "apart", state)

    assert plant.node("SA-CP-001") in overlay.bands
    assert plant.node("SA-AR-001") not in overlay.bands


@pytest.mark.parametrize(("make", "mark"), [(new_overlay, Mark.NEW), (gone_overlay, Mark.GONE)])
def test_what_a_change_touches_is_framed_and_what_is_unknown_left_out(
    make: object, mark: Mark
) -> None:
    overlay = make(piece(), ["SA-HV-001", "SA-HV-099"])  # type: ignore[operator]

    assert overlay.marks == {"SA-HV-001": mark}


def test_a_service_that_is_not_on_the_sheet_is_not_in_its_legend() -> None:
    more = PIECE.replace("services:\n", "services:\n  return: {line: medium}\n")

    assert "return" not in texts(drawn(plant_of(more)))


def test_the_tag_of_a_framed_part_is_set_once_more_over_its_frame() -> None:
    plant = piece()

    text = draw_sheet(
        sheet_of(plant), plant, TITLE, new_overlay(plant, ["SA-HV-001", "SA-AR-001"])
    ).svg

    assert text.count(">HV-001</text>") == 2
    assert text.rindex(">HV-001</text>") > text.index('class="mark"')
    assert text.count(">AR-001</text>") == 1
