"""The handbook in one file says what the site says, leads where the site leads, and needs nothing beside it."""

import re
import shutil
from base64 import b64encode
from collections import Counter
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path
from urllib.parse import unquote

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page
from pypdf import PdfReader
from selectolax.lexbor import LexborHTMLParser

from mkdocs_garboard.joined import place
from mkdocs_garboard.site_check import SiteCheck
from mkdocs_garboard.take_along import BINDERS, TAKE_ALONG, single_file_name
from tests.conftest import Open
from tests.demo_site import Built
from tests.mkdocs_garboard import sample
from tests.mkdocs_garboard.conftest import Site
from tests.mkdocs_garboard.test_find_demo import answers, questions
from tests.mkdocs_garboard.test_valid_pages import judged

pytestmark = pytest.mark.browser
NAME = "skerry-light-handbook.html"
SHOWN = "[...document.querySelectorAll('.leaf')].filter(one => one.offsetParent).map(one => one.querySelector('.sheet').id)"

FEW = ("index", "id/SA-PR-001", "starting-air/layout", "registers/tags", "find", TAKE_ALONG)
"""Pages that between them hold most of what there is to see and to press."""


@pytest.fixture(scope="module")
def alone(demo_built: Built, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The file in a folder that holds nothing else."""
    folder = tmp_path_factory.mktemp("phone")
    return Path(shutil.copy(demo_built.site / NAME, folder))


@pytest.fixture(scope="module")
def read(alone: Path) -> LexborHTMLParser:
    return LexborHTMLParser(alone.read_text("utf-8"))


@pytest.fixture
def on_phone(alone: Path, opened: Open) -> Iterator[Page]:
    page = opened(alone)
    faults: list[str] = []
    page.on("console", lambda said: faults.append(said.text))
    yield page
    assert faults == []


def words(text: str) -> str:
    return "".join(text.split())


def test_every_page_says_in_the_file_what_it_says_in_the_site(
    demo_built: Built, read: LexborHTMLParser
) -> None:
    said = {sheet.attributes["id"]: words(sheet.text()) for sheet in read.css("article.sheet")}

    differs = []
    pages = [page for page in demo_built.pages if page.name != "404.html" and page.parent.name != BINDERS]  # fmt: skip
    for page in pages:
        path = page.relative_to(demo_built.site).as_posix().removesuffix(".html")
        sheet = LexborHTMLParser(page.read_text("utf-8")).css_first("article.sheet")
        assert sheet is not None
        if said.get(place(path)) != words(sheet.text()):
            differs.append(path)

    assert differs == []
    assert len(said) == len(pages) > 800


def test_every_link_of_the_file_lands_in_it(read: LexborHTMLParser) -> None:
    ids = Counter(part.attributes["id"] for part in read.css("[id]"))
    links = [str(part.attributes["href"]) for part in read.css("body [href]:not(image)")]

    assert [one for one, times in ids.items() if times > 1] == []
    assert [one for one in links if not one.startswith("#")] == []
    assert [one for one in links if unquote(one[1:]) not in ids] == []
    assert len(links) > 20_000
    assert {str(one.attributes["href"])[:5] for one in read.css("image")} == {"data:"}
    assert read.css("img") == []


def test_the_policy_names_every_style_and_script_and_nothing_else(read: LexborHTMLParser) -> None:
    meta = read.css_first("meta[http-equiv]")
    assert meta is not None
    policy = str(meta.attributes["content"])

    def proofs(selector: str) -> set[str]:
        texts = [part.text() for part in read.css(selector)]
        return {f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'" for text in texts}

    said = dict(part.strip().split(" ", 1) for part in policy.split(";"))
    assert said["default-src"] == "'none'"
    assert said["img-src"] == "data:"
    assert set(said["style-src"].split()) == proofs("style")
    assert set(said["script-src"].split()) == proofs("script:not([type])")
    assert not re.search("unsafe|file:|self", policy)


def test_opened_alone_it_shows_the_front_page_and_then_one_page_at_a_time(on_phone: Page) -> None:
    assert on_phone.evaluate(SHOWN) == ["index"]

    on_phone.click(".leaf.front .bar >> text=Alarms")

    assert on_phone.evaluate(SHOWN) == ["registers/alarms"]
    assert on_phone.title().startswith("WORKING COPY: ")
    on_phone.click(".leaf:has(:target) .bar >> text=Back")
    on_phone.wait_for_function("location.hash === ''")
    assert on_phone.evaluate(SHOWN) == ["index"]


@pytest.mark.parametrize("scripts", [True, False])
def test_a_place_inside_a_page_opens_that_page_at_that_place(
    alone: Path, opened: Open, *, scripts: bool
) -> None:
    page = opened(alone, scripts=scripts)

    page.goto(f"{alone.as_uri()}#registers/tags:sheet")
    page.goto(f"{alone.as_uri()}#starting-air/layout:sa-1")

    place = page.locator("[id='starting-air/layout:sa-1']")
    assert place.is_visible()
    assert page.locator("[id='starting-air/layout']").is_visible()
    assert not page.locator("[id='index']").is_visible()
    box = place.bounding_box()
    assert box is not None
    assert -1 <= box["y"] < 640


def test_find_leads_to_pages_of_the_file(on_phone: Page) -> None:
    on_phone.click(".leaf.front .bar >> text=Find")
    box = on_phone.locator(".leaf:has(:target) .find input")
    assert box.input_value() == ""

    box.fill("sarv001")
    box.press("Enter")

    on_phone.wait_for_function("location.hash.startsWith('#id/SA-RV-001')")
    assert on_phone.evaluate(SHOWN) == ["id/SA-RV-001"]


def test_the_light_is_kept(on_phone: Page) -> None:
    on_phone.locator(".light button[value=red]").click()

    on_phone.reload()

    assert on_phone.evaluate("document.documentElement.dataset.light") == "red"


def test_what_if_works_in_the_file(on_phone: Page, alone: Path, read: LexborHTMLParser) -> None:
    of_page = {str(one.attributes["id"]): len(one.css("script.what-if")) for one in read.css("article.sheet")}  # fmt: skip
    asked = {ident: count for ident, count in of_page.items() if count}
    assert len(asked) > 3

    for ident, count in asked.items():
        on_phone.goto(f"{alone.as_uri()}#{ident}")

        assert on_phone.locator("section.what-if:visible").count() == count
    assert on_phone.locator("section.what-if").count() == sum(asked.values())


def test_a_page_printed_is_that_page_alone(
    alone: Path, demo_built: Built, opened: Open, tmp_path: Path
) -> None:
    page = opened(alone)

    def printed(address: str) -> list[str]:
        page.goto(address)
        page.pdf(path=tmp_path / "one.pdf", prefer_css_page_size=True)
        return [words(sheet.extract_text()) for sheet in PdfReader(tmp_path / "one.pdf").pages]

    from_file = printed(f"{alone.as_uri()}#id/SA-PR-002")

    assert from_file == printed((demo_built.site / "id" / "SA-PR-002.html").as_uri())
    assert len(from_file) > 3


def test_a_page_that_lost_its_words_or_is_missing_is_told(site: Site, tmp_path: Path) -> None:
    folder = tmp_path / "site"
    shutil.copytree(site.folder, folder)
    file = folder / NAME
    text = file.read_text("utf-8")
    first = 'id="find"'
    assert text.count(first) == 1
    pages = [page for page in sample.handbook().pages if page.review.words]
    assert not [one for one in SiteCheck(folder).faults(pages) if one.startswith(NAME)]

    file.write_text(
        text.replace(f'id="{pages[0].path}"', 'id="gone"').replace('href="#find"', 'href="#lost"'),
        "utf-8",
    )

    told = [one for one in SiteCheck(folder).faults(pages) if one.startswith(NAME)]
    assert f"{NAME}: the page {pages[0].path} is not in it" in told
    assert f"{NAME}: link to #lost: there is no such place on that page" in told


def test_the_file_covers_no_page() -> None:
    taken = ["skerry-light-handbook", "index"]

    assert single_file_name("Skerry Light", taken) == "skerry-light-handbook-whole.html"


def at(page: Page, alone: Path, ident: str) -> Page:
    """The file turned to a page, as a fresh opening of it."""
    page.goto(f"{alone.as_uri()}#{ident}")
    page.reload()
    return page


def ticked(page: Page, ident: str) -> list[int]:
    boxes = page.locator(f"[id='{ident}'] .tick")
    return [place for place in range(boxes.count()) if boxes.nth(place).is_checked()]


def test_two_procedures_of_the_file_share_no_ticks_and_each_keeps_its_own(
    on_phone: Page, alone: Path
) -> None:
    at(on_phone, alone, "id/SA-PR-001").locator(".tick:visible").first.check()
    on_phone.goto(f"{alone.as_uri()}#id/SA-PR-002")
    on_phone.locator(".tick:visible").nth(1).check()
    at(on_phone, alone, "id/SA-PR-002")
    on_phone.goto(f"{alone.as_uri()}#id/SA-PR-001")

    assert ticked(on_phone, "id/SA-PR-001") == [0]
    assert ticked(on_phone, "id/SA-PR-002") == [1]

    on_phone.goto(f"{alone.as_uri()}#id/SA-PR-002")

    on_phone.locator("button:visible", has_text="Start again").first.click()
    on_phone.locator("button:visible", has_text="Yes, start again").click()
    at(on_phone, alone, "id/SA-PR-001")
    on_phone.goto(f"{alone.as_uri()}#id/SA-PR-002")

    assert ticked(on_phone, "id/SA-PR-001") == [0]
    assert ticked(on_phone, "id/SA-PR-002") == []


def test_a_page_is_made_ready_when_it_is_first_shown_and_no_other_is_there(
    on_phone: Page, alone: Path
) -> None:
    there = "[...document.querySelectorAll('.sheet')].map(one => one.id).sort()"
    at(on_phone, alone, "index")
    assert on_phone.evaluate(there) == ["index"]

    for ident in ("starting-air/normal-values", "id/SA-RV-001", "starting-air/normal-values"):
        on_phone.goto(f"{alone.as_uri()}#{ident}")

        assert on_phone.locator("table.limits:not([role])").count() == 0
        assert on_phone.evaluate(SHOWN) == [ident]
    assert on_phone.locator("table.limits[role=table]:visible").count() > 0
    assert on_phone.evaluate(there) == ["id/SA-RV-001", "index", "starting-air/normal-values"]


def test_a_fold_of_a_page_is_shut_when_it_is_first_shown_and_stays_as_it_was_left(
    on_phone: Page, alone: Path
) -> None:
    fold = at(on_phone, alone, "id/SA-PR-001").locator("details.fold:visible").first
    assert fold.get_attribute("open") is None

    fold.locator("summary").click()
    on_phone.goto(f"{alone.as_uri()}#index")
    on_phone.goto(f"{alone.as_uri()}#id/SA-PR-001")

    assert fold.get_attribute("open") is not None


def test_the_golden_questions_find_in_the_file_what_they_find_in_the_site(
    on_phone: Page, demo_built: Built, opened: Open, read: LexborHTMLParser
) -> None:
    asked = [one["ask"] for one in questions("golden")]
    beside = opened(demo_built.site / "find.html")
    beside.wait_for_function("() => window.garboardIndex !== undefined")
    for page in (on_phone, beside):
        page.evaluate("() => { window.known = garboardFind.ready(window.garboardIndex); }")

    said = answers(on_phone, asked)

    assert len(asked) >= 60
    assert said == answers(beside, asked)
    first = [answer["found"][0] for answer in said]
    led = """ways => ways.map(way => {
        const [path, anchor] = way.split('#');
        return garboardWay(path.replace(/\\.html$/, ''), anchor || '');
    })"""
    ids = {one.attributes["id"] for one in read.css("main [id]")}
    assert [one for one in on_phone.evaluate(led, first) if unquote(one[1:]) not in ids] == []


@pytest.mark.parametrize("ident", FEW)
def test_a_page_of_the_file_keeps_nobody_out(on_phone: Page, alone: Path, ident: str) -> None:
    at(on_phone, alone, ident)

    # What is not shown keeps nobody out, and walking through it takes the program 20 seconds a page.
    on_phone.evaluate(
        "document.querySelectorAll('.leaf').forEach(one => one.offsetParent || one.remove())"
    )
    assert on_phone.locator(".leaf").count() == 1

    found = Axe().run(on_phone)

    assert [one["id"] for one in found.response["violations"]] == []
    assert len(found.response["passes"]) > 10


def test_the_file_is_valid_html(alone: Path) -> None:
    assert judged([alone]) == []


def test_the_page_to_take_along_names_what_was_written_and_all_of_it(demo_built: Built) -> None:
    site = demo_built.site
    page = LexborHTMLParser((site / f"{TAKE_ALONG}.html").read_text("utf-8"))
    named = {str(one.attributes["href"]) for one in page.css("article.sheet a[href]")}

    binders = {one.relative_to(site).as_posix() for one in (site / BINDERS).glob("*.html")}
    lists = {one.relative_to(site).as_posix() for one in (site / "labels").glob("*.tsv")}
    written = binders | lists | {NAME, "values.csv", "values.json"}
    assert len(binders) == 7
    assert len(lists) > 3
    assert written <= named
    assert [one for one in named if not (site / one.partition("#")[0]).is_file()] == []
    front = LexborHTMLParser((site / "index.html").read_text("utf-8"))
    for around in (".tiles", "nav.column"):
        assert front.css_first(f"{around} a[href='{TAKE_ALONG}.html']"), around


def test_in_the_file_what_is_not_in_it_is_words(read: LexborHTMLParser) -> None:
    page = read.css_first(f"[id='{TAKE_ALONG}']")
    assert page is not None
    leads = {one.text(): one.attributes.get("href") for one in page.css("a")}

    assert leads["values.csv"] is None
    assert leads[NAME] == "#index"
    assert leads["Whole book"] is None


def test_an_issued_edition_in_one_file_shows_its_age_on_every_page(
    demo_issued: Built, opened: Open
) -> None:
    file = demo_issued.site / NAME
    page = opened(file)
    page.clock.set_fixed_time("2050-01-01T10:00:00")
    page.reload()

    stale = page.locator(".stale")
    assert stale.count() == 1
    assert page.evaluate("document.querySelector('.stale').getBoundingClientRect().top") == 0
    assert stale.inner_text().startswith("THIS EDITION RAN OUT ON")
    card = page.evaluate("document.querySelector(`[data-page^='cards/']`).dataset.page")
    page.goto(f"{file.as_uri()}#{card}")
    assert page.evaluate(SHOWN) == [card]
    assert stale.is_visible()


def test_the_manifest_of_an_edition_names_the_file_and_every_binder(demo_issued: Built) -> None:
    site = demo_issued.site
    text = (site / "manifest.txt").read_text("utf-8")
    binders = [f"{BINDERS}/{one.name}" for one in (site / BINDERS).glob("*.html")]

    assert len(binders) == 7
    assert [one for one in (NAME, *binders) if f"  {one}\n" not in text] == []
