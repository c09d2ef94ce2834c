"""A form that was filled in comes back with the same fields, whatever mail programs did to it."""

import random
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.correspondence.intake import Intake
from garboard.correspondence.reply_sheet import blank_form
from garboard.handbook import read_book
from garboard.reading.reply_form import read_forms
from garboard.records.signoff import Capacity
from garboard.review.covers import Covers
from garboard.review.seals import seal_of
from tests.correspondence.mailed_form import Filled, fill, filled_at_random, mailed, plain
from tests.review.signed_sample import write_sample

TRIALS = 500


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """A small handbook with a decision in check."""
    return read_book(write_sample(tmp_path_factory.mktemp("round") / "content"))


def form_of(book: Book, key: str = "SA-DD-003") -> list[str]:
    cover = Covers(book.content, book.network).of(book.records[key])
    return list(blank_form(seal_of(key, cover), cover, (Capacity.CHECKER, Capacity.APPROVER)))


def said(what: Filled) -> tuple[object, ...]:
    points = tuple((where, plain(seen), danger) for where, seen, danger in what.points)
    fields = (what.by, what.on, what.capacity, what.verdict, what.checked, what.not_checked)
    return (*fields, plain(what.words), points)


@pytest.mark.parametrize("start", range(10))
def test_a_reply_comes_back_as_it_was_filled_in(book: Book, start: int) -> None:
    form = form_of(book)
    for number in range(TRIALS // 10):
        chance = random.Random(1000 * start + number)  # noqa: S311 - the same trials every time
        what = filled_at_random(chance)
        text = mailed(fill(form, what), chance)

        (reply,) = read_forms(text).replies
        taken = Intake(book, "lead").take(text, "mail.txt")

        points = tuple((one.where, plain(one.seen), str(one.danger)) for one in reply.points)
        got = (reply.by, reply.on, reply.capacity, reply.verdict, reply.checked, reply.not_checked)
        assert (*got, plain(reply.words), points) == said(what), text
        assert reply.remarks == (), text
        assert [plain(one.text) for one in taken.faults] == []
        assert list(taken.kept.values()) == [text]
        assert len(taken.findings) == len(what.points)
        assert "cannot be confirmed any more" not in "\n".join(taken.told), text


def test_an_empty_form_is_no_reply_however_it_was_quoted(book: Book) -> None:
    chance = random.Random(5)  # noqa: S311 - the same trials every time
    for _ in range(50):
        assert read_forms(mailed(form_of(book), chance)).replies == ()


def test_the_trials_really_spoil_the_text(book: Book) -> None:
    """Guards the test above: what is mailed differs from what was filled in."""
    chance = random.Random(5)  # noqa: S311 - the same trials every time
    form = form_of(book)
    same = 0
    for _ in range(100):
        lines = fill(form, filled_at_random(chance))
        same += "\n".join(lines) in mailed(lines, chance)

    assert same < 20


def test_a_folder_of_replies_is_read_with_the_rest(tmp_path: Path) -> None:
    folder = write_sample(tmp_path / "content")
    form = form_of(read_book(folder))
    text = "\n".join(fill(form, filled_at_random(random.Random(3))))  # noqa: S311
    (reply,) = read_forms(text).replies
    (folder / "replies").mkdir()
    (folder / "replies" / f"{reply.on}-sa-dd-003-reviewer-1.txt").write_text(text, "utf-8")

    book = read_book(folder)

    assert [one.reply for one in book.waiting["SA-DD-003"]] == [reply]
    assert book.content.diagnostics == ()
