"""What hostile text costs: fifty thousand garbled fences, and the worst fences within the limits."""

import random
import statistics
import time
from collections.abc import Iterator

from garboard.calc.draft import read_draft
from garboard.calc.network import evaluate
from garboard.calc.sheet import Fence
from garboard.errors import Where
from garboard.methods import METHODS
from tests.calc.test_hostile import garbled

__all__ = ["fuzz", "worst_fences"]

CASES = 50_000


def work(lines: list[str]) -> None:
    """Read one fence and work it out; nothing may come out of it but a network."""
    evaluate([Fence("bench", "", tuple(lines), Where("bench.md"), "bench")], {}, METHODS)


def fuzz() -> None:
    """Print what fifty thousand garbled fences did."""
    dice = random.Random(7)  # noqa: S311 - the same cases at every run
    slowest, foreign = 0.0, 0
    for _ in range(CASES):
        lines = garbled(dice)
        start = time.process_time()
        try:
            work(lines)
        except Exception as reason:  # noqa: BLE001 - counted, and shown
            foreign += 1
            print(f"foreign exception {reason!r} in {lines!r}")
        slowest = max(slowest, time.process_time() - start)
    print("\n| garbled fences | figure |\n|---|---|")
    print(f"| cases | {CASES} |\n| foreign exceptions | {foreign} |")
    print(f"| slowest, seconds of processor | {slowest:.3f} |")


def worst(limit: int = 120) -> Iterator[tuple[str, list[str]]]:
    """Fences within the limits that are meant to cost as much as can be."""
    roots = [f"r{n} = {n + 2} +/- 1" for n in range(12)]
    every = " + ".join(f"r{n}" for n in range(12))
    yield "twelve tolerances under every line", [*roots, *(f"x{n} = {every}" for n in range(100))]
    yield (
        "twelve tolerances, roots and powers",
        [
            *roots,
            *(f"x{n} = " + " + ".join(f"sqrt(r{m}) ^ 1.5" for m in range(6)) for n in range(100)),
        ],
    )
    many = [f"r{n} = {n + 2} +/- 1" for n in range(60)]
    yield (
        "sixty tolerances in a chain",
        [*many, "x0 = r0", *(f"x{n} = x{n - 1} + r{n}" for n in range(1, 59))],
    )
    yield "a chain that is not monotone", [
        *roots, "x0 = r0 * (4 - r0)", *(f"x{n} = sin(x{n - 1} + r{n % 12})" for n in range(1, 107)),
    ]  # fmt: skip
    yield (
        "a table read at every corner",
        [
            *(f"r{n} = {30 + n} mm +/- 1 mm" for n in range(12)),
            "s = " + " + ".join(f"r{n}" for n in range(12)),
            *(
                f"g{n} = guard_opening(table = both, distance = s / 6, shape = square)"
                for n in range(90)
            ),
        ],
    )
    yield (
        "interpolation at every corner",
        [
            *roots,
            "s = (" + every + ") / 12",
            *(
                f"x{n} = interpolate(s, 0, 0, "
                + ", ".join(f"{m}, {m}" for m in range(1, 10))
                + ", 99, 99)"
                for n in range(60)
            ),
        ],
    )
    yield "a hundred methods", [
        "p = 30 bar(g) +/- 1 bar", "V = 500 L +/- 5 L", "T = 25 degC +/- 5 K",
        *(f"x{n} = pressure_datum(p_g = p, V = V, T = T)" for n in range(100)),
    ]  # fmt: skip
    yield "lines of air, of uncertain air", [
        "p = 7 bar(g) +/- 0.2 bar", "Q = 0.5 m3(n)/min +/- 10 %", "d = 20 mm +/- 1 mm", "L = 30 m +/- 1 m",
        *(f"x{n} = pressure_datum(p_g = p, V_before = 1 m3, p_before = 1 bar(a), p_after = 2 bar(a))" for n in range(100)),
    ]  # fmt: skip
    yield "a hundred requirements", [*roots, *(f"require {every} >= {n}" for n in range(100))]
    yield (
        "as many terms as a fence holds",
        [f"x{n} = " + " + ".join(["2.5"] * 12) for n in range(limit)],
    )
    yield (
        "brackets as deep as they go",
        [f"x{n} = " + "(" * 20 + "1" + ")" * 20 for n in range(limit)],
    )
    yield "broken lines alone", [f"x{n} = y{n} + 1 bar" for n in range(limit)]
    yield "look-alike names, each with a nearest one", [f"ab{n} = abc{n}" for n in range(limit)]


def seconds(lines: list[str]) -> float:
    """Least processor seconds of three runs of a fence that has not been read before."""
    taken = []
    for _ in range(3):
        read_draft.cache_clear()
        start = time.process_time()
        work(lines)
        taken.append(time.process_time() - start)
    return min(taken)


def worst_fences(block: list[str]) -> None:
    """Print what the worst fences cost, in runs of a common one.

    Args:
        block: The common fence.
    """
    common = statistics.median(seconds(block) for _ in range(5))
    print("\n| worst fence within the limits | runs of the twelve-line fence |\n|---|---|")
    for name, lines in worst():
        fits = [line for line in lines if len(line) <= 400][:120]
        while sum(len(line) + 1 for line in fits) > 8000:
            fits.pop()
        print(f"| {name} ({len(fits)} lines offered) | {seconds(fits) / common:.1f} |")
