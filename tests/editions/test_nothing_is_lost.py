"""Whatever is edited after an issue: every loss is found, nothing harmless fires, nothing looks better."""

import random
from datetime import date
from pathlib import Path

import pytest

from garboard.handbook import Handbook, read, read_book
from garboard.review.covers import Covers
from tests.editions.random_past import (
    HARMLESS,
    OTHER,
    Past,
    Signed,
    Thing,
    edit,
    random_past,
    snapshot,
    what_is_lost,
)
from tests.golden_case import found_in, issue, lay_out

CODES = ("record-vanished", "issued-text-altered", "kept-words-lost", "status-lowered", "hold-point-passed")  # fmt: skip
ISSUED = date(2031, 5, 1)
SEQUENCES = 10


def issued(folder: Path, chance: random.Random) -> tuple[Past, dict[str, str]]:
    """A random handbook, signed as it stands and issued; and the file of its edition."""
    past = random_past(chance)
    lay_out(folder, past.files())
    book = read_book(folder)
    covers = Covers(book.content, book.network)
    for thing in past.things.values():
        cover = covers.of(book.records[thing.key])
        for line in thing.signed:
            line.digest, line.saw = cover.own, thing.text()
            line.rests = f"{{{', '.join(f'{key}: {value}' for key, value in cover.saw.items())}}}" if cover.saw else ""  # fmt: skip
    return past, issue(folder, past.files(), ISSUED)


def found(folder: Path) -> set[tuple[str, str]]:
    """What the rules say against the past."""
    return {(one.code, one.about) for one in found_in(folder) if one.code in CODES}


def edited(chance: random.Random, was: Past, words: tuple[str, ...]) -> tuple[Past, list[str]]:
    """The handbook after a few edits, and what they were."""
    now = snapshot(was)
    made = [chance.choice(words) for _ in range(chance.randint(1, 6))]
    for what in made:
        edit(chance, now, what)
    return now, made


@pytest.mark.parametrize("seed", range(6))
def test_every_loss_is_found_and_nothing_else(seed: int, tmp_path: Path) -> None:
    chance = random.Random(seed)  # noqa: S311 - the same trials every time
    was, kept = issued(tmp_path, chance)
    fired = 0
    for _ in range(SEQUENCES):
        now, made = edited(chance, was, HARMLESS + OTHER)
        lay_out(tmp_path, {**now.files(), **kept})

        said = found(tmp_path)

        assert said == what_is_lost(was, now), made
        fired += len(said)
    assert fired >= 3


@pytest.mark.parametrize("seed", range(3))
def test_a_harmless_edit_never_fires(seed: int, tmp_path: Path) -> None:
    chance = random.Random(100 + seed)  # noqa: S311 - the same trials every time
    was, kept = issued(tmp_path, chance)
    for _ in range(SEQUENCES):
        now, made = edited(chance, was, HARMLESS)
        lay_out(tmp_path, {**now.files(), **kept})

        assert found(tmp_path) == set(), made
        assert what_is_lost(was, now) == set(), made


@pytest.mark.parametrize("seed", range(4))
def test_no_edits_make_a_page_look_better_reviewed_than_its_parts(
    seed: int, tmp_path: Path
) -> None:
    chance = random.Random(200 + seed)  # noqa: S311 - the same trials every time
    was, kept = issued(tmp_path, chance)
    seen = 0
    for _ in range(SEQUENCES):
        now, made = edited(chance, was, HARMLESS + OTHER)
        lay_out(tmp_path, {**now.files(), **kept})

        for key in trusted(read(tmp_path)):
            seen += 1
            thing, before = now.things[key], was.things.get(key)
            lines = [*thing.signed, *(before.signed if before else [])]
            assert newest(thing).saw == thing.text(), (key, made)
            assert not any(line.verdict == "object" for line in lines), (key, made)
            assert not any(about == key for _, about in what_is_lost(was, now)), (key, made)
    assert seen >= SEQUENCES


def newest(thing: Thing) -> Signed:
    """The checker's line that counts: the last by day, of one day the last that is written."""
    lines = [line for line in thing.signed if line.capacity == "checker"]
    return max(enumerate(lines), key=lambda one: (one[1].day, one[0]))[1]


def trusted(handbook: Handbook) -> set[str]:
    """Records whose own page says that it is reviewed."""
    return {
        page.key
        for page in handbook.pages
        if page.review.trusted and page.key in handbook.book.records
    }


def test_an_edition_that_is_issued_between_hides_no_loss(tmp_path: Path) -> None:
    chance = random.Random(7)  # noqa: S311 - the same trials every time
    was, kept = issued(tmp_path, chance)
    now = snapshot(was)
    gone = next(iter(now.things))
    del now.things[gone]
    kept |= issue(tmp_path, {**now.files(), **kept}, date(2031, 6, 1))
    lay_out(tmp_path, {**now.files(), **kept})

    assert ("record-vanished", gone) in found(tmp_path)
