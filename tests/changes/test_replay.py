"""Each changed input alone is what a whole handbook with that one line exchanged would say."""

import copy
import random
import shutil
from pathlib import Path

import pytest

from garboard.book import Book
from garboard.calc.value import Value
from garboard.changes import replay
from garboard.changes.causes import causes_of
from garboard.changes.comparison import Sort
from garboard.changes.numbers import bits_of
from garboard.changes.replay import replayed
from garboard.handbook import read_book
from garboard.methods import METHODS
from tests.changes.pairs import FENCE, Desk, number, sums
from tests.demo_site import DEMO, replace_in
from tests.review import random_handbook
from tests.review.random_handbook import edit, random_book

SIZING = "systems/starting-air/sa-cl-001-starts-in-one-charge.md"
CALC = "systems/starting-air/sa-cl-001-starts.md"


def test_what_one_input_does_alone_and_what_both_do_together(desk: Desk) -> None:
    found = desk.edited(
        "cl-001", ("p_max = 30 bar(g)", "p_max = 28 bar(g)"), ("each = 1 m3(n)", "each = 1.1 m3(n)")
    )

    moved = number(found, "starts.n")
    assert (moved.before, moved.after) == ("8", "6")
    assert list(causes_of(found, moved)) == [
        "starts.p_max 30 bar(g) -> 28 bar(g), alone: 7 (-1)",
        "starts.each 1 m3(n) -> 1.1 m3(n), alone: 7 (-1)",
        "together: 8 -> 6",
    ]
    assert [one.text for one in found.limit("starts: n >= 6").alone] == [
        "holds at the worst corner, margin 1",
        "holds at the worst corner, margin 1",
    ]


def test_what_the_changes_only_do_together_is_said(desk: Desk) -> None:
    found = desk.edited(
        "cl-001", ("p_max = 30 bar(g)", "p_max = 24 bar(g)"), ("each = 1 m3(n)", "each = 2 m3(n)")
    )

    lines = list(causes_of(found, number(found, "starts.n")))
    assert lines[2:] == ["together: 8 -> 2", "+1 comes only from changes together"]


def test_changes_that_make_up_for_each_other_are_not_hidden(desk: Desk) -> None:
    fence = FENCE + "a = 2  # one\nb = 3  # other\nc = a + b  # sum\n"
    other = fence.replace("a = 2", "a = 1").replace("b = 3", "b = 4")

    found = desk.compared({CALC: sums(fence)}, {CALC: sums(other)})

    assert [one.address for one in found.balanced] == ["starts.c"]
    assert [one.text for one in found.balanced[0].alone] == ["4", "6"]
    assert found.balanced[0].sort is Sort.BALANCED


def test_a_line_that_names_what_the_older_book_has_not_is_not_tried_and_says_why(
    desk: Desk,
) -> None:
    found = desk.edited(
        "cl-001", ("each = 1 m3(n)", "loss = 0.2 m3(n)  # leak\neach = 1 m3(n) + loss")
    )

    tried = {one.address: one.not_tried for one in found.inputs}
    assert tried == {
        "starts.loss": "nothing in the older book uses it",
        "starts.each": "`loss` is set nowhere in this fence",
    }
    rest = number(found, "starts.n").rest
    assert rest == "-2, or what could not be tried alone,"


def test_past_the_most_that_are_tried_each_is_said_not_to_be(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(replay, "MOST_TRIED", 1)

    found = desk.edited("cl-001", ("30 bar(g)", "28 bar(g)"), ("12 bar(g)", "13 bar(g)"))

    assert [one.not_tried for one in found.inputs] == ["", replay.TOO_MANY]
    assert number(found, "starts.n").rest.endswith("or what could not be tried alone,")


def test_a_formula_line_is_exchanged_like_a_number(desk: Desk) -> None:
    found = desk.edited("cl-001", ("V = 2 * SA-AR-001.volume", "V = SA-AR-001.volume"))

    lines = list(causes_of(found, number(found, "starts.n")))
    assert lines == ["starts.V 2 * SA-AR-001.volume -> SA-AR-001.volume, alone: 4 (-4)"]


def test_a_requirement_is_an_input_too(desk: Desk) -> None:
    found = desk.edited("cl-001", ("n >= 6", "n >= 8"), ("p_max = 30 bar(g)", "p_max = 28 bar(g)"))

    limit = found.limits[0]
    assert (limit.before, limit.after, limit.stands) == ("n >= 6", "n >= 8", "fails")
    assert {found.inputs[one.input].address: one.text for one in limit.alone} == {
        "starts.p_max": "holds at the worst corner, margin 1",
        "starts": "holds at the worst corner, margin 0",
    }


def test_what_a_property_is_drawn_from_is_an_input(desk: Desk) -> None:
    system = "systems/starting-air/system.yml"
    text = (
        "status: in test\ncomponents:\n  SA-AR-001: {kind: receiver, volume: BIG}\n"
        "  SA-AR-002: {kind: receiver, volume: '250 L'}\n"
        "  SA-AR-003: {kind: receiver, volume: '300 L'}\n"
    )

    found = desk.compared(
        {system: text.replace("BIG", "SA-AR-002.volume")},
        {system: text.replace("BIG", "SA-AR-003.volume")},
    )

    assert [one.after for one in found.inputs] == ["drawn from SA-AR-003.volume"]
    assert next(causes_of(found, number(found, "starts.n"))).endswith("alone: 9 (+1)")


def test_an_input_reaches_through_any_number_of_calculations(desk: Desk) -> None:
    chain = "".join(
        f"```\n```calc next-{at}\nx = {before} + 1  # one more\n"
        for at, before in enumerate(("starts.n", "next-0.x", "next-1.x", "next-2.x"))
    )

    found = desk.compared(
        {CALC: sums(FENCE + chain)},
        {CALC: sums((FENCE + chain).replace("each = 1 m3(n)", "each = 2 m3(n)"))},
    )

    last = number(found, "next-3.x")
    assert [(one.text, one.change) for one in last.alone] == [("8", "-4")]
    assert last.rest == ""


def test_the_atmosphere_reaches_lines_that_do_not_name_it(desk: Desk) -> None:
    handbook = "vessel: Skerry Light\nsystems: {SA: starting-air}\nas_of: 2031-10-01\nsite: {atmosphere: AIR}\n"
    fence = "p = absolute(30 bar(g)) in bar(a)  # counted from nothing\n"

    found = desk.compared(
        {CALC: sums(fence), "handbook.yml": handbook.replace("AIR", '"1000 mbar(a)"')},
        {CALC: sums(fence), "handbook.yml": handbook.replace("AIR", '"900 mbar(a)"')},
    )

    assert [one.change for one in number(found, "starts.p").alone] == ["-0.1 bar"]


@pytest.mark.parametrize("seed", range(12))
def test_alone_is_what_a_whole_handbook_with_that_line_exchanged_says(
    tmp_path: Path, seed: int
) -> None:
    chance = random.Random(seed)  # noqa: S311 - the same handbooks every time
    was = random_book(chance)
    now = copy.deepcopy(was)
    for _ in range(16):
        edit(chance, now)
    before, after = was.files(), now.files()
    old, new = written(tmp_path / "old", before), written(tmp_path / "new", after)

    trials = [one for one in replayed(old, new, METHODS) if not one.not_tried]

    assert trials
    for at, trial in enumerate(trials):
        exchanged = with_one_line(before, after, trial.exchange.address, trial.exchange.before)
        whole = written(tmp_path / f"alone-{at}", exchanged)
        worked = {key: one for key, one in whole.values.items() if not one.given}
        for address, value in worked.items():
            assert facts(trial.values.get(address, old.values[address])) == facts(value), address
        known = {(one.block, one.text): one for one in old.network.requirements}
        known |= {(one.block, one.text): one for one in trial.requirements}
        for one in whole.network.requirements:
            mine = known[one.block, one.text]
            assert (mine.verdict, mine.margin, mine.left, mine.right) == (
                one.verdict,
                one.margin,
                one.left,
                one.right,
            )


DEMO_EDITS = {
    "site.atmosphere": ("handbook.yml", "1013 mbar(a)", "1000 mbar(a)"),
    "receiver-sizing.p_max": (SIZING, "p_max = 30 bar(g)", "p_max = 28 bar(g)"),
    "receiver-sizing.n": (SIZING, "floor(stored / v_start)", "floor(0.9 * stored / v_start)"),
}


def test_alone_holds_for_methods_and_ranges_of_the_demo_too(tmp_path: Path) -> None:
    old, new = demo(tmp_path / "old"), demo(tmp_path / "new", *DEMO_EDITS)

    trials = replayed(old, new, METHODS)

    assert {one.exchange.address for one in trials} == set(DEMO_EDITS)
    for trial in trials:
        whole = demo(tmp_path / trial.exchange.address, trial.exchange.address)
        worked = {key: one for key, one in whole.values.items() if not one.given}
        for address, value in worked.items():
            assert facts(trial.values.get(address, old.values[address])) == facts(value), address
        assert any(facts(value) != facts(old.values[key]) for key, value in worked.items())


def demo(folder: Path, *edits: str) -> Book:
    """The demo with some of the edits."""
    shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns(".garboard", "editions"))
    for name in edits:
        path, before, after = DEMO_EDITS[name]
        replace_in(folder / path, before, after)
    return read_book(folder)


def facts(value: Value) -> tuple[object, ...]:
    """A value with its text, to the last bit."""
    return (*bits_of(value), value.text, value.usual)


def written(folder: Path, files: dict[str, str]) -> Book:
    """A folder of these files, read."""
    for path, text in files.items():
        target = folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, "utf-8")
    return read_book(folder)


def with_one_line(
    before: dict[str, str], after: dict[str, str], address: str, was: str
) -> dict[str, str]:
    """The older files with the one line of the newer that sets an address."""
    owner, _, name = address.partition(".")
    if name == "volume":
        path, start = "systems/starting-air/system.yml", f"  {owner}: "
    else:
        key = f"SA-CL-{owner[1:]}"
        path = random_handbook.path_of(random_handbook.Entry(key, []))
        start = f"{name} =" if name else "require"
    lines = before[path].split("\n")
    mine = next(at for at, line in enumerate(lines) if line.startswith(start))
    assert was.split(" ", maxsplit=1)[0] in lines[mine]
    lines[mine] = next(line for line in after[path].split("\n") if line.startswith(start))
    return before | {path: "\n".join(lines)}
