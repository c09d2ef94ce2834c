"""A signature lapses exactly when something that it covers has moved."""

import random
from collections import Counter
from collections.abc import Callable, Mapping
from copy import deepcopy
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from garboard.book import make_book
from garboard.methods import METHODS
from garboard.reading.folder import read_folder
from garboard.records.signoff import Capacity
from garboard.review.signing import signed_by
from garboard.review.signoffs import Reviewed
from tests.review.random_handbook import (
    BANDS,
    STATE,
    Book,
    edit,
    lines,
    must_lapse,
    must_rest,
    random_book,
)

CASES = 320
Weigh = Callable[[Book], Mapping[str, Reviewed]]


@pytest.fixture
def weigh(tmp_path: Path) -> Weigh:
    """Write a handbook, read it, and weigh its signatures."""

    def read(book: Book) -> Mapping[str, Reviewed]:
        for path, text in book.files().items():
            target = tmp_path / path
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(text, "utf-8")
        made = make_book(read_folder(tmp_path), METHODS)
        for path in book.files():
            (tmp_path / path).unlink()
        assert set(made.records) == set(book.entries), made.content.diagnostics
        return made.reviews

    return read


def sign(book: Book, found: Mapping[str, Reviewed], keys: set[str], chance: random.Random) -> None:
    """Have records checked and approved as they stand."""
    for key in keys:
        entry = book.entries[key]
        band = chance.choice(BANDS)
        for capacity, by in ((Capacity.CHECKER, "reviewer-1"), (Capacity.APPROVER, "reviewer-2")):
            line = signed_by(lines(capacity, by, STATE[entry.letters], band), found[key].cover)
            later = timedelta(days=len(entry.signed))
            entry.signed.append(replace(line, on=line.on + later))


def lapsed(found: Mapping[str, Reviewed]) -> set[str]:
    return {key for key, each in found.items() if each.lapsed}


def values(book: Book) -> dict[str, str]:
    """Every value in litres, to be told where a case fails."""
    used = sorted({address for entry in book.entries.values() for address in book.uses(entry)})
    return {address: f"{float(book.value(address)):g}" for address in used}


def test_a_signature_lapses_if_and_only_if_something_it_covers_moved(weigh: Weigh) -> None:
    chance = random.Random(20310310)  # noqa: S311 - a seed, for the same cases each time
    seen: Counter[str] = Counter()
    for case in range(CASES):
        was = random_book(chance)
        sign(was, weigh(was), set(was.entries), chance)
        now = deepcopy(was)
        edits = [edit(chance, now) for _ in range(chance.randint(1, 3))]

        found = weigh(now)

        told = f"case {case}: {edits} {values(was)} {values(now)}"
        due = {key for key in was.entries if must_lapse(was, now, key)}
        assert lapsed(found) == due, told
        rests = {key: set(each.rests_on) for key, each in found.items()}
        assert rests == must_rest(now, due), told
        for key, each in found.items():
            lapses = key in due and key[3:5] != "HZ"
            assert each.state == ("lapsed" if lapses else STATE[key[3:5]]), told
        seen.update(edits)
        seen["lapsed"] += len(due)
        seen["stands"] += len(was.entries) - len(due)
        seen["rests"] += sum(bool(each) for each in rests.values())
        seen["nothing lapsed"] += not due

    assert min(seen.values()) > CASES // 20, seen


def test_signing_again_clears_the_whole_chain(weigh: Weigh) -> None:
    chance = random.Random(20310311)  # noqa: S311 - a seed, for the same cases each time
    cleared = 0
    for _ in range(CASES // 8):
        book = random_book(chance)
        sign(book, weigh(book), set(book.entries), chance)
        for _ in range(3):
            edit(chance, book)
        before = weigh(book)
        resting = {key for key, each in before.items() if each.rests_on and not each.lapsed}

        sign(book, before, lapsed(before), chance)
        after = weigh(book)

        assert lapsed(after) == set()
        assert not any(each.rests_on for each in after.values())
        cleared += len(resting)

    assert cleared > 10


def test_what_was_just_signed_stands_whatever_it_is(weigh: Weigh) -> None:
    chance = random.Random(20310312)  # noqa: S311 - a seed, for the same cases each time
    for _ in range(30):
        book = random_book(chance)
        sign(book, weigh(book), set(book.entries), chance)

        assert lapsed(weigh(book)) == set()
