"""How long a handbook takes that has not changed, or hardly: 2 000 blocks of twelve lines."""

import gc
import statistics
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from garboard.calc.draft import read_draft
from garboard.calc.engine import engine
from garboard.calc.network import Network, evaluate
from garboard.calc.sheet import Fence
from garboard.calc.store import Store
from garboard.errors import Where
from garboard.reading.store_folder import StoreFolder

__all__ = ["keeping"]

BLOCKS = 2000
CHAIN = 20
"""Blocks that rest on each other in a row."""
ROUNDS = 3
BLOCK = """\
p1 = 30 bar(g){tolerance}  # full
p2 = 12 bar(g){tolerance}  # lowest
V = {litres} L  # both receivers
T = 298.15 K(a)  # engine room
R = 287.05 J/(kg.K)  # air
m1 = absolute(p1) * V / (R * T) in kg  # air when full
m2 = absolute(p2) * V / (R * T) in kg  # air at the lowest
m = m1 - m2 {before} # usable, with what the block before leaves
each = 1.1 kg  # one start
n = floor(m / each)  # starts
spare = min(n, 3) * each  # carried on, clipped
h = difference(p1) * V / (m * 9.80665 m/s^2) in m  # work as a height
"""


def fences(tolerance: str) -> list[Fence]:
    """The blocks, twenty in a row, each row resting on a receiver of its own size."""
    made = []
    for at in range(BLOCKS):
        before = f"+ block-{at - 1}.spare" if at % CHAIN else ""
        text = BLOCK.format(tolerance=tolerance, litres=500 + at, before=before)
        where = Where(f"page-{at // CHAIN}.md", 10 + 20 * (at % CHAIN))
        made.append(Fence(f"block-{at}", "", tuple(text.splitlines()), where, "bench"))
    return made


def taken(run: Callable[[], Network]) -> tuple[float, int]:
    """Processor seconds of one build, and how many blocks were worked out; what it made is let go again."""
    read_draft.cache_clear()  # a cold build finds no fence read
    gc.collect()
    start = time.process_time()
    found = run()
    seconds = time.process_time() - start
    assert not found.diagnostics, found.diagnostics[0]
    return seconds, len(found.evaluated)


def kept_build(folder: Path, blocks: list[Fence], *, sheets: bool) -> Network:
    """A build as a command makes it: the store opened, used and, if it changed, written."""
    place = StoreFolder(folder, engine())
    store = Store.read(place.read("values.json") or "")
    found = evaluate(blocks, {}, {}, store=store)
    if sheets:
        assert len(list(found.sheets.values())) == BLOCKS
    if store.changed:
        place.write("values.json", store.write())
    return found


def measure(tolerance: str) -> dict[str, tuple[float, int]]:
    """Each build several times in turn, in processor seconds, so that others on the machine count little."""
    blocks = fences(tolerance)
    times: dict[str, list[tuple[float, int]]] = {}
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        kept_build(folder, blocks, sheets=False)
        for turn in range(ROUNDS):
            runs = {
                "cold": lambda: evaluate(blocks, {}, {}),
                "unchanged": lambda: kept_build(folder, blocks, sheets=False),
                "unchanged, every sheet opened": lambda: kept_build(folder, blocks, sheets=True),
            }
            for what, run in runs.items():
                times.setdefault(what, []).append(taken(run))
            first = blocks[0]
            text = first.lines[2].replace(first.lines[2][4:7], str(501 + turn))
            blocks[0] = replace(first, lines=(*first.lines[:2], text, *first.lines[3:]))
            edited = taken(lambda: kept_build(folder, blocks, sheets=False))
            times.setdefault("one edited input", []).append(edited)
    return {
        what: (statistics.median(each[0] for each in all_of), all_of[-1][1])
        for what, all_of in times.items()
    }


def keeping() -> None:
    """Builds from what was kept against cold ones."""
    plain, uncertain = measure(""), measure(" +/- 0.5 bar")
    print(
        "\n| 2 000 blocks of twelve lines / cold build | blocks worked out | ratio | with tolerances |"
    )
    print("|---|---|---|---|")
    for what, (seconds, count) in plain.items():
        if what != "cold":
            other, other_count = uncertain[what]
            counts = f"{count}" if count == other_count else f"{count}, {other_count}"
            first, second = seconds / plain["cold"][0], other / uncertain["cold"][0]
            print(f"| {what} | {counts} | {first:.3f} | {second:.3f} |")


if __name__ == "__main__":
    keeping()
