"""Quick cards as they are printed: one side of A5, nothing small, nothing from a working copy."""

import io
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
import zxingcpp
from mkdocs.commands.build import build
from mkdocs.config import load_config
from PIL import Image
from playwright.sync_api import Browser
from playwright.sync_api import Page as Tab
from pypdf import PdfReader

from garboard.handbook import Handbook
from garboard.views.page import Label, LabelSheet, QuickCard
from garboard.views.which_copy import Copy
from tests.demo_site import DEMO, Built, demo_handbook
from tests.mkdocs_garboard.browser import sheets

pytestmark = pytest.mark.browser

ISSUED = Copy(3, "2031-10-01", "2032-10-01", "life of 12 months")
POINTS = 72 / 96
TOO_SMALL = """() => {
  const small = [];
  const walk = document.createTreeWalker(document.querySelector('.card'), NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const one = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || one.closest('.card-head, .governs, svg')) continue;
    const size = parseFloat(getComputedStyle(one).fontSize) * 0.75;
    const large = one.closest('.plate, .see');
    if (size < (large ? 13.99 : 11.99)) small.push([one.className, size, walk.currentNode.data]);
    if (large && Number(getComputedStyle(one).fontWeight) < 700) small.push([one.className, 'thin']);
  }
  return small;
}"""
PARTED = r"""() => {
  const parted = [];
  const walk = document.createTreeWalker(document.querySelector('.card'), NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    for (const found of walk.currentNode.data.matchAll(/\d+(\.\d+)?[  ](bar\(g\)|V|A|mm|min|s|h)(?![a-z])/g)) {
      const range = document.createRange();
      range.setStart(walk.currentNode, found.index);
      range.setEnd(walk.currentNode, found.index + found[0].length);
      const tops = new Set([...range.getClientRects()].filter(r => r.width > 1).map(r => Math.round(r.top)));
      if (tops.size > 1) parted.push(found[0]);
    }
  }
  return parted;
}"""


def draw(handbook: Handbook, folder: Path) -> Path:
    """The site of a few pages of a handbook."""
    (folder / "mkdocs.yml").touch()
    config = load_config(
        config_file=str(folder / "mkdocs.yml"), site_name="Skerry Light handbook", docs_dir=str(DEMO),
        site_dir=str(folder / "site"), theme={"name": "garboard"}, plugins=["garboard"],
    )  # fmt: skip
    config.plugins["garboard"].given = handbook  # type: ignore[attr-defined]
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    return folder / "site"


@pytest.fixture(scope="module")
def cards() -> dict[str, QuickCard]:
    """Every card of the demo, by number."""
    blocks = (block for page in demo_handbook().pages for block in page.blocks)
    return {block.number: block for block in blocks if isinstance(block, QuickCard)}


@pytest.fixture(scope="module")
def issued(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's cards as they stand in an edition."""
    handbook = demo_handbook()
    kept = [one for one in handbook.pages if one.kind == "quick card"]
    pages = tuple(replace(one, copy=ISSUED) for one in kept)
    edition = replace(handbook, pages=pages, copy=ISSUED, entries=())
    return draw(edition, tmp_path_factory.mktemp("cards"))


@pytest.fixture(scope="module")
def on_paper(chromium: Browser) -> Tab:
    """A tab as wide as the print of a card, in print."""
    made = chromium.new_context(offline=True, device_scale_factor=3).new_page()
    made.set_viewport_size({"width": 469, "height": 722})  # 124 by 191 mm
    made.emulate_media(media="print")
    return made


def text_of(pdf: Path) -> str:
    done = subprocess.run(
        ["pdftotext", "-layout", str(pdf), "-"], capture_output=True, text=True, check=True
    )
    return " ".join(done.stdout.split())


def test_each_card_of_an_edition_is_one_side_of_a5(
    issued: Path, cards: dict[str, QuickCard], tmp_path: Path
) -> None:
    printable = [number for number, card in cards.items() if not card.refused]

    for number in printable:
        pdf = PdfReader(sheets(issued / "cards" / f"{number}.html", tmp_path / "card.pdf"))
        size = [round(float(one) / 72 * 25.4) for one in pdf.pages[0].mediabox[2:]]
        assert (len(pdf.pages), size) == (1, [148, 210]), number

    assert {"K-02", "K-03", "K-06", "K-07", "K-11"} <= set(printable)


def test_nothing_on_a_card_is_small_and_no_value_is_parted_from_its_unit(
    issued: Path, cards: dict[str, QuickCard], on_paper: Tab
) -> None:
    for number, card in cards.items():
        if card.refused:
            continue
        on_paper.goto((issued / "cards" / f"{number}.html").as_uri())
        assert on_paper.evaluate(TOO_SMALL) == [], number
        assert on_paper.evaluate(PARTED) == [], number


def test_a_card_says_every_line_and_what_governs_it(
    issued: Path, cards: dict[str, QuickCard], tmp_path: Path
) -> None:
    said = text_of(sheets(issued / "cards" / "K-07.html", tmp_path / "card.pdf"))

    ordered = ["Card K-07, part 1 of 2", "EDITION 3", "Valid until 2032-10-01", "Reviewed 20 September 2031",
               "Raise air from nothing", "CAUTION", "Do first", "SA-HV-003", "Then", "SA-HV-016",
               "You should see", "Stop and call if", "From SA-PR-009 revision 1, which governs."]  # fmt: skip
    places = [said.find(one) for one in ordered]
    assert -1 not in places, [one for one in ordered if one not in said]
    assert places == sorted(places)
    assert cards["K-07"].digest in said


def test_the_code_on_a_card_says_the_page_and_the_digest(
    issued: Path, cards: dict[str, QuickCard], on_paper: Tab
) -> None:
    on_paper.goto((issued / "cards" / "K-08.html").as_uri())
    code = on_paper.locator(".card .qr")
    picture = Image.open(io.BytesIO(code.screenshot()))

    (found,) = zxingcpp.read_barcodes(picture)

    card = cards["K-08"]
    assert found.text == f"SA-PR-009 r1 {card.digest} id/SA-PR-009.html"
    box = code.bounding_box()
    assert box is not None
    modules = int(code.get_attribute("data-modules") or 0)
    assert (modules - 8) / modules * box[
        "width"
    ] / 96 * 25.4 >= 20  # the symbol without its quiet zone
    assert found.ec_level == "M"


def test_a_card_that_is_refused_prints_its_refusal_and_nothing_to_do(
    issued: Path, tmp_path: Path
) -> None:
    pdf = sheets(issued / "cards" / "K-01.html", tmp_path / "card.pdf")
    said = text_of(pdf)

    assert "NO CARD." in said
    assert "Review of 1 March 2031 has lapsed" in said
    assert "Do first" not in said
    assert "SA-CP-001" not in said


def test_a_working_copy_shows_a_preview_and_prints_no_card(
    demo_built: Built, chromium: Browser, tmp_path: Path
) -> None:
    page = demo_built.site / "cards" / "K-03.html"
    tab = chromium.new_context(offline=True).new_page()
    tab.goto(page.as_uri())
    assert tab.locator(".card.preview").is_visible()
    assert "stays on the screen" in tab.locator(".card-refused").inner_text()

    said = text_of(sheets(page, tmp_path / "card.pdf"))

    assert "No card is printed from a working copy." in said
    assert "Do first" not in said
    assert "DC-CB-015" not in said


def test_no_card_and_no_label_scrolls_sideways(demo_built: Built, chromium: Browser) -> None:
    tab = chromium.new_context(offline=True).new_page()
    for width in (320, 360):
        tab.set_viewport_size({"width": width, "height": 640})
        for name in ("cards/K-03", "cards/K-01", "registers/cards", "registers/labels"):
            tab.goto((demo_built.site / f"{name}.html").as_uri())
            assert tab.evaluate("document.documentElement.scrollWidth") <= width, name


def test_a_label_says_its_tag(demo_built: Built, chromium: Browser) -> None:
    page = next(one for one in demo_handbook().pages if one.key == "registers/labels")
    labels = [one for block in page.blocks if isinstance(block, LabelSheet) for one in block.labels]
    tab = chromium.new_context(offline=True, device_scale_factor=3).new_page()
    tab.goto((demo_built.site / "registers" / "labels.html").as_uri())
    drawn = tab.locator(".labels > li")

    assert drawn.count() == len(labels) > 50
    assert isinstance(labels[0], Label)
    for place in (0, len(labels) - 1):
        picture = Image.open(io.BytesIO(drawn.nth(place).locator(".qr").screenshot()))
        assert [one.text for one in zxingcpp.read_barcodes(picture)] == [labels[place].tag]


def test_the_list_of_labels_is_in_the_site(demo_built: Built) -> None:
    lines = (demo_built.site / "labels" / "SA.tsv").read_text("utf-8").splitlines()

    assert lines[0].split("\t") == ["tag", "name", "position normally", "place", "QR text"]
    parts = [tag for tag in demo_handbook().book.components if tag.startswith("SA-")]
    assert sorted(line.split("\t")[0] for line in lines[1:]) == sorted(parts)
