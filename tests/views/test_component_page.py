"""The page of a part opens with what it is looked up for."""

from garboard.records.hazard import Hazard
from garboard.views.messages import worst_first
from garboard.views.page import Facts, Page, Paragraph, Table
from garboard.views.runs import plain
from tests.demo_site import demo_handbook


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
