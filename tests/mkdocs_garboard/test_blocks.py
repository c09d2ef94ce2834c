"""Every block is drawn with all its words, in the order in which they are to be read."""

import re
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace
from pathlib import Path

import pytest
from markupsafe import escape

import mkdocs_garboard
from garboard.errors import Where
from garboard.views.page import (
    Block,
    Bullets,
    Column,
    Copy,
    Download,
    Fold,
    Heading,
    Link,
    Message,
    Page,
    Paragraph,
    Photo,
    Plate,
    Row,
    Shown,
    Step,
    Steps,
    Strong,
    Table,
    Tiles,
    WorkedLine,
)
from mkdocs_garboard.html import Sheet
from mkdocs_garboard.links import Links
from mkdocs_garboard.photos import Photos
from mkdocs_garboard.prose import Fault, ProseWriter
from mkdocs_garboard.site_check import letters
from tests.mkdocs_garboard import sample
from tests.mkdocs_garboard.conftest import content

Draw = Callable[..., str]
UNSEEN = {
    "key", "path", "source_path", "nav", "anchor", "target", "address", "svg", "mathml", "empty", "valid_until", "code", "sort", "ids",
}  # fmt: skip
"""Fields that no reader reads as words: keys, addresses, drawings."""


@pytest.fixture
def faults() -> list[Fault]:
    """What pages lost."""
    return []


@pytest.fixture
def draw(tmp_path: Path, faults: list[Fault]) -> Draw:
    """Draw a page of the sample, or a page made of blocks."""
    book = sample.handbook()
    writer = ProseWriter(Links(book), Photos(content(tmp_path)), faults.append)

    def one(*blocks: Block, page: Page = sample.LAYOUT) -> str:
        drawn = replace(page, blocks=blocks) if blocks else page
        return str(Sheet(drawn, writer, book.vessel, faults.append).html())

    return one


def words(thing: object) -> Iterator[str]:
    """Every text in a block that a reader is meant to read."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, tuple):
        for part in thing:
            yield from words(part)
    elif isinstance(thing, Where) or (isinstance(thing, Table) and not thing.rows):
        return
    elif is_dataclass(thing) and type(thing).__name__ != "Prose":
        for field in fields(thing):
            hidden = field.name in UNSEEN or (
                field.name in ("kind", "name") and not isinstance(thing, Page)
            )
            said_twice = (
                field.name == "text"
                and isinstance(thing, WorkedLine)
                and thing.text == f"{thing.name} = {thing.result}"
            )
            if not (hidden or said_twice):
                yield from words(getattr(thing, field.name))


@pytest.mark.parametrize("page", sample.handbook().pages, ids=lambda page: page.key)
def test_no_word_of_a_page_is_lost(draw: Draw, page: Page) -> None:
    html = draw(page=page)
    said = letters(html) + "".join(re.findall(r' alt="([^"]*)"', html))

    unmarked = replace(page, standing=(), system="")
    assert [
        text for text in words(unmarked) if letters(str(escape(text))) not in letters(said)
    ] == []


def test_what_stands_against_a_page_is_said_with_its_cure(draw: Draw) -> None:
    html = letters(draw(page=sample.WHAT_IT_DOES))

    for item in (sample.HOLD, sample.WARN):
        for text in (
            item.severity,
            item.text,
            item.help,
            str(item.where),
            item.code,
            item.fingerprint,
        ):
            assert letters(text) in html


def test_words_of_ours_are_escaped(draw: Draw) -> None:
    evil = "<script>alert('x')</script>"
    html = draw(
        Paragraph((evil, Strong(evil), Link("SA-DD-003", evil), Shown("SA-RV-001.set", evil), Plate(evil))),
        Heading(evil), Bullets(((evil,),)), Table(evil, (Column(evil),), (Row(((evil,),)),)), Fold(evil, ()),
        Tiles(((Link("index", evil), evil),)), Photo("photos/receivers.jpg", evil, evil),
        page=replace(sample.LAYOUT, title=evil, kind=evil, ident=evil, last_change=evil),
    )  # fmt: skip

    assert "<script" not in html
    assert html.count("&lt;script&gt;") >= 12


def test_the_title_block_comes_first_then_the_working_copy_then_notices_and_messages(
    draw: Draw,
) -> None:
    html = draw(page=sample.WHAT_IT_DOES)

    order = [
        'class="title-block"', "Starting air, in test", "what it does", "WORKING COPY", "Reviewed 12 May 2027",
        "WORKING COPY, not an edition. Not for use at sea.", "<h1>What starting air does</h1>", 'class="notices"',
        ">WARNING<", ">CAUTION<", "The plant gives the engine", "What stands against this page", "Used on",
        "Last change:", "If this does not match what you see: stop, tell the person in charge, raise a finding.",
        "Report a problem with this page",
    ]  # fmt: skip
    plain = (
        html.replace("</svg> ", ">")
        .replace(' <span class="record"', "<")
        .replace("\N{NO-BREAK SPACE}", " ")
    )
    places = [plain.find(text) for text in order]
    assert -1 not in places
    assert places == sorted(places)


def test_a_page_that_is_not_trusted_has_a_reversed_bar(draw: Draw) -> None:
    assert '<p class="review reversed">NOT REVIEWED.' in draw(page=sample.PROCEDURE)
    assert '<p class="review">Reviewed' in draw(page=sample.WHAT_IT_DOES)


def test_a_page_of_an_edition_is_no_working_copy(draw: Draw) -> None:
    html = draw(
        page=replace(sample.PROCEDURE, copy=Copy(7, "2027-05-12", "2028-05-12", "a life of 1 year"))
    )

    assert "WORKING COPY" not in html
    assert 'EDITION 7 - VALID UNTIL <span class="id">2028-05-12</span>.' in html
    assert letters("Valid to the end of 2028-05-12: a life of 1 year.") in letters(html)
    assert "After that day ask for the next edition." in html
    assert 'data-until="2028-05-12"' in html


@pytest.mark.parametrize(
    ("message", "frame", "triangle"),
    [(sample.DANGER, "danger", True), (sample.WARNING, "warning", True), (sample.CAUTION, "caution", True),
     (sample.NOTICE, "notice", False)],
    ids=lambda value: getattr(value, "word", str(value)),
)  # fmt: skip
def test_a_message_says_its_word_the_hazard_the_harm_and_what_to_do(
    draw: Draw, message: Message, frame: str, *, triangle: bool
) -> None:
    html = draw(page=replace(sample.LAYOUT, messages=(message,)))

    box = html[html.index(f'<div class="message {frame}"') :]
    parts = [
        box.index(text)
        for text in ('class="band"', 'class="hazard"', 'class="harm"', 'class="avoid"')
    ]
    assert parts == sorted(parts)
    assert (box.find('class="triangle"') in range(parts[1])) == triangle


def test_a_message_stands_directly_before_its_step(draw: Draw) -> None:
    html = draw(page=sample.PROCEDURE)

    first = html[html.index('<div class="message') :]
    between = first[
        first.index("</div>", first.index("avoid")) : first.index('<span class="number">1<')
    ]
    assert letters(between) == ""
    assert first.index("DANGER") < first.index('class="number">1<')


def test_a_step_reads_number_action_part_place_and_what_is_seen(draw: Draw) -> None:
    html = letters(draw(page=sample.PROCEDURE))

    assert letters("3 Open SA-HV-009 header drain valve to one turn, under the gangway, knee height"
                   " 0 bar(g) on SA-PI-001 within 2 min If not: go back to step 1") in html  # fmt: skip
    assert letters("If it will not shut, stop") in html
    assert "Ifnot:Ifit" not in html


def test_a_limit_says_none_and_no_cell_is_blank(draw: Draw) -> None:
    html = draw(
        Table(
            "Limits",
            (Column("item"), Column("high", number=True, strong=True)),
            (Row((("oil",), ())),),
        )
    )

    assert '<td data-label="high" class="number strong none">–</td>' in html


def test_a_caption_that_only_repeats_its_heading_is_not_seen_twice(draw: Draw) -> None:
    table = Table("Readings", (Column("at"), Column("bar(g)")), (Row((("noon",), ("30",))),))

    assert '<caption class="said">Readings</caption>' in draw(Heading("Readings"), table)
    assert "<caption>Readings</caption>" in draw(Heading("Criterion"), table)


def test_a_plate_and_the_value_behind_it_may_stand_on_two_lines(draw: Draw) -> None:
    html = draw(Paragraph((Plate("SA-AR-001"), ".test held; then ", Plate("SA-AR-001"), ".")))

    assert ">SA-AR-001</span><wbr>.test held" in html or ">SA-AR-001</a><wbr>.test held" in html
    assert html.count("<wbr>") == 1


def test_a_day_in_figures_and_a_tolerance_stay_on_one_line(draw: Draw) -> None:
    html = draw(Paragraph(("SA-TM-001 ran out 2031-09-01; set 33 bar(g) +/- 0.8 bar.",)))

    assert '<span class="id">2031-09-01</span>' in html
    assert "33\u00a0bar(g) +/-\u00a00.8\u00a0bar" in html


def test_a_table_without_rows_says_so(draw: Draw) -> None:
    assert "<strong>Concessions:</strong> nothing recorded" in draw(page=sample.NORMAL)


def test_the_ladder_is_a_list_in_words_beside_a_scale_that_is_true(draw: Draw) -> None:
    html = draw(sample.LADDER)

    assert html.count('<li><span class="word">') == 8
    assert '<line x1="66" y1="3.00%" x2="66" y2="97.00%" class="rail"/>' in html
    assert '<line x1="54" y1="3.00%" x2="80" y2="3.00%" class="tick strong"/>' in html  # rating
    assert '<line x1="80" y1="97.00%" x2="112" y2="93.75%"/>' in html  # the last of eight rows
    assert '<text x="54" y="41.54%" dy="5" text-anchor="end">25</text>' in html


def test_a_design_value_has_its_band_and_a_reading_out_of_it_another_mark(draw: Draw) -> None:
    html = draw(sample.LADDER)

    assert '<rect x="58" y="31.20%" width="16" height="13.16%" fill="url(#ladder-hatch)"/>' in html
    assert '<circle cx="66" cy="21.80%" r="5" class="mark"/>' in html
    assert '<circle cx="66" cy="70.68%" r="8" class="tick strong"/>' in html


def test_two_ladders_on_a_page_hatch_each_its_own(draw: Draw) -> None:
    html = draw(sample.LADDER, sample.LADDER)

    assert [html.count(f'<pattern id="{name}"') for name in ("ladder-hatch", "ladder-hatch-2")] == [
        1,
        1,
    ]


def test_how_sure_an_answer_is_stands_under_it_as_a_table_with_the_bar_as_decoration(
    draw: Draw,
) -> None:
    html = draw(page=sample.SIZING)
    said = letters(html)

    assert letters("starts in one charge 9 starts Between 8 and 10 if everything") in said
    assert letters("Usually between 8.4 and 9.7") in said
    assert letters("free air of one start 63 % 8 10 cut-out 33 % 8 9") in said
    assert letters("and 2 smaller ones, 4 % together") in said
    bar = re.search(r'<svg class="part"[^>]*>.*?</svg>', html)
    assert bar is not None
    assert 'aria-hidden="true"' in bar[0]
    assert 'width="61.7%"' in bar[0]


def test_what_a_calculation_rests_on_elsewhere_stands_beside_what_it_is_given(draw: Draw) -> None:
    html = letters(draw(page=sample.SIZING))

    assert html.index("Workedfrom") < html.index("Restson,fromotherpages") < html.index("Working")


def test_a_calculation_gives_its_answer_first_and_says_what_was_not_computed(draw: Draw) -> None:
    html = letters(draw(page=sample.SIZING))

    answer, verdict, given, working = (
        html.index(letters(text))
        for text in (
            "starts in one charge 9 starts",
            "holds at the worst corner",
            "Worked from",
            "Working stored",
        )
    )
    assert answer < verdict < given < working
    assert letters("not computed leak_rate is not given") in html
    assert letters("V = 2 x 250 L = 500 L") in html


def test_a_formula_stands_as_mathml_and_as_plain_text(draw: Draw) -> None:
    html = draw(page=sample.SIZING)

    assert "<mfrac>" in html
    assert "stored = V x (p_max - p_min)" in html.replace("\N{NO-BREAK SPACE}", " ")


def test_a_formula_wider_than_a_sheet_is_printed_as_the_text_that_wraps(draw: Draw) -> None:
    line = sample.CALCULATION.lines[3]
    short, long = (replace(line, text=f"x = {'1 + ' * count}1") for count in (3, 40))

    html = draw(replace(sample.CALCULATION, lines=(short, long)), page=sample.SIZING)

    assert html.count('class="formula"') == html.count('class="formula long"') == 1
    assert letters(long.text) in letters(html)
    style = (Path(mkdocs_garboard.__file__).parent / "theme/assets/garboard.css").read_text("utf-8")
    assert style.index("@media print") < style.index(".formula.long { display: none; }")


def test_hidden_working_is_a_fold_that_stands_open_without_scripts(draw: Draw) -> None:
    html = draw(replace(sample.CALCULATION, hide_working=True), page=sample.SIZING)

    assert '<details class="fold" open>\n<summary>Working, 3 lines</summary>' in html


def test_nothing_that_must_be_seen_stands_in_a_fold(draw: Draw) -> None:
    for page in sample.handbook().pages:
        for part in draw(page=page).split("<details")[1:]:
            folded = part.partition("</details>")[0]
            assert not [
                name
                for name in ("message", "checklist", "limits", "ladder", "review")
                if f'class="{name}' in folded
            ]


def test_the_links_of_a_drawing_lead_somewhere(draw: Draw, faults: list[Fault]) -> None:
    html = draw(page=sample.LAYOUT)

    assert '<a href="../id/SA-RV-001.html"><text' in html
    assert "find:" not in html
    assert faults == []


def test_what_leads_nowhere_is_shown_as_words_and_reported(draw: Draw, faults: list[Fault]) -> None:
    html = draw(
        Paragraph((Link("nowhere", "there"), Plate("SA-XX-001"))),
        Tiles(((Link("nowhere", "a tile"), ""),)),
    )

    assert "<span>there</span>" in html
    assert '<span class="plate">SA-XX-001</span>' in html
    assert "a\N{NO-BREAK SPACE}tile" not in html
    assert [fault.text for fault in faults] == [
        f"link to {key} leads nowhere" for key in ("nowhere", "SA-XX-001", "nowhere")
    ]


def test_a_missing_photo_is_said(draw: Draw, faults: list[Fault]) -> None:
    assert "Picture missing: the port side" in draw(Photo("photos/none.jpg", "the port side"))
    assert [fault.code for fault in faults] == ["broken-link"]


def test_headings_of_one_page_have_anchors_of_their_own(draw: Draw) -> None:
    html = draw(
        Heading("Tests"), Heading("Tests"), Heading("Kept", anchor="tests-2"), Heading("Sources")
    )

    assert [
        html.count(f'id="{name}"') for name in ("tests", "tests-2", "tests-3", "sources-2")
    ] == [1, 1, 1, 1]


def test_a_number_stays_with_its_unit(draw: Draw) -> None:
    assert "30\N{NO-BREAK SPACE}bar(g)" in draw(Paragraph(("at 30 bar(g) now",)))


def test_a_link_prints_the_id_it_leads_to(draw: Draw) -> None:
    assert 'data-id="SA-DD-003">why</a>' in draw(Paragraph((Link("SA-DD-003", "why"),)))
    assert "data-id" not in draw(Paragraph((Link("SA-DD-003", "SA-DD-003 why"),)))


def test_a_file_of_the_site_is_found_from_any_page(draw: Draw) -> None:
    html = draw(Paragraph((Download("values.csv", "the numbers"),)))

    assert '<a href="../values.csv">the numbers</a>' in html


def test_steps_may_have_no_end_and_no_sight(draw: Draw) -> None:
    html = draw(Steps((Step("1", "Wait", ()),)))

    assert 'class="end"' not in html
    assert 'class="done"' not in html
