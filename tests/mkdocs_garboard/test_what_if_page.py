"""What a reader meets who changes a number: field, answer, bar, reset, paper, no scripts, the policy."""

import json
import re
import shutil
import subprocess
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from garboard.calc.show import show_range
from garboard.handbook import Handbook, read
from mkdocs_garboard.html import Sheet
from mkdocs_garboard.site_check import letters
from tests.golden_case import BASE
from tests.mkdocs_garboard import browser
from tests.mkdocs_garboard.conftest import Site, make_site

pytestmark = pytest.mark.browser

SIZING = """\
---
id: SA-CL-001
title: Starts in one charge
system: SA
---
```calc sizing; what-if p_max count
p_max = 30 bar(g) +/- 0.5 bar  # compressor cut-out [plate-R1]
p_min = 12 bar(g)  # lowest that turns the engine [plate-R1]
count = 2  # receivers </script><b onclick="x">& more [plate-R1]
L = 26 m  # length [plate-R1]
v_start = 0.9 m3(n) +/- 5 %  # free air of one start [plate-R1]
V = count * 250 L  # water volume
stored = free_air(V, p_max, site.T_engine_room) - free_air(V, p_min, site.T_engine_room) in m3(n)  # usable air
n = floor(stored / v_start)  # starts in one charge
rule = bilge_and_fire_pump_rules(rule = small_passenger_bilge, length = L * count)  # a row
require n >= 6  # six starts [plate-R1]
```
"""
CARD = """\
---
id: SA-CL-002
title: Starts left
system: SA
---
```calc left; hide working; what-if reading
reading = 24 bar(g) +/- 0.6 bar  # What does the gauge read? [plate-R1]
air = starting_air_receiver(V = 250 L, p_reading = reading, p_min = 12 bar(g), v_start = 0.9 m3(n), T = site.T_engine_room)
quick = air.starts_least  # starts left, one after the other
slow = air.starts  # starts left, slowly
require quick >= 1  # one start in hand [plate-R1]
```
"""
CLOSED = """\
---
id: SA-CL-003
title: Nothing open
system: SA
---
```calc shut
a = 3 m  # a length [plate-R1]
b = 2 * a
```
"""


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    """Three calculations: one to try other numbers in, one that is a card, one with nothing open."""
    folder = tmp_path_factory.mktemp("content")
    system = "system: SA\ntitle: Starting air\nstatus: building\n"
    files = {**BASE, "systems/starting-air/system.yml": system}
    for name, text in (("SA-CL-001", SIZING), ("SA-CL-002", CARD), ("SA-CL-003", CLOSED)):
        files[f"systems/starting-air/{name}.md"] = text
    for path, text in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, "utf-8")
    return read(folder)


@pytest.fixture(scope="module")
def what_if_site(book: Handbook, tmp_path_factory: pytest.TempPathFactory) -> Site:
    """Their site."""
    folder = tmp_path_factory.mktemp("what-if")
    (folder / "mkdocs.yml").touch()
    return make_site(folder, book)


@pytest.fixture
def own(what_if_site: Site, tmp_path: Path) -> Path:
    """A copy of the records that a test may scribble in."""
    return Path(shutil.copytree(what_if_site.folder, tmp_path / "site")) / "id"


HAND = """
var box=document.querySelector('section.what-if'),out={};
function text(one){return one.textContent.replace(/\\u00a0/g,' ').replace(/\\s+/g,' ').trim()}
function say(){return {whose:text(box.querySelector('[role=status]')),changed:box.classList.contains('changed'),
reset:!box.querySelector('.whose button').hidden,
rows:[].map.call(box.querySelectorAll('.followed li'),text),fails:box.querySelectorAll('.fails').length,
alarms:text(box.querySelector('.alarms')),faults:[].map.call(box.querySelectorAll('.fault'),text).join(''),
typed:box.querySelector('.entry input').value,slid:(box.querySelector('.slider')||{}).value,
invalid:box.querySelector('.entry input').getAttribute('aria-invalid')}}
function type(value,at){var f=box.querySelectorAll('.entry input')[at||0];f.value=value;f.dispatchEvent(new Event('input'));return say()}
function press(name){box.querySelector(name).click();return say()}
function slide(value){var f=box.querySelector('.slider');f.value=value;f.dispatchEvent(new Event('input'));return say()}
"""


@pytest.fixture(scope="module")
def told(what_if_site: Site, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """What the open calculation says to one thing after another."""
    folder = Path(shutil.copytree(what_if_site.folder, tmp_path_factory.mktemp("told") / "site"))
    script = HAND + (
        "out.first=say();"
        "out.lower=type('20');out.comma=type('30,5');out.both=type('1,000.5');out.empty=type(' ');out.words=type('full');"
        "out.unit=type('30 bar');out.vacuum=type('-2');out.counted=type('2.5',1);type('2',1);"
        "out.same=type('30.0');out.reset=(type('14'),press('.whose button'));out.more=press('.entry button+div+button');"
        "out.less=(press('.whose button'),press('.entry button'));out.slid=slide('10');"
        "out.low=type('11');out.focus=(press('.whose button'),document.activeElement===box.querySelector('input'));"
        "out.answer=text(document.querySelector('.calculation > .answer'));"
        "out.live=[].map.call(box.querySelectorAll('[aria-live]'),function(e){return e.className+' '+e.getAttribute('aria-live')});"
        "out.labels=[].map.call(box.querySelectorAll('input,button'),function(e){return e.getAttribute('aria-label')||(e.labels&&e.labels[0]?text(e.labels[0]):'')});"
        "out.modes=[].map.call(box.querySelectorAll('.entry input'),function(e){return e.inputMode+' '+e.type});return out"
    )
    found: dict[str, Any] = browser.asked(folder / "id" / "SA-CL-001.html", script, (1280, 900))
    assert isinstance(found, dict), found
    return found


def test_at_first_the_form_shows_the_numbers_of_the_handbook(
    told: dict[str, Any], book: Handbook
) -> None:
    first, values = told["first"], book.book.values
    stored, starts = values["sizing.stored"], values["sizing.n"]

    assert first["whose"] == "These are the handbook’s numbers."
    assert (first["changed"], first["reset"], first["typed"]) == (False, False, "30")
    assert first["rows"][1] == f"usable air (stored){stored.text} ({show_range(stored)})"
    assert first["rows"][2] == f"starts in one charge (n){starts.text} ({show_range(starts)})"


def test_a_typed_number_moves_results_criteria_and_bar_at_once(told: dict[str, Any]) -> None:
    lower = told["lower"]

    assert lower["whose"] == "These are not the handbook’s numbers."
    assert (lower["changed"], lower["reset"], lower["fails"]) == (True, True, 1)
    assert lower["slid"] == "20"
    assert lower["rows"][-1] == (
        "Requirement: six starts"
        "Fails. Margin at the worst corner: -3 (-50 % of the limit).n >= 6: 4 >= 6"
    )


def test_what_a_table_gives_at_an_opened_number_is_not_followed(told: dict[str, Any]) -> None:
    rows = [row for row in told["lower"]["rows"] if "(rule." in row]

    assert rows
    assert all(row.endswith("not followed here") for row in rows)


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("comma", "30,5 has a comma in it: write 30.5, with a point, and nothing between thousands."),
        ("both", "1,000.5 has a comma in it: write a point before decimals, and nothing between thousands."),
        ("empty", "Write a number; the unit is bar(g)."),
        ("words", "full is no number: write figures alone, such as 30; the unit is bar(g)."),
        ("unit", "30 bar is no number: write figures alone, such as 30; the unit is bar(g)."),
        ("vacuum", "-2 is out of range: the lowest is -1.01 bar(g)."),
        ("counted", "-2 is out of range: the lowest is -1.01 bar(g).2.5 is no whole number, and this is counted."),
    ],
)  # fmt: skip
def test_what_is_no_number_here_is_refused_in_words_and_shows_none(
    told: dict[str, Any], name: str, says: str
) -> None:
    said = told[name]

    assert said["faults"] == says
    assert (said["invalid"], said["changed"], said["alarms"]) == ("true", True, "")
    assert all(row.endswith("not computed") for row in said["rows"])
    assert not [row for row in said["rows"] if re.search(r"[>)] ?\d", row.split("(", 1)[-1])]


def test_the_same_number_written_otherwise_is_the_handbooks(told: dict[str, Any]) -> None:
    assert told["same"]["changed"] is False
    assert told["same"]["rows"] == told["first"]["rows"]


def test_reset_brings_everything_back_and_leads_to_the_field(told: dict[str, Any]) -> None:
    assert told["reset"] == told["first"]
    assert told["focus"] is True


def test_buttons_and_slider_move_the_same_number(told: dict[str, Any]) -> None:
    assert (told["more"]["typed"], told["more"]["slid"]) == ("30.5", "30.5")
    assert (told["less"]["typed"], told["less"]["slid"]) == ("29.5", "29.5")
    assert (told["slid"]["typed"], told["slid"]["slid"]) == ("10", "10")
    assert told["slid"]["rows"] != told["first"]["rows"]


def test_the_numbers_of_the_handbook_stand_untouched(told: dict[str, Any], book: Handbook) -> None:
    starts = book.book.values["sizing.n"]

    assert told["answer"] == f"starts in one charge {starts.text}"


def test_whoever_listens_hears_labels_and_answers(told: dict[str, Any]) -> None:
    assert told["live"] == ["alarms polite", "followed polite"]
    assert told["modes"] == ["decimal text", "decimal text"]
    assert all(told["labels"])
    assert told["labels"][:4] == [
        "Less: compressor cut-out (p_max)", "compressor cut-out (p_max)", "More: compressor cut-out (p_max)",
        "compressor cut-out (p_max), slider",
    ]  # fmt: skip


def test_a_card_asks_one_question_first_and_answers_it_large(own: Path) -> None:
    script = HAND + (
        "out.first=say();out.low=type('12.5');out.high=type('41');out.question=text(box.querySelector('label'));"
        "var big=box.querySelector('.big .result');out.none=parseFloat(getComputedStyle(big).fontSize);"
        "var h=document.querySelector('.calculation h2'),a=document.querySelector('.calculation > .answer');"
        "out.order=!!(h.compareDocumentPosition(box)&4)&&!!(box.compareDocumentPosition(a)&4);type('24');"
        "out.big=parseFloat(getComputedStyle(big).fontSize);box.scrollIntoView();out.bottom=big.getBoundingClientRect().bottom;return out"
    )

    said = browser.asked(own / "SA-CL-002.html", script, (360, 640))

    assert said["question"] == "What does the gauge read?"
    assert said["first"]["rows"][0].startswith("starts left, one after the other2")
    assert len(said["first"]["rows"]) == 3
    assert said["low"]["rows"][0].startswith("starts left, one after the other0")
    assert said["low"]["alarms"] == (
        "Alarm: zero starts: do not rely on this receiver (at the worst corner)."
    )
    assert said["high"]["rows"][0] == (
        "starts left, one after the othernot computed"
        ": above 40 bar gauge, the range where air behaves ideally"
    )
    assert said["order"] is True
    assert "<b>The handbook’s own numbers</b>" in (own / "SA-CL-002.html").read_text("utf-8")
    assert said["big"] >= 36 > said["none"]
    assert said["bottom"] < 640 - 64


@pytest.mark.parametrize("record", ["SA-CL-001", "SA-CL-002"])
def test_everything_to_touch_is_large_and_nothing_scrolls_sideways(own: Path, record: str) -> None:
    script = (
        "var r=document.documentElement,box=document.querySelector('section.what-if');"
        "return [[r.clientWidth,r.scrollWidth],[].map.call(box.querySelectorAll('button,input'),function(e){"
        "var s=e.getBoundingClientRect();return e.offsetParent?[Math.round(s.width),Math.round(s.height),"
        "parseFloat(getComputedStyle(e).fontSize)]:[99,99,99]})]"
    )

    wide, parts = browser.asked(own / f"{record}.html", script, (320, 640))

    assert wide == [320, 320]
    assert [part for part in parts if min(part[:2]) < 44 or part[2] < 16] == []


def test_without_scripts_there_is_no_form_and_the_page_is_whole(own: Path, tmp_path: Path) -> None:
    page = own / "SA-CL-001.html"
    still = page.with_name("still.html")
    still.write_text(re.sub(r"<script src.*?</script>", "", page.read_text("utf-8")), "utf-8")

    script = (
        "var s=document.querySelector('script.what-if');return [document.querySelectorAll('section.what-if').length,"
        "getComputedStyle(s).display,document.querySelector('.sheet').innerText]"
    )
    forms, shown, words = browser.asked(still, script)
    printed = printed_text(still, tmp_path)

    assert (forms, shown) == (0, "none")
    assert "What if" not in words
    assert '"inputs"' not in words
    assert "starts in one charge" in words
    assert '"inputs"' not in printed


def printed_text(page: Path, folder: Path) -> str:
    pdf = browser.sheets(page, folder / "page.pdf")
    program = shutil.which("pdftotext")
    assert program, "install the Debian package poppler-utils"
    done = subprocess.run(
        [program, "-raw", str(pdf), "-"], capture_output=True, text=True, check=True
    )
    return done.stdout


def test_paper_shows_the_numbers_of_the_handbook_alone(own: Path, tmp_path: Path) -> None:
    page = own / "SA-CL-001.html"
    change = own.parent / "assets" / "change.js"
    change.write_text(
        "window.addEventListener('load',function(){var f=document.querySelector('.what-if .entry input');"
        "f.value='20';f.dispatchEvent(new Event('input'));document.title=f.value})",
        "utf-8",
    )
    changed = page.with_name("changed.html")
    text = page.read_text("utf-8")
    changed.write_text(
        text.replace("</body>", '<script src="../assets/change.js"></script></body>'), "utf-8"
    )

    plain, other = printed_text(page, tmp_path), printed_text(changed, tmp_path)

    assert "<title>20</title>" in browser.opened(changed)
    assert letters(plain) == letters(other)
    assert "not the handbook" not in other
    assert "What if" not in other


WATCH = (
    "document.addEventListener('securitypolicyviolation',function(e){var p=document.createElement('pre');"
    "p.className='violation';p.textContent=e.violatedDirective;document.documentElement.appendChild(p)});"
)


@pytest.mark.parametrize(
    ("more", "seen"), [("", []), ("<script>document.title='taken'</script>", ["script-src-elem"])]
)
def test_the_policy_is_kept_and_a_breach_would_be_seen(
    own: Path, more: str, seen: list[str]
) -> None:
    (own.parent / "assets" / "watch.js").write_text(WATCH, "utf-8")
    page = own / "SA-CL-002.html"
    text = page.read_text("utf-8")
    watched = page.with_name("watched.html")
    watched.write_text(
        text.replace("<title>", '<script src="../assets/watch.js"></script><title>', 1).replace(
            "</main>", f"{more}</main>"
        ),
        "utf-8",
    )

    shown = browser.opened(watched)

    assert "Content-Security-Policy" in text
    assert "unsafe" not in text
    assert re.findall(r'<pre class="violation">(.*?)</pre>', shown) == seen
    assert '<section class="what-if card"' in shown


def test_the_program_stands_in_the_page_as_data_that_nothing_can_end(what_if_site: Site) -> None:
    page = what_if_site.page("id/SA-CL-001")
    (data,) = re.findall(
        r'<script type="application/json" class="what-if">(.*?)</script>', page, re.DOTALL
    )
    program = json.loads(data)

    assert program["inputs"][1]["label"] == 'receivers </script><b onclick="x">& more'
    assert not set("<>&") & set(data)
    assert Sheet.data("</script>&") == r"\u003c/script\u003e\u0026"
    assert "<b onclick" not in page


def test_the_script_is_loaded_only_where_something_is_open(what_if_site: Site) -> None:
    with_it = [
        path.relative_to(what_if_site.folder).as_posix()
        for path in what_if_site.pages
        if "what-if.js" in path.read_text("utf-8")
    ]

    assert with_it == ["id/SA-CL-001.html", "id/SA-CL-002.html"]


def test_author_text_is_shown_as_text(own: Path) -> None:
    shown = browser.opened(own / "SA-CL-001.html")
    label = re.search(r'<label for="what-if-0-1"[^>]*>(.*?)<span', shown, re.DOTALL)

    assert label
    assert unescape(label[1]) == 'receivers </script><b onclick="x">& more'
    assert "<b onclick" not in shown
