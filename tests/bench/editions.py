"""What comparing editions costs: two demo books held together, and a build that carries two editions."""

import gc
import shutil
import tempfile
import time
from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path

from garboard.book import Book
from garboard.calc.draft import read_draft
from garboard.changes.compare import compare
from garboard.changes.kept_comparisons import BOOKS, HELD
from garboard.handbook import read, read_book
from garboard.methods import METHODS
from tests.demo_site import DEMO, replace_in
from tests.golden_case import freeze_folder

__all__ = ["editions"]

ROUNDS = 8
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


def laid_out(root: Path) -> tuple[Path, Path, Book]:
    """The demo twice with the same edits, bare and with two editions; and the book of the second."""
    bare, issued = root / "bare", root / "issued"
    for folder in (bare, issued):
        shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns(".garboard", "editions"))
    freeze_folder(issued, date(2031, 8, 1))
    for folder in (bare, issued):
        replace_in(folder / SIZING, *EDITS[0])
    second = read_book(issued)
    freeze_folder(issued, date(2031, 9, 1))
    for folder in (bare, issued):
        replace_in(folder / SIZING, *EDITS[1])
        read(folder)
    return bare, issued, second


def pair(folders: tuple[Path, Path], *, edited: bool) -> float:
    """What a read with two editions costs in reads without, at the least disturbed of all rounds."""
    times: dict[Path, list[float]] = {folder: [] for folder in folders}
    for turn in range(ROUNDS):
        for folder in folders if turn % 2 else folders[::-1]:
            if edited:
                page = folder / "index.md"
                page.write_text(f"{page.read_text('utf-8')}\nEdit {turn}.\n", "utf-8")
            times[folder].append(seconds(partial(read, folder)))
    return min(times[folders[1]]) / min(times[folders[0]])


def editions() -> None:
    """Print what it costs; both sides of a ratio in turn, so that others on the machine count little."""
    with tempfile.TemporaryDirectory() as name:
        bare, issued, old = laid_out(Path(name))
        new = read_book(issued)
        found = compare(old, new, METHODS)
        compared = min(seconds(lambda: compare(old, new, METHODS)) for _ in range(ROUNDS))
        unchanged = pair((bare, issued), edited=False)
        edited = pair((bare, issued), edited=True)
        whole = min(seconds(lambda: cold(bare)) for _ in range(3))
    told = f"{len(found.numbers)} numbers, {len(found.inputs)} changed input"
    print("\n| editions of the demo | ratio | asked |\n|---|---|---|")
    print(f"| two books compared ({told}) / one cold read | {compared / whole:.2f} | |")
    print(f"| unchanged, with two editions / unchanged, without | {unchanged:.2f} | 1.15 or less |")
    print(f"| one edited page, with two editions / the same, without | {edited:.2f} | |")


if __name__ == "__main__":
    editions()
