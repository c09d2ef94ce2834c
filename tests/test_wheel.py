"""What is shipped is what stands in the tree."""

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from tests.demo_site import HOUSE

pytestmark = pytest.mark.site

ROOTS = {
    "garboard": HOUSE / "kb" / "garboard",
    "mkdocs_garboard": HOUSE / "plugins" / "mkdocs_garboard",
}


def test_the_wheel_holds_every_file_of_both_packages_and_nothing_else(tmp_path: Path) -> None:
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)],
        cwd=HOUSE,
        check=True,
        capture_output=True,
    )

    with zipfile.ZipFile(next(tmp_path.glob("*.whl"))) as wheel:
        shipped = {name for name in wheel.namelist() if ".dist-info/" not in name}

    tree = {
        f"{package}/{path.relative_to(root).as_posix()}"
        for package, root in ROOTS.items()
        for path in root.rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    assert shipped == tree
    assert any(name.endswith(".html") for name in shipped)


def test_a_handbook_of_ones_own_builds_outside_this_repository(tmp_path: Path) -> None:
    def run(*words: str, folder: Path = tmp_path) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [sys.executable, "-m", *words], cwd=folder, capture_output=True, text=True, check=True
        )

    run("garboard", "new", "handbook", "ours")
    run("garboard", "new", "finding", "BG", "--title", "Weeping hose", folder=tmp_path / "ours")
    run("mkdocs", "build", "--strict", "-q", folder=tmp_path / "ours")

    pages = {path.name for path in (tmp_path / "ours" / "site").rglob("*.html")}
    assert {"index.html", "BG-FN-001.html", "what-it-does.html", "alarms.html"} <= pages
