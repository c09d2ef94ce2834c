"""Pages of the handbook in one file lie packed until somebody opens them, and no way leads past that."""

import shutil
from collections.abc import Callable, Iterator
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image, ImageStat
from playwright.sync_api import Page
from selectolax.lexbor import LexborHTMLParser

from garboard.views.page import Photo
from mkdocs_garboard.album import Album
from mkdocs_garboard.joined import Joined
from mkdocs_garboard.site_check import SiteCheck
from tests.conftest import Open
from tests.mkdocs_garboard import sample
from tests.mkdocs_garboard.conftest import Build, Site
from tests.mkdocs_garboard.test_single_file import NAME, SHOWN
from tests.mkdocs_garboard.test_valid_pages import judged

pytestmark = pytest.mark.browser
FIRST, OTHER = "id/SA-AL-001", "starting-air/what-it-does"
HELD_BACK = "Only this first page opens here."
ENDS_A_PAGE = 'Hand wheel "7" & its plate </noscript></NOSCRIPT ><b id=loose>loose</b>'


@pytest.fixture(scope="module")
def small(site: Site, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample in one file, in a folder that holds nothing else."""
    return Path(shutil.copy(site.folder / NAME, tmp_path_factory.mktemp("small")))


@pytest.fixture
def page(small: Path, opened: Open) -> Iterator[Page]:
    made = opened(small)
    faults: list[str] = []
    made.on("console", lambda said: faults.append(said.text))
    yield made
    assert faults == []


def by_a_link(page: Page, _file: Path) -> None:
    page.evaluate(
        f"document.querySelector(`.column`).innerHTML += `<a id='l' href='#{OTHER}'>x</a>`"
    )
    page.locator("#l").click()


def by_a_script(page: Page, _file: Path) -> None:
    page.evaluate(f"() => {{ location.hash = '#{OTHER}'; }}")


def by_its_address(page: Page, file: Path) -> None:
    page.goto(f"{file.as_uri()}#{OTHER}")


def by_going_back(page: Page, file: Path) -> None:
    for ident in (OTHER, FIRST):
        page.goto(f"{file.as_uri()}#{ident}")
        page.wait_for_selector(f"[id='{ident}']:target")
    page.reload()
    assert page.locator(f"[id='{OTHER}']").count() == 0
    page.go_back()


@pytest.mark.parametrize("way", [by_a_link, by_a_script, by_its_address, by_going_back])
def test_every_way_to_a_page_unpacks_it_and_shows_its_head(
    page: Page, small: Path, way: Callable[[Page, Path], None]
) -> None:
    assert page.locator(f"[id='{OTHER}']").count() == 0

    way(page, small)

    page.wait_for_selector(f"[id='{OTHER}']:target")
    assert page.evaluate(SHOWN) == [OTHER]
    assert page.evaluate("scrollY") == 0
    page.wait_for_function("title => document.title.includes(title)", arg=sample.WHAT_IT_DOES.title)


def test_a_page_is_unpacked_before_the_browser_looks_for_it(page: Page) -> None:
    at_once = f"""() => {{
        document.querySelector('.column').innerHTML += `<a id='l' href='#{OTHER}'>x</a>`;
        document.getElementById('l').click();
        return document.getElementById('{OTHER}') !== null;
    }}"""

    assert page.evaluate(at_once)


def test_an_address_that_means_nothing_shows_the_front_page(page: Page, small: Path) -> None:
    for lost in ("nowhere", "%E0%A4%A", "constructor", "__proto__:x"):
        page.goto(f"{small.as_uri()}#{lost}")

        assert page.evaluate(SHOWN) == ["index"]


def test_a_browser_that_cannot_show_one_page_shows_them_all(small: Path, opened: Open) -> None:
    page = opened(small)
    page.add_init_script("CSS.supports = () => false")

    page.reload()

    sheets = len(LexborHTMLParser(small.read_text("utf-8")).css("article.sheet"))
    assert page.locator("article.sheet").count() == sheets > 10
    assert page.locator("noscript").count() == 1


def test_where_scripts_are_held_back_the_first_page_says_what_to_do(
    small: Path, opened: Open, tmp_path: Path
) -> None:
    text = small.read_text("utf-8")
    assert text.count("script-src ") == 1
    held = tmp_path / NAME
    held.write_text(text.replace("script-src ", "script-src 'none'; old "), "utf-8")

    assert opened(held).get_by_text(HELD_BACK).is_visible()
    assert not opened(held, scripts=False).get_by_text(HELD_BACK).is_visible()
    assert not opened(small).get_by_text(HELD_BACK).is_visible()


def test_a_page_is_shown_before_all_of_the_file_is_read(page: Page, small: Path) -> None:
    page.add_init_script(
        f"addEventListener('DOMContentLoaded', () => {{ window.early = [{SHOWN}, document.querySelector(':target')]; }})"
    )
    page.goto(f"{small.as_uri()}#{OTHER}")

    page.reload()

    assert page.evaluate("early") == [[OTHER], None]
    assert page.evaluate(SHOWN) == [OTHER]
    assert page.locator(".shown").count() == 0


def test_a_copy_that_a_browser_makes_to_print_shows_the_same_page(
    page: Page, small: Path, opened: Open, tmp_path: Path
) -> None:
    copy = tmp_path / "copy.html"

    def printed() -> list[str]:
        page.evaluate("dispatchEvent(new Event('beforeprint'))")
        copy.write_text(page.evaluate("document.documentElement.outerHTML"), "utf-8")
        page.evaluate("dispatchEvent(new Event('afterprint'))")
        made = opened(copy, scripts=False)
        made.emulate_media(media="print")
        return list(made.evaluate(SHOWN))

    page.goto(f"{small.as_uri()}#{OTHER}")
    page.wait_for_selector(f"[id='{OTHER}']:target")

    assert printed() == [OTHER]
    assert page.evaluate("document.querySelectorAll('.shown').length") == 0
    page.goto(f"{small.as_uri()}#index")
    assert printed() == ["index"]


def three_with_a_photo(alt: str) -> sample.SampleHandbook:
    """The sample, with one photograph on three pages more."""
    book = sample.handbook()
    photo = Photo("photos/receivers.jpg", alt, "From the gangway")
    chosen = {FIRST, "id/SA-PR-001", "id/SA-CL-001"}
    pages = tuple(
        replace(one, blocks=(*one.blocks, photo)) if one.path in chosen else one
        for one in book.pages
    )
    assert sum(one != other for one, other in zip(pages, book.pages, strict=True)) == len(chosen)
    return replace(book, pages=pages)


@pytest.fixture
def pictured(build_site: Build) -> Site:
    return build_site(three_with_a_photo(ENDS_A_PAGE))


def test_a_photograph_stands_once_in_the_file_and_its_text_on_each_page(pictured: Site) -> None:
    text = (pictured.folder / NAME).read_text("utf-8")
    read = LexborHTMLParser(text)

    assert text.count("data:image/webp;base64,") == len(read.css("image")) == 1
    shown = read.css("svg.photograph")
    beside = [
        LexborHTMLParser(one.read_text("utf-8")).css("article.sheet img") for one in pictured.pages
    ]
    assert len(shown) == sum(map(len, beside)) > 3
    assert [one.attributes["aria-label"] for one in shown].count(ENDS_A_PAGE) == 3
    assert judged([pictured.folder / NAME]) == []


@pytest.mark.parametrize("scripts", [True, False])
def test_a_text_that_would_end_a_packed_page_ends_nothing(
    pictured: Site, opened: Open, *, scripts: bool
) -> None:
    page = opened(pictured.folder / NAME, scripts=scripts)

    page.goto(f"{(pictured.folder / NAME).as_uri()}#{FIRST}")

    assert page.evaluate(SHOWN) == [FIRST]
    assert page.locator("#loose").count() == 0
    assert page.get_by_role("img", name=ENDS_A_PAGE, exact=True).count() == 1


def colours(picture: bytes) -> list[float]:
    """The mean red, green and blue of a picture."""
    return ImageStat.Stat(Image.open(BytesIO(picture)).convert("RGB")).mean


@pytest.mark.parametrize("scripts", [True, False])
@pytest.mark.parametrize("size", [(360, 640), (1280, 900)])
def test_a_photograph_of_the_file_is_as_large_as_on_the_site_and_is_seen(
    pictured: Site, opened: Open, size: tuple[int, int], *, scripts: bool
) -> None:
    beside = opened(pictured.folder / f"{FIRST}.html", size, scripts=scripts).locator(".photo img")
    page = opened(pictured.folder / NAME, size, scripts=scripts)
    page.goto(f"{(pictured.folder / NAME).as_uri()}#{FIRST}")
    drawn = page.locator(".photograph:visible")

    beside.scroll_into_view_if_needed()
    drawn.scroll_into_view_if_needed()

    one, other = beside.bounding_box(), drawn.bounding_box()
    assert one
    assert other
    assert (other["width"], other["height"]) == pytest.approx((one["width"], one["height"]), abs=1)
    assert one["width"] > 100
    assert colours(drawn.screenshot()) == pytest.approx(colours(beside.screenshot()), abs=3)


def test_a_photograph_without_text_is_told(pictured: Site, tmp_path: Path) -> None:
    folder = tmp_path / "told"
    shutil.copytree(pictured.folder, folder)
    text = (folder / NAME).read_text("utf-8")
    (folder / NAME).write_text(
        text.replace('aria-label="Both receivers', 'aria-label="" data-x="'), "utf-8"
    )

    told = [one for one in SiteCheck(folder).faults(()) if one.startswith(NAME)]

    assert told == [f"{NAME}: a photograph has no text"]


def test_a_picture_that_is_not_in_the_album_stays_without_a_source() -> None:
    album = Album(lambda uri: "data:," if uri == "photos/a.webp" else None)
    joined = Joined(["p"], lambda _uri: None, pictures=album.shown)

    html = joined.article("p", '<article class="sheet"><img src="photos/b.webp" alt="b"></article>')

    assert html == '<article class="sheet" id="p"><img alt="b"></article>'
    assert list(album) == []
