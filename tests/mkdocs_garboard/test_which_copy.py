"""An edition and a working copy cannot be taken for each other, and an old edition says that it is old."""

import csv
import json
import re
import shutil
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image

from garboard.handbook import Handbook
from garboard.views.page import Copy
from tests.mkdocs_garboard import browser, sample
from tests.mkdocs_garboard.conftest import Site, make_site

EDITION = Copy(2, "2031-09-15", "2032-09-15", "relief valve SA-RV-001 is due 2032-09-15")
BESIDE = Copy(holders_have="edition 2 of 2031-09-15")
PAGE = "id/SA-PR-001"


def as_copy(copy: Copy) -> Handbook:
    book = sample.handbook()
    pages = tuple(replace(page, copy=copy) for page in book.pages)
    return replace(book, pages=pages, copy=copy)


@pytest.fixture(scope="module")
def sea(tmp_path_factory: pytest.TempPathFactory) -> Site:
    """The sample as edition 2."""
    folder = tmp_path_factory.mktemp("sea")
    (folder / "mkdocs.yml").touch()
    return make_site(folder, as_copy(EDITION))


@pytest.fixture(scope="module")
def working(tmp_path_factory: pytest.TempPathFactory) -> Site:
    """The sample as the working copy beside it."""
    folder = tmp_path_factory.mktemp("working")
    (folder / "mkdocs.yml").touch()
    return make_site(folder, as_copy(BESIDE))


def on(site: Site, day: str, folder: Path, *, light: str = "") -> Path:
    """A page of a site as a device shows it whose clock says that day; the page's path."""
    own = folder / f"{day}{light}"
    shutil.copytree(site.folder, own)
    clock = (
        "<script>(function(){var D=Date;function F(a){return arguments.length?"
        f"new (Function.prototype.bind.apply(D,[null].concat([].slice.call(arguments)))):new D('{day}T10:00:00')}}"
        "F.UTC=D.UTC;F.now=function(){return new F().getTime()};F.prototype=D.prototype;window.Date=F})()</script>"
    )
    page = own / f"{PAGE}.html"
    text = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", page.read_text("utf-8"))
    text = text.replace("<head>", f"<head>{clock}", 1)
    if light:
        text = text.replace("<html ", f'<html data-light="{light}" ', 1)
    page.write_text(text, "utf-8")
    return page


FIRST = (
    "var b=document.querySelector('.stale');if(!b)return null;var r=b.getBoundingClientRect();"
    "return {first:document.body.firstElementChild===b,width:r.width,top:r.top,words:b.textContent,"
    "page:document.documentElement.clientWidth,scroll:document.documentElement.scrollWidth}"
)


@pytest.mark.parametrize(
    ("day", "words"),
    [
        ("2032-09-16", "THIS EDITION RAN OUT ON 15 September 2032, 1 day ago by this device's clock."),
        ("2033-09-15", "THIS EDITION RAN OUT ON 15 September 2032, 365 days ago"),
        ("2032-09-15", "THIS EDITION RUNS OUT TODAY, 15 September 2032."),
        ("2032-08-16", "THIS EDITION RUNS OUT IN 30 days, on 15 September 2032."),
        ("2031-09-13", "THIS DEVICE'S CLOCK SAYS 2031-09-13, before edition 2 was issued (2031-09-15)."),
        ("2019-01-01", "THIS DEVICE'S CLOCK SAYS 2019-01-01"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("size", [(1280, 900), (360, 640)], ids=["desktop", "phone"])
@pytest.mark.browser
def test_what_the_devices_clock_has_against_an_edition_stands_first_and_full_width(
    sea: Site, tmp_path: Path, day: str, words: str, size: tuple[int, int]
) -> None:
    page = on(sea, day, tmp_path)

    said = browser.asked(page, FIRST, size)

    assert said is not None
    assert said["words"].startswith(words)
    assert said["first"]
    assert said["top"] == 0
    assert said["width"] == said["page"] == said["scroll"]


@pytest.mark.parametrize("day", ["2031-09-14", "2031-09-15", "2032-01-01", "2032-08-15"])
@pytest.mark.browser
def test_an_edition_in_its_time_says_nothing_of_the_clock(
    sea: Site, tmp_path: Path, day: str
) -> None:
    assert browser.asked(on(sea, day, tmp_path), FIRST) is None


@pytest.mark.browser
def test_an_old_edition_says_what_to_do(sea: Site, tmp_path: Path) -> None:
    said = browser.asked(on(sea, "2032-10-02", tmp_path), FIRST)

    assert "Ask for the next edition. Until it is here, do not rely on set values" in said["words"]


@pytest.mark.browser
def test_a_working_copy_is_never_told_to_be_in_date(working: Site, tmp_path: Path) -> None:
    assert browser.asked(on(working, "2040-01-01", tmp_path), FIRST) is None


def printed(page: Path, to: Path) -> str:
    program = shutil.which("pdftotext")
    assert program, "install the Debian package poppler-utils"
    pdf = browser.sheets(page, to)
    done = subprocess.run([program, "-layout", str(pdf), "-"], capture_output=True, text=True, check=True)  # fmt: skip
    return " ".join(done.stdout.split())


@pytest.mark.browser
def test_printed_after_its_day_the_paper_says_so(sea: Site, tmp_path: Path) -> None:
    words = printed(on(sea, "2032-10-02", tmp_path), tmp_path / "old.pdf")

    assert words.index("THIS EDITION RAN OUT ON 15 September 2032") < words.index(
        "NOT REVIEWED. Nobody"
    )


@pytest.mark.browser
def test_with_scripts_off_the_paper_has_the_day_at_its_head(sea: Site, tmp_path: Path) -> None:
    page = on(sea, "2032-10-02", tmp_path)
    text = re.sub(r"<script[^>]*>.*?</script>", "", page.read_text("utf-8"), flags=re.DOTALL)
    page.write_text(text, "utf-8")

    words = printed(page, tmp_path / "still.pdf")

    assert "RAN OUT" not in words
    assert "Valid to the end of 2032-09-15: relief valve SA-RV-001 is due 2032-09-15." in words
    assert words.index("EDITION 2 - VALID UNTIL 2032-09-15") < words.index("Shut")
    assert "After that day ask for the next edition." in words


@pytest.mark.browser
def test_the_edge_of_every_sheet_says_which_copy_it_is(
    sea: Site, working: Site, tmp_path: Path
) -> None:
    at_sea = printed(sea.folder / f"{PAGE}.html", tmp_path / "sea.pdf")
    at_work = printed(working.folder / f"{PAGE}.html", tmp_path / "work.pdf")

    assert at_sea.count("EDITION 2 - VALID UNTIL 2032-09-15") >= 3
    assert at_work.count("WORKING COPY - NOT FOR USE AT SEA") >= 2
    assert "WORKING COPY" not in at_sea
    assert "VALID UNTIL" not in at_work


def test_no_page_of_an_edition_carries_the_words_of_a_working_copy(sea: Site) -> None:
    for path in sea.pages:
        text = path.read_text("utf-8")
        assert "WORKING COPY" not in text, path
        assert "<title>EDITION 2: " in text, path
        assert "EDITION 2 - VALID UNTIL 2032-09-15" in re.sub(r"<[^>]*>", "", text), path


def test_no_page_of_a_working_copy_carries_the_words_of_an_edition(working: Site) -> None:
    for path in working.pages:
        text = path.read_text("utf-8")
        assert not re.search(r"EDITION \d", text), path
        assert "VALID UNTIL" not in text, path
        assert "<title>WORKING COPY: " in text, path
        said = re.sub(r"<[^>]*>", "", text)
        assert "Not for use at sea. Edition 2 of 2031-09-15 is what holders have." in said, path


def test_the_page_that_is_not_there_and_the_one_to_find_things_say_it_too(
    sea: Site, working: Site
) -> None:
    for name in ("404", "find", "contents", "raise-a-finding"):
        assert "EDITION 2 - VALID UNTIL <span" in sea.page(name)
        assert "WORKING COPY, not an edition" in working.page(name)


@pytest.mark.parametrize(("copy", "own", "other"), [(EDITION, "EDITION 2", "WORKING COPY"), (BESIDE, "WORKING COPY", "EDITION 2")])  # fmt: skip
def test_the_files_of_numbers_say_which_copy_they_are_of(
    copy: Copy, own: str, other: str, working: Site, sea: Site
) -> None:
    folder = (sea if copy.number else working).folder

    data = json.loads((folder / "values.json").read_text("utf-8"))
    with (folder / "values.csv").open(encoding="utf-8", newline="") as lines:
        head = next(csv.reader(lines))

    assert data["copy"] == f"{copy.words} {copy.beside}".strip()
    assert own in data["copy"]
    assert other not in data["copy"]
    assert head[-1] == "copy"


@pytest.mark.browser
def test_black_and_white_is_enough_to_tell_them_apart(sea: Site, working: Site) -> None:
    script = (
        "var s=getComputedStyle(document.querySelector('.which-copy'));return s.borderBottomStyle"
    )

    assert browser.asked(sea.folder / f"{PAGE}.html", script) == "solid"
    assert browser.asked(working.folder / f"{PAGE}.html", script) == "dashed"


@pytest.mark.browser
def test_the_words_of_an_old_edition_are_read_by_night_as_by_day(sea: Site, tmp_path: Path) -> None:
    page = on(sea, "2032-10-02", tmp_path, light="dim")

    shot = browser.picture(page, tmp_path / "dim.png", (1280, 900))

    with Image.open(shot) as image:
        shades = image.convert("L").crop((0, 0, 1280, 30)).tobytes()
    assert max(shades) - min(shades) > 120
