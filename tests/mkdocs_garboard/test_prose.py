"""Contributed text: names become links, values are filled in, and nothing else gets through."""

import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from garboard.errors import Where
from garboard.views.page import Prose
from mkdocs_garboard.links import Links
from mkdocs_garboard.photos import Photos
from mkdocs_garboard.prose import Fault, ProseWriter, references
from tests.mkdocs_garboard import sample
from tests.mkdocs_garboard.conftest import content

PAGE = "starting-air/what-it-does"
FILE = "systems/starting-air/what-it-does.md"
Write = Callable[[str], str]


@pytest.fixture
def faults() -> list[Fault]:
    """What was lost while text was written."""
    return []


@pytest.fixture
def write(tmp_path: Path, faults: list[Fault]) -> Write:
    """Turn Markdown of the sample's first page into HTML."""
    writer = ProseWriter(Links(sample.handbook()), Photos(content(tmp_path)), faults.append)

    def one(text: str) -> str:
        return str(writer.write(Prose(text, Where(FILE)), PAGE, str.lower, references([text])))

    return one


def test_a_bare_tag_becomes_its_label_plate(write: Write) -> None:
    assert '<a class="plate" href="../id/SA-RV-001.html">SA-RV-001</a> lifts' in write(
        "SA-RV-001 lifts"
    )


def test_a_bare_id_becomes_a_link(write: Write) -> None:
    assert '(<a class="id" href="../id/SA-DD-003.html">SA-DD-003</a>)' in write("why (SA-DD-003).")


@pytest.mark.parametrize(
    ("text", "beside"),
    [
        ("why (SA-DD-003) and how", True),
        ("why (SA-DD-003) and SA-RV-001", True),
        ("SA-RV-001, not SA-DD-003", True),
        ("SA-RV-001 instead of SA-DD-003", False),
    ],
)
def test_a_superseded_id_has_its_successor_beside_it_unless_the_text_names_it(
    text: str,
    beside: bool,  # noqa: FBT001 - a case of the table
    tmp_path: Path,
) -> None:
    handbook = sample.handbook()
    old = replace(handbook.targets["SA-DD-003"], heir="SA-RV-001" if not beside else "SA-HV-001")
    led = replace(handbook, targets={**handbook.targets, "SA-DD-003": old})
    writer = ProseWriter(Links(led), Photos(content(tmp_path)), lambda _: None)

    html = str(writer.write(Prose(text, Where(FILE)), PAGE, str.lower, references([text])))

    link = '<a class="id" href="../id/SA-DD-003.html">SA-DD-003</a>'
    assert (f"{link} (superseded by <a" in html) is beside
    assert (">SA-HV-001</a>)" in html) is beside
    words = re.sub("<[^>]*>", "", html).replace(" (superseded by SA-HV-001)", "").strip()
    assert words == text


def test_the_address_of_a_value_leads_to_its_owner(write: Write) -> None:
    assert '<a class="value" href="../id/SA-RV-001.html">SA-RV-001.set</a>' in write(
        "see SA-RV-001.set here"
    )


@pytest.mark.parametrize(
    "text",
    [
        "`SA-RV-001`",
        "    SA-RV-001",
        "```\nSA-RV-001\n```",
        "XX-YY-999",
        "ASA-RV-001",
        "SA-RV-0012",
        "SA-RV-001-x",
    ],
)
def test_no_name_is_linked_in_code_or_inside_another_word(write: Write, text: str) -> None:
    assert "<a" not in write(text)


def test_a_name_inside_a_link_is_left_alone(write: Write) -> None:
    html = write("[about SA-RV-001](SA-DD-003)")

    assert html == '<p><a href="../id/SA-DD-003.html">about SA-RV-001</a></p>'


def test_names_are_linked_in_lists_tables_and_bold(write: Write) -> None:
    html = write(
        "- **SA-RV-001**\n\n| a | b |\n|---|---|\n| SA-HV-006 | x SA-HV-007 y SA-PI-001 z |\n"
    )

    assert html.count('class="plate"') == 4
    assert "z</td>" in html


def test_an_empty_value_is_filled_in(write: Write) -> None:
    assert ">9&nbsp;starts</a>" in write("[](value:receiver-sizing.n)")


def test_a_value_leads_to_the_calculation_that_owns_it(write: Write) -> None:
    assert 'class="value" href="../id/SA-CL-001.html#receiver-sizing.n"' in write(
        "[9 starts](value:receiver-sizing.n)"
    )


def test_a_value_is_shown_in_the_unit_asked_for(write: Write) -> None:
    assert ">435&nbsp;psi(g)</a>" in write("[](value:SA-RV-001.set?in=psi)")


def test_a_typed_number_that_differs_has_the_true_one_beside_it(write: Write) -> None:
    assert "8&nbsp;starts (now 9&nbsp;starts)" in write("[8 starts](value:receiver-sizing.n)")


@pytest.mark.parametrize("address", ["receiver-sizing.lost", "receiver-sizing.nothing"])
def test_a_value_that_failed_is_never_shown_as_it_was_typed(write: Write, address: str) -> None:
    html = write(f"[4 L](value:{address})")

    assert "not computed" in html
    assert "4" not in html.replace("SA-CL-001", "")


def test_a_link_to_a_content_file_leads_to_its_page(write: Write) -> None:
    assert 'href="../id/SA-AL-001.html#first"' in write("[alarm](alarms/low-air.md#first)")


def test_a_reference_defined_in_another_piece_of_the_page_holds(tmp_path: Path) -> None:
    writer = ProseWriter(Links(sample.handbook()), Photos(tmp_path), lambda _fault: None)
    defined = references(["[Why]: SA-DD-003"])

    html = writer.write(Prose("[words][why]", Where(FILE)), PAGE, str, defined)

    assert html == '<p><a href="../id/SA-DD-003.html">words</a></p>'


def test_a_link_that_leads_nowhere_says_so_in_both_places(
    write: Write, faults: list[Fault]
) -> None:
    html = write("[there](nowhere.md)")

    assert html == "<p>there (no such page)</p>"
    assert [fault.code for fault in faults] == ["broken-link"]


def test_an_address_ashore_is_printed_and_not_linked(write: Write) -> None:
    html = write("[maker](https://maker.example/x) and <https://other.example>")

    assert "maker (https://maker.example/x)" in html
    assert "<a" not in html


def test_a_picture_is_published_with_its_size_upright(write: Write) -> None:
    html = write("![both receivers](../../photos/receivers.jpg)")

    assert 'src="../photos/receivers.jpg.webp" width="800" height="1600" loading="lazy"' in html
    assert 'alt="both receivers"' in html


def test_the_words_of_a_picture_may_hold_any_sign(write: Write) -> None:
    assert 'alt="set > low &amp; < high"' in write(
        "![set > low & < high](../../photos/receivers.jpg)"
    ).replace("&lt;", "<").replace("&gt;", ">")


@pytest.mark.parametrize(
    "path",
    ["../../../mkdocs.yml", "https://x.example/a.png", "//x.example/a.png", "photos/none.jpg"],
)
def test_a_picture_from_elsewhere_is_not_shown(
    write: Write, faults: list[Fault], path: str
) -> None:
    html = write(f"![words]({path})")

    assert "<img" not in html
    assert "picture missing: words" in html
    assert faults


ATTACKS = (
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "<a href='javascript:alert(1)'>go</a>",
    "[go](javascript:alert(1))",
    "[go](JaVaScRiPt:alert(1))",
    "[go](data:text/html;base64,AAAA)",
    "![x](javascript:alert(1))",
    "<iframe src='https://x.example'></iframe>",
    "<style>.message{display:none}</style>",
    "<form action='https://x.example'><input name=q><button>go</button></form>",
    "<h2 id='sheet' class='title-block' style='position:fixed'>x</h2>",
    "<p class='message danger'>forged</p>",
    "<svg onload=alert(1)><a href='x'>y</a></svg>",
    "<math><mtext><script>alert(1)</script></mtext></math>",
    "<link rel=stylesheet href=//x.example/a.css>",
    "<meta http-equiv=refresh content='0;url=https://x.example'>",
    "<base href='https://x.example/'>",
    "<object data=x></object><embed src=x>",
    "<details><summary>hide</summary>gone</details>",
    "<video poster=//x.example/a.png></video>",
    "<img srcset='https://x.example/a.png 2x' src='//x.example/b.png' alt='z'>",
    "<table background='https://x.example/a.png'><tr><td>x</td></tr></table>",
    '[x](x" onmouseover="alert(1))',
    "<a href='#0123.0'>x</a>",
    "{{ config }} {% include 'x' %} ${7*7} <%= 7*7 %>",
    "</article></main><h1>forged</h1>",
    "<p title='a' onclick=alert(1)>x</p>",
    "<kbd style='position:fixed'>x</kbd>",
)
FORBIDDEN = (
    "<script", "<iframe", "<style", "<form", "<input", "<button", "<svg", "<math", "<link", "<meta", "<base", "<object",
    "<embed", "<details", "<video", "</article", "</main", "<h1", "srcset=", "style=", "onerror=", "onload=",
    "onclick=", "onmouseover=", 'href="javascript', 'href="data:', "background=", 'class="message',
)  # fmt: skip


@pytest.mark.parametrize("attack", ATTACKS)
def test_nothing_contributed_can_act_hide_or_be_forged(write: Write, attack: str) -> None:
    html = write(f"before\n\n{attack}\n\nSA-RV-001 after")

    inside_tags = "".join(part.partition(">")[0] + ">" for part in html.split("<")[1:])
    assert not [
        word for word in FORBIDDEN if word in html and (word.startswith("<") or word in inside_tags)
    ]
    assert "before" in html


@pytest.mark.parametrize("attack", ATTACKS)
def test_what_stands_after_an_attack_is_still_there(write: Write, attack: str) -> None:
    assert "SA-RV-001" in write(f"{attack}\n\nSA-RV-001 after")


def test_what_is_taken_out_is_said(write: Write, faults: list[Fault]) -> None:
    write("<iframe src=x></iframe>\n\nx <span onclick='y'>z</span>")

    assert [str(fault) for fault in faults] == [
        f"{FILE}:1:1: raw HTML was taken out: iframe, span [raw-html-removed]"
    ]


def test_plain_formatting_stays(write: Write, faults: list[Fault]) -> None:
    html = write("CO<sub>2</sub>, <kbd>START</kbd><br>next")

    assert "CO<sub>2</sub>, <kbd>START</kbd><br>next" in html
    assert faults == []


def test_content_is_never_templated(write: Write) -> None:
    assert "{{ config.site_name }} {% raw %}" in write("{{ config.site_name }} {% raw %}")


def test_a_text_nested_past_all_reason_is_shown_as_typed(write: Write) -> None:
    html = write(">" * 3000 + " deep")

    assert "deep" in html
    assert "<script" not in html


def test_a_heading_gets_an_anchor_and_the_page_keeps_its_only_title(write: Write) -> None:
    assert (
        write("# Top\n\n## What *is* it")
        == '<h2 id="top">Top</h2>\n<h2 id="what is it">What <em>is</em> it</h2>'
    )
