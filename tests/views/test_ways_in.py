"""The ways in at night: first actions, what stands against a page in short, may it be run."""

import pytest

from garboard.errors import Diagnostic, Severity, Where
from garboard.views.at_once import AgainstIt, DoFirst, Looks, Tiles, WaysIn
from garboard.views.emergencies import groups_of, urgent
from garboard.views.in_short import in_short
from garboard.views.page import Link, Page, Table
from garboard.views.runs import plain
from tests.demo_site import Built, demo_handbook


def page(key: str) -> Page:
    return next(one for one in demo_handbook().pages if one.key == key)


def ways(key: str) -> WaysIn:
    return next(block for block in page(key).blocks if isinstance(block, WaysIn))


def notice(severity: Severity, text: str, code: str) -> Diagnostic:
    return Diagnostic(Where("a.md"), severity, text, "mend it", code)


def test_a_stop_is_never_cut_and_a_lapsed_signature_is_told_once() -> None:
    found = (
        notice(Severity.HOLD, "one signature lapsed: a moved", "sign-off-lapsed"),
        notice(Severity.HOLD, "another lapsed: b moved", "sign-off-lapsed"),
        notice(Severity.STOP, "it bursts: 33 bar(g) over 30 bar(g)", "over-rating"),
    )

    lines = in_short(found)

    assert [line.words for line in lines] == [
        "it bursts: 33 bar(g) over 30 bar(g)", "one signature lapsed, and 1 more",
    ]  # fmt: skip
    assert lines[1].full == ("one signature lapsed: a moved", "another lapsed: b moved")


def test_an_alarm_says_its_wording_then_what_is_done_first() -> None:
    alarm = page("SA-AL-001")
    kinds = [type(block) for block in alarm.blocks[:2]]

    assert alarm.title == "START AIR LOW"
    assert kinds == [DoFirst, AgainstIt]
    assert alarm.review.brief == (
        "NOT REVIEWED. Review of 1 March 2031 has lapsed: 2 things changed."
    )


def test_the_tiles_of_alarms_stand_from_a_to_z_with_first_action_and_what_stands_against_them() -> (
    None
):
    tiles = ways("registers/alarms").ways
    words = [one.link.text for one in tiles]
    low = next(one for one in tiles if one.link.text == "START AIR LOW")

    assert words == sorted(words)
    assert low.first == "Do first: Read SA-PI-001 and SA-PI-002: which one is low"
    assert "alarm priority: warning" in low.about
    assert low.against.startswith("NOT REVIEWED. Review of 1 March 2031 has lapsed")


def test_the_settings_of_alarms_are_listed_by_the_words_that_the_list_is_in_the_order_of() -> None:
    (settings,) = (block for block in page("registers/alarms").blocks if isinstance(block, Table))
    said = [plain(row.cells[0]) for row in settings.rows]

    assert settings.columns[0].title == "the panel says"
    assert said == [one.link.text for one in ways("registers/alarms").ways]
    low = next(row for row in settings.rows if plain(row.cells[0]) == "START AIR LOW")
    assert plain(low.cells[3]) == "low, 18 bar(g)"


def test_next_is_a_link_to_the_next_look_and_the_last_one_leads_to_stop() -> None:
    looks = next(block for block in page("SA-FT-001").blocks if isinstance(block, Looks)).looks

    assert looks[0].yes == (Link("SA-FT-001#look-2", "go to check 2"),)
    assert looks[0].no[0] == Link("SA-AL-001", "SA-AL-001")


def test_whatever_is_urgent_stands_in_the_index_for_emergencies() -> None:
    book = demo_handbook().book
    shown = {str(one.id) for group in groups_of(book) for one in group.records}

    assert {str(one.id) for one in urgent(book)} <= shown


def test_a_system_in_test_with_an_open_safety_finding_may_not_be_run() -> None:
    first = page("starting-air/open-against-it").blocks[0]

    assert isinstance(first, DoFirst)
    assert first.title == "No: 3 open safety findings, to be cleared before pressure or sailing."


def test_the_contents_lead_with_what_the_vessel_uses_and_end_with_records() -> None:
    handbook = demo_handbook()
    titles = [one.title for one in handbook.contents if one.pages]
    systems = [one.title for one in handbook.book.systems.values()]
    first, last = titles.index(systems[0]), titles.index(systems[-1])

    assert titles[1:first] == ["At once", "Rounds and upkeep", "Quick cards", "People and jobs"]
    assert titles[last + 1 :] == ["Look up", "Editions", "Registers", "Methods", "Manual"]
    placed = [key for one in handbook.contents for key in one.pages]
    assert len(placed) == len(set(placed))


def test_the_front_page_offers_the_round_what_is_due_and_the_list_from_a_to_z() -> None:
    tiles = next(block for block in page("index").blocks if isinstance(block, Tiles))
    offered = {link.target for link, _ in tiles.tiles}

    assert {"rounds/sea-watch", "registers/due", "registers/a-to-z"} <= offered


@pytest.mark.browser
def test_at_360_by_640_every_alarm_is_two_taps_away_and_its_first_action_above_the_bar(
    demo_built: Built, opened: object
) -> None:
    shown = opened(demo_built.site / "index.html")  # type: ignore[operator]
    shown.click(".bar a:has-text('Alarms')")
    hrefs = shown.eval_on_selector_all(".ways-in a", "all => all.map(a => a.href)")
    assert len(hrefs) == len(ways("registers/alarms").ways)
    for href in hrefs:
        shown.goto(href)
        line, bar = shown.evaluate(
            "[document.querySelector('.do-first li').getBoundingClientRect().bottom,"
            " document.querySelector('.bar').getBoundingClientRect().top]"
        )
        assert line <= bar
        assert shown.is_visible(".title-block .review")


@pytest.mark.browser
def test_the_front_page_fits_two_screens_of_a_phone(demo_built: Built, opened: object) -> None:
    shown = opened(demo_built.site / "index.html")  # type: ignore[operator]

    assert shown.evaluate("document.querySelector('.foot').getBoundingClientRect().top") <= 1280
