"""Print the tables that stand in DEVELOPERS.md: `make bench`."""

import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from garboard.handbook import read
from tests.bench.editions import editions
from tests.bench.engine import calculation, tolerances, uncertain
from tests.bench.graph import layouts
from tests.bench.hostile import fuzz, worst_fences
from tests.bench.pages import reading
from tests.bench.records import records
from tests.bench.schematic import drawing
from tests.bench.store import keeping

HOUSE = Path(__file__).parent.parent.parent
ROUNDS = 5


def build_seconds(folder: Path, site: Path) -> float:
    """Wall seconds of one cold build as its own process."""
    shutil.rmtree(site, ignore_errors=True)
    start = time.perf_counter()
    subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "-q", "-d", str(site)],
        cwd=folder, check=True, capture_output=True, env={"PATH": "/usr/bin:/bin", "NO_MKDOCS_2_WARNING": "1"},
    )  # fmt: skip
    return time.perf_counter() - start


def plain_copy(folder: Path, site: Path, theme: str) -> Path:
    """The rendered pages of the demo as Markdown files of a plain site, without any plugin."""
    docs = folder / "docs"
    for page in site.rglob("*.html"):
        text = page.read_text("utf-8")
        start, end = text.find("<article"), text.find("</article>")
        if start >= 0:
            target = docs / page.relative_to(site).with_suffix(".md")
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(f"<div>{text[start:end]}</article></div>\n", "utf-8")
    (folder / "mkdocs.yml").write_text(
        "site_name: plain\nuse_directory_urls: false\nplugins: []\n"
        f"theme: {{name: {theme}, features: [navigation.prune], font: false}}\n"
        "validation: {links: {not_found: ignore, unrecognized_links: ignore, anchors: ignore}}\n",
        "utf-8",
    )
    return folder


def building() -> None:
    """The whole demo against a plain build of the same rendered pages, navigation pruned."""
    with tempfile.TemporaryDirectory() as name:
        root = Path(name)
        build_seconds(HOUSE, root / "site")
        plain = plain_copy(root, root / "site", "material")
        ours, again, theirs = [], [], []
        for _ in range(ROUNDS):
            shutil.rmtree(HOUSE / "content_demo" / ".garboard", ignore_errors=True)
            ours.append(build_seconds(HOUSE, root / "ours"))
            again.append(build_seconds(HOUSE, root / "again"))
            theirs.append(build_seconds(plain, root / "theirs"))
        size = sum(path.stat().st_size for path in (root / "ours").rglob("*.html"))
        plain_size = sum(path.stat().st_size for path in (root / "theirs").rglob("*.html"))
    shutil.rmtree(HOUSE / "content_demo" / ".garboard", ignore_errors=True)
    start = time.perf_counter()
    book = read(HOUSE / "content_demo")
    core = time.perf_counter() - start
    print("\n| demo site, cold build | figure |\n|---|---|")
    print(f"| pages | {len(book.pages)} |")
    print(
        f"| garboard / plain `mkdocs build` with the Material theme, pruned | {statistics.median(ours) / statistics.median(theirs):.2f} |"
    )
    print(f"| unchanged / cold | {statistics.median(again) / statistics.median(ours):.2f} |")
    print(f"| bytes of pages, garboard / plain with the Material theme | {size / plain_size:.2f} |")
    print(
        f"| reading, working out, rules and pages / the whole build | {core / statistics.median(ours):.2f} |"
    )


if __name__ == "__main__":
    calculation()
    tolerances()
    keeping()
    records()
    layouts()
    worst_fences(uncertain().splitlines())
    fuzz()
    drawing()
    building()
    reading()
    editions()
