"""An edition holds all that it was made from, and proves that it is as it was issued."""

import random
import shutil
from datetime import date
from pathlib import Path

import pytest

from garboard.editions.freeze import freeze, page_digest
from garboard.errors import GarboardError
from garboard.handbook import read
from garboard.reading.edition_file import edition_path, read_editions, write_edition
from garboard.reading.thaw import thaw
from garboard.reading.whole_folder import read_files
from garboard.records.edition import Edition
from garboard.views.editions import is_about_editions
from tests.demo_site import DEMO


@pytest.fixture(scope="module")
def content(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's content without an edition."""
    folder = tmp_path_factory.mktemp("issue") / "content"
    shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns("editions", ".garboard"))
    return folder


@pytest.fixture(scope="module")
def edition(content: Path) -> Edition:
    """The demo as it stands, issued."""
    handbook = read(content)
    files = read_files(content, handbook.book.content.digests)
    return freeze(handbook, files, "lead", date(2032, 9, 1), "life of 12 months")


def test_an_edition_laid_out_again_gives_the_same_pages_numbers_and_faults(
    content: Path, edition: Edition, tmp_path: Path
) -> None:
    known = read_editions({edition_path(1): write_edition(edition)})

    thaw(known, edition, tmp_path / "again", content)
    again = read(tmp_path / "again", edition)

    assert {one.key: one.digest for one in edition.pages} == {
        page.key: page_digest(page) for page in again.pages if not is_about_editions(page.key)
    }
    assert {key: one.text for key, one in edition.values.items()} == {
        key: one.text for key, one in again.book.values.items()
    }
    assert [one.text for one in edition.fired] == [one.text for one in again.diagnostics]
    assert {page.copy.line for page in again.pages} == {"EDITION 1 - VALID UNTIL 2032-09-01"}


def test_one_flipped_byte_anywhere_in_the_file_of_an_edition_is_seen(edition: Edition) -> None:
    data = write_edition(edition).encode("utf-8")
    chance = random.Random(7)  # noqa: S311 - the same trials every time

    for _ in range(60):
        broken = bytearray(data)
        broken[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
        text = broken.decode("utf-8", "replace")
        assert read_editions({edition_path(1): text}).diagnostics


def test_an_edition_is_never_laid_out_over_something_else(
    content: Path, edition: Edition, tmp_path: Path
) -> None:
    (tmp_path / "mine.txt").write_text("mine")

    with pytest.raises(GarboardError, match="is not empty"):
        thaw(read_editions({}), edition, tmp_path, content)


def test_a_photograph_that_was_exchanged_is_not_laid_out(
    content: Path, edition: Edition, tmp_path: Path
) -> None:
    known = read_editions({edition_path(1): write_edition(edition)})
    photos = tmp_path / "content"
    shutil.copytree(content, photos)
    name = next(path for path in edition.files if path.endswith(".png"))
    (photos / name).write_bytes(b"another")

    with pytest.raises(GarboardError, match="is not the photograph that edition 1 was issued with"):
        thaw(known, edition, tmp_path / "again", photos)


def test_a_path_that_somebody_wrote_into_an_edition_cannot_lead_outside(
    edition: Edition, tmp_path: Path
) -> None:
    some = next(iter(edition.texts))
    forged = Edition(
        number=1,
        issued=edition.issued,
        by="lead",
        valid_until=edition.valid_until,
        ends="",
        vessel="",
        files={"../out.md": some},
        texts=edition.texts,
    )
    known = read_editions({edition_path(1): write_edition(forged)})

    with pytest.raises(GarboardError, match="outside the content"):
        thaw(known, forged, tmp_path / "again")

    assert not (tmp_path / "out.md").exists()
