"""Print the tables that stand in DEVELOPERS.md: `make bench`."""

import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pint

from garboard.calc.network import evaluate
from garboard.calc.sheet import Fence
from garboard.errors import Where
from garboard.handbook import read

HOUSE = Path(__file__).parent.parent.parent
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


def raw_pint(units: Any) -> Any:
    """The same twelve lines as a script with the units library."""
    bar, litre = units.bar, units.litre
    atmosphere = 101325 * units.pascal
    p1, p2 = 30 * bar, 12 * bar
    volume = 2 * (250 * litre)
    warmth = 298.15 * units.kelvin
    gas = 287.05 * units.joule / (units.kilogram * units.kelvin)
    m1 = ((p1 + atmosphere) * volume / (gas * warmth)).to(units.kilogram)
    m2 = ((p2 + atmosphere) * volume / (gas * warmth)).to(units.kilogram)
    mass = m1 - m2
    each = 1.1 * units.kilogram
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


def calculation() -> None:
    """One block of twelve lines against the same sum as a script with the units library."""
    units: Any = pint.UnitRegistry()
    fence = Fence("bench", "", tuple(BLOCK.splitlines()), Where("bench.md"), "bench")
    network = evaluate([fence], {}, {})
    assert not network.diagnostics, network.diagnostics
    starts, height = raw_pint(units)
    ours = network.values["bench.n"].si, network.values["bench.h"].si
    theirs = starts.magnitude, height.magnitude
    assert all(abs(a / b - 1) < 1e-12 for a, b in zip(ours, theirs, strict=True)), (ours, theirs)

    script = seconds(lambda: raw_pint(units), 50)
    whole = seconds(lambda: evaluate([fence], {}, {}), 20)
    again = seconds(lambda: network.recompute({"bench.p1": 2.9e6}, ["bench.n"]), 2000)
    print("| twelve lines, one run | ratio |\n|---|---|")
    print(
        f"| read, type-check, work out, worst corners, working / raw pint script | {whole / script:.2f} |"
    )
    print(f"| raw pint script / recompute one result for a changed input | {script / again:.0f} |")


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
        ours, theirs = [], []
        for _ in range(ROUNDS):
            ours.append(build_seconds(HOUSE, root / "ours"))
            theirs.append(build_seconds(plain, root / "theirs"))
        size = sum(path.stat().st_size for path in (root / "ours").rglob("*.html"))
        plain_size = sum(path.stat().st_size for path in (root / "theirs").rglob("*.html"))
    start = time.perf_counter()
    book = read(HOUSE / "content_demo")
    core = time.perf_counter() - start
    print("\n| demo site, cold build | figure |\n|---|---|")
    print(f"| pages | {len(book.pages)} |")
    print(
        f"| garboard / plain `mkdocs build` with the Material theme, pruned | {statistics.median(ours) / statistics.median(theirs):.2f} |"
    )
    print(f"| bytes of pages, garboard / plain with the Material theme | {size / plain_size:.2f} |")
    print(
        f"| reading, working out, rules and pages / the whole build | {core / statistics.median(ours):.2f} |"
    )


if __name__ == "__main__":
    calculation()
    building()
