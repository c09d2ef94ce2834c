"""The demo's pages under a theme that is not ours, against the same pages in that theme alone.

The floor is what axe-core holds against a plain site made of the same rendered pages, without the plugin and
its style. With them nothing may be worse, by rule; and what the plugin draws may have no fault at all.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Literal

import pytest
from axe_playwright_python.sync_playwright import Axe
from mkdocs.commands.build import build
from mkdocs.config import load_config
from playwright.sync_api import Page

from garboard.views.page import Page as View
from mkdocs_garboard import plugin
from tests.conftest import PHONE
from tests.demo_site import DEMO, Built, demo_handbook
from tests.mkdocs_garboard.browser import chromium
from tests.mkdocs_garboard.test_valid_pages import showing_everything

pytestmark = pytest.mark.browser

DESKTOP = (1280, 900)
Light = Literal["light", "dark"]
THEME = {
    "name": "material",
    "font": False,
    "palette": [
        {"scheme": "default", "media": "(prefers-color-scheme: light)"},
        {"scheme": "slate", "media": "(prefers-color-scheme: dark)"},
    ],
}
MENDED = {"aria-hidden-focus", "color-contrast", "target-size"}
"""Rules that the theme alone breaks, and a few lines of ours keep."""
ALL_RULES = {"resultTypes": ["violations"], "rules": {"target-size": {"enabled": True}}}


@dataclass(frozen=True)
class Sites:
    """One page of each kind twice: with the plugin, and in the theme alone."""

    ours: Path
    floor: Path

    def pages(self, *paths: str) -> list[Path]:
        return [self.ours / f"{path}.html" for path in paths]


def one_of_each_kind() -> tuple[View, ...]:
    """The page of each kind with the most sorts of blocks."""
    richest: dict[str, View] = {}
    for page in demo_handbook().pages:
        kinds = {type(block) for block in page.blocks}
        best = richest.setdefault(page.kind, page)
        if len(kinds) > len({type(block) for block in best.blocks}):
            richest[page.kind] = page
    return tuple(richest.values())


def _built(folder: Path, docs: Path, plugins: list[str], **settings: Any) -> Any:
    (folder / "mkdocs.yml").touch()
    config = load_config(
        config_file=str(folder / "mkdocs.yml"), site_name="Skerry Light", docs_dir=str(docs), theme=THEME,
        site_dir=str(folder / "site"), plugins=plugins, use_directory_urls=False, **settings,
    )  # fmt: skip
    build(config)
    return config


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> Sites:
    ours, floor = (tmp_path_factory.mktemp(name) for name in ("ours", "floor"))
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("NO_MKDOCS_2_WARNING", "1")
        some = replace(demo_handbook(), pages=one_of_each_kind(), entries=())
        patch.setattr(plugin, "read", lambda _folder: some)
        nav = _built(ours, DEMO, ["search", "garboard"]).nav
        for page in (ours / "site").rglob("*.html"):
            _, sheet, rest = page.read_text("utf-8").partition('<article class="sheet')
            if sheet:
                written = floor / "docs" / page.relative_to(ours / "site").with_suffix(".md")
                written.parent.mkdir(parents=True, exist_ok=True)
                written.write_text(
                    sheet + rest.partition("</article>")[0] + "</article>\n", "utf-8"
                )
        _built(floor, floor / "docs", ["search"], nav=nav)
    return Sites(ours / "site", floor / "site")


def opened(pages: list[Path], size: tuple[int, int], light: Light) -> Iterator[Page]:
    """Each page on a screen of a size, by a reader who asked for light or dark."""
    width, height = size
    context = chromium().new_context(
        offline=True, viewport={"width": width, "height": height}, color_scheme=light
    )
    try:
        page = context.new_page()
        for path in pages:
            page.goto(path.as_uri())
            yield page
    finally:
        context.close()


def against(page: Page) -> list[tuple[str, str, bool]]:
    """Every element that axe-core holds something against: the rule, where, whether it is on a sheet."""
    inside = "place => !!document.querySelector(place)?.closest('.sheet')"
    return [
        (one["id"], f"{page.url[-40:]} {place}", page.evaluate(inside, place))
        for one in Axe().run(page, options=ALL_RULES).response["violations"]
        for node in one["nodes"]
        for place in (str(node["target"][0]),)
    ]


def test_what_we_draw_has_no_fault_under_another_theme(sites: Sites) -> None:
    pages = sites.pages(*(page.path for page in one_of_each_kind()))
    found = [one for page in opened(pages, PHONE, "light") for one in against(page)]

    assert len(pages) > 40
    assert [one for one in found if one[-1]] == []


@pytest.mark.parametrize(
    ("size", "light"), [(PHONE, "dark"), (DESKTOP, "light"), (DESKTOP, "dark")]
)
def test_no_rule_is_broken_more_often_than_by_the_theme_alone(
    sites: Sites, size: tuple[int, int], light: Light
) -> None:
    pages = [
        page for page in showing_everything(Built(sites.ours, 0, "")) if page.name != "404.html"
    ]
    alone = [sites.floor / page.relative_to(sites.ours) for page in pages]
    ours = Counter(rule for page in opened(pages, size, light) for rule, _, _ in against(page))
    floor = Counter(rule for page in opened(alone, size, light) for rule, _, _ in against(page))

    assert len(pages) > 5
    assert ours - floor == Counter()
    assert not ours.keys() & MENDED
    assert floor.keys() & MENDED


def test_letters_that_fade_are_seen_and_laid_to_us(sites: Sites) -> None:
    for page in opened(sites.pages("index"), PHONE, "light"):
        page.add_style_tag(content=".sheet { --ink: #999999 !important; }")

        assert {(rule, ours) for rule, _, ours in against(page)} == {("color-contrast", True)}


def test_a_sheet_is_as_light_or_dark_as_the_theme_around_it(sites: Sites) -> None:
    paper = "getComputedStyle(document.querySelector('.sheet')).backgroundColor"
    for page in opened(sites.pages("index"), PHONE, "dark"):
        assert page.evaluate(paper) == "rgb(18, 18, 18)"
        page.evaluate("document.body.dataset.mdColorScheme = 'default'")
        assert page.evaluate(paper) == "rgb(255, 255, 255)"
