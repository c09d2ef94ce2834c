"""What records are found by: the words that Find knows of them, and the single words on paper."""

import re
from pathlib import Path

import pint
import pytest

from garboard.book import Book
from garboard.handbook import read_book
from garboard.views.found_by import each_once, found_by
from garboard.views.number_index import OTHERWISE
from garboard.views.page import Link, Strong
from garboard.views.runs import plain
from garboard.views.word_index import MOST, word_index
from garboard.views.word_register import aboard
from tests.demo_site import demo_handbook
from tests.golden_case import lay_out

SMALL = {
    "handbook.yml": """\
vessel: Skerry Light
defers_to: [flag, class, surveyor, local codes, licensed trades]
systems: {DC: dc-power}
edition: {life: 12 months}
as_of: 2031-10-01
""",
    "systems/dc-power/system.yml": """\
title: Direct current
components:
  BA-001: {kind: battery, name: Main battery bank, makes: 24 V}
  SW-001: {kind: switch, name: Main battery switch}
  LD-001: {kind: load, name: Navigation lights}
  LD-002: {kind: load, name: Lights of the bench}
""",
    "systems/dc-power/hz.md": """\
---
id: DC-HZ-001
title: Gas from a charging battery
system: DC
source: "hydrogen that smells of eggs at [](value:DC-BA-001.makes)"
where: [DC-BA-001]
message: {hazard: A charging battery makes gas., harm: It throws acid., avoid: Hear the fan.}
---
```calc spare
litres = 3 L  # of a puddle [assumed]
```

Written by hand.
""",
    "systems/dc-power/ft.md": """\
---
id: DC-FT-001
title: Batteries do not charge
system: DC
symptoms: [eggs and no charge]
---
Look.
""",
    "glossary.yml": """\
battery switch: {means: takes a bank off, crew_words: [big red isolator, isolator]}
navigation light: {means: tells others, crew_words: [nav light]}
""",
}


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """A handbook of four parts, a hazard and a fault, read from its files."""
    folder = Path(tmp_path_factory.mktemp("found"))
    lay_out(folder, SMALL)
    return read_book(folder)


def words_on_paper(book: Book) -> dict[str, list[str]]:
    _, listing = word_index(book)
    return {plain(item.head): plain(item.lines[0]).split(", ") for item in listing.items}


def test_a_record_is_found_by_what_it_tells_with_its_values_and_not_by_what_it_works_out(
    small: Book,
) -> None:
    said = found_by(small, small.records["DC-HZ-001"])

    assert "smells of eggs at 24 V" in said
    assert "throws acid" in said
    assert "Written by hand." in said
    assert "Main battery bank" in said
    assert "puddle" not in said


def test_a_word_is_taken_once_and_a_number_keeps_its_unit() -> None:
    kept = each_once("The pump at 30 bar, and the PUMP at 40 bar by the door", ["the door"])

    assert kept == "pump 30 bar 40 bar"


def test_a_word_of_the_trade_leads_to_the_parts_that_it_ends_the_name_of(small: Book) -> None:
    assert aboard(small, "battery switch") == ("DC-SW-001",)
    assert aboard(small, "navigation light") == ("DC-LD-001",)
    assert aboard(small, "battery") == ("DC-BA-001",)


def test_one_word_of_what_is_seen_leads_to_whatever_says_it(small: Book) -> None:
    said = words_on_paper(small)

    assert said["eggs"] == ["Batteries do not charge", "Gas from a charging battery"]
    assert said["battery"] == said["eggs"]
    assert said["red"] == ["means battery switch"]
    assert "the" not in said


def test_each_letter_leads_to_the_first_of_its_words(small: Book) -> None:
    jumps, listing = word_index(small)

    anchors = {item.anchor: plain(item.head) for item in listing.items if item.anchor}

    assert [(letter, anchors[way][0].upper()) for letter, way in jumps.ways] == [
        (letter, letter) for letter, _ in jumps.ways
    ]
    assert len(anchors) == len(jumps.ways) > 5


def test_single_words_of_the_demo_tell_something_and_lead_somewhere() -> None:
    book = demo_handbook().book
    _, listing = word_index(book)

    assert len(listing.items) > 200
    assert (
        max(sum(isinstance(run, Link) for run in item.lines[0]) for item in listing.items) <= MOST
    )
    assert all(isinstance(item.head[0], Strong) for item in listing.items)
    ways = {run.target for item in listing.items for line in item.lines for run in line if isinstance(run, Link)}  # fmt: skip
    assert {way for way in ways if "#" not in way and way not in book.records} == set()


def test_the_other_units_on_the_page_of_numbers_are_right() -> None:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    names = {
        "US gallon": "US_liquid_gallon", "imperial gallon": "imperial_gallon",
        "kgf/cm2": "kgf/cm**2", "m3/h": "m**3/h", "hp": "horsepower",
    }  # fmt: skip
    pairs = re.findall(r"([\d.]+) ([A-Za-z][\w/ ]*?) is ([\d.]+) ([\w/]+?)(?=[,;.](?:\s|$))", OTHERWISE)  # fmt: skip

    worked = [
        registry.Quantity(float(many), names.get(one, one)).to(names.get(other, other)).magnitude
        for many, one, _, other in pairs
    ]

    assert len(pairs) == OTHERWISE.count(" is ")
    assert worked == pytest.approx([float(number) for _, _, number, _ in pairs], rel=2e-3)
