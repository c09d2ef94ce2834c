"""Find: names first and never guessed, numbers in any unit, words that forgive a letter."""

import json
import re
import shutil
from html import unescape
from typing import Any

import pytest

from garboard.views.contents import Entry
from mkdocs_garboard.search import index_script
from tests.mkdocs_garboard import browser, sample
from tests.mkdocs_garboard.conftest import Site

pytestmark = pytest.mark.browser

QUESTIONS = {
    "SA-RV-001": "SA-RV-001", "sa rv 001": "SA-RV-001", "sarv001": "SA-RV-001", "Sa/Rv.001": "SA-RV-001",
    "SA-FN-012": "SA-FN-012", "rv001": "SA-RV-001", "RV-4471": "SA-RV-001", "rv4471": "SA-RV-001",
    "30 bar(g)": "SA-RV-001", "30bar": "SA-RV-001", "30.0 bar": "SA-RV-001", "435 psi": "SA-RV-001",
    "3 MPa": "SA-RV-001", "3000 kPa": "SA-RV-001", "30,0 bar": "SA-RV-001", "132 gal": "SA-CL-001", "0.5 m³": "SA-CL-001",
    "500l": "SA-CL-001", "STARTING AIR PRESS LOW": "SA-AL-001", "starting air press low": "SA-AL-001",
    "starting air p": "SA-AL-001", "won't turn over": "SA-AL-001", "wont turn over": "SA-AL-001",
    "won’t turn": "SA-AL-001", "handweel": "SA-HV-006", "sjosetting": "SA-HV-006", "Sjøsetting": "SA-HV-006",
    "releif valve": "SA-RV-001", "blows off": "SA-RV-001", "second low-air switch": "SA-CN-002",
    "receiver sizing": "SA-CL-001", "normal values": "starting-air/normal-values",
}  # fmt: skip
NOWHERE = {
    "SA-RV-002": "SA-RV-001",
    "sarv0o1": "SA-RV-001",
    "SA RW 001": "SA-RV-001",
    "4472": None,
    "31 bar": None,
    "30 bar(a)": None,
    "zzz": None,
}


@pytest.fixture(scope="module")
def answers(site: Site, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """What the engine says to each question, asked in a page opened from a folder."""
    folder = tmp_path_factory.mktemp("find")
    shutil.copytree(site.folder / "assets", folder / "assets")
    every = [*QUESTIONS, *NOWHERE, "component", *spellings()]
    program = (
        "var e=garboardFind.ready(window.garboardIndex),o={};"
        f"{json.dumps(every)}.forEach(function(q){{var a=garboardFind.find(e,q);"
        "o[q]={note:a.note,all:a.all,near:a.near&&a.near.name,found:a.results.map(function(r){return r.entry.address})}});"
        "document.getElementById('out').textContent=JSON.stringify(o);"
    )
    page = folder / "ask.html"
    page.write_text(
        "<!doctype html><meta charset=utf-8><pre id=out></pre><script src=assets/find-index.js></script>"
        f"<script src=assets/find.js></script><script>{program}</script>",
        "utf-8",
    )
    found = re.search(r'<pre id="out">(.*?)</pre>', browser.opened(page), re.DOTALL)
    assert found
    said: dict[str, Any] = json.loads(unescape(found[1]))
    return said


def spellings() -> dict[str, str]:
    return {
        way: name
        for name in (*sample.TAGS, *sample.RECORDS)
        for way in (name, name.lower(), name.replace("-", " "), name.replace("-", "").lower())
    }


def page_of(key: str) -> str:
    return f"{'id/' if re.fullmatch('[A-Z]{2}-[A-Z]{2}-[0-9]{3}', key) else ''}{key}.html"


@pytest.mark.parametrize(("question", "first"), QUESTIONS.items())
def test_a_question_finds_its_page_first(
    answers: dict[str, Any], question: str, first: str
) -> None:
    assert answers[question]["found"][:1] == [page_of(first)]


def test_every_name_is_found_in_four_spellings(answers: dict[str, Any]) -> None:
    wrong = {
        way for way, name in spellings().items() if answers[way]["found"][:1] != [page_of(name)]
    }

    assert wrong == set()


@pytest.mark.parametrize(("question", "nearest"), NOWHERE.items())
def test_a_name_or_number_that_is_not_there_is_never_guessed(
    answers: dict[str, Any], question: str, nearest: str | None
) -> None:
    answer = answers[question]

    assert answer["found"] == []
    assert answer["note"] in ("no such tag", "no such number", "nothing found")
    if nearest:
        assert (answer["note"], answer["near"]) == ("no such tag", nearest)


def test_pages_that_mention_a_name_come_after_its_own(answers: dict[str, Any]) -> None:
    found = answers["SA-HV-006"]["found"]

    assert found[0] == page_of("SA-HV-006")
    assert page_of("SA-FN-012") in found[1:]


def test_answers_of_equal_rank_stand_in_order_of_title(answers: dict[str, Any]) -> None:
    titles = {page_of(tag): title for tag, title in sample.TAGS.items()}
    found = [titles[name] for name in answers["component"]["found"]]

    assert sorted(found) == sorted(titles.values())
    of_two_words = [title for title in found if len(title.split()) == 2]
    assert len(of_two_words) > 1
    assert of_two_words == sorted(of_two_words)


def test_the_box_shows_title_kind_system_and_review_state(site: Site) -> None:
    shown = browser.opened(site.folder / "find.html", "435%20psi")

    item = re.search(r'<ol class="found"[^>]*>(.*?)</ol>', shown, re.DOTALL)
    assert item
    assert "relief valve of receiver 1" in item[1]
    assert "component, Starting air" in item[1]
    assert "NOT REVIEWED" in item[1]
    assert re.search(r'<p class="count" role="status">\d+ found</p>', shown)


def test_a_wrong_letter_is_said_and_the_nearest_name_is_a_link(site: Site) -> None:
    shown = browser.opened(site.folder / "find.html", "SA-RV-002")

    assert 'no such tag; nearest <a href="./id/SA-RV-001.html">SA-RV-001</a>' in shown


def test_a_record_of_the_list_stays_small() -> None:
    wordy = Entry(
        "t" * 60,
        "component",
        "s",
        "id/SA-RV-001",
        "",
        "NOT REVIEWED",
        ("k" * 20,) * 50,
        "w " * 3000,
        "x " * 900,
    )

    assert len(index_script([wordy])) < 1024


def test_the_list_is_a_script_that_needs_no_network(site: Site) -> None:
    script = (site.folder / "assets" / "find-index.js").read_text("utf-8")

    assert script.startswith("window.garboardIndex={")
    told = json.loads(script.removeprefix("window.garboardIndex=").rstrip().rstrip(";"))
    assert len(told["list"]) == len(sample.handbook().entries)
