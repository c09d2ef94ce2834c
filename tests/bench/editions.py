"""What comparing editions costs: two demo books held together, and a build that carries two editions."""

import gc
import shutil
import statistics
import tempfile
import time
from collections.abc import Callable
from datetime import date
from pathlib import Path

from garboard.calc.draft import read_draft
from garboard.changes.compare import compare
from garboard.changes.kept_comparisons import BOOKS, HELD
from garboard.handbook import read, read_book
from garboard.methods import METHODS
from tests.demo_site import DEMO, replace_in
from tests.golden_case import freeze_folder

__all__ = ["editions"]

ROUNDS = 7
SIZING = "systems/starting-air/sa-cl-001-starts-in-one-charge.md"
EDITS = (("p_max = 30 bar(g)", "p_max = 29 bar(g)"), ("p_max = 29 bar(g)", "p_max = 28 bar(g)"))
"""Of one number that many others rest on, before and after the second edition."""


def seconds(run: Callable[[], object]) -> float:
    """Processor seconds of one run in which nothing was compared or read before."""
    HELD.clear()
    BOOKS.clear()
    gc.collect()
    start = time.process_time()
    run()
    return time.process_time() - start


def cold(folder: Path) -> object:
    """A book read with nothing kept."""
    shutil.rmtree(folder / ".garboard", ignore_errors=True)
    read_draft.cache_clear()
    return read_book(folder)


def editions() -> None:
    """Print what it costs; both sides of a ratio in turn, so that others on the machine count little."""
    with tempfile.TemporaryDirectory() as name:
        bare, issued = Path(name) / "bare", Path(name) / "issued"
        for folder in (bare, issued):
            shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns(".garboard", "editions"))
        freeze_folder(issued, date(2031, 8, 1))
        for edit, on in zip(EDITS, (date(2031, 9, 1), None), strict=True):
            for folder in (bare, issued):
                replace_in(folder / SIZING, *edit)
            if on:
                old = read_book(issued)
                freeze_folder(issued, on)
        new = read_book(issued)
        found = compare(old, new, METHODS)
        times: dict[str, list[float]] = {}
        for folder in (bare, issued):
            read(folder)
        for _ in range(ROUNDS):
            times.setdefault("compared", []).append(seconds(lambda: compare(old, new, METHODS)))
            times.setdefault("without", []).append(seconds(lambda: read(bare)))
            times.setdefault("with", []).append(seconds(lambda: read(issued)))
        for turn in range(ROUNDS):
            for what, folder in (("edited", bare), ("edited, with", issued)):
                page = folder / "index.md"
                page.write_text(f"{page.read_text('utf-8')}\nEdit {turn}.\n", "utf-8")
                times.setdefault(what, []).append(seconds(lambda at=folder: read(at)))  # type: ignore[misc]
        for _ in range(3):
            times.setdefault("cold", []).append(seconds(lambda: cold(bare)))
    middle = {what: statistics.median(each) for what, each in times.items()}
    print("\n| editions of the demo | ratio | asked |\n|---|---|---|")
    told = f"{len(found.numbers)} numbers, {len(found.inputs)} changed input"
    print(
        f"| two books compared ({told}) / one cold read | {middle['compared'] / middle['cold']:.2f} | |"
    )
    ratio = middle["with"] / middle["without"]
    print(f"| unchanged, with two editions / unchanged, without | {ratio:.2f} | 1.15 or less |")
    ratio = middle["edited, with"] / middle["edited"]
    print(f"| one edited page, with two editions / the same, without | {ratio:.2f} | |")


if __name__ == "__main__":
    editions()
