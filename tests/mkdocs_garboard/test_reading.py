"""Pages as they are read: on a phone with wet gloves, at night, on paper, and without any network."""

import re
import shutil
import subprocess
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from PIL import Image

from garboard.views.page import Message, Plate, Shown, Step, Steps
from mkdocs_garboard.site_check import letters
from tests.mkdocs_garboard import browser, sample
from tests.mkdocs_garboard.conftest import Build, Site

pytestmark = pytest.mark.browser
PHONE, NARROW, DESK = (360, 640), (320, 640), (1280, 900)
KINDS = (
    "index", "contents", "find", "registers/alarms", "id/SA-PR-001", "id/SA-CL-001", "starting-air/what-it-does",
    "starting-air/normal-values", "starting-air/layout",
)  # fmt: skip


def lit(page: Path, light: str) -> Path:
    """A copy of a page in the light of a reader's choice."""
    copy = page.with_name(f"{light}-{page.name}")
    copy.write_text(
        page.read_text("utf-8").replace("<html ", f'<html data-light="{light}" ', 1), "utf-8"
    )
    return copy


def without_scripts(page: Path) -> Path:
    """A copy of a page as a browser shows it that runs no script."""
    copy = page.with_name(f"still-{page.name}")
    copy.write_text(re.sub(r"<script.*?</script>", "", page.read_text("utf-8")), "utf-8")
    return copy


@pytest.fixture
def own(site: Site, tmp_path: Path) -> Path:
    """A copy of the site that a test may scribble in."""
    return Path(shutil.copytree(site.folder, tmp_path / "site"))


CUT = """
return [].filter.call(document.querySelectorAll('.ladder li > span, .ladder svg line, .ladder svg circle'), function (e) {
  var box = e.getBoundingClientRect(), sheet = document.querySelector('.sheet').getBoundingClientRect();
  return box.right > sheet.right + 0.5 || box.left < sheet.left || (e.clientWidth && e.scrollWidth > e.clientWidth + 1);
}).map(function (e) { return e.textContent || e.outerHTML; })
"""


@pytest.mark.parametrize("size", [NARROW, PHONE, DESK])
def test_no_word_of_a_ladder_is_cut_off(own: Path, size: tuple[int, int]) -> None:
    assert browser.asked(own / "starting-air/normal-values.html", CUT, size) == []


def test_a_label_that_takes_two_lines_makes_room_for_them(own: Path) -> None:
    script = """
    var cell = document.querySelector('.limits.listed td[data-label], .limits.many td[data-label]');
    cell.textContent = 'short';
    var before = cell.getBoundingClientRect().height;
    cell.setAttribute('data-label', 'margin at the worst corner of all tolerances');
    return cell.getBoundingClientRect().height >= before * 2;
    """
    assert browser.asked(own / "starting-air/normal-values.html", script, PHONE) is True


@pytest.mark.parametrize("path", KINDS)
def test_no_page_scrolls_sideways_on_a_narrow_phone(own: Path, path: str) -> None:
    script = "var r=document.documentElement;return [r.clientWidth,r.scrollWidth]"

    assert browser.asked(own / f"{path}.html", script, NARROW) == [320, 320]


def test_no_page_scrolls_sideways_with_text_at_twice_its_size_and_wide_spacing(own: Path) -> None:
    script = (
        "document.documentElement.style.fontSize='200%';var s=document.body.style;s.lineHeight=1.5;s.letterSpacing='.12em';"
        "s.wordSpacing='.16em';var r=document.documentElement;return r.scrollWidth<=r.clientWidth"
    )

    assert browser.asked(own / "id" / "SA-PR-001.html", script, (640, 900)) is True


def test_on_a_phone_the_first_step_stands_whole_above_the_bar(build_site: Build) -> None:
    message = Message(
        "DANGER", ("Air at ", Shown("SA-RV-001.set", "30 bar(g)"), " in the filling line"),
        ("It throws a loosened fitting through a hand.",), ("Open no fitting before ", Plate("SA-PI-001"), " reads 0 bar(g)."),
        "SA-HZ-001",
    )  # fmt: skip
    step = Step(
        "1",
        "Shut",
        (Plate("SA-HV-006"), " stop valve"),
        "port side",
        see=("shut",),
        message=message,
    )
    page = replace(sample.PROCEDURE, blocks=(Steps((step, step)),))
    book = sample.handbook()
    pages = tuple(page if each.key == page.key else each for each in book.pages)
    built = build_site(replace(book, pages=pages))
    script = (
        "return [document.querySelector('.checklist .row').getBoundingClientRect().bottom,"
        "document.querySelector('.bar').getBoundingClientRect().top]"
    )

    row, bar = browser.asked(built.folder / "id" / "SA-PR-001.html", script, PHONE)

    assert row <= bar


def test_the_bar_is_high_enough_for_a_glove_and_its_parts_stand_apart(own: Path) -> None:
    script = "return [].map.call(document.querySelectorAll('.bar a'),function(a){var r=a.getBoundingClientRect();return [r.left,r.right,r.height]})"

    bars = browser.asked(own / "index.html", script, PHONE)

    assert len(bars) == 4
    assert all(height >= 48 for _, _, height in bars)
    assert all(after[0] - before[1] >= 8 for before, after in pairwise(bars))


def test_what_is_touched_is_large_enough(own: Path) -> None:
    script = (
        "var o=[];document.querySelectorAll('.tiles a,.column a,.light button,.foot .report,summary').forEach("
        "function(e){var r=e.getBoundingClientRect();if(r.height<44)o.push(e.textContent+' '+r.height)});return o"
    )

    assert browser.asked(own / "index.html", script, PHONE) == []


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_nothing_to_read_is_smaller_than_sixteen_pixels(own: Path, size: tuple[int, int]) -> None:
    script = (
        "var o={};document.querySelectorAll('body *').forEach(function(e){if(e.closest('svg,math'))return;"
        "[].forEach.call(e.childNodes,function(n){if(n.nodeType==3&&n.textContent.trim()&&parseFloat(getComputedStyle(e).fontSize)<16)"
        "o[e.className||e.tagName]=getComputedStyle(e).fontSize})});return o"
    )

    for path in ("id/SA-PR-001", "id/SA-CL-001", "starting-air/what-it-does"):
        assert browser.asked(own / f"{path}.html", script, size) == {}


@pytest.mark.parametrize(
    "path", ["id/SA-PR-001", "starting-air/what-it-does", "starting-air/normal-values"]
)
def test_red_light_has_no_green_and_no_blue_in_any_pixel(
    own: Path, tmp_path: Path, path: str
) -> None:
    shot = browser.picture(lit(own / f"{path}.html", "red"), tmp_path / "red.png", (800, 1600))

    with Image.open(shot) as image:
        brightest = [channel.getextrema()[1] for channel in image.convert("RGB").split()]
    assert brightest == [255, 0, 0]


def test_dim_light_is_dark_and_day_light_is_white(own: Path, tmp_path: Path) -> None:
    corners = {}
    for light in ("day", "dim"):
        shot = browser.picture(
            lit(own / "index.html", light), tmp_path / f"{light}.png", (800, 600)
        )
        with Image.open(shot) as image:
            corners[light] = image.convert("RGB").getpixel((790, 400))

    assert corners == {"day": (255, 255, 255), "dim": (0x12, 0x12, 0x12)}


def test_the_light_is_set_before_the_style_is_read(site: Site) -> None:
    head = site.page("index").partition("</head>")[0]

    assert head.index("light.js") < head.index("garboard.css")
    assert "defer" not in head
    assert "async" not in head


def test_the_light_that_was_chosen_holds_on_the_next_page(own: Path) -> None:
    script = (
        "document.querySelector('button[value=red]').click();"
        "return [document.documentElement.getAttribute('data-light'),localStorage.getItem('garboard.light')]"
    )

    assert browser.asked(own / "index.html", script) == ["red", "red"]


def test_what_is_folded_opens_for_paper(own: Path) -> None:
    script = "var d=document.querySelector('details.fold'),before=d.open;dispatchEvent(new Event('beforeprint'));return [before,d.open]"

    assert browser.asked(own / "starting-air" / "what-it-does.html", script) == [False, True]


def text_of(pdf: Path) -> str:
    program = shutil.which("pdftotext")
    if not program:
        pytest.fail(
            "No pdftotext was found. The tests of paper need it: install the Debian package poppler-utils"
        )
    done = subprocess.run(
        [program, "-raw", str(pdf), "-"], capture_output=True, text=True, check=True
    )
    return done.stdout


@pytest.mark.parametrize("scripts", [True, False], ids=["with scripts", "without scripts"])
@pytest.mark.parametrize(
    "path",
    ["id/SA-PR-001", "id/SA-CL-001", "starting-air/what-it-does", "starting-air/normal-values"],
)
def test_paper_has_every_word_of_the_page(
    own: Path, tmp_path: Path, path: str, *, scripts: bool
) -> None:
    page = own / f"{path}.html"
    body = re.search(r"<article.*</article>", page.read_text("utf-8"), re.DOTALL)
    assert body
    back = r"<section class=\"used-on\".*?</section>"  # the way back is for a screen
    seen = re.sub(
        rf"<math.*?</math>|<a class=\"report\".*?</a>|{back}", " ", body[0], flags=re.DOTALL
    )
    printed = letters(
        text_of(
            browser.sheets(page if scripts else without_scripts(page), tmp_path / "page.pdf")
        ).replace("<", "&lt;")
    )

    missing = [
        word
        for word in re.findall(r"[\w.()/-]+", re.sub(r"<[^>]*>", " ", seen))
        if len(word) > 3 and letters(word) not in printed
    ]
    assert [word for word in missing if word not in ("____________", "nbsp")] == []
    assert re.search(r"page1of\d", printed)


def test_paper_is_black_on_white_whatever_the_light(own: Path, tmp_path: Path) -> None:
    program = shutil.which("pdftoppm")
    assert program, "install the Debian package poppler-utils"
    for light in ("day", "red"):
        pdf = browser.sheets(
            without_scripts(lit(own / "id" / "SA-PR-001.html", light)), tmp_path / f"{light}.pdf"
        )
        subprocess.run(
            [program, "-r", "50", "-png", "-singlefile", str(pdf), str(tmp_path / light)],
            check=True,
        )

    assert (tmp_path / "day.png").read_bytes() == (tmp_path / "red.png").read_bytes()


def test_a_procedure_is_printed_on_a5_and_a_table_on_a4(own: Path, tmp_path: Path) -> None:
    program = shutil.which("pdfinfo")
    assert program, "install the Debian package poppler-utils"
    sizes = []
    for path in ("id/SA-PR-001", "starting-air/normal-values"):
        pdf = browser.sheets(own / f"{path}.html", tmp_path / "page.pdf")
        sizes.append(
            subprocess.run([program, str(pdf)], capture_output=True, text=True, check=True).stdout
        )

    assert "(A5)" in sizes[0]
    assert "(A4)" in sizes[1]


@pytest.mark.parametrize("path", ["id/SA-PR-001", "find"])
def test_no_page_asks_for_anything_from_outside(site: Site, tmp_path: Path, path: str) -> None:
    blank = browser.requests("about:blank", tmp_path / "blank.json")
    asked = browser.requests(
        browser.address(site.folder / f"{path}.html", "SA-RV-001"), tmp_path / "page.json"
    )

    assert asked - blank == set()


def test_a_request_to_the_outside_would_be_seen(tmp_path: Path) -> None:
    page = tmp_path / "leaky.html"
    page.write_text("<!doctype html><img src='http://outside.invalid/a.png'>", "utf-8")

    assert "outside.invalid/a.png" in browser.requests(
        browser.address(page), tmp_path / "page.json"
    )


def test_the_policy_keeps_a_page_from_asking_the_outside(own: Path, tmp_path: Path) -> None:
    page = own / "index.html"
    page.write_text(
        page.read_text("utf-8").replace(
            "</main>", "<img src='http://outside.invalid/a.png'></main>"
        ),
        "utf-8",
    )

    assert "outside.invalid/a.png" not in browser.requests(
        browser.address(page), tmp_path / "page.json"
    )


def test_the_policy_stops_a_script_that_got_into_a_page(own: Path) -> None:
    page = own / "index.html"
    text = page.read_text("utf-8")
    page.write_text(
        text.replace(
            "</main>", "<script>document.title='taken'</script><p onclick='x'>y</p></main>"
        ),
        "utf-8",
    )

    shown = browser.opened(page)

    assert "<title>WORKING COPY: Skerry Light - Skerry Light handbook</title>" in shown
    assert 'aria-pressed="false"' in shown


def test_without_scripts_a_page_is_whole_and_find_says_where_to_go(own: Path) -> None:
    still = without_scripts(own / "find.html")

    assert "Without scripts this box does nothing." in browser.opened(still)


def test_a_copy_in_black_and_white_still_tells_the_frames_apart(own: Path) -> None:
    script = (
        "return [].map.call(document.querySelectorAll('.message'),function(m){var s=getComputedStyle(m);"
        "return s.borderTopStyle+' '+s.borderTopWidth})"
    )

    assert browser.asked(own / "starting-air" / "what-it-does.html", script) == [
        "solid 4px",
        "dashed 3px",
    ]
    assert browser.asked(own / "id" / "SA-PR-001.html", script) == ["double 6px", "solid 1px"]


def test_a_machine_without_a_browser_is_told_what_to_install(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(shutil, "which", lambda _name: None)

    with pytest.raises(pytest.fail.Exception, match="install the Debian package chromium"):
        browser.program()
