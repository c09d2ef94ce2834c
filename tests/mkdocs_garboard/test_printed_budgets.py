"""Each kind of page on the paper that it may take: printed, and its sides counted.

A rule reckons rows from words before anything is printed; this prints the demo. What is over today is
named with its figure, so that it cannot grow unseen; mended, its line must go.
"""

import io
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser
from pypdf import PdfReader
from selectolax.lexbor import LexborHTMLParser

from garboard.handbook import read_book
from garboard.records.page_rows import budget_of
from garboard.records.procedure import Procedure
from tests.demo_site import DEMO, Built
from tests.mkdocs_garboard.guards import lone_places, unguarded
from tests.mkdocs_garboard.printed import PrintedBook, squeezed

pytestmark = pytest.mark.browser

A5_SIDES = {45: 4, 93: 8}
"""Rows of the budget of a procedure to the sides of A5 that they are."""

BUDGET = {
    "id/*-AL-*": 2,
    "id/*-FT-*": 2,
    "*/watch-rounds": 1,
    "rounds/*": 2,
    "registers/locked-valves": 1,
    "registers/spares": 4,
    "registers/safety-devices": 6,
    "registers/due": 9,
    "*/maintenance": 4,
    "*/faults": 1,
    "*/open-against-it": 2,
    "*/how-to-rebuild-it": 2,
    "id/*-MT-*": 2,
}
"""Sides of A4 by kind of page. An alarm, a fault and a task have the front for what is done and the back
for who signed it; a round over several systems has both sides of its sheet; a register is a table."""

OVER = {"id/SA-AL-001": 3, "starting-air/how-to-rebuild-it": 3, "bilge-fire/how-to-rebuild-it": 3}
"""Pages that are over, with the sides they take today: the alarm by its lapsed reviews, as sixteen records
hang on what moved; the receivers by three messages, ten steps, a plate, and tests with their outcome; the bilge valves by three
of them, each with its torque, clearances and what is renewed."""

A5_MARGINS, A4_MARGINS = (12, 10, 14, 18), (15, 15, 18, 25)


@pytest.fixture(scope="module")
def as_pdf(chromium: Browser) -> Iterator[Callable[[Path], bytes]]:
    """Print a page as its style sheet wants it, scripts off."""
    context = chromium.new_context(java_script_enabled=False, offline=True)
    page = context.new_page()

    def made(path: Path) -> bytes:
        page.goto(path.resolve().as_uri())
        return page.pdf(prefer_css_page_size=True)

    yield made
    context.close()


@pytest.fixture(scope="module")
def printed(as_pdf: Callable[[Path], bytes]) -> Callable[[Path], list[str]]:
    """The text of each side of a page."""

    def sides(path: Path) -> list[str]:
        found = PdfReader(io.BytesIO(as_pdf(path))).pages
        return [" ".join(side.extract_text().split()) for side in found]

    return sides


def test_what_is_done_with_a_procedure_stands_within_its_sheets(
    demo_built: Built, printed: Callable[[Path], list[str]]
) -> None:
    over = {}
    for one in read_book(DEMO).of_kind(Procedure):
        text = printed(demo_built.site / f"id/{one.id}.html")
        last = max(number for number, side in enumerate(text, 1) if "complete." in side)
        budget = budget_of(one)
        assert budget
        if last > OVER.get(f"id/{one.id}", A5_SIDES[budget.rows]):
            over[str(one.id)] = last

    assert over == {}


def test_every_other_kind_stands_within_its_sides(
    demo_built: Built, printed: Callable[[Path], list[str]]
) -> None:
    over = {}
    for pattern, most in BUDGET.items():
        pages = sorted(demo_built.site.glob(f"{pattern}.html"))
        assert pages, f"no page is like {pattern}"
        for page in pages:
            name = page.relative_to(demo_built.site).as_posix().removesuffix(".html")
            taken = len(printed(page))
            if taken > OVER.get(name, most):
                over[name] = taken

    assert over == {}


def test_no_side_holds_the_last_words_of_a_page_alone(
    demo_built: Built, as_pdf: Callable[[Path], bytes], tmp_path: Path
) -> None:
    short, sides = [], 0
    for pattern in ("id/*-PR-*", *BUDGET):
        for page in sorted(demo_built.site.glob(f"{pattern}.html")):
            made = tmp_path / f"{page.parent.name}-{page.stem}.pdf"
            made.write_bytes(as_pdf(page))
            book = PrintedBook(made, A5_MARGINS if "-PR-" in page.stem else A4_MARGINS)
            sides += len(book.sheets)
            short += [f"{made.stem}: {one}" for one in book.scanty()]

    assert sides > 150
    assert short == []


def test_no_step_is_without_its_message_and_no_place_without_a_step(
    demo_built: Built, as_pdf: Callable[[Path], bytes], tmp_path: Path
) -> None:
    bare: list[str] = []
    lone: list[str] = []
    cut: list[str] = []
    short: list[str] = []
    looked_at = 0
    for page in sorted(demo_built.site.glob("id/*-PR-*.html")):
        made = tmp_path / f"{page.stem}.pdf"
        made.write_bytes(as_pdf(page))
        book = PrintedBook(made, A5_MARGINS)
        sheets = [squeezed(text) for text in book.stream]
        checklists = LexborHTMLParser(page.read_text("utf-8")).css(".checklist")
        lone += [f"{page.stem}: {one}" for one in lone_places(book, checklists)]
        for stretch in (one for part in checklists for one in part.css(".stretch:has(.message)")):
            bare += unguarded(sheets, stretch)
            looked_at += len(stretch.css(".onward .step"))
            spoilt = [sheet.replace("alsoforwhatfollows", "") for sheet in sheets]
            cut += unguarded(spoilt, stretch)
        short += lone_places(PrintedBook(made, (12, 10, 80, 18)), checklists)

    assert bare == []
    assert lone == []
    assert looked_at > 3, "some message is too long to be said again whole"
    assert cut, "and without its line a step on the next sheet has none"
    assert short, "and a sheet that ends sooner parts a place from its steps"


def test_nothing_is_cut_at_the_edge_of_a_register(demo_built: Built, chromium: Browser) -> None:
    context = chromium.new_context(java_script_enabled=True, offline=True)
    page = context.new_page()
    page.emulate_media(media="print")
    cut = []
    for name, width in (
        ("registers/safety-devices", 1001), ("registers/locked-valves", 1001),
        ("registers/spares", 1001), ("registers/due", 1001), ("rounds/sea-watch", 1016),
        ("starting-air/watch-rounds", 1016),
    ):  # fmt: skip
        page.set_viewport_size({"width": width, "height": 700})  # A4 on its side less its margins
        page.goto((demo_built.site / f"{name}.html").resolve().as_uri())
        if page.evaluate("document.documentElement.scrollWidth") > width:
            cut.append(name)
    context.close()

    assert cut == []


def test_a_log_sheet_has_a_box_for_each_stop_and_watch(
    demo_built: Built, printed: Callable[[Path], list[str]]
) -> None:
    text = printed(demo_built.site / "starting-air/watch-rounds.html")

    assert len(text) == 1
    for said in ("00", "04", "08", "12", "16", "20", "Date", "Walked by, initials"):
        assert said in text[0]
    assert "18 bar(g)" in text[0]
    assert "WORKING COPY - NOT FOR USE AT SEA" in text[0]


def test_a_round_over_two_sides_repeats_its_head(
    demo_built: Built, printed: Callable[[Path], list[str]]
) -> None:
    first, second = printed(demo_built.site / "rounds/sea-watch.html")

    for side in (first, second):
        assert "must be" in side
        assert "if not" in side
    assert "Walked by, initials" in second
