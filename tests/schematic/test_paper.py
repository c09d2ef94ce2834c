"""A drawing on paper: whole where it is read so, else cut, with nothing lost and what is left out named."""

import re
from dataclasses import replace
from itertools import pairwise

import pytest

from garboard.schematic.cuts import OVERLAP, Room, focus, stretches, within
from garboard.schematic.overlays import Overlay, isolation_overlay, new_overlay
from garboard.schematic.paper import UNDER_TITLE, draw_for_paper
from garboard.schematic.sheet import MOST_HIGH, MOST_WIDE, TEXT, Box, Sheet
from garboard.schematic.svg import DrawnSheet, base_id, picture_id
from garboard.schematic.title_block import TitleBlock
from garboard.systems.plant import Plant
from tests.demo_site import demo_handbook
from tests.schematic.pieces import piece, sheet_of

TITLE = TitleBlock("Starting air: schematic", "", "Lines never traced")
POINTS_A_MM = 72 / 25.4


def box_of(one: DrawnSheet) -> Box:
    """What of the sheet a piece shows."""
    left, top, wide, high = map(int, re.findall(r'viewBox="([^"]*)"', one.svg)[1].split())
    return Box(left, top, left + wide, top + high)


def letters(one: DrawnSheet, high: float) -> float:
    """Height of the letters of a drawing in points, in a room of 277 mm and so many across."""
    wide, tall = map(int, re.findall(r'viewBox="0 0 (\d+) (\d+)"', one.svg)[0])
    return TEXT * min(277 / wide, high / tall) * POINTS_A_MM


def test_a_sheet_that_is_read_whole_on_paper_is_not_cut() -> None:
    plant = piece()

    (only,) = draw_for_paper(sheet_of(plant), plant, TITLE)

    assert only.only == ""


def test_a_sheet_too_high_is_cut_into_pieces_that_overlap_and_leave_nothing_out() -> None:
    plant = piece()
    sheet = replace(sheet_of(plant), height=1000)

    whole, first, last = draw_for_paper(sheet, plant, TITLE)

    assert (whole.only, first.only, last.only) == ("screen", "paper", "paper")
    one, other = box_of(first), box_of(last)
    assert (one.left, one.top, other.right, other.bottom) == (0, 0, sheet.width, 1000)
    assert one.bottom - other.top >= OVERLAP
    assert f'href="#{base_id(sheet)}"' in first.svg
    assert "goes on in part 2" in first.svg
    assert "goes on in part 1" in last.svg


def test_a_sheet_too_wide_is_cut_beside_itself() -> None:
    plant = piece()
    sheet = replace(sheet_of(plant), width=2 * MOST_WIDE)

    _, *pieces = draw_for_paper(sheet, plant, TITLE)

    assert len(pieces) == 3
    assert all(box_of(one).right - box_of(one).left <= MOST_WIDE for one in pieces)
    assert box_of(pieces[-1]).right == sheet.width


def test_under_the_head_of_a_page_there_is_less_room() -> None:
    plant = piece()
    sheet = replace(sheet_of(plant), height=UNDER_TITLE + 10)

    _, first, _ = draw_for_paper(sheet, plant, TITLE, first=UNDER_TITLE)

    assert first.height <= UNDER_TITLE


def test_an_isolation_is_cut_to_its_boundary_and_says_what_is_left_out() -> None:
    plant = plant_of_demo()
    sheet = demo_handbook().book.sheets["SA"][0]
    dead = [plant.node("SA-AR-001")]
    overlay = isolation_overlay(plant, "SA-AR-001", dead, ["SA-HV-002", "SA-HV-006"], ["SA-HV-004"])

    whole, only = draw_for_paper(sheet, plant, TITLE, overlay)

    shown = box_of(only)
    here = {one.tag for one in sheet.symbols if within(one.box, shown)}
    assert {"SA-AR-001", "SA-HV-002", "SA-HV-006", "SA-HV-004", "SA-NV-001"} <= here
    assert "SA-AR-002" not in here
    left_out = re.findall(r"[A-Z]{2}-[0-9]{3}", only.svg.split("Not shown, or in part:")[1])
    assert {f"SA-{tag}" for tag in left_out[: len(sheet.symbols) - len(here)]} == {
        one.tag for one in sheet.symbols
    } - here
    assert f'id="{picture_id(sheet, overlay)}"' in whole.svg


def plant_of_demo() -> Plant:
    return demo_handbook().book.surveys["SA"].plant


@pytest.mark.parametrize("code", ["SA", "BG", "DC", "FO", "HY", "VN"])
def test_no_letter_of_a_drawing_of_the_demo_is_under_nine_points(code: str) -> None:
    book = demo_handbook().book
    plant = book.surveys[code].plant
    for sheet in book.sheets[code]:
        for overlay in (None, new_overlay(plant, [one.tag for one in sheet.symbols[:3]])):
            drawn = draw_for_paper(sheet, plant, TITLE, overlay)
            sizes = [letters(one, 160) for one in drawn if one.only != "screen"]
            assert sizes
            assert min(sizes) >= 9, f"{code} {sheet.number}: {sizes}"


def test_what_nothing_is_marked_on_is_kept_whole() -> None:
    plant = piece()
    sheet = sheet_of(plant)

    assert focus(sheet, Overlay("none", "Nothing")) == whole_of(sheet)
    assert focus(sheet, None) == whole_of(sheet)


def whole_of(sheet: Sheet) -> Box:
    return Box(0, 0, sheet.width, sheet.height)


@pytest.mark.parametrize("length", [300, 700, 701, 1400, 2000, 5000])
@pytest.mark.parametrize("foot", [0, 100, 400])
def test_pieces_of_a_length_cover_it_and_fit(length: int, foot: int) -> None:
    found = stretches(10, 10 + length, Room(UNDER_TITLE, foot))

    assert (found[0][0], found[-1][1]) == (10, 10 + length)
    assert found[0][1] - found[0][0] <= UNDER_TITLE
    assert all(end - start <= MOST_HIGH for start, end in found)
    assert found[-1][1] - found[-1][0] <= MOST_HIGH - foot
    assert all(one[1] - other[0] >= OVERLAP for one, other in pairwise(found))
