"""The demo handbook built whole, as a person would with `mkdocs build`."""

import atexit
import shutil
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from garboard.handbook import Handbook, read

HOUSE = Path(__file__).parent.parent
NEVER_SAID = "complian" + "t"
"""No page says it: only a flag, a class or a surveyor may. In two pieces, so that no file holds it."""
DEMO = HOUSE / "content_demo"
PHOTO_OF_README = ("readme-*",)
THIS_TREE = f"{HOUSE / 'kb'}:{HOUSE / 'plugins'}"
"""Where Python finds both packages, whatever is installed."""


@dataclass(frozen=True)
class Built:
    """A built site, and what the build said."""

    site: Path
    status: int
    said: str

    @property
    def pages(self) -> list[Path]:
        """Every page, in order; a file that holds many pages is none."""
        joined = {*self.site.glob("*-handbook.html"), *self.site.glob("binder/*.html")}
        return sorted(set(self.site.rglob("*.html")) - joined)


def copy_demo(folder: Path) -> Path:
    """A copy of the demo with its settings, to be spoilt; the content folder is given back."""
    shutil.copytree(DEMO, folder / "content_demo")
    shutil.copy(HOUSE / "mkdocs.yml", folder / "mkdocs.yml")
    return folder / "content_demo"


@cache
def demo_handbook() -> Handbook:
    """The demo as it stands, read once in a process: a handbook never changes."""
    return read(DEMO)


@cache
def never_issued() -> Path:
    """The demo's content without its editions, in a folder that goes with the process."""
    kept = tempfile.TemporaryDirectory(prefix="never-issued-")
    atexit.register(kept.cleanup)
    folder = Path(kept.name) / "content_demo"
    shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns("editions", ".garboard"))
    return folder


def run(words: list[str], folder: Path, site: Path, **environment: str) -> Built:
    """Run a module that writes a site, in an environment of its own.

    Args:
        words: Name of the module and its arguments.
        folder: Where it runs, and its home.
        site: What it writes.
        environment: Added to the bare one.
    """
    bare = {"PATH": "/usr/bin:/bin", "NO_COLOR": "1", "HOME": str(folder), "PYTHONPATH": THIS_TREE}
    done = subprocess.run(
        [sys.executable, "-m", *words],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
        env=bare | environment,
    )
    return Built(site, done.returncode, done.stdout + done.stderr)


def build(folder: Path, site: Path, *flags: str, **environment: str) -> Built:
    """Build the site of a folder that holds mkdocs.yml."""
    return run(["mkdocs", "build", "-d", str(site), *flags], folder, site, **environment)


def publish(folder: Path, number: int, site: Path) -> Built:
    """Publish an issued edition of a content folder, as `garboard edition publish` does."""
    words = ["edition", "publish", str(number), "--to", str(site), "--folder", str(folder)]
    return run(["garboard", *words], folder.parent, site, HOME=str(site.parent))


def replace_in(path: Path, old: str, new: str) -> None:
    """Change one text that must stand in a file exactly once."""
    text = path.read_text("utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {path.name}"
    path.write_text(text.replace(old, new), "utf-8")
