"""What is in kind, and what counts as a class higher because it is not."""

import pytest

from garboard.errors import Where
from garboard.records.base import Address, Class, Figure
from garboard.records.change import Change, InKind, Shift
from garboard.records.in_kind import alike, differences

HERE = Where("log/2031/a.md")


def shift(before: str, after: str) -> Shift:
    return Shift(before=Figure(before), after=Figure(after))


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("1 bar", "100 kPa"),
        ("30 bar(g)", "3 MPa(g)"),
        ("25 mm", "0.025 m"),
        ("20 A", "20000 mA"),
        ("trips open", "Trips   open"),
        ("18 bar(g) +/- 0.4 bar", "18 bar(g) +/- 40 kPa"),
    ],
)
def test_the_same_in_other_words_is_alike(before: str, after: str) -> None:
    assert alike(before, after)
    assert alike(after, before)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("30 bar(a)", "30 bar(g)"),
        ("1 bar(g)", "100 kPa"),
        ("20 A", "20 V"),
        ("20 A", "20.01 A"),
        ("18 bar(g)", "18 bar(g) +/- 0.4 bar"),
        ("open", "shut"),
        ("20 A", "20 A, slow"),
    ],
)
def test_what_differs_is_not_alike(before: str, after: str) -> None:
    assert not alike(before, after)
    assert not alike(after, before)


def test_a_change_that_is_in_kind_stays_class_c() -> None:
    same = InKind(rating=Figure("80 A"), fails=shift("open", "Open"))

    change = Change(where=HERE, class_=Class.C, in_kind=same)

    assert change.weight is Class.C
    assert list(differences(change)) == []


def test_one_differing_attribute_makes_it_count_as_b() -> None:
    change = Change(where=HERE, class_=Class.C, in_kind=InKind(fails=shift("open", "shut")))

    assert change.weight is Class.B
    assert [(one.what, one.path) for one in differences(change)] == [("fails", "in_kind.fails")]


def test_a_moved_value_makes_it_count_as_b() -> None:
    moved = {Address("SA-PS-001.set"): shift("15 bar(g)", "18 bar(g)")}

    assert Change(where=HERE, class_=Class.C, values=moved).weight is Class.B


def test_what_is_written_higher_is_never_lowered() -> None:
    differs = InKind(fails=shift("open", "shut"))

    assert Change(where=HERE, class_=Class.A, in_kind=differs).weight is Class.A
    assert Change(where=HERE, class_=None, in_kind=None).weight is Class.A
