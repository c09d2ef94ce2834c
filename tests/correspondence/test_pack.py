"""A pack says what a reviewer must know, in a fixed order, the same in both forms, and stays small."""

import re
import shutil
from dataclasses import replace
from functools import cache
from html import unescape
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.cli import main
from garboard.cli.signable import find_signable
from garboard.correspondence.assembly import make_pack
from garboard.correspondence.before import find_before
from garboard.correspondence.one_page import one_page
from garboard.correspondence.pack import Line, Pack, Part, Sort, point
from garboard.correspondence.plain_text import COLUMNS, in_plain_signs, plain_text
from garboard.correspondence.size import LARGEST, fitted
from garboard.editions.freeze import freeze
from garboard.errors import GarboardError
from garboard.handbook import read, read_book
from garboard.reading.edition_file import edition_path, write_edition
from garboard.reading.reply_form import read_forms
from garboard.reading.whole_folder import read_files
from tests.demo_site import never_issued, replace_in
from tests.review.signed_sample import SUMMED, write_sample

NEVER_ISSUED = never_issued()
ALL_SORTS = (
    "SA-CN-002",
    "SA-DD-003",
    "SA-CL-001",
    "SA-PR-006",
    "SA-HZ-001",
    "SA-AL-001",
    "SA-TR-007",
    "SA-FN-012",
    "systems/starting-air/what-it-does.md",
)
TITLES = (
    "In short",
    "What and why",
    "Class and why",
    "Worst credible outcome",
    "Numbers, most margin lost first",
    "What now rests on it",
    "Procedures and cautions touched, weakened first",
    "Alarms",
    "Cards that hang",
    "Tests voided and re-tests",
    "Where else: parts of the same kind",
    "Objections and open findings against it",
    "Not checked so far",
    "Questions to you",
    "Digests: what you see here",
    "Reply form",
)


@pytest.fixture(scope="module")
def demo() -> Book:
    """The demo, worked out."""
    return never_issued_book()


def pack_of(book: Book, key: str, folder: Path = NEVER_ISSUED, base: Path | None = None) -> Pack:
    thing = find_signable(book, key, folder)
    return make_pack(book, thing, find_before(book, thing, base=base))


@cache
def pack_of_demo(key: str) -> Pack:
    """The pack of one thing of the demo, made once: a pack never changes."""
    return pack_of(never_issued_book(), key)


@cache
def never_issued_book() -> Book:
    """The demo as it was before an edition, worked out once."""
    return read_book(NEVER_ISSUED)


def words(text: str) -> list[str]:
    """Letters and figures in their order, whatever stands between them."""
    return re.findall(r"\w+", in_plain_signs(text).casefold())


def visible(page: str) -> str:
    body = page[page.index("<body>") :]
    return unescape(re.sub(r"<[^>]*>", " ", re.sub(r'</?span class="tag">|</?span>', "", body)))


@pytest.mark.parametrize("key", ALL_SORTS)
def test_both_forms_say_the_same_words_in_the_same_order(key: str) -> None:
    pack = pack_of_demo(key)

    text, page = fitted(pack, plain_text), fitted(pack, one_page)

    assert words(text) == words(visible(page))
    assert [part.title for part in pack.all_parts] == list(TITLES)


@pytest.mark.parametrize("key", ALL_SORTS)
def test_the_text_reads_in_any_mail_program(key: str) -> None:
    lines = plain_text(pack_of_demo(key)).splitlines()

    assert [line for line in lines if len(line) > COLUMNS and " " in line.strip()] == []
    assert [line for line in lines if line.endswith("=")] == []
    assert [line for line in lines if not line.isascii()] == []


@pytest.mark.parametrize("key", ALL_SORTS)
def test_the_page_asks_for_nothing_from_anywhere(key: str) -> None:
    page = one_page(pack_of_demo(key))

    assert "default-src 'none'" in page
    assert (
        re.findall(
            r"<(?:script|link|img|iframe|form|input|object)\b|\bsrc=|\bhref=|url\(|@import", page
        )
        == []
    )


@pytest.mark.parametrize("key", ALL_SORTS)
def test_the_form_of_a_pack_that_nobody_filled_is_no_reply(key: str) -> None:
    forms = read_forms(plain_text(pack_of_demo(key)))

    assert (forms.replies, forms.empty) == ((), 1)


def part(pack: Pack, title: str) -> str:
    """One part of a pack, in bare words."""
    found = next(one for one in pack.all_parts if one.title.startswith(title))
    cells = (f"{label} {text}" for line in found.lines for label, text in line.cells)
    return "\n".join((*(f"{line.label} {line.text}".strip() for line in found.lines), *cells))


def test_with_nothing_issued_a_change_is_worked_out_with_what_it_gives_as_before() -> None:
    pack = pack_of_demo("SA-CN-002")

    assert "Nothing was issued before: no before." in pack.made
    numbers = part(pack, "Numbers")
    assert (
        "before 0.753\nafter 1.51\nchange +0.753, +100 %\nlimit at least 1 [SA-DD-003 chosen]"
        in numbers
    )
    assert "margin before -31 %\nmargin after 29 %" in numbers


def test_with_nothing_issued_and_nothing_given_there_is_no_before() -> None:
    pack = pack_of_demo("SA-CL-001")

    assert pack.made.endswith("Nothing was issued before: no before.")
    assert "before no before" in part(pack, "Numbers")


def test_half_a_minute_gives_what_how_dangerous_and_which_margin() -> None:
    text = plain_text(pack_of_demo("SA-CN-002"))

    brief = " ".join(text[: text.index("1. WHAT AND WHY")].split())
    assert "SA-PS-001.set from 15 bar(g) to 18 bar(g)" in brief
    assert "class: A, safety-significant" in brief
    assert "worst: DANGER SA-HZ-005" in brief
    assert "severity 1 catastrophic; hurts people" in brief
    assert "margin: no number lost margin; low-air-margin.left gained: -31 % to 29 %" in brief


def test_what_is_touched_is_named_with_its_place() -> None:
    pack = pack_of_demo("SA-CN-002")

    assert "card K-01 of SA-AL-001, Low starting air: start-air panel" in part(pack, "Cards")
    assert 'SA-AL-001 "START AIR LOW", at 18 bar(g) low (lapsed (written: issued))' in part(
        pack, "Alarms"
    )
    assert "void SA-TR-005" in part(pack, "Tests")
    assert "done again SA-TR-007" in part(pack, "Tests")
    assert "touched too SA-TR-016, Low-air switches after five months, fail" in part(pack, "Tests")
    assert "pressure switch SA-PS-003, Compressor stop switch" in part(pack, "Where else")


def test_objections_and_findings_stand_there_to_the_letter() -> None:
    assert "In forty years nobody shut those valves." in part(
        pack_of_demo("SA-DD-003"), "Objections"
    )
    found = part(pack_of_demo("SA-CN-002"), "Objections")
    assert "And at 15 bar there is not one start left." in found


def test_what_nobody_checked_is_said_and_asked() -> None:
    pack = pack_of_demo("SA-CN-002")

    assert "left out by a check wiring" in part(pack, "Not checked")
    assert "Nobody has checked: wiring. Can you?" in part(pack, "Questions")
    assert "Which valve position cuts SA-PS-001 (Receiver 1 low-air switch) off" in part(
        pack, "Questions"
    )


def test_no_hazard_recorded_is_said_plainly(tmp_path: Path) -> None:
    folder = write_sample(tmp_path / "content")

    pack = pack_of(read_book(folder), "SA-DD-003", folder)

    assert "None recorded: no hazard names a part" in part(pack, "Worst credible outcome")
    assert "No hazard is recorded at these parts" in part(pack, "Questions")


@pytest.fixture(scope="module")
def issued(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo, issued once and then weakened: a lower setting, and a message taken from its step."""
    folder = tmp_path_factory.mktemp("issued") / "content"
    shutil.copytree(NEVER_ISSUED, folder)
    handbook = read(folder)
    edition = freeze(
        handbook,
        read_files(folder, handbook.book.content.digests),
        "lead",
        handbook.book.today.replace(year=2032),
        "life of 12 months",
    )
    path = folder / edition_path(edition.number)
    path.parent.mkdir(exist_ok=True)
    path.write_text(write_edition(edition), "utf-8")
    air = folder / "systems" / "starting-air"
    spoilt = (air / "system.yml").read_text("utf-8")
    (air / "system.yml").write_text(spoilt.replace('set: "18 bar(g)', 'set: "17 bar(g)'), "utf-8")
    replace_in(
        air / "sa-pr-001-raise-starting-air.md", "{message: SA-HZ-002, do: Start", "{do: Start"
    )
    return folder


def test_against_an_edition_margins_fall_and_what_was_weakened_comes_first(issued: Path) -> None:
    pack = pack_of(read_book(issued), "SA-CN-002", issued)

    assert pack.made.endswith("Compared with edition 1 of 2031-10-01.")
    brief = part(pack, "In short")
    assert (
        "margin low-air-margin.left (starts left when the alarm comes) loses most: 29 % to" in brief
    )
    assert "weaker what warns or guards got weaker in SA-AL-001, SA-PR-001" in brief
    touched = part(pack, "Procedures")
    gone = "WEAKER safety message at step 5: from SA-HZ-002 to nothing"
    assert touched.index(gone) < touched.index("procedure SA-PR-003")
    asked = part(pack, "Questions")
    assert (
        "The margin of low-air-margin.left (starts left when the alarm comes) falls from 29 %"
        in asked
    )
    assert "SA-PR-001 got weaker in safety message at step 5: from SA-HZ-002 to nothing." in asked


def test_a_folder_can_stand_in_the_place_of_an_edition(issued: Path) -> None:
    pack = pack_of(read_book(issued), "SA-CN-002", issued, base=NEVER_ISSUED)

    assert pack.made.endswith("Compared with another folder of this handbook.")
    assert "margin low-air-margin.left (starts left when the alarm comes) loses most" in part(
        pack, "In short"
    )


def test_an_edition_that_was_never_issued_is_refused(demo: Book) -> None:
    thing = demo.records["SA-CN-002"]

    with pytest.raises(GarboardError, match="there is no edition 4; issued are: none"):
        find_before(demo, thing, since=4)


def test_what_is_assumed_is_marked_and_asked_about(tmp_path: Path) -> None:
    folder = write_sample(tmp_path / "content")
    replace_in(folder / SUMMED, "# one start [LOGBOOK]", "# one start [assumed]")

    pack = pack_of(read_book(folder), "SA-CL-001", folder)

    assert "take care ASSUMED" in part(pack, "Numbers")
    assert "starts.each is assumed (50 L): is that on the safe side?" in part(pack, "Questions")


def huge(pack: Pack, lines: int) -> Pack:
    """A pack in which everything that may be cut is very long."""
    more = tuple(point(f"line {number} {'x' * 60}") for number in range(lines))
    parts = tuple(replace(one, lines=(*one.lines, *more)) if one.cut else one for one in pack.parts)
    return replace(pack, parts=parts)


@pytest.mark.parametrize("write", [plain_text, one_page])
def test_a_huge_book_is_shortened_in_the_stated_order_and_says_so(write: object) -> None:
    assert callable(write)
    pack = huge(pack_of_demo("SA-CN-002"), 3000)

    text = fitted(pack, write)

    assert len(text.encode("utf-8")) <= LARGEST
    said = " ".join(words(visible(text) if "<body>" in text else text))
    assert "shortened to fit a mail" in said
    assert "shortened in this order where else parts of the same kind what now rests on it" in said
    assert said.count("left out here to keep the file small") >= 1
    assert "class a safety significant" in said
    assert "end of reply" in said


def test_it_is_shortened_no_further_than_it_must() -> None:
    pack = huge(pack_of_demo("SA-CN-002"), 260)

    text = fitted(pack, plain_text)

    assert "WHERE ELSE" in text
    assert "Left out: Where else: parts of the same kind:" in " ".join(text.split())
    assert "Questions to you:" not in text[: text.index("IN SHORT")].partition("Shortened in")[0]


def test_what_must_not_be_left_out_and_does_not_fit_is_refused() -> None:
    pack = pack_of_demo("SA-CN-002")
    words_ = Line(Sort.VERBATIM, "word " * 60_000)
    parts = tuple(
        replace(one, lines=(words_,)) if one.title.startswith("Objections") else one
        for one in pack.parts
    )

    with pytest.raises(GarboardError, match="most of it is in `Objections"):
        fitted(replace(pack, parts=parts), plain_text)


def test_everything_in_the_page_is_escaped() -> None:
    pack = pack_of_demo("SA-CN-002")
    evil = "</title></pre><script>alert(1)</script>\" onload='x' &"
    lines = tuple(Line(sort, evil, evil, ((evil, evil),)) for sort in Sort)
    page = one_page(
        replace(
            pack, title=evil, about=evil, made=evil, parts=(Part(evil, lines),), left_out=(evil,)
        )
    )

    assert "<script" not in page
    assert page.count("&lt;script&gt;") >= len(Sort)
    assert page.count("</title>") == 1


def test_a_pack_is_written_beside_the_content_and_never_into_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = write_sample(tmp_path / "content")
    into, beside = folder / "p.txt", tmp_path / "p.html"

    assert main(["pack", "SA-DD-003", "--to", str(into), "--folder", str(folder)]) == 2
    assert main(["pack", "SA-DD-003", "--to", str(beside), "--html", "--folder", str(folder)]) == 0
    assert main(["pack", "SA-DD-009", "--folder", str(folder)]) == 2

    caught = capsys.readouterr()
    assert "lies in the content folder" in caught.err
    assert "did you mean SA-DD-003?" in caught.err
    assert beside.read_text("utf-8").startswith("<!doctype html>")
    assert not into.exists()


def test_the_same_book_gives_the_same_pack() -> None:
    assert plain_text(pack_of_demo("SA-CN-002")) == plain_text(
        pack_of(read_book(NEVER_ISSUED), "SA-CN-002")
    )
