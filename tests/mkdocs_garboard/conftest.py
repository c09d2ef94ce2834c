"""What the adapter's tests are made with: a handbook made by hand, and a way to build its site."""

import logging
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from PIL import Image, ImageDraw

from garboard.handbook import Handbook
from mkdocs_garboard import plugin
from tests.mkdocs_garboard import sample


@dataclass(frozen=True, slots=True)
class Site:
    """A built site and what was logged on the way."""

    folder: Path
    warnings: list[str]
    notes: list[str]

    def page(self, path: str) -> str:
        return (self.folder / f"{path}.html").read_text("utf-8")

    @property
    def pages(self) -> list[Path]:
        """Every page; a file that holds the whole handbook is none."""
        return sorted(set(self.folder.rglob("*.html")) - set(self.folder.glob("*-handbook.html")))


Build = Callable[..., Site]


def content(folder: Path) -> Path:
    """A content folder with what pages show, and with what nobody should ever publish."""
    docs = folder / "content"
    (docs / "photos").mkdir(parents=True, exist_ok=True)
    picture = Image.new("RGB", (2000, 1000), "#8899aa")
    ImageDraw.Draw(picture).rectangle((0, 0, 400, 1000), fill="#553311")
    exif = Image.Exif()
    exif[0x0112] = 6  # lies on its side
    exif[0x010F] = "maker of the phone"
    picture.save(docs / "photos" / "receivers.jpg", exif=exif, comment=b"taken at home")
    (docs / "handbook.yml").write_text("vessel: Skerry Light\n", "utf-8")
    (docs / "people.yml").write_text("lead: {role: lead builder}\n", "utf-8")
    (docs / "private.md").write_text("Not a page of the handbook.\n", "utf-8")
    (docs / "loose.js").write_text("alert(1)\n", "utf-8")
    return docs


@contextmanager
def listening() -> Iterator[tuple[list[str], list[str]]]:
    """Warnings and notes of one build."""
    warnings: list[str] = []
    notes: list[str] = []

    class Keep(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            (warnings if record.levelno >= logging.WARNING else notes).append(record.getMessage())

    logger, keep = logging.getLogger("mkdocs"), Keep()
    level = logger.level
    logger.addHandler(keep)
    logger.setLevel(logging.INFO)
    try:
        yield warnings, notes
    finally:
        logger.removeHandler(keep)
        logger.setLevel(level)


def make_site(folder: Path, book: Handbook, *, theme: str = "garboard", **settings: Any) -> Site:
    """Build the site of a handbook."""
    docs = content(folder)
    site = folder / "site"
    shutil.rmtree(site, ignore_errors=True)
    with pytest.MonkeyPatch.context() as patch, listening() as (warnings, notes):
        patch.setattr(plugin, "read", lambda _folder: book)
        patch.setenv("NO_MKDOCS_2_WARNING", "1")
        config = load_config(
            config_file=str(folder / "mkdocs.yml"), site_name="Skerry Light handbook", docs_dir=str(docs),
            site_dir=str(site), theme={"name": theme}, plugins=["garboard"], **settings,
        )  # fmt: skip
        build(config)
    return Site(site, warnings, notes)


@pytest.fixture
def build_site(tmp_path: Path) -> Build:
    """Build any handbook with any settings."""

    def build_one(book: Handbook | None = None, **settings: Any) -> Site:
        (tmp_path / "mkdocs.yml").touch()
        return make_site(tmp_path, book or sample.handbook(), **settings)

    return build_one


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Site:
    """The sample handbook in our own theme, built once."""
    folder = tmp_path_factory.mktemp("sample")
    (folder / "mkdocs.yml").touch()
    return make_site(folder, sample.handbook())
