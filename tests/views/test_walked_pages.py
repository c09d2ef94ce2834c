"""Line-ups and valves, and what came of the walk, as the pages of the demo say them."""

from dataclasses import replace

import pytest

from garboard.book import Book
from garboard.handbook import read_book
from garboard.records.procedure import Procedure, See, Step
from garboard.systems.survey import NOT_CHECKED
from garboard.systems.walked import walk_all
from garboard.views.draft import Draft
from garboard.views.line_up_page import line_ups
from garboard.views.page import Block, Bullets, Facts, Heading, Paragraph, Table
from garboard.views.runs import plain
from garboard.views.walked import walked_blocks
from tests.demo_site import DEMO


@pytest.fixture(scope="module")
def book() -> Book:
    return read_book(DEMO)


def line_up_page(book: Book, code: str) -> list[Block]:
    draft = Draft(book, "line-ups", "Line-ups and valves", "line-ups", system=code)
    line_ups(draft, book.systems[code])
    return draft.blocks


def tables(blocks: list[Block]) -> list[Table]:
    return [block for block in blocks if isinstance(block, Table)]


def words(blocks: list[Block]) -> str:
    found = []
    for block in blocks:
        if isinstance(block, Heading):
            found.append(block.text)
        elif isinstance(block, Paragraph):
            found.append(plain(block.runs))
        elif isinstance(block, Bullets):
            found += [plain(item) for item in block.items]
        elif isinstance(block, Facts):
            found += [f"{label}: {plain(line)}" for label, line in block.rows]
        elif isinstance(block, Table):
            found += [" | ".join(plain(one) for one in row.cells) for row in block.rows]
    return "\n".join(found)


def walk_of(book: Book, name: str) -> list[Block]:
    record = book.records[name]
    assert isinstance(record, Procedure)
    return list(walked_blocks(book, record))


def strainer(book: Book) -> Book:
    """The book with a strainer opened after one reading, and its lid put on in a step that names nothing."""
    written = book.records["BG-PR-003"]
    assert isinstance(written, Procedure)
    zero = See(tag="BG-PI-002", value="0 bar(g)")  # type: ignore[arg-type]
    steps = (
        Step(do="Shut", tag="BG-HV-001", to="shut"),  # type: ignore[arg-type]
        Step(do="Open", tag="BG-HV-009", to="open", see=zero),  # type: ignore[arg-type]
        Step(do="Open", tag="BG-ST-001"),  # type: ignore[arg-type]
        Step(do="Refit the lid"),
    )
    changed = replace(written, steps=steps)
    plants = {code: surveyed.plant for code, surveyed in book.surveys.items()}
    walks = {**book.walks, **walk_all([changed], plants, book.values)}
    return replace(book, walks=walks)


def test_every_valve_stands_in_every_line_up_with_room_for_a_tick(book: Book) -> None:
    valves, *states = tables(line_up_page(book, "SA"))

    tags = [plain(row.cells[0]) for row in valves.rows]
    assert "SA-HV-002" in tags
    assert "SA-CP-001" in tags
    assert "SA-US-001" not in tags
    assert len(states) == len(book.systems["SA"].operating_states or {})
    for state in states:
        assert [plain(row.cells[0]) for row in state.rows] == tags
        assert {plain(row.cells[-1]) for row in state.rows} == {
            "[\N{NO-BREAK SPACE}\N{NO-BREAK SPACE}\N{NO-BREAK SPACE}]"
        }


def test_what_stands_otherwise_than_usual_says_how_it_usually_stands(book: Book) -> None:
    said = words(line_up_page(book, "SA"))

    assert "Receiver 1 drain | under receiver 1 | open | usually shut |" in said


def test_a_switch_is_on_or_off_and_never_called_open(book: Book) -> None:
    blocks = line_up_page(book, "DC")

    stands = {plain(cell) for table in tables(blocks) for row in table.rows for cell in row.cells}
    assert {"on", "off", "essential", "main"} <= stands
    assert not {"open", "shut"} & stands
    assert "Switch off DC-SW-002" in words(blocks)


def test_the_moves_take_the_alternator_off_before_the_battery(book: Book) -> None:
    said = words(line_up_page(book, "DC")).partition("From at sea to main bank isolated")[2]

    alternator, battery = said.index("Switch off DC-SW-004"), said.index("Switch off DC-SW-001")
    assert alternator < battery


def test_the_page_of_moves_says_what_it_does_not_check_and_is_no_procedure(book: Book) -> None:
    said = words(line_up_page(book, "SA"))

    assert "This is no procedure" in said
    assert NOT_CHECKED in said


def test_a_system_without_a_layout_has_its_valves_all_the_same(book: Book) -> None:
    said = words(line_up_page(replace(book, surveys={}), "SA"))

    assert "Receiver 1 drain | under receiver 1 | open | usually shut |" in said
    assert "From one state to another" not in said


def test_a_procedure_says_from_where_it_was_walked_and_what_was_not_followed(book: Book) -> None:
    said = words(walk_of(strainer(book), "BG-PR-003"))

    assert "walked from: at rest" in said
    assert "still opened up: BG-ST-001" in said
    assert "not followed: step 4: nothing drawn here is moved there" in said
    assert NOT_CHECKED in said


def test_a_slip_that_nothing_catches_says_so(book: Book) -> None:
    (slips,) = tables(walk_of(strainer(book), "BG-PR-003"))

    assert [plain(row.cells[2]) for row in slips.rows] == ["nothing", "nothing"]


def test_a_slip_that_is_caught_names_the_step_and_the_gauge(book: Book) -> None:
    (slips,) = tables(walk_of(book, "DC-PR-002"))

    caught = [plain(row.cells[2]) for row in slips.rows]
    assert "step 5: DC-EI-001 shows it" in caught
    assert "nothing" not in caught


def test_a_procedure_that_touches_nothing_in_the_layout_says_nothing_of_it(book: Book) -> None:
    assert walk_of(book, "SA-PR-008") == []
