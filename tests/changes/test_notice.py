"""What a notice owes, and what of it is confirmed."""

from pathlib import Path

from garboard.changes.notice import Notice, Word, notice_of
from garboard.handbook import read_book
from garboard.records.change import Change
from tests.changes.test_touched import PLANT
from tests.golden_case import Case

HEAD = (
    "id: SA-CN-001\ntitle: Higher\nsystem: SA\nclass: B\nstate: installed\ninstalled: 2031-04-20\n"
    "values: {SA-PS-001.set: {before: 12 bar(g), after: 15 bar(g)}}"
)


def notice(folder: Path, more: str = "") -> Notice:
    files = {**PLANT, "log/2031/2031-03-16-a.md": f"---\n{HEAD}\n{more}\n---\nx\n"}
    book = read_book(Case("", "", "", files, "").write(folder))
    (change,) = book.of_kind(Change)
    return notice_of(book, change)


def words(found: Notice) -> dict[str, Word]:
    return {one.key: one.word for one in found.reached}


def test_what_nobody_named_is_open_and_the_moved_part_is_named(tmp_path: Path) -> None:
    found = notice(tmp_path)

    assert words(found) == {
        "SA-AL-001": Word.OPEN,
        "SA-PR-001": Word.OPEN,
        "SA-TR-001": Word.OPEN,
        "K-01": Word.OPEN,
        "SW-1": Word.OPEN,
        "SW-3": Word.OPEN,
        "SA-PS-001": Word.NAMED,
    }
    assert len(found.open) == 6


def test_each_field_of_the_notice_names_and_looked_at_confirms(tmp_path: Path) -> None:
    more = (
        "procedures: [SA-AL-001]\nvoids: [SA-TR-001]\ninforms: 'engine hands, by SA-PR-001'\n"
        "looked_at: [SW-1, SW-3]"
    )

    found = notice(tmp_path, more)

    assert found.open == ()
    assert words(found)["K-01"] is Word.NAMED
    assert words(found)["SW-1"] is Word.LOOKED_AT
    assert {one.key: one.field for one in found.reached}["SA-PR-001"] == "informs"


def test_a_card_can_be_named_where_its_alarm_is_not(tmp_path: Path) -> None:
    found = notice(tmp_path, "informs: 'whoever reads K-01, on the panel'")

    assert words(found)["K-01"] is Word.NAMED
    assert words(found)["SA-AL-001"] is Word.OPEN


def test_a_test_made_after_it_is_not_reached(tmp_path: Path) -> None:
    assert "SA-TR-002" not in words(notice(tmp_path))
