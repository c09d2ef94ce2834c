"""A hundred random edits of random handbooks: every number that moved is told, and no other."""

import copy
import random
from pathlib import Path

import pytest

from garboard.changes.compare import compare
from garboard.changes.comparison import Caution, Comparison, Sort, Strength
from garboard.handbook import read_book
from garboard.methods import METHODS
from tests.golden_case import lay_out
from tests.review import random_handbook
from tests.review.random_handbook import block_of, edit, random_book

TURNED = {Sort.NEW: Sort.GONE, Sort.GONE: Sort.NEW}
OTHER_WAY = {
    Strength.WEAKENED: Strength.STRENGTHENED,
    Strength.STRENGTHENED: Strength.WEAKENED,
    Strength.CHANGED: Strength.CHANGED,
}


def addresses(book: random_handbook.Book) -> set[str]:
    """Every number of a random handbook."""
    found = {f"{tag}.volume" for tag in book.parts}
    for key, entry in book.entries.items():
        if entry.sum:
            found |= {f"{block_of(key)}.x", f"{block_of(key)}.k"}
    return found


def facts(book: random_handbook.Book, address: str) -> tuple[object, ...]:
    """A number as it was summed with fractions, and how sure it is."""
    return book.value(address), book.slack(address)


@pytest.mark.parametrize("seed", range(10))
def test_every_number_that_moved_is_told_and_no_other(tmp_path: Path, seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311 - the same handbooks every time
    was = random_book(chance)
    lay_out(tmp_path, was.files())
    old = read_book(tmp_path)
    for _ in range(10):
        now = copy.deepcopy(was)
        edit(chance, now)
        lay_out(tmp_path, now.files())
        new = read_book(tmp_path)

        found = compare(old, new, METHODS)

        moved = {one for one in addresses(was) if facts(was, one) != facts(now, one)}
        assert {one.address for one in found.numbers} == moved
        assert {one.address for one in found.inputs if "." in one.address} == {
            one for one in moved if not one.endswith(".x")
        }
        was, old = now, new


@pytest.mark.parametrize("seed", range(6))
def test_the_other_way_round_is_the_same_with_the_sides_exchanged(
    tmp_path: Path, seed: int
) -> None:
    chance = random.Random(100 + seed)  # noqa: S311 - the same handbooks every time
    was = random_book(chance)
    now = random_book(chance)
    lay_out(tmp_path, was.files())
    old = read_book(tmp_path)
    lay_out(tmp_path, now.files())
    new = read_book(tmp_path)

    there, back = compare(old, new, METHODS), compare(new, old, METHODS)

    assert there.numbers
    assert sides(there) == {
        (address, TURNED.get(sort, sort), after, before)
        for address, sort, before, after in sides(back)
    }
    assert guards(there) == sorted(
        (about, OTHER_WAY[strength], after, before)
        for about, strength, before, after in guards(back)
    )
    assert sorted((one.procedure, one.before, one.after) for one in there.steps) == sorted(
        (one.procedure, one.after, one.before) for one in back.steps
    )
    assert {(one.name, TURNED.get(one.sort, one.sort)) for one in there.entries} == {
        (one.name, one.sort) for one in back.entries
    }
    assert {(one.block, one.before, one.stood, one.after, one.stands) for one in there.limits} == {
        (one.block, one.after, one.stands, one.before, one.stood) for one in back.limits
    }


def sides(found: Comparison) -> set[tuple[str, Sort, str, str]]:
    """The numbers with both sides."""
    return {(one.address, one.sort, one.before, one.after) for one in found.numbers}


def guards(found: Comparison) -> list[tuple[str, Strength, str, str]]:
    """The warnings with both sides."""

    def row(one: Caution) -> tuple[str, Strength, str, str]:
        return one.about, one.strength, one.before, one.after

    return sorted(row(one) for one in found.cautions)
