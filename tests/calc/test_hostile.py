"""Text that means harm: it ends in diagnostics, never in a traceback, and never takes long."""

import random
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from garboard.calc.network import Network, evaluate
from garboard.calc.sheet import Fence
from garboard.errors import Where
from tests.calc.desk import fence

SECONDS = 20.0
SEEDS = [
    "x = __import__('os').system('id')",
    "x = ().__class__.__bases__[0].__subclasses__()",
    "x = eval('1')",
    "x = exec('1')",
    "x = open('/etc/passwd')",
    "x = a.__class__",
    "x = lambda: 1",
    "x = [i for i in range(9)]",
    "x = {1: 2}",
    "x = f'{1}'",
    "x = 9**9**9**9",
    "x = 9 ^ (9 ^ (9 ^ 9))",
    "x = 1e308 * 10",
    "x = 10^400",
    "x = 1 / 0",
    "x = 0 / 0",
    "x = (-1)^0.5",
    "x = log(0)",
    "x = sqrt(-1)",
    "x = exp(999)",
    "x = tan(90 deg)",
    "x = x",
    "x = desk.x",
    "x = desk.x.x",
    "x = site.site",
    "x = site.",
    "x = .site",
    "x = a..b",
    "x = a.b.c.d.e.f",
    "x = SA-RV-001",
    "x = SA-RV-001.set.set",
    "x = -",
    "x = +/-",
    "x = 1 +/- ",
    "x = 1 +/- 1 +/- 1",
    "x = 1 +/- -1",
    "x = 1 +/- 1e12",
    "x = 1 m +/- 1 %/K",
    "x = 1 bar(g) +/- 200 %",
    "require",
    "require require",
    "require x",
    "require 1",
    "require 1 < 2 < 3",
    "require 1 bar(g) < 1 bar(a)",
    "in = 1",
    "x in m",
    "x = 1 in",
    "x = 1 m in bar(g)",
    "x = 1 in in in",
    "x = 1 if 1 else 1",
    "x = if",
    "x = 1 if 1 < 2",
    "x = else",
    "x = min()",
    "x = min(,)",
    "x = min(1,)",
    "x = interpolate(1)",
    "x = interpolate(1, 1, 1, 1, 1)",
    "x = interpolate(1, 2, 3, 4, 5, 6)",
    "x = free_air()",
    "x = free_air(1 m3, 1 bar(a), 0 K(a))",
    "x = absolute()",
    "x = absolute(absolute(1 bar(g)))",
    "x = ((((((((",
    "x = ))))))))",
    "x = [[[[[[",
    "x = ,,,,",
    "x = ====",
    "====",
    "x = 1 1 1 1",
    "x = 1.1.1",
    "x = 1e",
    "x = 1e+",
    "x = 1e99999",
    "x = 0x10",
    "x = 1_000",
    "x = 1,2,3",
    "x = .",
    "x = %",
    "x = 5 %%",
    "x = 5 m^^2",
    "x = 5 m^",
    "x = 5 m^99999999999",
    "x = 5 (((m)))",
    "x = 5 m/",
    "x = 5 /m",
    "x = 5 m/m/m",
    "x = 5 bar()",
    "x = 5 bar(((g)))",
    "x = 5 m²³⁻",
    "x = 5 m⁻",
    "# comment",
    "#",
    "x = 1 # [",
    "x = 1 # ]",
    "x = 1 # []",
    "x = 1 # [,,,]",
    "x = 1 # [[[[]]]]",
    "x = 1 # [" + "a" * 300 + "]",
    "\x00",
    "\u202ex = 1",
    "x = 1\u2028y = 2",
    "\ufeffx = 1",
    "\ud800",
    "x = \U0001f600",
    "<script>alert(1)</script> = 1",
    "x = <script>",
    "x = 1 # <script>alert(1)</script>",
    "{{ x }}",
    "{% x %}",
    "x = `id`",
    "x = $(id)",
    "x = \\",
    "x = 1\\",
    "import os",
    "def f(): pass",
    "class X: pass",
    "x: int = 1",
    "x += 1",
    "x := 1",
    "x, y = 1, 2",
    "x = y = 1",
    "x = not 1",
    "x = 1 and 2",
    "x = 1 @ 2",
    "x = 1 // 2",
    "x = 1 % 2",
    "x = ~1",
    "x = 1 << 99",
    "x = *a",
    "x = **a",
    "x = a if b < c else " * 20,
    "x = " + "(" * 200,
    "x = " + "-" * 300,
    "x = " + "- " * 150 + "1",
    "x = " + "1+" * 190,
    "x = " + "1^" * 190 + "1",
    "x = " + "a.b-" * 90,
    "x = " + "sqrt(" * 60,
    "x = " + "9" * 390,
    "x = " + "1e9 * " * 60 + "1",
    "x = 1 " + "m." * 190,
    "x" * 400 + " = 1",
    "=" * 400,
    " " * 399 + "x",
    "\t" * 399,
    "require " * 49,
]  # fmt: skip
WORDS = (
    "x y p V = + - * / ^ ( ) , [ ] < <= > >= if else in require sqrt min max floor absolute gauge "
    "free_air interpolate 1 2.5 1e3 bar(g) bar m3(n) degC K(a) % # . ' desk.x site.t SA-RV-001.set "
    "+/- \u00b1 == ** 30bar 3,5 \u2212 \u0430 pi"
)
PIECES = WORDS.split()


def run(lines: list[str]) -> tuple[Network, float]:
    start = time.perf_counter()
    found = evaluate([Fence("desk", "", tuple(lines), Where("a.md", 10), "x")], {}, {})
    return found, time.perf_counter() - start


def garbled(number: int) -> list[str]:
    """A block of a few lines, put together by chance from pieces of the language."""
    dice = random.Random(number)  # noqa: S311 - a seed for each case
    lines = []
    for _ in range(dice.randint(1, 6)):
        start = dice.choice(["x = ", "y = ", "p = ", "require ", ""])
        glue = dice.choice(["", " ", " "])
        lines.append(start + glue.join(dice.choices(PIECES, k=dice.randint(1, 12))))
    return lines


@pytest.mark.parametrize("line", SEEDS, ids=range(len(SEEDS)))
def test_a_hostile_line_ends_in_diagnostics_at_its_line(line: str) -> None:
    found, seconds = run(["a = 1", line, "z = 2"])

    assert seconds < SECONDS
    assert found.values["desk.z"].text == "2"
    for fault in found.diagnostics:
        assert fault.where.line == 11
        assert fault.text
        assert fault.help
        assert fault.code


@pytest.mark.parametrize("number", range(200))
def test_a_garbled_block_ends_in_diagnostics(number: int) -> None:
    found, seconds = run(garbled(number))

    assert seconds < SECONDS
    for value in found.values.values():
        assert (value.si is None) == (value.fault is not None)


@settings(max_examples=300)
@given(text=st.text(max_size=120))
def test_any_text_at_all_ends_in_diagnostics(text: str) -> None:
    run(text.split("\n"))


@settings(max_examples=300)
@given(pieces=st.lists(st.sampled_from(PIECES), max_size=40), glue=st.sampled_from(["", " "]))
def test_any_row_of_words_ends_in_diagnostics(pieces: list[str], glue: str) -> None:
    run(["x = 1 bar(g) +/- 0.1 bar", "y = " + glue.join(pieces)])


@pytest.mark.parametrize(
    "lines",
    [
        [f"x{n} = x{(n + 1) % 120}" for n in range(120)],
        [f"x{n} = " + " + ".join(f"x{m}" for m in range(120) if m != n)[:380] for n in range(120)],
        [f"x{n} = x{n + 1} * x{n + 1}" for n in range(119)],
        ["x0 = 1e12", *(f"x{n + 1} = x{n} * x{n}" for n in range(118))],
        [f"x{n} = 1 +/- 1" for n in range(119)] + ["s = x0 + x118"],
        ["x = 1"] * 5000,
        ["y" * 10_000],
        ["", "", ""] * 4000,
    ],
    ids=range(8),
)
def test_a_hostile_block_takes_no_long_time(lines: list[str]) -> None:
    _, seconds = run(lines)

    assert seconds < 2 * SECONDS


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
