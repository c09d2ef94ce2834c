"""What one looks things up in: the numbers, the places, the words, and everything from A to Z."""

import re
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.handbook import read_book
from garboard.views.a_to_z import a_to_z, must_be_found, named
from garboard.views.draft import Draft
from garboard.views.listing import Listing
from garboard.views.number_index import SameNumber, number_index, same_numbers
from garboard.views.page import Heading, Link, Table
from garboard.views.places import place_register, rooms
from garboard.views.runs import Strong, plain
from garboard.views.unknowns import unknowns
from garboard.views.word_register import word_register
from tests.demo_site import demo_handbook
from tests.golden_case import lay_out

SMALL = {
    "handbook.yml": """\
vessel: Skerry Light
defers_to: [flag, class, surveyor, local codes, licensed trades]
systems: {SA: starting-air}
edition: {life: 12 months}
as_of: 2031-10-01
cards: [{card: K-01, of: SA-AL-001, place: start-air panel}]
""",
    "systems/starting-air/system.yml": """\
title: Starting air
components:
  AR-001: {kind: receiver, name: Air receiver, place: "port side, forward", rated: 33 bar(g), volume: 250 L}
  RV-001: {kind: relief valve, name: Relief valve, place: "port side, on top", set: 30 bar(g), rated: "30.0 bar(g)"}
  PI-001: {kind: gauge, place: "Port side,  forward", rated: "435.113 psi(g)"}
  HV-001: {kind: stop valve, name: Bench valve, place: bench}
rounds:
  all: {every: 4 h, order: [{tag: HV-001, look: shut}]}
""",
    "systems/starting-air/al.md": """\
---
id: SA-AL-001
title: Low air
system: SA
wording: START AIR LOW
---
Start the compressor.
""",
    "glossary.yml": """\
receiver: {means: vessel that stores air, crew_words: [air bottle, årsak]}
""",
    "spares.yml": """\
SK-101: {name: valve disc, fits: [SA-RV-001], where: "port side, drawer 2"}
""",
}


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """A handbook of four parts, read from its files."""
    folder = Path(tmp_path_factory.mktemp("small"))
    lay_out(folder, SMALL)
    return read_book(folder)


def numbers(book: Book) -> dict[str, SameNumber]:
    return {f"{one.kind} {one.text}": one for one in same_numbers(book)}


def listed(draft: Draft) -> list[str]:
    """Every line of the lists of a page, as words."""
    return [
        " ".join((plain(item.head), *(plain(line) for line in item.lines)))
        for block in draft.blocks
        if isinstance(block, Listing)
        for item in block.items
    ]


def test_equal_numbers_stand_together_whatever_their_unit_and_digits(small: Book) -> None:
    thirty = numbers(small)["gauge pressure 30 bar(g)"]

    assert [value.address for value in thirty.values] == [
        "SA-PI-001.rated", "SA-RV-001.rated", "SA-RV-001.set",
    ]  # fmt: skip
    assert thirty.other == "435 psi(g)"
    assert thirty.anchor == "gauge-pressure-30-bar-g"


def test_numbers_that_only_lie_near_each_other_stay_apart(small: Book) -> None:
    assert set(numbers(small)) >= {"gauge pressure 30 bar(g)", "gauge pressure 33 bar(g)"}


def test_the_page_of_numbers_says_what_each_is_with_settings_and_limits_in_bold(
    small: Book,
) -> None:
    draft = Draft(small, "registers/numbers", "Numbers", "register")

    number_index(draft)

    (line,) = (one for one in listed(draft) if one.startswith("30 bar(g)"))
    assert line == (
        "30 bar(g) = 435 psi(g) rated, gauge, SA-PI-001, shown as 435.113 psi(g)"
        " rated, Relief valve, SA-RV-001, shown as 30.0 bar(g) set, Relief valve, SA-RV-001"
    )
    runs = [
        run
        for block in draft.blocks
        if isinstance(block, Listing)
        for item in block.items
        for cell in item.lines
        for run in cell
    ]
    assert Strong("set") in runs
    assert Link("SA-RV-001.set", "Relief valve, SA-RV-001") in runs


def test_every_number_with_a_unit_of_the_demo_stands_on_the_page_of_numbers_once() -> None:
    book = demo_handbook().book

    shown = [value.address for one in same_numbers(book) for value in one.values]

    wanted = [key for key, value in book.values.items() if value.unit.text and value.si is not None]
    assert sorted(shown) == sorted(wanted)
    anchors = [one.anchor for one in same_numbers(book)]
    assert len(set(anchors)) == len(anchors)


def test_no_number_of_the_demo_is_its_own_other_unit() -> None:
    found = [one for one in same_numbers(demo_handbook().book) if one.other]

    assert len(found) > 100
    assert [one.text for one in found if one.text == one.other] == []


def test_places_gather_before_the_comma_and_come_as_the_round_is_walked(small: Book) -> None:
    found = rooms(small)

    assert [room.name for room in found] == ["bench", "port side", "start-air panel"]
    assert [place.name for place in found[1].places] == [
        "port side, drawer 2", "port side, forward", "port side, on top",
    ]  # fmt: skip
    assert [key for key, _ in found[1].places[1].things] == ["SA-AR-001", "SA-PI-001"]


def test_the_page_of_places_names_parts_spares_and_cards(small: Book) -> None:
    draft = Draft(small, "registers/places", "Places", "register")

    place_register(draft)

    assert [block.text for block in draft.blocks if isinstance(block, Heading)] == [
        "port side", "Other places",
    ]  # fmt: skip
    assert listed(draft) == [
        "port side, drawer 2 SK-101 spare: valve disc",
        "port side, forward SA-AR-001 Air receiver SA-PI-001 gauge",
        "port side, on top SA-RV-001 Relief valve",
        "bench SA-HV-001 Bench valve",
        "start-air panel card K-01: Low air",
    ]


def test_a_word_leads_to_the_parts_aboard(small: Book) -> None:
    draft = Draft(small, "registers/glossary", "Words", "register")

    word_register(draft)

    (table,) = (block for block in draft.blocks if isinstance(block, Table))
    assert plain(table.rows[0].cells[-1]).split() == ["SA-AR-001"]
    assert "short" not in [column.title for column in table.columns]


def test_places_come_as_the_vessel_is_walked_and_not_as_its_systems_are_listed(
    tmp_path: Path,
) -> None:
    way = "rounds: {all: [bench, port side]}\n"
    walked = SMALL["systems/starting-air/system.yml"].replace(
        "order: [{tag: HV-001", "order: [{tag: AR-001, look: dry}, {tag: HV-001"
    )
    lay_out(tmp_path, {**SMALL, "handbook.yml": SMALL["handbook.yml"] + way,
                       "systems/starting-air/system.yml": walked})  # fmt: skip

    assert [room.name for room in rooms(read_book(tmp_path))] == [
        "bench", "port side", "start-air panel",
    ]  # fmt: skip


def test_what_is_said_of_one_number_twice_stands_once() -> None:
    draft = Draft(demo_handbook().book, "registers/numbers", "Numbers", "register")

    number_index(draft)

    lists = [block for block in draft.blocks if isinstance(block, Listing)]
    said = [[plain(line) for line in item.lines] for block in lists for item in block.items]
    assert max(map(len, said)) > 10
    assert [lines for lines in said if len(set(lines)) < len(lines)] == []


def test_a_certificate_that_is_none_is_no_name_to_look_under() -> None:
    names = {one.name.casefold() for one in named(demo_handbook().book)}

    assert "77-101" in names
    assert "none" not in names


def test_where_most_parts_lack_something_the_few_that_have_it_are_named() -> None:
    draft = Draft(demo_handbook().book, "registers/unknowns", "What we do not know", "register")

    unknowns(draft)

    cells = [
        plain(row.cells[0]) for one in draft.blocks if isinstance(one, Table) for row in one.rows
    ]
    (seen,) = (one for one in cells if one.startswith("photograph of 44 of 45 parts"))
    assert re.fullmatch(r"photograph of 44 of 45 parts, all but SA-[A-Z]{2}-\d{3}", seen)


def test_everything_from_a_to_z_leads_somewhere_under_its_letter(small: Book) -> None:
    draft = Draft(small, "registers/a-to-z", "A to Z", "register")

    a_to_z(draft)

    lines = listed(draft)
    for line in (
        "START AIR LOW the panel says: Low air",
        "SA-AL-001 alarm: Low air",
        "air bottle the crew says: receiver",
        "SK-101 part number: valve disc",
        "port side, drawer 2 place",
        "Bench valve part",
    ):
        assert line in lines
    letters = [block.text for block in draft.blocks if isinstance(block, Heading)]
    assert letters == sorted(letters)
    under_a = next(
        block for block in draft.blocks if isinstance(block, Listing) and block.label == "A"
    )
    assert "årsak" in [plain(item.head) for item in under_a.items]


def test_whatever_must_be_found_stands_from_a_to_z() -> None:
    book = demo_handbook().book

    names = {one.name for one in named(book)}

    wanted = must_be_found(book)
    assert len(wanted) > 700
    assert [name for _, name in wanted if " ".join(name.split()) not in names] == []


def test_every_name_of_the_list_leads_to_a_place_that_there_is() -> None:
    handbook = demo_handbook()

    lost = {
        one.target for one in named(handbook.book) if not handbook.find(one.target.split("#")[0])
    }

    assert lost == set()
