"""The lists one looks things up in, as they are read: on a phone with gloves, by key, and on paper."""

import subprocess
from pathlib import Path

import pytest

from tests.conftest import Open
from tests.demo_site import Built
from tests.mkdocs_garboard.browser import sheets

pytestmark = pytest.mark.browser

LISTS = (
    "registers/numbers",
    "registers/places",
    "registers/a-to-z",
    "registers/glossary",
    "registers/symptoms",
)
SMALL = """() => [...document.querySelectorAll('.sheet .jumps a, .sheet .listing a')].filter(e => {
    const box = e.getBoundingClientRect();
    return box.width && (box.height < 44 || box.width < 44);
}).map(e => e.textContent)"""


@pytest.mark.parametrize("name", LISTS)
@pytest.mark.parametrize("width", [320, 360, 1280])
def test_nothing_runs_off_and_every_way_is_large_enough_for_a_glove(
    demo_built: Built, opened: Open, name: str, width: int
) -> None:
    page = opened(demo_built.site / f"{name}.html", (width, 640), scripts=False)

    assert page.evaluate("() => document.documentElement.scrollWidth") <= width
    assert page.evaluate(SMALL) == []


@pytest.mark.parametrize("name", LISTS)
def test_a_page_of_a_list_is_within_its_budget(demo_built: Built, name: str) -> None:
    assert (demo_built.site / f"{name}.html").stat().st_size <= 150_000


@pytest.mark.parametrize("name", LISTS[:3])
def test_the_jumps_lead_to_the_headings_in_their_order(
    demo_built: Built, opened: Open, name: str
) -> None:
    page = opened(demo_built.site / f"{name}.html", scripts=False)

    ways = page.eval_on_selector_all(".jumps a", "all => all.map(e => e.hash.slice(1))")
    headings = page.eval_on_selector_all(".sheet h2[id]", "all => all.map(e => e.id)")

    assert len(ways) > 5
    assert [one for one in headings if one in ways] == ways


def test_a_number_that_was_found_is_marked_where_it_stands(demo_built: Built, opened: Open) -> None:
    page = opened(demo_built.site / "find.html")
    page.fill(".find.whole input", "435 psi")
    page.wait_for_selector(".find.whole .found a")

    page.press(".find.whole input", "Enter")
    page.wait_for_url("**/registers/numbers.html#gauge-pressure-30-bar-g")

    marked = page.locator(".listing li:target")
    assert marked.inner_text().replace("\xa0", " ").startswith("30 bar(g) = 435 psi(g)")
    assert marked.evaluate("e => getComputedStyle(e).borderTopWidth") == "3px"
    top = marked.evaluate("e => e.getBoundingClientRect().top")
    assert 0 <= top < 640


@pytest.mark.parametrize("name", LISTS[:3])
def test_on_paper_every_name_of_a_list_is_there(
    demo_built: Built, opened: Open, tmp_path: Path, name: str
) -> None:
    page = opened(demo_built.site / f"{name}.html", scripts=False)
    heads = page.eval_on_selector_all(
        ".listing > li", "all => all.map(e => (e.querySelector('a, strong') || e).textContent)"
    )

    paper = sheets(demo_built.site / f"{name}.html", tmp_path / "list.pdf")
    said = subprocess.run(
        ["pdftotext", str(paper), "-"], capture_output=True, text=True, check=True
    ).stdout
    written = "".join(said.split()).replace(
        "‐", "-"
    )  # a soft hyphen of the sheet is none of the name

    assert len(heads) > 50
    assert [head for head in heads if "".join(head.split()) not in written] == []
