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
from playwright.sync_api import Page
from pypdf import PdfReader
from selectolax.lexbor import LexborHTMLParser

from mkdocs_garboard.joined import place
from mkdocs_garboard.single_file import single_file_name
from mkdocs_garboard.site_check import SiteCheck
from tests.conftest import Open
from tests.demo_site import Built
from tests.mkdocs_garboard import sample
from tests.mkdocs_garboard.conftest import Site

pytestmark = pytest.mark.browser
NAME = "skerry-light-handbook.html"
SHOWN = "[...document.querySelectorAll('.leaf')].filter(one => one.offsetParent).map(one => one.querySelector('.sheet').id)"


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

    differs, pages = [], [page for page in demo_built.pages if page.name != "404.html"]
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
    links = [str(part.attributes["href"]) for part in read.css("body [href]")]

    assert [one for one, times in ids.items() if times > 1] == []
    assert [one for one in links if not one.startswith("#")] == []
    assert [one for one in links if unquote(one[1:]) not in ids] == []
    assert len(links) > 20_000
    assert {str(one.attributes["src"])[:5] for one in read.css("img")} == {"data:"}


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


def test_the_light_is_kept(on_phone: Page, alone: Path, opened: Open) -> None:
    on_phone.locator(".light button[value=red]").click()

    again = opened(alone)

    assert again.evaluate("document.documentElement.dataset.light") == "red"


def test_what_if_works_in_the_file(on_phone: Page, read: LexborHTMLParser) -> None:
    assert on_phone.locator("section.what-if").count() == len(read.css("script.what-if")) > 5


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
