"""The page of a part opens with what it is looked up for."""

from datetime import date
from pathlib import Path

from garboard.handbook import read
from garboard.records.hazard import Hazard
from garboard.views.messages import worst_first
from garboard.views.page import Facts, Page, Paragraph, Table
from garboard.views.runs import plain
from tests.demo_site import demo_handbook
from tests.golden_case import issue, lay_out
from tests.review.signed_sample import DECISION, PEOPLE, SYSTEM


def page_of(tag: str) -> Page:
    return next(page for page in demo_handbook().pages if page.key == tag)


def test_the_worst_two_messages_stand_in_full_and_the_others_are_named() -> None:
    hazards = [
        one
        for one in demo_handbook().book.of_kind(Hazard)
        if "DC-BA-001" in {str(tag) for tag in one.where_}
    ]
    names = [str(one.id) for one in worst_first(hazards)]
    page = page_of("DC-BA-001")
    assert len(names) > 2

    assert [one.source for one in page.messages] == names[:2]
    first = page.blocks[0]
    assert isinstance(first, Paragraph)
    assert all(name in plain(first.runs) for name in names[2:])


def test_the_last_test_and_the_spare_stand_in_the_first_facts() -> None:
    facts = next(block for block in page_of("SA-RV-002").blocks if isinstance(block, Facts))
    rows = {label: plain(line) for label, line in facts.rows}

    assert rows["last test"].startswith("SA-TR-006")
    assert rows["spare"] == (
        "SK-AIR-101 relief valve for receivers: 1 aboard, engine store, drawer 3"
    )


def test_how_it_is_made_safe_stands_before_its_numbers() -> None:
    blocks = page_of("SA-AR-001").blocks
    isolate = next(
        place
        for place, block in enumerate(blocks)
        if isinstance(block, Paragraph) and "Isolate" in plain(block.runs)
    )
    numbers = next(
        place
        for place, block in enumerate(blocks)
        if isinstance(block, Table) and block.caption == "Numbers"
    )

    assert isolate < numbers


def numbers_of(page: Page) -> dict[str, tuple[str, ...]]:
    """The row of each number, by what it is."""
    table = next(
        block for block in page.blocks if isinstance(block, Table) and block.caption == "Numbers"
    )
    return {plain(row.cells[0]): tuple(map(plain, row.cells)) for row in table.rows}


def test_a_number_of_a_safety_device_says_who_approved_it_and_what_the_edition_said() -> None:
    device, other = numbers_of(page_of("SA-PS-001")), numbers_of(page_of("SA-AR-001"))

    approved, since = device["set"][-2:]
    assert approved == (
        "SA-DD-003 approved 14 March 2031 by the remote reviewer, flooding and electrics;"
        " SA-CN-002: change installed"
    )
    assert since == "the same"
    assert device["rated"][-2] == "nobody: no decision or change fixes it"
    assert {len(row) for row in other.values()} == {5}


def test_a_number_that_moved_since_the_edition_or_that_nobody_approved_says_so(
    tmp_path: Path,
) -> None:
    path, log = "systems/starting-air/system.yml", "log/2031/2031-03-10-a.md"
    files = {path: SYSTEM, log: DECISION, "people.yml": PEOPLE}
    issued = issue(tmp_path, files, date(2031, 9, 1))
    moved = SYSTEM.replace("set: 18 bar(g)", "set: 19 bar(g), cuts_in: 21 bar(g)")
    lay_out(tmp_path, {**files, **issued, path: moved})

    page = next(page for page in read(tmp_path).pages if page.key == "SA-PS-001")

    rows = numbers_of(page)
    assert rows["set"][-2:] == (
        "SA-DD-003 not approved: in check",
        "18 bar(g)",
    )
    assert rows["cuts in"][-2:] == (
        "nobody: no decision or change fixes it",
        "nothing: it is new",
    )


def test_an_approval_that_lapsed_is_told_as_lapsed(tmp_path: Path) -> None:
    signed = DECISION.replace("state: in check", "state: approved").replace(
        "---\nAs [",
        "signed:\n  - {capacity: approver, by: reviewer-2, on: 2031-03-13, to: approved,"
        " digest: 0123456789abcdef}\n---\nAs [",
    )
    lay_out(
        tmp_path,
        {
            "systems/starting-air/system.yml": SYSTEM,
            "log/2031/2031-03-10-a.md": signed,
            "people.yml": PEOPLE,
        },
    )

    page = next(page for page in read(tmp_path).pages if page.key == "SA-PS-001")

    assert numbers_of(page)["set"][-2:] == (
        "SA-DD-003 the approval has lapsed",
        "none yet",
    )
