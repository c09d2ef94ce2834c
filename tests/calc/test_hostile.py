"""Text that means harm: it ends in diagnostics, never in a traceback."""

import random
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from garboard.calc.network import Network, evaluate
from garboard.calc.sheet import Fence
from garboard.calc.value import Verdict
from garboard.errors import Where
from garboard.methods import METHODS
from tests.calc.desk import fence
from tests.calc.hostile_blocks import HOSTILE_BLOCKS
from tests.calc.hostile_lines import HOSTILE_LINES
from tests.calc.watch import Watch

WORDS = (
    "x y p V = + - * / ^ ( ) , [ ] < <= > >= if else in require sqrt min max floor absolute gauge "
    "free_air interpolate 1 2.5 1e3 bar(g) bar m3(n) degC K(a) % # . ' desk.x site.t SA-RV-001.set "
    "+/- \u00b1 == ** 30bar 3,5 \u2212 \u0430 pi pressure_datum( p_g = guard_opening( table = both "
    "distance = shape = square unit_conversion( bilge_pipe_bore( L = B = m m3 K(d) +- _ __class__ \\"
)
PIECES = WORDS.split()
WAYS = ("x = ", "y = ", "p = ", "require ", "", "x = 1 bar(g) +/- 0.1 bar\ny = ")


def run(lines: list[str]) -> Network:
    return evaluate([Fence("desk", "", tuple(lines), Where("a.md", 10), "x")], {}, METHODS)


def garbled(dice: random.Random) -> list[str]:
    """A fence of a few lines, put together by chance: pieces of the language, or any signs at all."""
    lines: list[str] = []
    for _ in range(dice.randint(1, 6)):
        glue = dice.choice(["", " ", " "])
        body = glue.join(dice.choices(PIECES, k=dice.randint(1, 24)))
        if dice.random() < 0.2:
            planes = (dice.randrange(0x250), dice.randrange(0x110000))
            signs = "".join(chr(dice.choice(planes)) for _ in range(dice.randint(1, 30)))
            at = dice.randrange(len(body) + 1)
            body = body[:at] + signs + body[at:]
        lines += (dice.choice(WAYS) + body).split("\n")
    return lines


LINES = [line for lines in HOSTILE_LINES.values() for line in lines]


@pytest.fixture(scope="module")
def watch() -> Watch:
    """Notes whatever is run, opened or loaded, once everything that is ever loaded is loaded."""
    run(["x = 1 bar(g) +/- 0.1 bar", "y = gauge(absolute(x)) in psi(g)", "require y > 0 bar(g)"])
    return Watch()


def test_there_are_hundreds_of_hostile_lines_and_none_twice() -> None:
    assert len(LINES) >= 500
    assert len(set(LINES)) == len(LINES)


@pytest.mark.parametrize("line", LINES, ids=range(len(LINES)))
def test_a_hostile_line_gives_no_number_and_a_diagnostic_at_its_line(
    line: str, watch: Watch
) -> None:
    with watch:
        found = run(["a = 2", line, "z = a + 1"])

    assert watch.seen == []
    assert found.values["desk.z"].text == "3"
    named = [value for address, value in found.values.items() if address.startswith("desk.x")]
    assert all(value.si is None for value in named)
    assert all(one.verdict is Verdict.UNKNOWN for one in found.requirements)
    assert any(fault.where.line == 11 for fault in found.diagnostics)
    for fault in found.diagnostics:
        assert fault.where.line == 11
        assert fault.text
        assert fault.help
        assert fault.code


@pytest.mark.parametrize("name", HOSTILE_BLOCKS)
def test_a_hostile_block_gives_no_number_where_it_lies(name: str, watch: Watch) -> None:
    lines, broken = HOSTILE_BLOCKS[name]
    with watch:
        found = run(lines)

    assert watch.seen == []
    assert found.diagnostics
    for each in broken:
        value = found.values.get(f"desk.{each}")
        assert value is None or value.si is None, each


def test_the_watch_sees_what_is_run_opened_or_loaded(watch: Watch) -> None:
    with watch:
        exec("1")  # noqa: S102 - the very thing
        Path(__file__).read_text("utf-8")

    assert {"exec", "open"} <= set(watch.seen)


@pytest.mark.parametrize("seed", range(20))
def test_garbled_fences_end_in_diagnostics(seed: int, watch: Watch) -> None:
    dice = random.Random(seed)  # noqa: S311 - the same cases at every run
    for _ in range(200):
        lines = garbled(dice)
        with watch:
            found = run(lines)

        assert watch.seen == [], lines
        for value in found.values.values():
            assert (value.si is None) == (value.fault is not None), lines


@settings(max_examples=300)
@given(text=st.text(max_size=120))
def test_any_text_at_all_ends_in_diagnostics(text: str) -> None:
    run(text.split("\n"))


@settings(max_examples=300)
@given(pieces=st.lists(st.sampled_from(PIECES), max_size=40), glue=st.sampled_from(["", " "]))
def test_any_row_of_words_ends_in_diagnostics(pieces: list[str], glue: str) -> None:
    run(["x = 1 bar(g) +/- 0.1 bar", "y = " + glue.join(pieces)])


def test_a_hostile_name_or_option_of_a_fence_is_a_diagnostic() -> None:
    for text in (
        "\x00",
        "<b>",
        "a" * 9999,
        "; digits " + "9" * 5000,
        ";;;;",
        "what-if " + "x " * 999,
    ):
        assert evaluate([fence("desk", "x = 1", options=text, path="a.md")], {}, {}).values
        assert evaluate([fence(text, "x = 1", path="a.md")], {}, {}).diagnostics
