"""The machine moves records back in print: never forwards, never in the file, always with a reason."""

import hashlib
import math
import random
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.cli import main
from garboard.handbook import read, read_book
from garboard.records.kinds import KINDS, Kind
from garboard.records.signoff import Capacity, SignOff
from garboard.records.standing import REFUSED
from garboard.records.states import LAPSED, LEAVING, Machine, Move
from garboard.review.setback import CAUSES
from garboard.review.signing import signed_by, yaml_of
from tests.demo_site import DEMO
from tests.golden_case import Case, found_in
from tests.review.every_state import Entry, every_entry, files_of

MARKS = {"plan line": "HWRS"}


def machine_moves(kind: Kind) -> Iterator[tuple[str, str]]:
    """Every pair of states between which the machine moves a record of this kind."""
    for state in kind.machine.states:
        moves = kind.machine.moves.get(state, ())
        yield from ((state, move.to) for move in moves if move.by is Capacity.MACHINE)
        if kind.machine.may_lapse(state):
            yield state, LAPSED


def steps_owed(machine: Machine, state: str, mark: str) -> float:
    """How many signatures are wanting at the least until it rests as something that came about."""
    near, waiting = {state: 0.0}, [state]
    while waiting:
        place = min(waiting, key=near.__getitem__)
        waiting.remove(place)
        if place in machine.rest and place not in REFUSED:
            return near[place]
        for move in machine.moves.get(place, ()):
            far = near[place] + (move.by not in (Capacity.AUTHOR, Capacity.MACHINE))
            if move.open_to(mark) and far < near.get(move.to, math.inf):
                near[move.to] = far
                waiting.append(move.to)
    return math.inf


def forward_moves(kind: Kind) -> list[str]:
    """Moves of the machine that spare somebody a signature, or that bring a record to rest."""
    machine = kind.machine
    return [
        f"{kind.name} {mark}: {start} -> {to}"
        for start, to in machine_moves(kind)
        for mark in MARKS.get(kind.name, "ABC")
        if steps_owed(machine, to, mark) < steps_owed(machine, start, mark)
        or to in (*machine.rest, *LEAVING)
    ]


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_no_move_of_the_machine_spares_anybody_a_signature(kind: Kind) -> None:
    assert forward_moves(kind) == []


def test_a_move_of_the_machine_that_went_forwards_would_be_seen() -> None:
    done = Machine("open", ("done",), (), (), {"open": (Move("done", Capacity.MACHINE),)})
    kind = Kind("thing", "TH", KINDS[0].record, "things", KINDS[0].place)

    class Forwards(Kind):
        machine = done

    made = Forwards(kind.name, kind.letters, kind.record, kind.plural, kind.place)

    assert forward_moves(made)[0] == "thing A: open -> done"


def test_every_move_of_the_machine_has_a_cause_and_every_cause_a_move() -> None:
    assert {to for kind in KINDS for _, to in machine_moves(kind)} == set(CAUSES)


def counted(folder: Path, entries: list[Entry]) -> Book:
    return read_book(Case("", "", "", files_of(entries), "").write(folder))


def wrong(book: Book, entries: list[Entry]) -> list[str]:
    return [
        f"{entry.key} {entry.kind.name}: {entry.state} counts as {state}, not {entry.expected}"
        for entry in entries
        if (state := book.state(book.records[entry.key])) != entry.expected
    ]


def test_every_state_of_every_kind_is_moved_back_as_described_where_all_is_against_it(
    tmp_path: Path,
) -> None:
    entries = every_entry()

    book = counted(tmp_path, entries)

    assert len(entries) > 150
    assert wrong(book, entries) == []
    assert all(setback.because for setback in book.setbacks.values())


def test_nothing_is_moved_back_where_nothing_is_against_it(tmp_path: Path) -> None:
    entries = every_entry(frozenset())

    book = counted(tmp_path, entries)

    assert wrong(book, entries) == []
    assert book.setbacks == {}


@pytest.mark.parametrize("seed", range(4))
def test_what_is_against_one_record_moves_no_other(seed: int, tmp_path: Path) -> None:
    chance = random.Random(seed)  # noqa: S311 - cases, not secrets
    broken = frozenset(place for place in range(400) if chance.random() < 0.5)
    entries = every_entry(broken)

    book = counted(tmp_path, entries)

    assert wrong(book, entries) == []
    for key, setback in book.setbacks.items():
        kind = next(one for one in KINDS if one.letters == key[3:5])
        assert (setback.written, setback.state) in machine_moves(kind)


def test_a_package_waits_for_a_decision_that_lapsed(tmp_path: Path) -> None:
    entries = [
        one for one in every_entry() if (one.kind.name, one.state) == ("decision", "approved")
    ]
    waits = f"---\nid: SA-WP-001\ntitle: Fit it\nsystem: SA\nstate: ready\nneeds: [{entries[0].key}]\n---\n"
    files = {**files_of(entries), "log/2031/2031-05-01-a.md": f"{waits}Seen.\n"}

    book = read_book(Case("", "", "", files, "").write(tmp_path))

    assert book.setbacks["SA-WP-001"].state == "defined"
    assert book.setbacks["SA-WP-001"].because == f"{entries[0].key} is lapsed"


def test_the_last_day_that_there_is_is_a_day_like_any_other(tmp_path: Path) -> None:
    lines = "".join(
        f"  - {{capacity: in charge, by: lead, on: 9999-12-31, to: {state}}}\n"
        for state in ("emergency", "checked")
    )
    change = "id: SA-CN-001\ntitle: Tap\nsystem: SA\nclass: A\ninstalled: 9999-12-31\n"
    lesson = "id: SA-LL-001\ntitle: Tap\nsystem: SA\ndrafted: 9999-12-31\n"
    files = {
        "log/2031/2031-03-09-a.md": f"---\n{change}signed:\n{lines}---\nSeen.\n",
        "log/2031/2031-03-09-b.md": f"---\n{lesson}---\nSeen.\n",
    }

    found = found_in(Case("", "", "", files, "").write(tmp_path))

    assert "dates-out-of-order" in {one.code for one in found}


def digests(folder: Path) -> dict[str, str]:
    files = (path for path in folder.rglob("*") if path.is_file() and ".garboard" not in path.parts)
    return {str(path): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


def test_the_files_stay_as_they_are_when_they_are_read_and_laid_out(tmp_path: Path) -> None:
    folder = Case("", "", "", files_of(every_entry()), "").write(tmp_path)
    before = digests(folder)

    handbook = read(folder)

    assert len(handbook.book.setbacks) > 30
    assert digests(folder) == before


def test_the_demo_stays_as_it_is_when_it_is_read() -> None:
    before = digests(DEMO)

    book = read_book(DEMO)

    assert book.setbacks["BG-TM-001"].because == "ran out 2031-09-01"
    assert digests(DEMO) == before


def page_words(folder: Path, key: str) -> str:
    return repr(next(page for page in read(folder).pages if page.key == key))


FINDING = (
    "title: Switch\nsystem: SA\nclass: A\nstate: closed\nwhere: [SA-AR-001]\nactions: [SA-CA-001]"
)
SYSTEM = "status: in test\ncomponents:\n  SA-AR-001: {kind: receiver, rated: 33 bar(g)}\n"


@pytest.fixture
def reopened(tmp_path: Path) -> Path:
    """A finding of class A whose action came to nothing."""
    files = {
        "systems/starting-air/system.yml": SYSTEM,
        "log/2031/2031-03-09-a.md": f"---\nid: SA-FN-001\n{FINDING}\n---\nSeen.\n",
        "log/2031/2031-03-10-b.md": "---\nid: SA-CA-001\ntitle: Cure\nsystem: SA\n"
        "state: not effective\n---\nSeen.\n",
    }
    return Case("", "", "", files, "").write(tmp_path)


def test_a_page_says_what_a_record_counts_as_and_why(reopened: Path) -> None:
    page = page_words(reopened, "SA-FN-001")

    assert "Counts as reopened, not as closed: " in page
    assert "its action " in page
    assert "closed; counts as reopened, because its action " in page
    assert " is not effective" in page


def test_lists_and_the_state_of_pages_go_by_what_a_record_counts_as(reopened: Path) -> None:
    handbook = read(reopened)
    pages = {page.key: page for page in handbook.pages}

    assert "reopened (written: closed)" in repr(pages["starting-air/open-against-it"])
    assert "Open safety findings" in repr(pages["starting-air/open-against-it"])
    assert pages["SA-AR-001"].review.words == (
        "NOT SAFE TO RELY ON. Open safety finding SA-FN-001: Switch."
    )
    open_table = next(one for one in pages["registers/findings"].blocks if "Open" in repr(one))
    assert "SA-FN-001" in repr(open_table)


def test_an_expired_rig_still_fires_and_its_page_says_that_it_ran_out(tmp_path: Path) -> None:
    rig = "---\nid: SA-TM-001\ntitle: Hose\nsystem: SA\nstate: fitted\nuntil: 2031-09-01\n---\nSeen.\n"
    folder = Case("", "", "", {"log/2031/2031-03-09-a.md": rig}, "").write(tmp_path)

    handbook = read(folder)

    assert "Counts as expired, not as fitted: " in page_words(folder, "SA-TM-001")
    assert [one.text for one in handbook.diagnostics if one.code == "temporary-overdue"] == [
        "SA-TM-001 ran out 2031-09-01"
    ]


LESSON = """\
---
id: SA-LL-001
title: Sense at the vessel
system: SA
author: reviewer-1
drafted: 2031-04-28
state: validated
event: []
learned: a tap on a header watches the header
signed:
  - {{capacity: checker, by: lead, on: 2031-05-01, to: validated}}
{more}---
As seen.
"""


@pytest.mark.parametrize(("more", "status"), [("", 2), ("into: [relief-above-rating]\n", 0)])
def test_a_lesson_is_signed_as_built_in_only_where_it_names_its_place(
    tmp_path: Path, more: str, status: int, capsys: pytest.CaptureFixture[str]
) -> None:
    files = {"log/2031/2031-04-28-a.md": LESSON.format(more=more)}
    folder = Case("", "", "", files, "").write(tmp_path)
    words = ["sign", "SA-LL-001", "--as", "doer", "--by", "volunteer-1", "--to", "incorporated"]

    done = main([*words, "--folder", str(folder)])

    said = capsys.readouterr()
    assert (done, "" if status else said.err) == (status, "")
    assert ("names nothing that it was built into" in said.err) == (status == 2)


CONCEDED = """\
---
id: SA-CO-001
title: Hose past its date
system: SA
class: B
state: granted
departs_from: hose-out-of-date
why: hose on order
conditions: {conditions}
where: [SA-HS-001]
until: {until}
signed:
  - {line}
---
Seen.
"""
GRANTED = SignOff(
    capacity=Capacity.APPROVER,
    by="reviewer-1",
    on=date(2031, 5, 1),
    to="granted",
    digest="0123456789abcdef",
)


def hoses(folder: Path, line: SignOff, until: str, conditions: str) -> list[str]:
    """What is said of a hose past its date, where a concession stands beside it."""
    conceded = CONCEDED.format(line=yaml_of(line), until=until, conditions=conditions)
    files = {
        "systems/starting-air/system.yml": "status: in service\ncomponents:\n"
        "  SA-HS-001: {kind: hose, rated: 30 bar(g), fitted: 2025-01-01, expires: 2031-01-01}\n",
        "log/2031/2031-05-01-hose.md": conceded,
    }
    found = found_in(Case("", "", "", files, "").write(folder))
    return [f"{one.severity} {one.text}" for one in found if one.code == "hose-out-of-date"]


@pytest.mark.parametrize(
    ("until", "conditions", "concedes"),
    [
        ("2031-10-01", "on every round", True),
        ("2031-09-30", "on every round", False),
        ("2031-10-01", "SA-HS-001.rated at least 30 bar(g)", True),
        ("2031-10-01", "SA-HS-001.rated at least 31 bar(g)", False),
    ],
)
def test_a_concession_concedes_while_its_day_and_its_conditions_hold(
    tmp_path: Path,
    until: str,
    conditions: str,
    concedes: bool,  # noqa: FBT001 - a column of the table above
) -> None:
    hoses(tmp_path, GRANTED, until, conditions)
    line = signed_by(GRANTED, read_book(tmp_path).reviews["SA-CO-001"].cover)

    found = hoses(tmp_path, line, until, conditions)

    assert [one.startswith("NOTE") and "conceded by SA-CO-001" in one for one in found] == [
        concedes
    ]


def test_a_concession_whose_approval_lapsed_concedes_nothing(tmp_path: Path) -> None:
    found = hoses(tmp_path, GRANTED, "2031-12-31", "on every round")

    assert len(found) == 1
    assert "conceded" not in found[0]
