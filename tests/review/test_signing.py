"""One signature is put into a file, and nothing else of the file is touched."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.book import Book
from garboard.errors import GarboardError
from garboard.handbook import read_book
from garboard.records.signoff import Capacity, SignOff, Verdict, standing_objections
from garboard.review.covers import Covers, Signed
from garboard.review.signing import as_signed, reads_back, signed_by, write_signature, yaml_of
from tests.demo_site import demo_handbook
from tests.review.signed_sample import DECIDED, DECISION, PAGE, WRITTEN, write_sample

LINE = SignOff(
    capacity=Capacity.CHECKER,
    by="reviewer-1",
    on=date(2031, 3, 12),
    to="checked",
    verdict=Verdict.NO_FINDINGS,
    scope=("layout", "loss of air"),
)


def put(folder: Path, line: SignOff = LINE, key: str = "SA-DD-003") -> tuple[Book, Signed]:
    """Sign what stands in a folder; the book and the record as they are read afterwards."""
    book = read_book(folder)
    pages = {page.where.path: page for page in book.content.pages}
    thing = book.records.get(key) or pages[key]
    cover = Covers(book.content, book.network).of(thing)
    write_signature(folder, book.content, thing, signed_by(line, cover))
    book = read_book(folder)
    pages = {page.where.path: page for page in book.content.pages}
    return book, book.records.get(key) or pages[key]


def test_the_line_and_the_state_are_all_that_changes(tmp_path: Path) -> None:
    folder = write_sample(tmp_path)

    book, thing = put(folder)

    lines = (folder / DECIDED).read_text("utf-8").split("\n")
    added = [line for line in lines if line.startswith(("signed:", "  - {capacity"))]
    kept = "\n".join(line for line in lines if line not in added)
    assert kept == DECISION.replace("state: in check", "state: checked")
    assert len(added) == 2
    assert thing.state == "checked"
    assert book.reviews["SA-DD-003"].lapsed == ()
    assert len(book.reviews["SA-DD-003"].standing(Capacity.CHECKER)) == 1


def test_what_is_read_back_is_what_was_signed(tmp_path: Path) -> None:
    folder = write_sample(tmp_path)
    book = read_book(folder)
    thing = book.records["SA-DD-003"]
    line = signed_by(LINE, Covers(book.content, book.network).of(thing))

    _, after = put(folder)

    expected = as_signed(thing, line)
    assert (after.signed, after.state) == (expected.signed, expected.state)
    assert line.saw == {"SA-PS-001.set": "18 bar(g)", "starts.n": "10"}


def test_a_second_line_stands_behind_the_first_whatever_key_follows(tmp_path: Path) -> None:
    text = DECISION.replace(
        "sets: [SA-PS-001.set]\n",
        "signed:\n  - {capacity: any hand, by: lead, on: 2031-03-10}\n\nsets: [SA-PS-001.set]\n",
    )
    folder = write_sample(tmp_path, decision=text)

    _, thing = put(folder)

    assert [line.by for line in thing.signed] == ["lead", "reviewer-1"]
    assert thing.sets == ("SA-PS-001.set",)  # type: ignore[union-attr]


def test_a_record_without_a_state_gets_one(tmp_path: Path) -> None:
    folder = write_sample(tmp_path)

    _, thing = put(folder, replace(LINE, to="checked"), "SA-CL-001")

    assert thing.state == "checked"


def test_line_ends_of_the_file_stay_as_they_are(tmp_path: Path) -> None:
    folder = write_sample(tmp_path, decision=DECISION.replace("\n", "\r\n"))

    put(folder)

    data = (folder / DECIDED).read_bytes()
    assert data.count(b"\n") == data.count(b"\r\n")


def test_a_written_page_is_signed_in_its_own_front_matter(tmp_path: Path) -> None:
    folder = write_sample(tmp_path)

    book, page = put(folder, replace(LINE, to=None), WRITTEN)

    assert [line.by for line in page.signed] == ["reviewer-1"]
    assert (folder / WRITTEN).read_text("utf-8").endswith(PAGE.split("---\n")[-1])
    assert book.reviews[WRITTEN].lapsed == ()


def test_a_signed_page_lapses_when_its_words_change(tmp_path: Path) -> None:
    folder = write_sample(tmp_path)
    put(folder, replace(LINE, to=None), WRITTEN)
    text = (folder / WRITTEN).read_text("utf-8")

    (folder / WRITTEN).write_text(text.replace("It turns", "It does not turn"), "utf-8")

    assert len(read_book(folder).reviews[WRITTEN].lapsed) == 1


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("signed: [{capacity: any hand, by: lead, on: 2031-03-10}]", "on one line"),
        ("signed: []", "take the empty key out"),
    ],
)
def test_front_matter_that_a_line_cannot_be_put_into_is_left_alone(
    tmp_path: Path, said: str, why: str
) -> None:
    text = DECISION.replace("sets: ", f"{said}\nsets: ")
    folder = write_sample(tmp_path, decision=text)

    with pytest.raises(GarboardError, match=why):
        put(folder)

    assert (folder / DECIDED).read_text("utf-8") == text


def test_a_file_that_changed_since_it_was_read_is_not_signed(tmp_path: Path) -> None:
    folder = write_sample(tmp_path)
    book = read_book(folder)
    (folder / DECIDED).write_text(DECISION + "More.\n", "utf-8")

    with pytest.raises(GarboardError, match="has changed since it was read"):
        write_signature(folder, book.content, book.records["SA-DD-003"], LINE)


WORDS = st.text(st.characters(min_codepoint=0x20, max_codepoint=0x7E), min_size=1, max_size=60)


@given(words=WORDS, scope=WORDS, seen=WORDS)
def test_whatever_words_are_signed_are_read_back_or_refused(
    words: str, scope: str, seen: str
) -> None:
    line = replace(LINE, words=words.strip() or None, scope=(scope.strip(),), saw={"a.b": seen})

    text = yaml_of(line)

    assert "\n" not in text
    if scope.strip() and seen.strip() == seen:
        assert reads_back(line)


@pytest.mark.parametrize(
    "word", ["true", "null", "on", "12", "1e5", "2031-01-01", "- a", "#", "a: b"]
)
def test_words_that_yaml_would_take_for_something_else_stay_words(word: str) -> None:
    assert reads_back(replace(LINE, words=word, by=word, scope=(word,)))


def test_words_with_hidden_signs_are_not_read_back() -> None:
    assert not reads_back(replace(LINE, words="looks\u202eright"))


def test_an_objection_stands_until_the_same_person_takes_it_back() -> None:
    objection = replace(LINE, to=None, verdict=Verdict.OBJECT, words="it is no lock")
    other = replace(LINE, by="reviewer-2", on=date(2031, 3, 20))
    again = replace(LINE, on=date(2031, 3, 21))

    assert standing_objections((objection,)) == (objection,)
    assert standing_objections((objection, other)) == (objection,)
    assert standing_objections((objection, other, again)) == ()
    assert standing_objections((again, objection)) == ()


def test_every_signature_of_the_demo_stands_but_those_on_the_alarm_that_was_moved() -> None:
    reviews = demo_handbook().book.reviews

    lapsed = {key: [str(one.moved[0]) for one in each.lapsed] for key, each in reviews.items()}

    moved = "SA-PS-001.set 15 bar(g) -> 18 bar(g) +/- 0.4 bar"
    assert {key: each for key, each in lapsed.items() if each} == {"SA-AL-001": [moved, moved]}
    assert reviews["HY-CO-001"].standing(Capacity.APPROVER)
    assert reviews["SA-DD-003"].not_checked == ()
