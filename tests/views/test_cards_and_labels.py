"""The register of cards, why one is refused, and the lists of labels."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.handbook import read
from garboard.names import is_tag
from garboard.records.component import Component
from garboard.records.procedure import Procedure
from garboard.views.labels import HEAD, label_files, labels_draft
from garboard.views.page import LabelSheet, Page, QuickCard, Table
from garboard.views.places import rooms
from garboard.views.quick_cards import card_drafts
from garboard.views.runs import plain
from garboard.views.values_data import guarded
from tests.demo_site import demo_handbook


def card_of(page: Page) -> QuickCard:
    return next(block for block in page.blocks if isinstance(block, QuickCard))


def page_of(number: str) -> Page:
    return next(one for one in demo_handbook().pages if one.key == f"cards/{number}")


def stands(book: Book) -> dict[str, str]:
    """What the register says of each card."""
    *_, register = card_drafts(book, {}, [])
    _, table = (block for block in register.blocks if isinstance(block, Table))
    return {row.anchor: plain(row.cells[-1]) for row in table.rows}


def urgent(book: Book) -> dict[str, list[str]]:
    """The reprint list, by card: where, what to do, because."""
    *_, register = card_drafts(book, {}, [])
    table, _ = (block for block in register.blocks if isinstance(block, Table))
    rows = ([plain(one) for one in row.cells] for row in table.rows)
    return {number: rest for number, *rest in rows}


def with_cards(number: str = "K-02", **changes: object) -> Book:
    """The demo's book with one of its cards otherwise."""
    book = demo_handbook().book
    vessel = book.content.vessel
    cards = tuple(replace(one, **changes) if one.card == number else one for one in vessel.cards)  # type: ignore[arg-type]
    return replace(book, content=replace(book.content, vessel=replace(vessel, cards=cards)))


def test_a_card_of_a_lapsed_alarm_is_refused_in_words() -> None:
    card = card_of(page_of("K-01"))

    assert card.refused[0].startswith("NOT REVIEWED. Review of 1 March 2031 has lapsed")
    assert (card.first, card.then, card.code) == ((), (), "")


@pytest.mark.parametrize("severity", [Severity.HOLD, Severity.STOP])
def test_no_card_stands_while_a_fault_holds_its_record(severity: Severity) -> None:
    book = demo_handbook().book
    fault = Diagnostic(
        Where("x.md"), severity, "the step is not safe", "", "some-rule", "BG-AL-001"
    )

    drafts = {one.ident: one for one in card_drafts(book, {"BG-AL-001": (fault,)}, [])}

    (card, *_) = drafts["K-02"].blocks
    assert isinstance(card, QuickCard)
    assert any("the step is not safe" in reason for reason in map(str.casefold, card.refused))
    assert not card.first


def test_a_warning_refuses_no_card() -> None:
    book = demo_handbook().book
    fault = Diagnostic(Where("x.md"), Severity.WARN, "worth a look", "", "some-rule", "BG-AL-001")

    drafts = {one.ident: one for one in card_drafts(book, {"BG-AL-001": (fault,)}, [])}

    (card, *_) = drafts["K-02"].blocks
    assert isinstance(card, QuickCard)
    assert card.refused == ()


def test_every_step_of_a_parted_task_stands_on_one_of_its_cards() -> None:
    cards = [card_of(page_of(number)) for number in ("K-07", "K-08")]

    numbers = [line.number for card in cards for line in (*card.first, *card.then)]
    assert numbers == [str(number) for number in range(1, 10)]
    assert [card.part for card in cards] == ["part 1 of 2", "part 2 of 2"]


def test_the_review_of_a_card_is_that_of_its_record() -> None:
    pages = {one.key: one for one in demo_handbook().pages}

    for number, key in (("K-01", "SA-AL-001"), ("K-02", "BG-AL-001"), ("K-06", "SA-PR-005")):
        assert pages[f"cards/{number}"].review == pages[key].review


def test_the_register_says_how_each_card_stands() -> None:
    found = stands(demo_handbook().book)

    assert found["K-01"].startswith("cannot be printed: NOT REVIEWED.")
    assert found["K-02"] == "as printed"
    assert found["K-05"] == "taken down on 30 September 2031"
    assert found["K-06"] == "not printed yet"


def test_a_card_of_another_text_is_on_the_reprint_list() -> None:
    book = with_cards(digest="0123456789abcdef")

    _, what, _ = urgent(book)["K-02"]

    assert stands(book)["K-02"] == "reprint"
    assert what == "Take down at wheelhouse alarm panel, and hang a new print."


def test_a_card_of_the_demo_moved_by_a_change_is_listed_with_its_place_and_all_that_moved() -> None:
    (row,) = urgent(demo_handbook().book).values()

    assert row[0] == "engine control position, card box"
    assert row[1].endswith("and hang a new print.")
    assert "SA-PR-009 says something else" in row[2]
    assert "edition 1 lists no card K-12" in row[2]
    assert "recharge.t_dead was 54.3 min, now 67.8 min" in row[2]


def test_a_card_that_shows_other_steps_is_reprinted_though_its_record_did_not_move() -> None:
    where, _, because = urgent(with_cards("K-03", steps="2-4"))["K-03"]

    assert where == "inside the door of the main board"
    assert because.startswith("steps 2 to 4 shown, printed with steps 1 to ")


def test_a_card_that_is_listed_elsewhere_is_fetched_where_it_hangs() -> None:
    row = urgent(with_cards("K-02", place="galley"))["K-02"]

    assert row == [
        "wheelhouse alarm panel",
        "Take down at wheelhouse alarm panel, and hang a new print at galley.",
        "listed at galley, printed for wheelhouse alarm panel",
    ]


def test_a_card_that_names_no_edition_is_judged_by_its_words_and_says_so() -> None:
    found = stands(with_cards("K-02", edition=None, place="galley"))["K-02"]

    assert found == "words as printed; no edition here says which steps and numbers stand on it"


def test_a_card_that_was_taken_down_is_on_no_list() -> None:
    book = with_cards(digest="0123456789abcdef", removed=date(2031, 9, 1))

    assert "K-02" not in urgent(book)


def test_a_number_of_a_card_that_would_leave_its_folder_is_refused(tmp_path: Path) -> None:
    (tmp_path / "handbook.yml").write_text(
        "vessel: X\nsystems: {}\ncards:\n  - {card: ../../x, of: SA-PR-001, place: here}\n", "utf-8"
    )

    found = read(tmp_path)

    assert any("is no number of a card" in one.text for one in found.diagnostics)
    assert not any(".." in page.path for page in found.pages)


@pytest.mark.parametrize("steps", ["4-1", "0-3", "all", "1"])
def test_steps_that_are_no_row_are_refused_with_an_example(tmp_path: Path, steps: str) -> None:
    (tmp_path / "handbook.yml").write_text(
        f'vessel: X\ncards:\n  - {{card: K-01, of: SA-PR-001, place: here, steps: "{steps}"}}\n',
        "utf-8",
    )

    found = [one for one in read(tmp_path).diagnostics if "no row of steps" in one.text]

    assert [(one.where.line, "1-4" in one.help) for one in found] == [(3, True)]


def test_every_tagged_part_is_in_the_list_of_its_system() -> None:
    book = demo_handbook().book

    files = label_files(book)

    listed = [line.split("\t") for text in files.values() for line in text.splitlines()]
    rows = [row for row in listed if tuple(row) != HEAD]
    assert sorted(row[0] for row in rows) == sorted(book.components)
    assert all(len(row) == len(HEAD) and is_tag(row[4]) for row in rows)


def test_every_point_that_an_isolation_locks_has_a_label_to_print() -> None:
    book = demo_handbook().book
    labelled = {
        label.tag
        for block in labels_draft(book).blocks
        if isinstance(block, LabelSheet)
        for label in block.labels
    }

    locked = {
        str(tag)
        for procedure in book.of_kind(Procedure)
        for tag in procedure.points
        if book.components[str(tag)].kind not in ("compressor", "pump")
    }

    assert len(locked) > 10
    assert locked - labelled == set()


def test_no_cell_of_a_list_is_worked_out_by_a_spreadsheet() -> None:
    book = demo_handbook().book
    part = book.components["SA-HV-001"]
    spoilt = replace(part, name="=1+1", place='@SUM(A1)\t"x"\n-2')
    parts: dict[str, Component] = {**book.components, "SA-HV-001": spoilt}

    text = label_files(replace(book, content=replace(book.content, components=parts)))[
        "labels/SA.tsv"
    ]

    (line,) = (one for one in text.splitlines() if one.startswith("SA-HV-001\t"))
    assert line.split("\t")[1] == "'=1+1"
    assert line.split("\t")[3] == '\'@SUM(A1) "x" -2'
    assert guarded("+1") == "'+1"


def test_a_card_that_is_listed_elsewhere_stands_among_the_places_where_it_hangs() -> None:
    found = {
        key: place.name
        for room in rooms(with_cards("K-02", place="galley"))
        for place in room.places
        for key, _ in place.things
    }

    assert found["K-02"] == "wheelhouse alarm panel"
