"""What a reader waits for on a slow phone: the first answer of Find, a page, the handbook in one file."""

import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from playwright.sync_api import Page, ViewportSize

from mkdocs_garboard.search import INDEX, index_script
from tests.demo_site import HOUSE
from tests.mkdocs_garboard.browser import chromium
from tests.mkdocs_garboard.many_records import many_entries, records_in

SLOWER = 4
"""So many times slower than this machine."""
PHONE: ViewportSize = {"width": 360, "height": 640}
QUESTIONS = ("sa-rv-001", "won't turn over", "30 bar", "relief valve", "reciever 1", "nothing happens when I pull the lever")  # fmt: skip
WATCH = """() => {
    const box = document.querySelector('.find.whole input'), list = document.querySelector('.find.whole .found');
    window.took = [];
    let pressed = 0;
    box.addEventListener('input', () => { pressed = performance.now(); }, true);
    new MutationObserver(() => {
        if (pressed && list.childElementCount) { window.took.push(performance.now() - pressed); pressed = 0; }
    }).observe(list, {childList: true});
}"""


def slow_page() -> Page:
    """A page of a browser that is four times slower than this machine."""
    page = chromium().new_context(offline=True, viewport=PHONE).new_page()
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    return page


def reading() -> None:
    """Print the table of what a reader waits for."""
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder) / "site"
        subprocess.run(
            [sys.executable, "-m", "mkdocs", "build", "-q", "-d", str(site)],
            cwd=HOUSE, check=True, capture_output=True,
        )  # fmt: skip
        print("\n| processor slowed four times | figure | asked |\n|---|---|---|")
        _finding(site, Path(folder) / "find")
        _opening(site)
        _one_file(site)


def _finding(site: Path, to: Path) -> None:
    shutil.copytree(site / "assets", to / "assets")
    shutil.copy(site / "find.html", to)
    entries = many_entries(500)
    text = index_script(entries)
    (to / INDEX).write_text(text, "utf-8")
    page = slow_page()
    page.goto((to / "find.html").as_uri())
    page.wait_for_function("() => window.garboardIndex !== undefined")
    page.evaluate(WATCH)
    for question in QUESTIONS:
        page.fill(".find.whole input", "")
        page.keyboard.type(question, delay=20)
        page.wait_for_timeout(100)
    took = sorted(page.evaluate("() => window.took"))
    parts = sum(entry.kind == "part" for entry in entries)
    things = records_in(entries) + parts
    kilo = len(text.encode()) / things / 1000
    print(f"| list to find things, kB a record or part, {things} of them | {kilo:.2f} | 1 |")
    print(
        f"| first answer, ms, {len(took)} keys: middle / worst | {took[len(took) // 2]:.0f} / {took[-1]:.0f} | 100 |"
    )


def _opening(site: Path) -> None:
    pages = sorted(site.glob("id/*.html"), key=lambda one: one.stat().st_size)
    taken = [_seconds(slow_page(), one.as_uri(), "main h1") for one in pages[-3:]]
    print(
        f"| a page, the three largest of records and parts, seconds | {statistics.median(taken):.1f} | 2 |"
    )


def _one_file(site: Path) -> None:
    file = next(site.glob("*-handbook.html"))
    front = _seconds(slow_page(), file.as_uri(), "h1:visible")
    way = f"{file.as_uri()}#id/SA-PR-002"
    deep = _seconds(slow_page(), way, "article[id='id/SA-PR-002'] h1:visible")
    print(f"| handbook in one file, MB | {file.stat().st_size / 1e6:.1f} | |")
    print(f"| its first page / a page by its address, seconds | {front:.1f} / {deep:.1f} | 5 |")


def _seconds(page: Page, address: str, shown: str) -> float:
    start = time.perf_counter()
    page.goto(address, wait_until="commit")
    page.wait_for_selector(shown)
    taken = time.perf_counter() - start
    page.context.close()
    return taken
