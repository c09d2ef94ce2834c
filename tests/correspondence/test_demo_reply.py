"""The demo holds one reply that waits, and one finding that came by it; reviewers have a page."""

from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import Handbook, read
from garboard.records.finding import Finding
from garboard.records.reply import Label
from garboard.review.covers import Covers
from garboard.review.seals import moved_since
from garboard.views.page import Page
from tests.demo_site import copy_demo, demo_handbook

KEPT = "replies/2031-09-28-sa-cn-002-reviewer-1.txt"


@pytest.fixture(scope="module")
def demo() -> Handbook:
    """The demo handbook."""
    return demo_handbook()


def page(demo: Handbook, key: str) -> Page:
    return next(one for one in demo.pages if one.key == key)


def test_the_waiting_reply_still_fits_what_it_is_about(demo: Handbook) -> None:
    (waiting,) = demo.book.waiting["SA-CN-002"]
    cover = Covers(demo.book.content, demo.book.network).of(demo.book.records["SA-CN-002"])

    assert waiting.path == KEPT
    assert list(moved_since(waiting.reply, cover)) == []


def test_the_page_and_the_list_say_that_it_waits(demo: Handbook) -> None:
    said = (
        "A reply of the remote reviewer, machinery of 28 September 2031 waits to be confirmed:"
        " verdict finding"
    )

    assert said in str(page(demo, "SA-CN-002").blocks)
    assert said in str(page(demo, "registers/to-be-filed").blocks)
    assert said not in str(page(demo, "SA-CN-001").blocks)


def test_the_finding_says_in_the_same_words_what_the_reply_says(demo: Handbook) -> None:
    (waiting,) = demo.book.waiting["SA-CN-002"]
    found = demo.book.records["SA-FN-016"]

    assert isinstance(found, Finding)
    assert [found.words] == [one.seen for one in waiting.reply.points]
    assert KEPT in found.text


def test_the_reply_of_the_demo_can_be_confirmed(tmp_path: Path) -> None:
    folder = copy_demo(tmp_path)

    status = main(["sign", "--reply", KEPT, "--entered-by", "lead", "--folder", str(folder)])

    handbook = read(folder)
    assert status == 0
    assert handbook.book.waiting == {}
    assert handbook.book.records["SA-CN-002"].signed[-1].evidence == KEPT
    assert "waits to be confirmed" not in str(page(handbook, "SA-CN-002").blocks)


def test_the_page_for_reviewers_explains_every_line_of_the_form(demo: Handbook) -> None:
    text = str(page(demo, "manual/how-to-review").blocks)

    for label in Label:
        assert f"'{label}'" in text
