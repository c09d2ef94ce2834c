"""What people come for, done on a small phone from a folder, counted in taps and scrolls.

The limits are the times of the design turned into what a hand does: ten seconds are three taps and no scroll, fifteen
are three taps and two scrolls, half a minute four and four, a minute four and eight. Typing is not counted; the tap
into the box is. A scroll is one screen less the bar.
"""

from dataclasses import dataclass, field

import pytest
from playwright.sync_api import Locator, Page

from tests.conftest import PHONE, Open
from tests.demo_site import Built

pytestmark = pytest.mark.browser

BAR = 64
"""Pixels at the foot of the screen that the bar takes."""
SCREEN = PHONE[1] - BAR
THUMB = 44
"""So much of a target must be on the screen to be tapped."""


@dataclass
class Hand:
    """A thumb: taps what it sees, scrolls to what it does not."""

    page: Page
    taps: int = 0
    scrolls: int = 0
    way: list[str] = field(default_factory=list)

    def see(self, what: Locator, height: float = SCREEN) -> None:
        """Bring something onto the screen, above the bar: all of it, as far as it fits, or so much of its head."""
        what.wait_for(state="visible", timeout=5000)
        box = what.bounding_box()
        assert box
        down = box["y"] + min(box["height"], height) - SCREEN
        if down > 0 or box["y"] < 0:
            distance = down if down > 0 else box["y"]
            self.scrolls += int(-(-abs(distance) // SCREEN))
            self.page.evaluate("by => window.scrollBy(0, by)", distance)

    def tap(self, what: Locator) -> None:
        """Tap one thing, after bringing it onto the screen unless it is part of the bar."""
        if not what.evaluate("one => Boolean(one.closest('nav.bar'))"):
            self.see(what, THUMB)
        self.way.append(f"{what.inner_text()[:40]!r} after {self.scrolls} scrolls")
        self.taps += 1
        what.click(timeout=5000)
        self.page.wait_for_load_state()

    def bar(self, name: str) -> None:
        """Tap a part of the bar."""
        self.tap(self.page.locator("nav.bar a", has_text=name))

    def link(self, words: str, *, within: str = "main") -> None:
        """Tap the first link that has these words."""
        self.tap(self.page.locator(f"{within} a:visible", has_text=words).first)

    def find(self, question: str) -> None:
        """Tap Find, ask, tap the first answer."""
        self.bar("Find")
        self.page.wait_for_function("document.activeElement.tagName === 'INPUT'")
        self.page.keyboard.type(question)
        self.page.wait_for_timeout(200)  # the eye goes from the keys to the answers
        self.tap(self.page.locator(".whole .found a").first)

    def words(self, text: str) -> None:
        """Read words on the screen, the first place in the page where they stand."""
        self.see(self.page.locator("main").get_by_text(text).first)

    def within(self, taps: int, scrolls: int) -> None:
        """Hold what was done against what is allowed."""
        assert (self.taps <= taps, self.scrolls <= scrolls) == (True, True), (
            f"{self.taps} taps and {self.scrolls} scrolls, allowed {taps} and {scrolls}: {self.way}"
        )


@pytest.fixture
def hand(demo_built: Built, opened: Open) -> Hand:
    """Somebody who has just opened the handbook somewhere deep inside."""
    return Hand(opened(demo_built.site / "id/SA-CL-001.html"))


def test_an_alarm_to_its_first_action(hand: Hand) -> None:
    hand.bar("Alarms")
    hand.link("BILGE HIGH AFT")
    hand.words("Do first")
    hand.see(hand.page.locator("main ol > li").first)

    hand.within(3, 0)


@pytest.mark.parametrize(
    "wording", ["START AIR LOW", "BATTERY LOW ESSENTIAL", "FIRE MAIN PRESSURE LOW"]
)
def test_any_alarm_by_what_the_panel_says(hand: Hand, wording: str) -> None:
    hand.find(wording)
    hand.words(wording)
    hand.see(hand.page.locator("main ol > li").first)

    hand.within(3, 0)


def test_a_tag_to_the_page_of_its_part(hand: Hand) -> None:
    hand.find("sa rv 002")

    assert hand.page.url.endswith("id/SA-RV-002.html")
    hand.within(2, 0)


def test_a_relief_valve_to_its_last_test(hand: Hand) -> None:
    hand.bar("Home")
    hand.link("Safety devices")
    row = hand.page.locator("main tr", has=hand.page.locator("a", has_text="SA-RV-002")).first
    hand.tap(row.locator("a", has_text="SA-TR-").first)

    assert "/id/SA-TR-" in hand.page.url
    hand.within(4, 8)


def test_what_is_noticed_to_what_makes_it_safe(hand: Hand) -> None:
    hand.find("won't turn over")
    hand.words("Make it safe first")

    hand.within(2, 0)


def test_a_number_to_what_it_is(hand: Hand) -> None:
    hand.find("30 bar(g)")
    hand.words("30 bar(g)")

    hand.within(2, 2)


def test_whether_a_system_may_be_run(hand: Hand) -> None:
    hand.bar("Home")
    hand.link("Starting air")
    hand.words("to be cleared before pressure or sailing")

    hand.within(3, 1)


def test_every_page_of_a_system(hand: Hand) -> None:
    hand.bar("Home")
    hand.link("Starting air")
    hand.link("Pages of this system")
    hand.link("Watch rounds")

    hand.within(4, 2)


def test_what_could_hurt_a_newcomer(hand: Hand) -> None:
    hand.bar("Home")
    hand.link("First day")
    hand.see(hand.page.locator("main .message").first)

    hand.within(3, 2)


def test_how_a_receiver_is_made_safe_to_work_on(hand: Hand) -> None:
    hand.find("SA-AR-001")
    hand.link("Isolate")
    hand.see(hand.page.locator("main .checklist .step").first)

    hand.within(4, 4)


def test_where_a_spare_lies(hand: Hand) -> None:
    hand.find("SK-AIR-103")
    hand.words("drawer 4")

    hand.within(2, 2)


def test_who_may_do_a_task(hand: Hand) -> None:
    hand.bar("Home")
    hand.link("Who may do what")
    hand.words("SA-PR-004")

    hand.within(3, 4)


def test_whether_this_copy_is_in_date(demo_issued: Built, opened: Open) -> None:
    hand = Hand(opened(demo_issued.site / "id/SA-CL-001.html"))
    hand.words("VALID UNTIL 2031-12-31")

    hand.within(0, 0)


def test_what_changed_since_the_last_edition(hand: Hand) -> None:
    hand.bar("Home")
    hand.link("Editions")
    hand.link("since edition 2")
    hand.see(hand.page.locator("main table").first)

    hand.within(4, 4)


def test_a_thumb_that_taps_too_often_is_told(hand: Hand) -> None:
    hand.bar("Home")
    hand.bar("Alarms")

    with pytest.raises(AssertionError, match="2 taps and 0 scrolls, allowed 1 and 0"):
        hand.within(1, 0)


def test_what_lies_below_the_bar_is_scrolled_to(hand: Hand) -> None:
    hand.see(hand.page.locator("main footer"))

    assert hand.scrolls > 2
