"""On the page of a change: what is joined otherwise at the parts it affects, and the sheet as it is now."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import msgspec
import pytest

from garboard.book import Book
from garboard.changes.comparison import Comparison, Rejoined, Side
from garboard.changes.joins import joins_moved, rejoined
from garboard.handbook import read_book
from garboard.records.change import Change
from garboard.views.change_joins import change_joins
from garboard.views.page import Bullets, Heading, Schematic
from garboard.views.runs import plain
from tests.changes.test_joins import AFTER, BEFORE
from tests.correspondence.test_joins import laid_out
from tests.systems.pieces import plant_of


@pytest.fixture
def book(tmp_path: Path) -> Book:
    """The book after the change."""
    return read_book(laid_out(tmp_path, AFTER))


def since(*joins: Rejoined) -> Comparison:
    day = date(2031, 9, 1)
    return Comparison(before=Side(edition=2, on=day), after=Side(edition=0, on=day), joins=joins)


def moved() -> Rejoined:
    found = rejoined("SA", "Starting air", plant_of(BEFORE), plant_of(AFTER))
    assert found
    return found


def change_of(book: Book) -> Change:
    (found,) = book.of_kind(Change)
    return found


def test_a_change_tells_and_draws_what_is_joined_otherwise_at_its_parts(book: Book) -> None:
    heading, told, _, drawn = change_joins(book, change_of(book), since(moved()))

    assert isinstance(heading, Heading)
    assert heading.text == "Starting air: joined otherwise since edition 2"
    assert isinstance(told, Bullets)
    assert plain(told.items[0]) == "no longer joined: the start header to SA-PS-001"
    assert isinstance(drawn, Schematic)
    assert "new or changed" in drawn.svg
    assert "<use" not in drawn.svg


def test_a_change_that_affects_other_parts_says_nothing(book: Book) -> None:
    other = replace(change_of(book), affects=())

    assert list(change_joins(book, other, since(moved()))) == []


def test_without_an_edition_before_there_is_nothing_to_say(book: Book) -> None:
    assert list(change_joins(book, change_of(book), None)) == []


def test_the_sheet_as_it_was_stands_before_the_sheet_as_it_is(book: Book, tmp_path: Path) -> None:
    old = read_book(laid_out(tmp_path / "old", BEFORE))
    (one,) = joins_moved(old, book)

    *_, was, now = change_joins(book, change_of(book), since(one))

    assert isinstance(was, Schematic)
    assert isinstance(now, Schematic)
    assert (was.caption, now.caption) == (
        "Starting air, before the change",
        "Starting air: after the change",
    )
    assert "find:" not in was.svg  # what it shows may be gone
    assert set(was.ids).isdisjoint(now.ids)


def test_a_comparison_keeps_the_sheet_as_it_was_through_its_file(
    book: Book, tmp_path: Path
) -> None:
    old = read_book(laid_out(tmp_path / "old", BEFORE))
    (one,) = joins_moved(old, book)

    kept = msgspec.json.decode(msgspec.json.encode(one), type=Rejoined)

    assert one.before
    assert kept == one
