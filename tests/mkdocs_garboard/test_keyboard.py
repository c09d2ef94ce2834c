"""The handbook by keys alone: in the order of the page, each stop seen in every light and never under the bar."""

import pytest
from playwright.sync_api import Page

from tests.conftest import PHONE, Open
from tests.demo_site import Built

pytestmark = pytest.mark.browser

LEAST = 3.0
"""Contrast of what shows the focus against what is around it (WCAG 2.2, 1.4.11 and 2.4.13)."""
STOP = """() => {
  const here = document.activeElement, root = document.documentElement, faults = [];
  if (here === document.body) return null;
  const name = here.tagName + ' ' + (here.textContent || here.ariaLabel || '').trim().slice(0, 40);
  const parts = color => color.match(/[\\d.]+/g).map(Number);
  const level = color => parts(color).slice(0, 3).map(c => c / 255)
    .map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)
    .reduce((sum, c, place) => sum + c * [0.2126, 0.7152, 0.0722][place], 0);
  const framed = here.closest('.frame') || here;
  for (const light of ['day', 'dim', 'red']) {
    root.dataset.light = light;
    const look = getComputedStyle(framed);
    let around = framed.parentElement;
    while (around !== root && parts(getComputedStyle(around).backgroundColor)[3] === 0) around = around.parentElement;
    const [one, other] = [level(look.outlineColor), level(getComputedStyle(around).backgroundColor)];
    const contrast = (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
    if (look.outlineStyle === 'none' || parseFloat(look.outlineWidth) < 2) faults.push(`${light}: no frame`);
    else if (contrast < LEAST) faults.push(`${light}: frame at ${contrast.toFixed(1)}`);
  }
  delete root.dataset.light;
  const bar = document.querySelector('.bar'), low = here.getBoundingClientRect();
  if (!bar.contains(here) && low.height < 300 && low.bottom > bar.getBoundingClientRect().top + 1) faults.push('under the bar');
  if (low.bottom < 0) faults.push('above the screen');
  const before = window.garboardBefore;
  if (before && !(before.compareDocumentPosition(here) & Node.DOCUMENT_POSITION_FOLLOWING)) faults.push('out of order');
  window.garboardBefore = here;
  return [name, faults];
}""".replace("LEAST", str(LEAST))


def stops(page: Page, most: int = 400) -> list[tuple[str, list[str]]]:
    """Every stop of the Tab key from the beginning of a page to its end, with what is wrong there."""
    page.evaluate("document.activeElement.blur()")
    found: list[tuple[str, list[str]]] = []
    for _ in range(most):
        page.keyboard.press("Tab")
        stop = page.evaluate(STOP)
        if stop is None:
            return found
        found.append((stop[0], stop[1]))
    raise AssertionError(f"the Tab key goes nowhere after {found[-1]}")


@pytest.mark.parametrize(
    "name", ["id/SA-PR-002", "find", "registers/alarms", "people/first-day", "id/SA-CL-001"]
)
def test_every_stop_is_seen_in_every_light_and_in_order(
    demo_built: Built, opened: Open, name: str
) -> None:
    found = stops(opened(demo_built.site / f"{name}.html", PHONE))

    assert len(found) > 15
    assert [one for one in found if one[1]] == []


def test_a_stop_that_is_not_seen_is_found(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "people/first-day.html", PHONE)
    page.evaluate("document.querySelector('.review a').style.outlineColor = '#15202b'")
    page.evaluate("document.querySelector('.foot a').tabIndex = 1")
    faults = {fault for _, each in stops(page) for fault in each}

    assert {"day: frame at 1.0", "out of order"} <= faults


def test_the_first_key_skips_to_the_page(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "id/SA-PR-002.html", PHONE)
    page.keyboard.press("Tab")
    skip = page.evaluate(
        "[document.activeElement.className, document.activeElement.getBoundingClientRect().left]"
    )
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")

    assert skip == ["skip", 8]
    assert page.evaluate("document.querySelector('main').contains(document.activeElement)")


def test_escape_closes_what_was_opened(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "id/SA-CN-001.html", PHONE)
    state = "[...document.querySelectorAll('details.fold')].map(one => one.open)"
    shut = page.evaluate(state)
    page.locator("details.fold > summary").first.press("Enter")
    opened_one = page.evaluate(state)
    page.keyboard.press("Escape")

    assert not any(shut)
    assert opened_one.count(True) == 1
    assert page.evaluate(state) == shut
    assert page.evaluate("document.activeElement.matches('details.fold > summary')")
