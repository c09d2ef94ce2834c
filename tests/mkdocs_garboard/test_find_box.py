"""The box to find things: by key and by touch, heard and seen, in the site and in a document of another build."""

import re
import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Page

from mkdocs_garboard.search import INDEX, index_script
from tests.conftest import Open
from tests.demo_site import Built
from tests.mkdocs_garboard.many_records import many_entries

pytestmark = pytest.mark.browser

BOX = ".find.whole input"


def typed(page: Page, text: str) -> None:
    """Type where the page puts the reader: into its box."""
    page.wait_for_function("() => document.activeElement.id === 'find-here'")
    page.keyboard.type(text)


def found(page: Page) -> list[str]:
    page.wait_for_selector(".find.whole .found a")
    return page.locator(".find.whole .found b").all_inner_texts()


def test_enter_opens_what_was_found_first(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "find.html")
    typed(page, "start air low")
    assert found(page)[0] == "START AIR LOW"

    page.keyboard.press("Enter")

    page.wait_for_url("**/id/SA-AL-001.html")


def test_arrows_walk_through_what_was_found_and_back(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "find.html")
    typed(page, "air receiver")
    titles = found(page)

    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")

    at = "() => (document.activeElement.querySelector('b') || {}).textContent"
    assert page.evaluate(at) == titles[1]
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowUp")
    assert page.evaluate("() => document.activeElement.id") == "find-here"
    page.keyboard.press("Escape")
    assert page.locator(".find.whole .found a").count() == 0


def test_each_answer_says_its_kind_system_and_review_state(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "find.html")
    typed(page, "SA-AL-001")
    found(page)

    first = page.locator(".find.whole .found a").first.inner_text()

    assert "alarm, Starting air" in first
    assert "NOT REVIEWED" in first
    status = page.locator(".find.whole .count")
    assert status.get_attribute("role") == "status"
    assert re.fullmatch(r"\d+ found", status.inner_text())


def test_a_page_that_must_not_be_used_is_shown_and_says_so(
    demo_built: Built, opened: Open, tmp_path: Path
) -> None:
    site = copied(demo_built, tmp_path)
    entries = tuple(one for one in many_entries(1) if one.kind == "procedure")
    text = index_script(entries).replace(entries[0].review, "DO NOT USE", 1)
    (site / INDEX).write_text(text, "utf-8")
    page = opened(site / "find.html")

    typed(page, entries[0].title)
    found(page)

    state = page.locator(".find.whole .found .never").first
    assert state.inner_text() == "DO NOT USE"
    ink, paper = state.evaluate(
        "e => [getComputedStyle(e).backgroundColor, getComputedStyle(document.querySelector('.sheet')).backgroundColor]"
    )
    assert ink != paper


@pytest.mark.parametrize("width", [320, 360, 1280])
def test_answers_are_large_enough_for_a_glove_and_nothing_runs_off(
    demo_built: Built, opened: Open, width: int
) -> None:
    page = opened(demo_built.site / "find.html", (width, 640))
    typed(page, "30 bar")
    found(page)
    page.wait_for_timeout(300)

    heights = page.evaluate(
        "() => [...document.querySelectorAll('.find.whole .found a, .find.whole input')].map(e => e.getBoundingClientRect().height)"
    )

    assert len(heights) > 3
    assert min(heights) >= 44
    assert page.evaluate("() => document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("asked", ["zzzz qqqq", "SA-RV-009"])
def test_where_nothing_is_found_the_lists_are_offered_and_enter_opens_none_of_them(
    demo_built: Built, opened: Open, asked: str
) -> None:
    page = opened(demo_built.site / "find.html", (360, 640))
    typed(page, asked)
    assert found(page) == [
        "Emergencies", "Alarms", "What the crew notices", "Everything from A to Z",
    ]  # fmt: skip
    assert "Try one word of it, or look here:" in page.inner_text(".find.whole .found")

    page.keyboard.press("Enter")
    page.wait_for_timeout(300)

    assert page.url.endswith("/find.html")
    sizes = page.eval_on_selector_all(
        ".find.whole a",
        "all => all.map(e => e.getBoundingClientRect()).map(r => [r.width, r.height])",
    )
    assert min(min(size) for size in sizes) >= 44


def test_answers_stay_where_they_are_while_one_types(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "find.html", (360, 640))
    page.wait_for_function("() => document.activeElement.id === 'find-here'")
    tops, said = set(), set()
    for key in "valve ships side port":
        page.keyboard.type(key)
        page.wait_for_selector(".find.whole .found a")
        tops.add(page.evaluate("() => document.querySelector('.find.whole .found a').getBoundingClientRect().top"))  # fmt: skip
        said.add(page.inner_text(".find.whole .count").partition(" ")[0])

    assert len(tops) == 1
    assert len(said) > 3


def test_the_box_stands_on_each_page_and_leads_from_there(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "id" / "SA-RV-001.html", (1280, 900))

    page.fill(".column .find input", "won't turn over")
    page.wait_for_selector(".column .found a")

    way = page.locator(".column .found a").first.get_attribute("href") or ""
    assert (demo_built.site / "id" / way).resolve() == demo_built.site / "id" / "SA-FT-001.html"


def test_without_scripts_the_page_leads_to_the_list_from_a_to_z(
    demo_built: Built, opened: Open
) -> None:
    page = opened(demo_built.site / "find.html", scripts=False)

    page.click("text=The list from A to Z")
    page.click(".jumps >> text=W")
    page.click(".listing >> text=won't turn over")

    assert page.url.endswith("/id/SA-FT-001.html")


def test_a_document_of_another_build_brings_its_list_and_its_ways(
    demo_built: Built, opened: Open, tmp_path: Path
) -> None:
    index = (demo_built.site / INDEX).read_text("utf-8")
    script = (demo_built.site / "assets" / "find.js").read_text("utf-8")
    alone = tmp_path / "alone.html"
    alone.write_text(
        "<!doctype html><meta charset=utf-8><title>alone</title><div class='find whole'><input>"
        f"<p class=count></p><ol class=found></ol></div><script>{index}</script><script>"
        "window.garboardWay=function(path,anchor){return '#'+path+(anchor?':'+anchor:'');};</script>"
        f"<script>{script}</script>",
        "utf-8",
    )
    page = opened(alone)

    page.fill("input", "30 bar")
    page.wait_for_selector(".found a")
    ways = [link.get_attribute("href") for link in page.locator(".found a").element_handles()[:2]]

    assert ways == [
        "#registers/numbers:gauge-pressure-30-bar-g", "#id/SA-CL-001:receiver-sizing.p_max",
    ]  # fmt: skip


def test_a_copy_that_lost_its_list_says_so(demo_built: Built, opened: Open, tmp_path: Path) -> None:
    site = copied(demo_built, tmp_path)
    (site / INDEX).unlink()
    page = opened(site / "find.html")

    typed(page, "air")
    page.wait_for_function("() => document.querySelector('.find.whole .count').textContent")

    assert "missing from this copy" in page.inner_text(".find.whole .count")


def copied(built: Built, to: Path) -> Path:
    """The page to find things and what it loads, to be changed."""
    site = to / "site"
    shutil.copytree(built.site / "assets", site / "assets")
    shutil.copy(built.site / "find.html", site)
    return site
