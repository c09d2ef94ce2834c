"""A system as drawn on its page: the sheets first, findings with their way, line-ups, the same in words."""

import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.errors import Where
from garboard.handbook import Handbook, read
from garboard.systems.finding import About, Level, PathFinding
from garboard.systems.line_up import LineUp
from garboard.views.page import Bullets, Facts, Heading, Link, Page, Paragraph, Schematic
from garboard.views.runs import plain
from garboard.views.schematics import MOST_DRAWN, finding_blocks
from tests.golden_case import Case
from tests.schematic.pieces import PIECE

TITLED = PIECE.replace("title: test piece", "title: Starting air")
STATES = "operating_states:\n  draining: {open: [HV-002], charged: [AR-001]}\n"


@pytest.fixture
def read_piece(tmp_path: Path) -> Callable[[str], Handbook]:
    """Read a handbook whose one system is as a text says."""

    def read_text(text: str) -> Handbook:
        files = {"systems/starting-air/system.yml": text}
        return read(Case("", "", "", files, "").write(tmp_path))

    return read_text


@pytest.fixture
def layout(read_piece: Callable[[str], Handbook]) -> Page:
    """The layout page of the piece, with one operating state."""
    return page_of(read_piece(TITLED + STATES), "starting-air/layout")


def page_of(handbook: Handbook, key: str) -> Page:
    return next(page for page in handbook.pages if page.key == key)


def sheets(page: Page) -> list[Schematic]:
    """The drawings that a screen shows; pieces of them for paper come after each."""
    return [one for one in page.blocks if isinstance(one, Schematic) and one.only != "paper"]


def test_the_sheets_stand_before_all_else_on_the_page(layout: Page) -> None:
    assert isinstance(layout.blocks[0], Schematic)
    assert "lines not traced" in layout.blocks[0].svg.casefold()


def test_every_id_on_the_page_stands_once_and_every_reference_has_its_id(layout: Page) -> None:
    text = "".join(one.svg for one in sheets(layout))

    ids = re.findall(r'\sid="([^"]*)"', text)
    assert sorted(ids) == sorted(name for one in sheets(layout) for name in one.ids)
    assert len(ids) == len(set(ids))
    assert all(one in ids for one in re.findall(r'href="#([^"]*)"', text))


def test_every_part_is_drawn_once_as_a_link(layout: Page) -> None:
    drawn = re.findall(r'href="find:([^"]*)"', layout.blocks[0].svg)  # type: ignore[union-attr]

    assert sorted(drawn) == [
        f"SA-{tag}" for tag in ("AR-001", "CP-001", "HV-001", "HV-002", "PI-001", "RV-001")
    ]


def test_the_page_says_in_words_what_is_drawn_and_what_is_believed(layout: Page) -> None:
    said = " ".join(
        plain(item) for one in layout.blocks if isinstance(one, Bullets) for item in one.items
    )

    assert "From SA-CP-001 through the filling line, SA-HV-001 to SA-AR-001" in said
    assert "SA-RV-001 (set 32 bar(g)) is always open to SA-AR-001" in said


def test_a_line_up_is_drawn_on_a_page_of_its_own_with_what_it_moves(
    read_piece: Callable[[str], Handbook],
) -> None:
    page = page_of(read_piece(TITLED + STATES), "starting-air/drawn-line-ups")

    usual, moved = sheets(page)
    assert usual.caption == "Starting air: schematic"
    assert moved.caption == "Starting air: lined up, draining"
    assert "find:SA-HV-002" in moved.svg
    assert "find:SA-HV-001" not in moved.svg
    assert f'<use href="#{usual.ids[-1]}"/>' in moved.svg


def test_without_an_operating_state_there_is_no_page_of_line_ups(
    read_piece: Callable[[str], Handbook],
) -> None:
    keys = {page.key for page in read_piece(TITLED).pages}

    assert "starting-air/layout" in keys
    assert "starting-air/drawn-line-ups" not in keys


def found_in(book: Book, count: int) -> Book:
    """The book with findings about its receiver, each unlike the others."""
    surveyed = book.surveys["SA"]
    findings = tuple(
        PathFinding(
            code="relief-cut-off",
            level=Level.DANGER,
            of=About("SA", "SA-AR-001", Where("systems/starting-air/system.yml", 1)),
            text=f"SA-AR-001 can be overfilled, {number}",
            help="take the valve away, or lock it",
            line=LineUp(shut=("SA-HV-001",)),
            nodes=(surveyed.plant.node("SA-AR-001"),),
            numbers=(str(number),),
        )
        for number in range(count)
    )
    return replace(book, surveys={"SA": replace(surveyed, findings=findings)})


def test_a_finding_is_told_with_its_help_and_drawn(read_piece: Callable[[str], Handbook]) -> None:
    book = found_in(read_piece(TITLED).book, 1)

    told, drawn, *pieces = finding_blocks(book, book.systems["SA"])

    assert isinstance(told, Paragraph)
    assert plain(told.runs).startswith(
        "Found, danger: SA-AR-001 can be overfilled, 0. Take the valve away, or lock it. Rule relief-cut-off,"
        " fingerprint "
    )
    assert isinstance(drawn, Schematic)
    assert drawn.caption == "SA-AR-001: relief-cut-off"
    assert "As drawn here: SA-HV-001 shut" in drawn.svg
    assert pieces
    assert all(isinstance(one, Schematic) and one.only == "paper" for one in pieces)


def test_of_many_findings_all_are_told_and_the_gravest_drawn(
    read_piece: Callable[[str], Handbook],
) -> None:
    book = found_in(read_piece(TITLED).book, MOST_DRAWN + 2)

    blocks = list(finding_blocks(book, book.systems["SA"]))

    drawn = [one for one in blocks if isinstance(one, Schematic) and one.only != "paper"]
    assert len(drawn) == MOST_DRAWN
    said = [plain(one.runs) for one in blocks if isinstance(one, Paragraph)]
    assert said[0] == f"Drawn are the {MOST_DRAWN} gravest of {MOST_DRAWN + 2}."
    assert len(said) == MOST_DRAWN + 3


def test_what_the_checks_do_not_ask_stands_on_the_page(layout: Page) -> None:
    titles = [one.text for one in layout.blocks if isinstance(one, Heading)]
    said = [plain(one.runs) for one in layout.blocks if isinstance(one, Paragraph)]

    assert "What the checks of the layout found" in titles
    assert any(words.startswith("Not checked: sizes, capacity, flow") for words in said)


def test_the_page_of_a_part_leads_to_the_sheet_that_shows_it(
    read_piece: Callable[[str], Handbook],
) -> None:
    page = page_of(read_piece(TITLED), "SA-HV-001")

    facts = dict(next(one for one in page.blocks if isinstance(one, Facts)).rows)
    assert facts["drawn on"] == (Link("starting-air/layout#sa-1", "sheet 1 of 1"),)
