"""Checklists as they are used: ticks that stay and go, a clock, messages beside their steps, paper."""

import re
import shutil
import subprocess
from pathlib import Path

import numpy as np
import pypdf
import pytest
from PIL import Image
from playwright.sync_api import Page

from tests.conftest import PHONE, Open
from tests.demo_site import Built
from tests.mkdocs_garboard import browser

pytestmark = pytest.mark.browser
PROCEDURE = "id/SA-PR-001.html"
MUST_SHOW = ".message, .ladder, .checklist, .if-not, .see, .review, .notices, .standing"


def spoilt(built: Built, to: Path, old: str, new: str, times: int = 1) -> Path:
    """A copy of a procedure's page with one text changed, beside the site's assets."""
    text = (built.site / PROCEDURE).read_text("utf-8")
    assert text.count(old) >= times
    shutil.copytree(built.site / "assets", to / "assets", dirs_exist_ok=True)
    page = to / PROCEDURE
    page.parent.mkdir(exist_ok=True)
    page.write_text(text.replace(old, new), "utf-8")
    return page


def ticked(page: Page) -> list[int]:
    boxes = page.locator(".tick")
    return [place for place in range(boxes.count()) if boxes.nth(place).is_checked()]


def said(page: Page) -> str:
    return page.locator(".count .said").first.inner_text()


def test_a_tick_is_there_after_the_page_was_left(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / PROCEDURE)
    assert said(page) == "0 of 8 ticked."

    page.get_by_label("step 1 done", exact=True).check()
    page.get_by_label("step 3 done", exact=True).press("Space")
    again = opened(demo_built.site / PROCEDURE)

    assert ticked(again) == [0, 2]
    assert re.fullmatch(r"2 of 8 ticked, started \d\d:\d\d\.", said(again))


def test_a_new_edition_starts_empty_and_clears_the_older_one_away(
    demo_built: Built, opened: Open, tmp_path: Path
) -> None:
    older, newer = (
        spoilt(demo_built, tmp_path / name, 'data-copy="0"', f'data-copy="{name}"') for name in "23"
    )
    opened(older).get_by_label("step 1 done", exact=True).check()
    kept = "Object.keys(localStorage).filter(name => name.startsWith('garboard.ticks')).length"

    page = opened(newer)

    assert ticked(page) == []
    assert page.evaluate(kept) == 0


def test_an_older_edition_opened_by_mistake_takes_nothing_from_the_newer_one(
    demo_built: Built, opened: Open, tmp_path: Path
) -> None:
    older, newer = (
        spoilt(demo_built, tmp_path / name, 'data-copy="0"', f'data-copy="{name}"') for name in "23"
    )
    opened(newer).get_by_label("step 1 done", exact=True).check()

    assert ticked(opened(older)) == []
    assert ticked(opened(newer)) == [0]


def test_steps_that_changed_start_empty(demo_built: Built, opened: Open, tmp_path: Path) -> None:
    opened(demo_built.site / PROCEDURE).get_by_label("step 1 done", exact=True).check()

    changed = spoilt(demo_built, tmp_path, 'data-stamp="', 'data-stamp="f')

    assert ticked(opened(changed)) == []


def test_start_again_asks_in_the_page_before_it_takes_the_ticks(
    demo_built: Built, opened: Open
) -> None:
    page = opened(demo_built.site / PROCEDURE)
    page.get_by_label("step 1 done", exact=True).check()

    page.get_by_role("button", name="Start again").click()
    page.get_by_role("button", name="No, keep them").click()
    assert ticked(page) == [0]
    page.get_by_role("button", name="Start again").click()
    page.get_by_role("button", name="Yes, start again").click()

    assert ticked(page) == []
    assert ticked(opened(demo_built.site / PROCEDURE)) == []


def test_ticks_of_another_day_ask_whether_this_is_another_time(
    demo_built: Built, opened: Open
) -> None:
    page = opened(demo_built.site / PROCEDURE)
    page.get_by_label("step 1 done", exact=True).check()
    page.evaluate(
        "for (const name of Object.keys(localStorage)) if (name.startsWith('garboard.ticks'))"
        " localStorage.setItem(name, JSON.stringify({started: Date.now() - 2 * 86400000, ticked: [0]}))"
    )

    assert "Is this another time? Then start again first." in said(
        opened(demo_built.site / PROCEDURE)
    )


def test_a_device_that_keeps_nothing_says_so(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / PROCEDURE)
    page.evaluate("void (Storage.prototype.setItem = () => { throw new Error('full'); })")

    page.get_by_label("step 1 done", exact=True).check()

    assert "This device keeps no ticks" in said(page)
    assert ticked(page) == [0]


def test_without_scripts_a_box_is_ticked_and_the_page_says_for_how_long(
    demo_built: Built, opened: Open
) -> None:
    page = opened(demo_built.site / PROCEDURE, scripts=False)

    page.get_by_label("step 1 done", exact=True).check()

    assert page.get_by_label("step 1 done", exact=True).is_checked()
    assert page.get_by_role("button", name="Start clock").count() == 0


def test_the_clock_counts_down_and_says_that_time_is_over(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / PROCEDURE)
    page.clock.install()
    clock = page.locator(".clock").first
    assert clock.get_by_role("timer").inner_text() == "0:10"

    clock.get_by_role("button").click()
    page.clock.run_for(4000)
    assert clock.get_by_role("timer").inner_text() == "0:06"
    assert clock.locator(".over").inner_text() == ""
    page.clock.run_for(7000)

    assert clock.locator(".over").inner_text() == "Time is over. Not seen? Do what stands below."
    assert clock.get_by_role("button").inner_text() == "Start clock"


def test_what_is_touched_in_a_checklist_is_large_enough(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / PROCEDURE)
    page.get_by_label("step 1 done", exact=True).check()

    boxes = page.locator(".checklist .tick, .checklist button:visible").evaluate_all(
        "all => all.map(one => one.getBoundingClientRect()).map(box => [box.width, box.height])"
    )

    assert len(boxes) > 20
    assert all(width >= 44 and height >= 44 for width, height in boxes)


def test_a_message_and_the_step_it_guards_stand_on_one_screen(
    demo_built: Built, opened: Open
) -> None:
    page = opened(demo_built.site / PROCEDURE, PHONE)
    for number in (3, 5):
        page.evaluate(f"location.hash = 'step-{number}'")
        top, bottom, bar = page.evaluate(
            f"(() => {{ const part = document.getElementById('step-{number}');"
            "return [part.querySelector('.message').getBoundingClientRect().top,"
            "part.querySelector('.row').getBoundingClientRect().bottom,"
            "document.querySelector('.bar').getBoundingClientRect().top]; })()"
        )

        assert 0 <= top < bottom <= bar


def test_nothing_that_must_be_seen_stands_where_it_can_be_folded(
    demo_built: Built, opened: Open
) -> None:
    page = opened(demo_built.site / "index.html")
    found = 0
    for path in demo_built.pages:
        if "<details" not in (text := path.read_text("utf-8")):
            continue
        hidden, shown = page.evaluate(
            "([text, must]) => { const page = new DOMParser().parseFromString(text, 'text/html');"
            "const all = [...page.querySelectorAll(must)];"
            "return [all.filter(one => one.closest('details')).length, all.length]; }",
            [text, MUST_SHOW],
        )
        assert hidden == 0, path
        found += shown
    assert found > 100


def sheets_of(page: Path, to: Path) -> list[str]:
    return [
        sheet.extract_text() for sheet in pypdf.PdfReader(browser.sheets(page, to / "p.pdf")).pages
    ]


def test_a_message_heads_the_next_sheet_where_its_steps_run_over(
    demo_built: Built, tmp_path: Path
) -> None:
    text = (demo_built.site / PROCEDURE).read_text("utf-8")
    stretch = re.search(
        r'<div class="begins">\s*<div class="repeats">\s*<div class="message.*?</ol>',
        text,
        re.DOTALL,
    )
    assert stretch
    row = re.search(r'<li class="step".*?</li>', stretch[0], re.DOTALL)
    assert row
    page = spoilt(
        demo_built, tmp_path, stretch[0], stretch[0].replace("</ol>", row[0] * 12 + "</ol>")
    )

    sheets = sheets_of(page, tmp_path)

    over = [sheet for sheet in sheets if "only air at the outlet" in sheet]
    assert len(over) >= 3
    assert all("CAUTION" in sheet for sheet in over)


def test_a_message_is_never_parted_from_its_step_on_paper(
    demo_built: Built, tmp_path: Path
) -> None:
    for name, step in (("SA-PR-001", "clutch lamp lit"), ("SA-PR-002", "Engine start line")):
        sheets = sheets_of(demo_built.site / "id" / f"{name}.html", tmp_path)
        word = "WARNING" if name == "SA-PR-001" else "DANGER"

        assert [number for number, sheet in enumerate(sheets) if word in sheet and step in sheet]


def test_paper_has_an_empty_box_a_frame_to_initial_and_the_sizes_asked(
    demo_built: Built, opened: Open
) -> None:
    page = opened(demo_built.site / "id" / "SA-PR-002.html")
    page.get_by_label("step 1 done", exact=True).check()
    page.emulate_media(media="print")
    style = "(one, what) => getComputedStyle(one, what).content"

    for part in (".do", ".see", ".if-not", ".message .hazard", ".message .band"):
        size = page.locator(f".checklist {part}").first.evaluate(
            "one => getComputedStyle(one).fontSize"
        )
        assert float(size.removesuffix("px")) >= 14 * 4 / 3 - 0.05
    assert page.locator(".tick").first.evaluate(style, "::after") == "none"
    assert page.locator(".initials").count() == 3
    assert all(page.locator(".initials").nth(place).is_visible() for place in range(3))
    assert not page.locator(".count").first.is_visible()


WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE")
DOTS = 150


def frame_of(
    ink: np.ndarray[tuple[int, int], np.dtype[np.bool_]], word: tuple[float, float]
) -> str:
    """The left edge of the frame of a message, told by its ink alone, below the band with the word."""
    left, low = (round(each * DOTS / 72) for each in word)
    strip = ink[low + 12 : low + 150, : left - 10]
    edge = int(np.flatnonzero(strip.mean(axis=0) > 0.2)[0])
    columns = strip[:, edge : edge + 13].mean(axis=0)
    if columns.max() < 0.9:
        return "dashed"
    solid = "".join("1" if share > 0.9 else "0" for share in columns)
    widths = [len(run) for run in solid.split("0") if run]
    if len(widths) == 2:
        return "double"
    return "thick" if widths[0] >= 5 else "thin"


def test_a_copy_in_black_and_white_tells_the_four_messages_apart(
    demo_built: Built, tmp_path: Path
) -> None:
    text = (demo_built.site / PROCEDURE).read_text("utf-8")
    found = re.search(r'<div class="message caution".*?</div>', text, re.DOTALL)
    assert found
    four = "".join(
        found[0].replace("caution", word.lower()).replace("CAUTION", word) for word in WORDS
    )
    page = spoilt(demo_built, tmp_path, found[0], four)
    pdf = browser.sheets(page, tmp_path / "four.pdf")
    subprocess.run(
        ["pdftoppm", "-r", str(DOTS), "-gray", "-png", pdf, tmp_path / "four"], check=True
    )
    told: dict[str, str] = {}
    listed = subprocess.run(
        ["pdftotext", "-bbox", pdf, "-"], capture_output=True, text=True, check=True
    )
    for number, sheet in enumerate(listed.stdout.split("<page ")[1:], 1):
        (shot,) = tmp_path.glob(f"four-*{number}.png")
        with Image.open(shot) as image:
            ink = np.asarray(image.convert("L")) < 128
        for word in WORDS:
            for box in re.findall(
                rf'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">{word}<',
                sheet,
            ):
                x, y, right, low = (float(each) for each in box)
                told.setdefault(word, frame_of(ink, (x, low)))
                cut = [round(each * DOTS / 72) for each in (x, y, right, low)]
                assert (
                    0.1 < ink[cut[1] : cut[3], cut[0] : cut[2]].mean() < 0.5
                )  # letters, not a bar

    assert told == {"DANGER": "double", "WARNING": "thick", "CAUTION": "dashed", "NOTICE": "thin"}
