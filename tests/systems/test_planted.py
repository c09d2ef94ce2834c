"""Mistakes planted in a good design are all found, and a harmless edit raises no alarm."""

import pytest

from tests.systems.planted import Planted, demo_text, edited, newly_found, planted

PLANTED = planted()
DRAIN = {"change": {"  - {run: AR-001.drain > HV-004 > bilge, service: drain}\n": ""}}


@pytest.mark.parametrize("one", PLANTED, ids=lambda one: one.says)
def test_an_edit_brings_what_it_must_and_nothing_else(one: Planted) -> None:
    assert newly_found(one) == one.appears


def test_there_are_enough_of_both_sorts() -> None:
    harmless = [one for one in PLANTED if not one.appears]

    assert len({one.says for one in PLANTED}) == len(PLANTED)
    assert len(PLANTED) - len(harmless) >= 40
    assert len(harmless) >= 20


def test_every_edit_changes_its_text() -> None:
    unchanged = [
        one.says
        for one in PLANTED
        if edited(edited(demo_text(one.folder), one.given), one.edits)
        == edited(demo_text(one.folder), one.given)
    ]

    assert unchanged == []


def test_what_is_to_be_changed_stands_there_exactly_once() -> None:
    with pytest.raises(ValueError, match=r"^\d+ times in the text: kind: drain valve$"):
        edited(demo_text("starting-air"), {"change": {"kind: drain valve": "kind: plug"}})
    with pytest.raises(ValueError, match="nowhere in the text: no such line"):
        edited(demo_text("starting-air"), {"rename": {"no such line": "another"}})


def test_a_mistake_that_is_called_harmless_is_seen() -> None:
    mistake = Planted("receiver 1 without a drain", "starting-air", {}, DRAIN, frozenset())

    assert newly_found(mistake) != mistake.appears
