"""The sheets that are handed out: how many sides they take, and that they can be written on.

A sheet that is longer than it should be is named here with its figure, so that it cannot grow unseen.
"""

from pathlib import Path

import pytest
from pypdf import PdfReader

from tests.conftest import PHONE, Open
from tests.demo_site import Built
from tests.mkdocs_garboard import browser

pytestmark = pytest.mark.browser

SIDES = {"people/first-day": 2, "jobs/SA-WP-001": 2}
"""The first day has two sheets. Over its budget of one side is one job: three hold points, two messages."""


def handed_out(site: Path) -> list[Path]:
    return [site / "people" / "first-day.html", *sorted((site / "jobs").glob("*.html"))]


def test_a_job_fits_one_side_and_the_first_day_its_sheets(
    demo_built: Built, tmp_path: Path
) -> None:
    took = {}
    for page in handed_out(demo_built.site):
        pdf = browser.sheets(page, tmp_path / f"{page.stem}.pdf")
        key = page.relative_to(demo_built.site).with_suffix("").as_posix()
        took[key] = len(PdfReader(pdf).pages)

    assert len(took) > 10
    assert {key: sides for key, sides in took.items() if sides > 1} == SIDES


def test_there_is_room_to_write_and_no_sideways_scroll(demo_built: Built, opened: Open) -> None:
    for page in (*handed_out(demo_built.site), demo_built.site / "people/required-reading.html"):
        for width in (320, PHONE[0], 1280):
            seen = opened(page, (width, 640), scripts=False)
            wide = seen.evaluate("document.documentElement.scrollWidth")
            low = seen.eval_on_selector_all(
                ".to-sign tbody td",
                "cells => Math.min(...cells.map(c => c.getBoundingClientRect().height))",
            )
            seen.close()
            assert wide <= width, f"{page.stem} at {width}"
            assert low >= 44, f"{page.stem} at {width}"


def test_the_way_to_a_person_lands_on_their_part(demo_built: Built, opened: Open) -> None:
    seen = opened(demo_built.site / "people" / "required-reading.html")

    seen.click("text=volunteer, back aboard since 1 October 2031")

    said = seen.evaluate("document.querySelector(':target').textContent").replace("\u00a0", " ")
    assert said.startswith("Volunteer, back aboard since 1 October 2031")
