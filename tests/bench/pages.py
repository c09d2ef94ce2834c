"""What a reader waits for on a slow phone: the first answer of Find, a page, the handbook in one file."""

import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path

from PIL import Image
from playwright.sync_api import Page, ViewportSize

from garboard.views.page import Photo
from mkdocs_garboard.search import INDEX, index_script
from tests.demo_site import HOUSE
from tests.mkdocs_garboard import sample
from tests.mkdocs_garboard.browser import chromium
from tests.mkdocs_garboard.conftest import content, make_site
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


HURRIED = {
    "alarm": "id/SA-AL-001", "procedure": "id/SA-PR-002", "quick card": "cards/K-01",
    "isolation": "isolate/SA-AR-001", "emergency": "id/BG-PR-002",
}  # fmt: skip
"""Pages of the demo that somebody opens from a code on a card or a plate, asked to be there in 3 seconds."""
UNHURRIED = {
    "layout": "starting-air/layout", "normal values": "starting-air/normal-values", "part": "id/SA-AR-001",
    "calculation": "id/BG-CL-012", "largest register": "registers/values", "method": "methods/dc_cable_current_limit",
    "what an edition changed": "editions/2-changes",
}  # fmt: skip
"""One of every other kind, the largest of the demo, asked to be there in 5 seconds."""
PHOTOS, EACH = 60, (1000, 750)
"""How many photographs a heavy handbook has; of grey noise, which packs worst, about 350 kB apiece."""


def slow_page(*, scripts: bool = True) -> Page:
    """A page of a browser that is four times slower than this machine."""
    context = chromium().new_context(offline=True, viewport=PHONE, java_script_enabled=scripts)
    page = context.new_page()
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
        _photographs(Path(folder) / "photographs")


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
    print(f"| handbook in one file, MB | {file.stat().st_size / 1e6:.1f} | |")
    print(f"| its first page, seconds | {_leaf(file, 'index'):.1f} | 5 |")
    for kinds, asked in ((HURRIED, 3), (UNHURRIED, 5)):
        taken = {kind: _leaf(file, ident) for kind, ident in kinds.items()}
        said = ", ".join(f"{kind} {seconds:.1f}" for kind, seconds in taken.items())
        print(
            f"| a page of it opened by its address, seconds: {said} | {max(taken.values()):.1f} | {asked} |"
        )
    off = _leaf(file, "id/SA-PR-002", scripts=False)
    print(f"| the same without scripts, a procedure, seconds | {off:.1f} | |")


def _photographs(folder: Path) -> None:
    """Many photographs in one file, twenty to a page and each on three pages."""
    docs = content(folder)
    photos = [Photo(f"photos/noise-{number}.jpg", f"noise {number}") for number in range(PHOTOS)]
    for photo in photos:
        Image.effect_noise(EACH, 40).convert("RGB").save(docs / photo.path, quality=95)
    (folder / "mkdocs.yml").touch()
    book = sample.handbook()
    twenties = [photos[start : start + 20] for start in range(0, PHOTOS, 20)] * 3
    holders = [page for page in book.pages if page.path.startswith("id/")][: len(twenties)]
    shown = {page.path: own for page, own in zip(holders, twenties, strict=True)}
    pages = [replace(one, blocks=(*one.blocks, *shown.get(one.path, ()))) for one in book.pages]
    site = make_site(folder, replace(book, pages=tuple(pages))).folder

    file = next(site.glob("*-handbook.html"))
    alone = sum(one.stat().st_size for one in (site / "photos").glob("noise-*"))
    size = f"{alone / 1e6:.1f} / {file.stat().st_size / 1e6:.1f}"
    print(
        f"| {PHOTOS} photographs, each on three pages, MB: they alone / the one file | {size} | |"
    )
    words = _leaf(file, holders[-1].path)
    print(f"| the words of one of those pages by its address, seconds | {words:.1f} | 5 |")


def _leaf(file: Path, ident: str, *, scripts: bool = True) -> float:
    """Seconds until the words of one page of the file stand on the screen and follow the thumb, least of three."""
    return min(_leaf_once(file, ident, scripts=scripts) for _ in range(3))


def _leaf_once(file: Path, ident: str, *, scripts: bool) -> float:
    page = slow_page(scripts=scripts)
    start = time.perf_counter()
    page.goto(file.as_uri() + ("" if ident == "index" else f"#{ident}"), wait_until="commit")
    page.wait_for_selector(f"article[id='{ident}'] h1:visible")
    page.mouse.move(180, 300)
    while not page.evaluate("scrollY"):
        page.mouse.wheel(0, 200)
        page.wait_for_timeout(20)
    taken = time.perf_counter() - start
    page.context.close()
    return taken


def _seconds(page: Page, address: str, shown: str) -> float:
    start = time.perf_counter()
    page.goto(address, wait_until="commit")
    page.wait_for_selector(shown)
    taken = time.perf_counter() - start
    page.context.close()
    return taken
