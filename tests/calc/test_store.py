"""An incremental build is a clean build, to the last bit, whatever was edited in between."""

import random
from collections import Counter

from garboard.calc.store import Store
from tests.calc.edited_handbook import EDITS, Handbook, handbook
from tests.calc.exactness import first_difference


def again(store: Store) -> Store:
    """The store as a later run finds it."""
    return Store.read(store.write())


def filled(book: Handbook) -> Store:
    """What a first build leaves."""
    store = Store()
    book.build(store)
    return again(store)


def test_the_handbook_before_any_edit_is_sound() -> None:
    found = handbook().build()

    assert found.diagnostics == ()
    assert len(found.sheets) == 30
    assert any(line.alarms for sheet in found.sheets.values() for line in sheet.lines)


def test_an_unchanged_handbook_is_taken_from_the_store_whole() -> None:
    book = handbook()
    store = Store()
    first = book.build(store)

    second = book.build(again(store))

    assert len(first.evaluated) == 30
    assert second.evaluated == ()
    assert first_difference(first, second) == ""


def test_after_each_of_fifty_edits_an_incremental_build_is_a_clean_one() -> None:
    chance = random.Random(2)  # noqa: S311 - edits, no secrets
    book, worked = handbook(), 0
    store = filled(book)
    names = [*EDITS, *chance.choices(list(EDITS), k=50)][: max(50, len(EDITS))]
    chance.shuffle(names)

    for name in names:
        EDITS[name](book, chance)
        incremental, clean = book.build(store), book.build()
        assert first_difference(incremental, clean) == "", name
        worked += len(incremental.evaluated)
        store = again(store)

    assert 0 < worked < 0.8 * 30 * len(names)
    assert Counter(names).keys() == EDITS.keys()
