"""The calculation engine against the units library, and against itself: ratios of one run."""

import statistics
import time
from collections.abc import Callable
from typing import Any

import numpy as np
import pint

from garboard.calc.corners import SAMPLES, Corners, Kept, first_look
from garboard.calc.draft import read_draft
from garboard.calc.fault import Span
from garboard.calc.ledger import Root
from garboard.calc.network import Network, evaluate
from garboard.calc.sheet import Fence
from garboard.errors import Where
from tests.calc.desk import workings

__all__ = ["calculation", "seconds", "tolerances"]

ROUNDS = 5

BLOCK = """\
p1 = 30 bar(g)  # full
p2 = 12 bar(g)  # lowest
V = 2 * 250 L  # both receivers
T = 298.15 K(a)  # engine room
R = 287.05 J/(kg.K)  # air
m1 = absolute(p1) * V / (R * T) in kg  # air when full
m2 = absolute(p2) * V / (R * T) in kg  # air at the lowest
m = m1 - m2  # usable
each = 1.1 kg  # one start
n = m / each  # starts
E = difference(p1) * V in kJ  # work
h = E / (m * 9.80665 m/s^2) in m  # as a height
"""
TOLERANCES = {
    "30 bar(g)": "30 bar(g) +/- 0.5 bar",
    "12 bar(g)": "12 bar(g) +/- 0.5 bar",
    "2 * 250 L": "500 L +/- 1 %",
    "298.15 K(a)": "298.15 K(a) +/- 5 K",
    "287.05 J/(kg.K)": "287.05 J/(kg.K) +/- 0.1 %",
    "1.1 kg": "1.1 kg +/- 10 %",
}
"""What makes six inputs of the same block uncertain."""
NOWHERE = Span(0, 0)


def raw_pint(units: Any, given: tuple[Any, ...] = (30.0, 12.0, 500.0, 298.15, 287.05, 1.1)) -> Any:
    """The same twelve lines as a script with the units library, on numbers or on arrays."""
    bar, litre = units.bar, units.litre
    atmosphere = 101325 * units.pascal
    p1, p2 = given[0] * bar, given[1] * bar
    volume = given[2] * litre
    warmth = given[3] * units.kelvin
    gas = given[4] * units.joule / (units.kilogram * units.kelvin)
    m1 = ((p1 + atmosphere) * volume / (gas * warmth)).to(units.kilogram)
    m2 = ((p2 + atmosphere) * volume / (gas * warmth)).to(units.kilogram)
    mass = m1 - m2
    each = given[5] * units.kilogram
    starts = (mass / each).to(units.dimensionless)
    work = (p1 * volume).to(units.kilojoule)
    height = (work / (mass * 9.80665 * units.meter / units.second**2)).to(units.meter)
    return starts, height


def seconds(run: Callable[[], object], times: int) -> float:
    """Median seconds of one run."""
    taken = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        for _ in range(times):
            run()
        taken.append((time.perf_counter() - start) / times)
    return statistics.median(taken)


def fence(text: str) -> Fence:
    """A block of the bench."""
    return Fence("bench", "", tuple(text.splitlines()), Where("bench.md"), "bench")


def uncertain() -> str:
    """The block with its six tolerances."""
    text = BLOCK
    for sure, unsure in TOLERANCES.items():
        assert sure in text, sure
        text = text.replace(sure, unsure)
    return text


def whole_run(one: Fence) -> Network:
    """Everything from the text on; the reader keeps what it has read, and is made to forget it."""
    read_draft.cache_clear()
    return evaluate([one], {}, {})


def typed_only(one: Fence) -> None:
    """Read, check types, and work out once at nominal, which comes with the types."""
    read_draft.cache_clear()
    workings([one])


def calculation() -> None:
    """One block of twelve lines against the same sum as a script with the units library."""
    units: Any = pint.UnitRegistry()
    plain, unsure = fence(BLOCK), fence(uncertain())
    network = evaluate([plain], {}, {})
    assert not network.diagnostics, network.diagnostics
    starts, height = raw_pint(units)
    ours = network.values["bench.n"].si, network.values["bench.h"].si
    theirs = starts.magnitude, height.magnitude
    assert all(abs(a / b - 1) < 1e-12 for a, b in zip(ours, theirs, strict=True)), (ours, theirs)

    script = seconds(lambda: raw_pint(units), 50)
    typed = seconds(lambda: typed_only(plain), 20)
    whole = seconds(lambda: whole_run(plain), 20)
    wide = seconds(lambda: whole_run(unsure), 20)
    again = seconds(lambda: network.recompute({"bench.p1": 2.9e6}, ["bench.n"]), 2000)
    ledger = network.ledger
    program, slots = ledger.program(ledger.formulas), list(ledger.slots)
    scalar = seconds(lambda: program.run(slots), 5000)
    print("| twelve lines, one run | ratio |\n|---|---|")
    print(f"| read, type-check, work out at nominal / raw pint script | {typed / script:.2f} |")
    print(
        f"| the same, with working shown, no tolerances / raw pint script | {whole / script:.2f} |"
    )
    print(
        f"| the same, six tolerances: worst, usual, movers / raw pint script | {wide / script:.2f} |"
    )
    print(f"| raw pint script / one scalar run of all twelve lines | {script / scalar:.0f} |")
    print(f"| raw pint script / recompute one result for a changed input | {script / again:.0f} |")


def drawn(roots: list[Root], seed: int) -> dict[int, Any]:
    """10 000 points inside the ranges, by slot."""
    source = np.random.Generator(np.random.PCG64(seed))
    return {root.slot: source.uniform(root.low, root.high, SAMPLES) for root in roots}


def tolerances() -> None:
    """The same block with six toleranced inputs, all its values worked out on arrays.

    Corners: choosing the 64 corners, the nominal point, each input alone at its ends and 32 points
    inside, and working all six uncertain values out there. Monte Carlo: the same values at 10 000
    points, drawn before or within the time as the line says. Closures are built beforehand on both
    sides; the script with the units library is handed the same arrays, drawn beforehand.
    """
    units: Any = pint.UnitRegistry()
    network = evaluate([fence(uncertain())], {}, {})
    assert not network.diagnostics, network.diagnostics
    ledger = network.ledger
    kept, roots = Kept(ledger), list(ledger.roots.values())
    mask = (1 << len(roots)) - 1
    assert len(roots) == 6
    wanted = [
        formula.reference(NOWHERE)
        for slot, formula in ledger.formulas.items()
        if ledger.upstream[slot] and formula.needs
    ]
    points = drawn(roots, 1)
    scales = (1e5, 1e5, 1e-3, 1.0, 1.0, 1.0)
    given = tuple(points[root.slot] / scale for root, scale in zip(roots, scales, strict=True))
    height = Corners(kept, mask, points).read(wanted)[-1]
    assert np.allclose(height, raw_pint(units, given)[1].magnitude, rtol=1e-12)

    corners = seconds(lambda: first_look(kept, mask, corners=True).read(wanted), 200)
    samples = seconds(lambda: Corners(kept, mask, points).read(wanted), 100)
    with_drawing = seconds(lambda: Corners(kept, mask, drawn(roots, 2)).read(wanted), 50)
    script = seconds(lambda: raw_pint(units, given), 20)
    print("\n| twelve lines, six toleranced inputs | ratio |\n|---|---|")
    print(f"| Monte Carlo of 10 000, drawn beforehand / pint on arrays | {samples / script:.2f} |")
    print(
        f"| all corners / Monte Carlo of 10 000, drawing included | {corners / with_drawing:.2f} |"
    )
    print(f"| all corners / Monte Carlo of 10 000, drawn beforehand | {corners / samples:.2f} |")
