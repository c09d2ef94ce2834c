"""What a change reaches is never less than what it is seen to move, and not simply everything."""

import random
import re
from collections import Counter
from collections.abc import Mapping
from copy import deepcopy
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from garboard.book import Book, make_book
from garboard.calc.value import Value
from garboard.changes.touched import Touched, touched_by
from garboard.handbook import read_book
from garboard.methods import METHODS
from garboard.reading.folder import read_folder
from garboard.records.standing import has_left
from tests.demo_site import copy_demo
from tests.golden_case import Case
from tests.review import random_handbook as plain

CASES = 150
EDITS = 12
DRAWN = "  SA-AR-009: {kind: receiver, name: drawn, volume: c001.x}\n"
"""A part whose number is drawn from a calculation."""


def written(book: plain.Book, folder: Path) -> Book:
    """A random handbook as files, with a drawn number and pages that quote, read back."""
    files = book.files()
    files["systems/starting-air/system.yml"] += DRAWN
    files["systems/starting-air/what-it-does.md"] = page("SA-AR-009.volume", "what it does")
    files["systems/starting-air/layout.md"] = page("SA-AR-001.volume", "layout")
    files["log/2031/2031-05-01-sa-dd-009.md"] = (
        "---\nid: SA-DD-009\ntitle: On the drawn one\nsystem: SA\nclass: B\nauthor: lead\n"
        "---\nIt holds [](value:SA-AR-009.volume).\n"
    )
    for path, text in files.items():
        target = folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, "utf-8")
    return make_book(read_folder(folder), METHODS)


def page(address: str, kind: str) -> str:
    return f"---\npage: {kind}\ntitle: A page\nsystem: SA\n---\nIt holds [](value:{address}).\n"


def moved_between(was: plain.Book, now: plain.Book) -> tuple[list[str], list[str]]:
    """Addresses and names that an edit changed, told from the two handbooks as they were put in."""
    addresses, names = [], []
    for tag, part in was.parts.items():
        after = now.parts[tag]
        if (part.volume, part.plus_minus) != (after.volume, after.plus_minus):
            addresses.append(f"{tag}.volume")
        if part.name != after.name:
            names.append(tag)
    names += [key for key, edition in was.sources.items() if now.sources[key] != edition]
    for key, entry in was.entries.items():
        after_entry = now.entries[key]
        if entry.sum and after_entry.sum and entry.sum.k != after_entry.sum.k:
            addresses.append(f"{plain.block_of(key)}.k")
        elif entry != after_entry:
            names.append(key)
    return addresses, names


def told(value: Value) -> tuple[object, ...]:
    return value.si, value.low, value.high, value.text


def unreached(was: Book, now: Book, reached: Touched) -> set[str]:
    """All that reads otherwise than before, less what was said to be reached; what has left is let be."""
    left = {key for key, record in was.records.items() if has_left(record)}
    changed = {
        key for key, one in was.reviews.items() if now.reviews[key].cover != one.cover
    } - left
    moved = {key for key, one in was.values.items() if told(now.values[key]) != told(one)}
    followed = {key.partition(".")[0] for key in moved} & was.components.keys()
    known = {*reached.records, *reached.pages}
    return (changed - known) | (moved - {*reached.values}) | (followed - {*reached.tags})


def test_whatever_reads_otherwise_after_an_edit_was_reached(tmp_path: Path) -> None:
    chance = random.Random(20310420)  # noqa: S311 - the same cases each time
    seen: Counter[str] = Counter()
    for case in range(CASES):
        before = plain.random_book(chance)
        after = deepcopy(before)
        edits = [plain.edit(chance, after) for _ in range(chance.randint(1, 2))]
        was = written(before, tmp_path)
        now = written(after, tmp_path)
        for path in before.files():
            (tmp_path / path).unlink()

        reached = touched_by(was, *moved_between(before, after))

        assert unreached(was, now, reached) == set(), (case, edits)
        changed = [key for key, one in was.reviews.items() if now.reviews[key].cover != one.cover]
        seen["records that changed"] += len(changed)
        seen["records reached"] += len(reached.records) + len(reached.pages)
        seen["records"] += len(was.reviews)
    assert seen["records that changed"] > 2 * CASES
    assert seen["records reached"] < 0.6 * seen["records"]


def test_whatever_reads_otherwise_in_the_demo_was_reached(tmp_path: Path) -> None:
    folder = copy_demo(tmp_path)
    was = read_book(folder)
    chance = random.Random(7)  # noqa: S311 - the same each time
    given = sorted(key for key, one in was.values.items() if one.given and stands_in(folder, one))
    fed = [key for key in given if was.network.feeds.get(key)]
    in_fences = [key for key in fed if was.values[key].where.path.endswith(".md")]
    in_parts = [key for key in fed if key not in in_fences]
    changed = 0
    for address in (
        *chance.sample(in_parts, EDITS // 2),
        *chance.sample(in_fences, EDITS // 3),
        *chance.sample(given, EDITS // 6),
    ):
        path = folder / was.values[address].where.path
        before = path.read_text("utf-8")
        path.write_text(raised(before, was.values[address]), "utf-8")

        reached = touched_by(was, [address])
        now = read_book(folder)

        path.write_text(before, "utf-8")
        assert told(now.values[address]) != told(was.values[address]), address
        assert unreached(was, now, reached) == set(), address
        changed += sum(now.reviews[key].cover != one.cover for key, one in was.reviews.items())
    assert changed > EDITS


def stands_in(folder: Path, value: Value) -> bool:
    """Whether a number is written out at its place."""
    path = folder / value.where.path
    return value.text in path.read_text("utf-8").split("\n")[value.where.line - 1]


def raised(text: str, value: Value) -> str:
    """A file with one of its numbers three per cent higher."""
    lines = text.split("\n")
    line = lines[value.where.line - 1]
    start = line.index(value.text, value.where.column - 1)
    figure = re.match(r"-?[\d.]+", line[start:])
    assert figure
    higher = f"{float(figure[0]) * 1.03 + 0.01:.4f}"
    lines[value.where.line - 1] = line[:start] + higher + line[start + figure.end() :]
    return "\n".join(lines)


PLANT: Mapping[str, str] = {
    "handbook.yml": """\
vessel: Skerry Light
defers_to: [flag]
systems: {SA: starting-air}
as_of: 2031-10-01
cards:
  - {card: K-01, of: SA-AL-001, place: panel}
  - {card: K-02, of: SA-AL-001, place: bridge, removed: 2031-05-01}
  - {card: K-03, of: SA-AL-002, place: panel}
""",
    "people.yml": """\
lead: {role: lead builder, may: [author, doer, in charge]}
volunteer-1:
  role: volunteer
  may: [doer]
  competence: [{procedure: SA-PR-001, level: alone}, {procedure: SA-PR-002, level: alone}]
""",
    "spares.yml": """\
SW-1: {name: pressure switch, fits: [SA-PS-001], aboard: 1}
SW-2: {name: another, fits: [SA-PS-002], aboard: 1}
SW-3: {name: does as well, interchange: [PART-7], aboard: 1}
""",
    "systems/starting-air/system.yml": """\
status: in test
components:
  SA-PS-001: {kind: pressure switch, set: 15 bar(g), part_no: PART-7}
  SA-PS-002: {kind: pressure switch, set: 14 bar(g)}
  SA-HV-001: {kind: stop valve}
rounds:
  engine room: {every: 4 h, order: [{tag: SA-HV-001, look: shut}]}
connections: [SA-HV-001 > SA-PS-001 > SA-PS-002]
""",
    "systems/starting-air/al-1.md": "---\nid: SA-AL-001\ntitle: Low\nsystem: SA\ntag: SA-PS-001\n---\nx\n",
    "systems/starting-air/al-2.md": "---\nid: SA-AL-002\ntitle: Low\nsystem: SA\ntag: SA-PS-002\n---\nx\n",
    "systems/starting-air/pr-1.md": "---\nid: SA-PR-001\ntitle: Raise\nsystem: SA\n---\nUp to [](value:SA-PS-001.set).\n",
    "systems/starting-air/pr-2.md": "---\nid: SA-PR-002\ntitle: Lower\nsystem: SA\n---\nNothing.\n",
    "systems/starting-air/pr-3.md": "---\nid: SA-PR-003\ntitle: Old\nsystem: SA\nstate: withdrawn\n---\n[](value:SA-PS-001.set).\n",
    "systems/starting-air/tr-1.md": "---\nid: SA-TR-001\ntitle: First\nsystem: SA\non: 2031-02-01\ntested: [{tag: SA-PS-001}]\n---\nx\n",
    "systems/starting-air/tr-2.md": "---\nid: SA-TR-002\ntitle: Second\nsystem: SA\non: 2031-05-01\ntested: [{tag: SA-PS-001}]\n---\nx\n",
}


@pytest.fixture
def plant(tmp_path: Path) -> Book:
    return read_book(Case("", "", "", dict(PLANT), "").write(tmp_path))


def test_a_setting_reaches_its_alarm_card_spare_people_and_older_test(plant: Book) -> None:
    reached = touched_by(plant, ["SA-PS-001.set"], on=date(2031, 4, 20))

    assert reached.tags == ("SA-PS-001",)
    assert reached.records == ("SA-AL-001", "SA-PR-001", "SA-TR-001")
    assert [card.card for card in reached.cards] == ["K-01"]
    assert reached.spares == ("SW-1", "SW-3")
    assert reached.people == (("volunteer-1", "SA-PR-001"),)
    assert reached.tests == ("SA-TR-001",)


def test_without_a_day_every_test_of_a_part_is_reached(plant: Book) -> None:
    assert touched_by(plant, names=["SA-PS-001"]).tests == ("SA-TR-001", "SA-TR-002")


def test_a_round_that_stops_at_a_part_is_reached_and_the_pipe_list_is_not(plant: Book) -> None:
    assert touched_by(plant, names=["SA-HV-001"]).systems == ("SA",)
    assert touched_by(plant, names=["SA-PS-002"]).systems == ()


def test_each_thing_says_by_what_it_is_reached(plant: Book) -> None:
    reached = touched_by(plant, ["SA-PS-001.set"], ["SA-PS-002"])

    assert reached.because["SA-PR-001"] == ("SA-PS-001.set",)
    assert reached.because["SA-AL-002"] == ("SA-PS-002",)


def test_what_is_not_there_reaches_nothing(plant: Book) -> None:
    assert touched_by(plant, ["SA-PS-009.set"], ["SA-PS-009"]) == Touched()


def test_an_oracle_that_is_told_less_sees_what_is_missing(plant: Book) -> None:
    reached = touched_by(plant, ["SA-PS-001.set"])
    set_to = plant.values["SA-PS-001.set"]
    values = {**plant.values, "SA-PS-001.set": replace(set_to, si=1.0, text="0 bar(g)")}
    later = replace(plant, network=replace(plant.network, values=values))

    assert unreached(plant, later, reached) == set()
    assert unreached(plant, later, Touched()) == {"SA-PS-001", "SA-PS-001.set"}
