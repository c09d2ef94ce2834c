"""What reading three hundred records costs, what judging reviews adds, and what a hostile text costs to search."""

import re
import shutil
import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from types import ModuleType
from typing import Any
from unittest.mock import patch

import yaml

import garboard.book as book_module
import garboard.views.site as site_module
from garboard.handbook import read
from garboard.reading.folder import read_folder
from tests.demo_site import DEMO
from tests.reading.conftest import HANDBOOK
from tests.reading.test_references import HOSTILE, find

__all__ = ["records"]

EXAMPLES = Path(__file__).parent.parent / "reading" / "examples"
COUNT = 306
ROUNDS = 5


def seconds(work: Callable[[], object]) -> float:
    """Middle of five runs, in seconds of the processor."""
    taken = []
    for _ in range(ROUNDS):
        start = time.process_time()
        work()
        taken.append(time.process_time() - start)
    return statistics.median(taken)


def records() -> None:
    """Print the table."""
    print("\n| records | ratio |\n|---|---|")
    with tempfile.TemporaryDirectory() as name:
        folder = many_records(Path(name))
        texts = [path.read_text("utf-8") for path in folder.glob("log/*/*.md")]
        ours = seconds(lambda: read_folder(folder))
        bare = seconds(lambda: [yaml.load(head(text), yaml.CSafeLoader) for text in texts])
    print(f"| {COUNT} records read and checked / PyYAML's C reader on their heads alone | {ours / bare:.1f} |")  # fmt: skip
    print(f"| reviews and the state of every page / a cold read of the demo | {reviews():.3f} |")
    worst, piece = max((search_of(piece * times), piece) for piece, times in HOSTILE)
    print(f"| searched for references: the worst hostile text ({piece!r}) / prose of that length | {worst:.1f} |")  # fmt: skip


def many_records(folder: Path) -> Path:
    """A folder of records: the examples of the tests, again and again under other numbers."""
    examples = [(path.stem, path.read_text("utf-8")) for path in sorted(EXAMPLES.glob("*.md"))]
    (folder / "log" / "2031").mkdir(parents=True)
    (folder / "systems" / "starting-air").mkdir(parents=True)
    (folder / "handbook.yml").write_text(HANDBOOK, "utf-8")
    shutil.copy(EXAMPLES / "system.yml", folder / "systems" / "starting-air")
    for number in range(COUNT):
        ident, text = examples[number % len(examples)]
        named = text.replace(f"id: {ident}", f"id: {ident[:6]}{number:03}")
        (folder / "log" / "2031" / f"{number:03}.md").write_text(named, "utf-8")
    return folder


def head(text: str) -> str:
    """The fields of a record, between its two rows of dashes."""
    return re.split(r"^---$", text, maxsplit=2, flags=re.MULTILINE)[1]


def reviews() -> float:
    """How much of a cold read goes into weighing signatures and judging pages."""
    spent = 0.0

    def timed(module: ModuleType, name: str) -> Any:
        work = getattr(module, name)

        def run(*args: Any) -> Any:
            nonlocal spent
            start = time.process_time()
            try:
                return work(*args)
            finally:
                spent += time.process_time() - start

        return patch.object(module, name, run)

    with (
        tempfile.TemporaryDirectory() as name,
        timed(book_module, "weigh"),
        timed(site_module, "parts_of"),
        timed(site_module, "page_state"),
    ):
        folder = Path(name) / "content"
        shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns(".garboard"))
        start = time.process_time()
        read(folder)
        whole = time.process_time() - start
    return spent / whole


def search_of(hostile: str) -> float:
    """What a text costs to search, in searches of prose that is as long."""
    sentence = "The air that is left in the line is let out before the cover is opened. "
    prose = (sentence * (len(hostile) // len(sentence) + 1))[: len(hostile)]
    return seconds(lambda: find(hostile)) / seconds(lambda: find(prose))
