"""What differs between issued editions is worked out once, kept, and never trusted blindly."""

from datetime import date
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.calc.store import Store
from garboard.changes import kept_comparisons
from garboard.changes.earlier import earlier_book
from garboard.changes.kept_comparisons import Compared, KeptComparisons
from garboard.errors import GarboardError
from garboard.handbook import read, read_book
from garboard.reading.edition_file import Editions
from garboard.records.edition import Edition
from tests.changes.pairs import FILES
from tests.golden_case import issue, lay_out

CALC = "systems/starting-air/sa-cl-001-starts.md"
STEPS = (("30 bar(g)", "29 bar(g)"), ("29 bar(g)", "28 bar(g)"), ("28 bar(g)", "27 bar(g)"))


@pytest.fixture
def issued(tmp_path: Path) -> Path:
    """A folder with three editions and a fourth set of words, a bar less each time."""
    files = dict(FILES)
    editions: dict[str, str] = {}
    for month, step in enumerate(STEPS, start=3):
        editions |= issue(tmp_path, files | editions, date(2031, month, 1))
        files[CALC] = files[CALC].replace(*step)
    lay_out(tmp_path, files | editions)
    forget()
    return tmp_path


def forget() -> None:
    """Let go of what this process holds, as a new one would."""
    kept_comparisons.HELD.clear()
    kept_comparisons.BOOKS.clear()


def pressures(compared: tuple[Compared, ...]) -> list[tuple[int, int, str, str]]:
    """Each pair of books with the number that moved between them."""
    return [
        (one.before, one.after, number.before, number.after)
        for one in compared
        if one.found
        for number in one.found.numbers
        if number.address == "starts.p_max"
    ]


def test_the_last_edition_is_held_against_the_book_and_each_against_the_one_before(
    issued: Path,
) -> None:
    compared = KeptComparisons(issued).all_of(read_book(issued))

    assert pressures(compared) == [
        (3, 0, "28 bar(g)", "27 bar(g)"),
        (2, 3, "29 bar(g)", "28 bar(g)"),
        (1, 2, "30 bar(g)", "29 bar(g)"),
    ]


def count_readings(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """From now on, the numbers of the editions that are read anew."""
    read_anew: list[int] = []

    def noted(editions: Editions, edition: Edition, store: Store | None) -> Book:
        read_anew.append(edition.number)
        return earlier_book(editions, edition, store)

    monkeypatch.setattr(kept_comparisons, "earlier_book", noted)
    return read_anew


def test_what_was_kept_is_not_worked_out_again(
    issued: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = read(issued)
    forget()
    read_anew = count_readings(monkeypatch)

    again = read(issued)

    assert read_anew == []
    assert again.pages == first.pages


def test_an_edit_asks_for_the_last_edition_alone(
    issued: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read(issued)
    forget()
    path = issued / CALC
    path.write_text(path.read_text("utf-8").replace("27 bar(g)", "26 bar(g)"), "utf-8")
    read_anew = count_readings(monkeypatch)

    compared = KeptComparisons(issued).all_of(read_book(issued))

    assert read_anew == [3]
    assert pressures(compared)[0] == (3, 0, "28 bar(g)", "26 bar(g)")


def test_a_kept_file_that_somebody_changed_is_passed_over(
    issued: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read(issued)
    forget()
    path = issued / ".garboard" / "comparisons.json"
    text = path.read_text("utf-8")
    assert text.count('"27 bar(g)"')
    path.write_text(text.replace('"27 bar(g)"', '"99 bar(g)"'), "utf-8")
    read_anew = count_readings(monkeypatch)

    compared = KeptComparisons(issued).all_of(read_book(issued))

    assert sorted(read_anew) == [1, 2, 3]
    assert pressures(compared)[0] == (3, 0, "28 bar(g)", "27 bar(g)")


def test_an_edition_whose_text_is_lost_says_so_and_the_book_is_read_all_the_same(
    issued: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def lost(*_: object) -> None:
        raise GarboardError("no edition holds a.md as edition 1 was issued")

    monkeypatch.setattr(kept_comparisons, "earlier_book", lost)

    handbook = read(issued)

    page = next(one for one in handbook.pages if one.key == "editions/since-3")
    assert "no edition holds a.md" in str(page.blocks)


def test_while_one_process_serves_an_edit_reads_no_edition_again(
    issued: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read(issued)
    path = issued / CALC
    path.write_text(path.read_text("utf-8").replace("27 bar(g)", "26 bar(g)"), "utf-8")
    read_anew = count_readings(monkeypatch)

    compared = KeptComparisons(issued).all_of(read_book(issued))

    assert read_anew == []
    assert pressures(compared)[0] == (3, 0, "28 bar(g)", "26 bar(g)")


def test_an_altered_edition_is_not_taken_for_what_it_was(issued: Path) -> None:
    read(issued)
    forget()
    path = issued / "editions" / "1.json"
    text = path.read_text("utf-8")
    path.write_text(text.replace("p_max = 30 bar(g)", "p_max = 35 bar(g)"), "utf-8")

    compared = KeptComparisons(issued).all_of(read_book(issued))

    assert pressures(compared)[-1] == (1, 2, "35 bar(g)", "29 bar(g)")


def test_a_path_in_an_edition_that_no_folder_can_hold_is_said_and_not_a_crash(
    issued: Path,
) -> None:
    path = issued / "editions" / "1.json"
    text = path.read_text("utf-8")
    path.write_text(text.replace('"sources.yml":', '"sources.yml\\u0000":', 1), "utf-8")

    compared = KeptComparisons(issued).all_of(read_book(issued))

    assert compared[-1].refused.startswith("edition 1 cannot be laid out again")
