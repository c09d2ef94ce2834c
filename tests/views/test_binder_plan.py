"""Which pages a binder holds, and that none is lost from it in silence."""

from collections.abc import Iterable
from dataclasses import replace

import pytest

from garboard.handbook import Handbook
from garboard.views.binder_plan import BinderPlan, plan_book, plan_system
from garboard.views.left_out import (
    KEYS_LEFT_OUT,
    KINDS_LEFT_OUT,
    ONLY_IN_ITS_BINDER,
    SOURCES_ELSEWHERE,
)
from garboard.views.page import Page
from tests.demo_site import demo_handbook

SOME_PRINTED = ("isolation", "edition")
"""Kinds of which a book holds some pages."""


@pytest.fixture(scope="module")
def demo() -> Handbook:
    return demo_handbook()


@pytest.fixture(scope="module")
def whole(demo: Handbook) -> BinderPlan:
    return plan_book(demo.book, demo.pages)


def keys(pages: Iterable[Page]) -> list[str]:
    return [page.key for page in pages]


def of_starting_air(demo: Handbook) -> BinderPlan:
    return plan_system(demo.book, demo.pages, demo.book.systems["SA"])


def test_every_page_is_printed_or_the_cover_says_where_it_is(
    demo: Handbook, whole: BinderPlan
) -> None:
    printed = {page.key for page in whole.pages}
    unwritten = {(one.title, title) for one in whole.chapters for title in one.unwritten}

    for page in demo.pages:
        if (page.system_title, page.title) in unwritten:
            continue
        by_rule = page.key in KEYS_LEFT_OUT or page.kind in KINDS_LEFT_OUT
        elsewhere = page.kind in ONLY_IN_ITS_BINDER or page.key == "registers/sources"
        assert page.key in printed or by_rule or elsewhere or page.kind in SOME_PRINTED, page.key
    assert len(printed) == len(whole.pages), "a page stands twice"


def test_what_the_whole_book_leaves_to_the_binder_of_a_system_stands_there(
    demo: Handbook, whole: BinderPlan
) -> None:
    printed = set(keys(whole.pages))
    own = {key for one in demo.binders if one.system for key in keys(one.pages)}
    left = [page for page in demo.pages if page.kind in ONLY_IN_ITS_BINDER]

    assert {page.kind for page in left} == set(ONLY_IN_ITS_BINDER)
    for page in left:
        assert page.key not in printed, page.key
        assert page.key in own, page.key
    said = set(whole.left_out)
    assert said > set(ONLY_IN_ITS_BINDER.values())


def test_what_an_edition_changed_is_printed_once_and_the_sources_with_their_sections(
    demo: Handbook, whole: BinderPlan
) -> None:
    own = {key for one in demo.binders if one.system for key in keys(one.pages)}

    assert "editions/2-changes" in keys(whole.pages)
    assert "editions/2-changes" not in own
    assert "registers/sources" not in own.union(keys(whole.pages))
    assert SOURCES_ELSEWHERE in whole.left_out


def test_a_list_on_which_nothing_is_recorded_is_named_in_the_contents_and_takes_no_sheet(
    demo: Handbook,
) -> None:
    plan = plan_system(demo.book, demo.pages, demo.book.systems["VN"])
    chapter = next(one for one in plan.chapters if one.title == "Ventilation")

    assert chapter.unwritten == (
        "Procedures", "Watch rounds", "Alarms", "Faults", "Why it is so", "What went wrong",
    )  # fmt: skip
    assert "ventilation/procedures" not in keys(plan.pages)
    assert {"ventilation/open-against-it", "ventilation/hazards"} <= set(keys(plan.pages))
    assert of_starting_air(demo).chapters[1].unwritten == ()


def test_a_record_without_a_page_is_told_under_a_printed_page_of_its_system(
    whole: BinderPlan,
) -> None:
    printed = {page.path for page in whole.pages}

    assert whole.told_under["id/SA-HZ-001"] == "starting-air/hazards"
    assert whole.told_under["id/BG-FN-001"] == "bilge-fire/what-went-wrong"
    assert set(whole.told_under.values()) <= printed
    assert not set(whole.told_under) & printed


def test_whether_it_may_be_run_stands_before_the_systems(whole: BinderPlan) -> None:
    titles = [one.title for one in whole.chapters]

    assert keys(whole.chapters[1].pages) == ["registers/may-it-be-run", "registers/notices"]
    assert titles.index("Before anything is run") < titles.index("Starting air")


def test_a_page_of_a_kind_that_nobody_placed_is_printed_last_in_its_chapter(demo: Handbook) -> None:
    layout = next(page for page in demo.pages if page.key == "starting-air/layout")
    strange = replace(
        layout, key="starting-air/strange", path="starting-air/strange", kind="strange"
    )

    plan = plan_book(demo.book, (strange, *demo.pages))

    chapter = next(one for one in plan.chapters if one.title == "Starting air")
    assert chapter.pages[-1] == strange


def test_a_new_page_of_the_vessel_stands_among_the_registers(demo: Handbook) -> None:
    tags = next(page for page in demo.pages if page.key == "registers/tags")
    new = replace(tags, key="somewhere/new", path="somewhere/new", kind="strange")

    plan = plan_book(demo.book, (*demo.pages, new))

    chapter = next(one for one in plan.chapters if one.title == "Registers")
    assert chapter.pages[-1] == new


def test_what_is_wanted_in_a_hurry_comes_first(whole: BinderPlan) -> None:
    assert whole.chapters[0].title == "In an emergency"
    assert "registers/alarms" in keys(whole.chapters[0].pages)


def test_a_system_is_told_in_the_order_it_is_needed(demo: Handbook) -> None:
    found = keys(of_starting_air(demo).pages)
    order = [
        "starting-air/what-it-does", "starting-air/open-against-it", "starting-air/layout",
        "starting-air/normal-values", "starting-air/procedures", "SA-PR-001", "isolate/SA-AR-001",
        "starting-air/watch-rounds", "SA-AL-001", "SA-FT-001", "starting-air/hazards",
        "starting-air/maintenance", "SA-MT-001", "starting-air/tests", "starting-air/how-to-rebuild-it",
        "starting-air/why-it-is-so", "starting-air/what-went-wrong", "SA-CL-001", "registers/glossary",
        "editions",
    ]  # fmt: skip

    assert [key for key in found if key in order] == order


def test_the_binder_of_a_system_holds_no_other_system(demo: Handbook) -> None:
    assert {page.system for page in of_starting_air(demo).pages} == {"SA", ""}


def test_every_procedure_alarm_and_fault_is_in_the_whole_book(
    demo: Handbook, whole: BinderPlan
) -> None:
    asked = {page.key for page in demo.pages if page.kind in ("procedure", "alarm", "fault")}

    assert asked <= set(keys(whole.pages))
    assert len(asked) > 30


def test_an_isolation_is_printed_where_a_procedure_was_written_for_it(demo: Handbook) -> None:
    plan = of_starting_air(demo)
    printed = {key for key in keys(plan.pages) if key.startswith("isolate/")}
    known = {page.key for page in demo.pages if page.key.startswith("isolate/SA")}

    assert "isolate/SA-AR-001" in printed
    assert len(printed) < len(known) / 4
    assert any(one.what == "isolations that no procedure was written for" for one in plan.left_out)


def test_the_working_of_calculations_is_in_the_binder_of_the_system(
    demo: Handbook, whole: BinderPlan
) -> None:
    assert "SA-CL-001" in keys(of_starting_air(demo).pages)
    assert "SA-CL-001" not in keys(whole.pages)
    assert any("working" in one.what for one in whole.left_out)


def test_of_the_editions_the_newest_is_printed(whole: BinderPlan) -> None:
    newest = max(
        int(one.key.split("/")[1])
        for one in whole.pages
        if one.key.startswith("editions/") and one.key.split("/")[1].isdigit()
    )

    assert f"editions/{newest - 1}" not in keys(whole.pages)
    assert "editions" in keys(whole.pages)
