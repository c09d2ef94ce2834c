"""Every system of the demo drawn: each part on a sheet and named, each sheet whole, small and the same twice."""

import re
from collections import Counter
from functools import cache
from xml.etree import ElementTree as Tree

import pytest

from garboard.book import Book
from garboard.handbook import read_book
from garboard.records.component_kinds import position_word
from garboard.schematic.layout import lay_out_sheets
from garboard.schematic.overlays import state_overlay
from garboard.schematic.svg import draw_sheet
from garboard.schematic.title_block import TitleBlock
from garboard.schematic.words import joined
from garboard.views.page import Facts, Table
from garboard.views.runs import plain
from tests.demo_site import demo_handbook, never_issued

CODES = ("SA", "BG", "DC", "FO", "HY", "VN")
LARGEST = 45_000
TITLE = TitleBlock("A system: schematic", trace="Lines last traced: SA-TR-013, 26 April 2031.")


@cache
def demo() -> Book:
    return read_book(never_issued())


def sheets(code: str) -> list[str]:
    plant = demo().surveys[code].plant
    return [draw_sheet(one, plant, TITLE).svg for one in demo().sheets[code]]


@pytest.mark.parametrize("code", CODES)
def test_every_part_stands_on_one_sheet_as_a_link_with_its_name(code: str) -> None:
    plant = demo().surveys[code].plant
    links = [one for svg in sheets(code) for one in Tree.fromstring(svg).iter("a")]  # noqa: S314 - our own

    counted = Counter(str(one.get("href")).removeprefix("find:") for one in links)
    assert counted == Counter(dict.fromkeys(plant.numbers, 1))
    for one in links:
        tag = str(one.get("href")).removeprefix("find:")
        assert str(one.get("aria-label")).startswith(f"{tag} {plant.components[tag].name}")


@pytest.mark.parametrize("code", CODES)
def test_each_sheet_is_small_and_its_ids_are_its_own(code: str) -> None:
    drawn = sheets(code)

    assert [len(svg) for svg in drawn if len(svg) > LARGEST] == []
    ids = re.findall(r'\sid="([^"]*)"', "".join(drawn))
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("code", CODES)
def test_a_sheet_is_drawn_to_the_same_bytes_when_it_is_laid_out_again(code: str) -> None:
    plant = demo().surveys[code].plant

    again = [draw_sheet(one, plant, TITLE).svg for one in lay_out_sheets(plant, plant.components)]

    assert again == sheets(code)


@pytest.mark.parametrize("code", CODES)
def test_the_words_say_every_connection(code: str) -> None:
    plant = demo().surveys[code].plant
    said = " ".join(joined(plant))

    for pipe in plant.pipes:
        assert pipe.a.name in said
        assert pipe.b.name in said
    assert all(tag in said for tag in plant.numbers)


@pytest.mark.parametrize("code", CODES)
def test_every_operating_state_is_drawn_over_its_sheet(code: str) -> None:
    plant = demo().surveys[code].plant
    for name, state in (plant.system.operating_states or {}).items():
        overlay = state_overlay(plant, name, state)
        drawn = [
            draw_sheet(one, plant, TITLE, overlay, on_base=True).svg for one in demo().sheets[code]
        ]
        labels = [
            str(one.get("aria-label"))
            for svg in drawn
            for one in Tree.fromstring(svg).iter("a")  # noqa: S314 - our own
        ]

        assert len(labels) == len(set(overlay.marks) | set(overlay.positions))
        for tag, position in overlay.positions.items():
            word = position_word(plant.components[tag].kind, position)
            assert any(one.startswith(tag) and f"shown {word}" in one for one in labels)


def test_a_switch_of_the_board_is_on_on_every_page_that_says_how_it_stands() -> None:
    pages = {page.key: page for page in demo_handbook().pages}

    tables = [one for one in pages["dc-power/layout"].blocks if isinstance(one, Table)]
    (row,) = (row for one in tables for row in one.rows if row.anchor == "DC-SW-001")
    facts = [one for one in pages["DC-SW-001"].blocks if isinstance(one, Facts)]

    assert plain(row.cells[4]) == "on"
    assert ("usual", "on") in [(name, plain(said)) for one in facts for name, said in one.rows]
