"""One changed byte anywhere in a published edition, or in the file of one, is found and the file named."""

import random
import shutil
from pathlib import Path

import pytest

from garboard.cli import main
from garboard.editions.manifest import MANIFEST, check_site
from garboard.editions.publish import publish
from garboard.editions.verify import faults_of
from garboard.errors import GarboardError
from mkdocs_garboard.publisher import draw_edition
from tests.editions.small_handbook import change, write

TRIALS = 200


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small handbook with an edition of it."""
    place = write(tmp_path_factory.mktemp("issue") / "content")
    assert main(["edition", "issue", "--by", "lead", str(place)]) == 0
    return place


@pytest.fixture(scope="module")
def site(folder: Path) -> Path:
    """The edition published."""
    to = folder.parent / "sea"
    publish(folder, 1, to, draw_edition)
    return to


@pytest.fixture
def copy(site: Path, tmp_path: Path) -> Path:
    """A copy of it that may be spoilt."""
    return Path(shutil.copytree(site, tmp_path / "copy"))


def files_of(site: Path) -> list[Path]:
    return sorted(path for path in site.rglob("*") if path.is_file())


def test_a_whole_copy_is_whole_without_the_content(copy: Path) -> None:
    assert check_site(copy) == ()


def test_every_one_of_two_hundred_changed_bytes_is_found_and_its_file_named(copy: Path) -> None:
    chance = random.Random(11)  # noqa: S311 - the same trials every time
    files = files_of(copy)
    names = [path.relative_to(copy).as_posix() for path in files]
    chosen = [copy / MANIFEST] * 20
    chosen += [one for one in files if one.suffix == ".webp"] * 10
    chosen += chance.choices(files, k=TRIALS - len(chosen))
    assert any(name.endswith(".webp") for name in names)

    missed = []
    for file in chosen:
        whole = file.read_bytes()
        broken = bytearray(whole)
        broken[chance.randrange(len(whole))] ^= 1 << chance.randrange(8)
        file.write_bytes(bytes(broken))
        found = check_site(copy)
        file.write_bytes(whole)
        name = file.relative_to(copy).as_posix()
        if (
            not found
            or not found[0].startswith(f"{name} ")
            or (name != MANIFEST and len(found) != 1)
        ):
            missed.append((name, found))

    assert missed == []
    assert check_site(copy) == ()


def test_every_one_of_two_hundred_changed_bytes_in_the_file_of_an_edition_is_found(
    folder: Path, tmp_path: Path
) -> None:
    chance = random.Random(13)  # noqa: S311 - the same trials every time
    own = Path(shutil.copytree(folder, tmp_path / "content"))
    file = own / "editions/1.json"
    whole = file.read_bytes()
    assert faults_of(own) == ()

    missed = []
    for _ in range(TRIALS):
        broken = bytearray(whole)
        at = chance.randrange(len(whole))
        broken[at] ^= 1 << chance.randrange(8)
        file.write_bytes(bytes(broken))
        if not any("edition" in fault and "1" in fault for fault in faults_of(own, 1)):
            missed.append(at)

    assert missed == []


def test_what_was_added_or_is_missing_is_named(copy: Path) -> None:
    (copy / "id/SA-RV-001.html").unlink()
    (copy / "extra.html").write_text("more", "utf-8")

    assert set(check_site(copy)) == {"extra.html was added", "id/SA-RV-001.html is missing"}


def test_two_files_that_changed_places_are_both_named(copy: Path) -> None:
    one, other = copy / "id/SA-RV-001.html", copy / "id/SA-AR-001.html"
    first, second = one.read_bytes(), other.read_bytes()
    one.write_bytes(second)
    other.write_bytes(first)

    assert [fault.split(" ")[0] for fault in check_site(copy)] == [
        "id/SA-AR-001.html",
        "id/SA-RV-001.html",
    ]


def test_a_link_in_place_of_a_file_is_no_file_of_the_edition(copy: Path, site: Path) -> None:
    page = copy / "index.html"
    page.unlink()
    page.symlink_to(site / "index.html")

    assert [fault.split(" ")[0] for fault in check_site(copy)] == ["index.html"]


def test_a_manifest_cut_short_says_that_it_is_damaged(copy: Path) -> None:
    text = (copy / MANIFEST).read_bytes()
    (copy / MANIFEST).write_bytes(text[: len(text) // 2])

    assert check_site(copy)[0].startswith(f"{MANIFEST} is damaged")


def test_a_working_copy_is_plainly_said_to_be_one(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text("<p>WORKING COPY, not an edition.</p>", "utf-8")

    with pytest.raises(GarboardError, match="is a working copy and no edition"):
        check_site(tmp_path)


def test_an_edition_that_lost_its_manifest_is_no_working_copy(copy: Path) -> None:
    (copy / MANIFEST).unlink()

    with pytest.raises(GarboardError, match="has lost its manifest"):
        check_site(copy)


def test_the_command_says_the_same_and_leaves_one(
    copy: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["edition", "verify", str(copy)]) == 0
    assert "no proof of who made it" in capsys.readouterr().out

    (copy / "index.html").write_text("other", "utf-8")

    assert main(["edition", "verify", str(copy)]) == 1
    assert "index.html was altered" in capsys.readouterr().out
    assert main(["edition", "verify", str(copy / "nowhere")]) == 2


def test_the_command_names_an_edition_that_is_not_there(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["edition", "verify", "7", "--folder", str(folder)]) == 2
    assert "there is no edition 7; issued so far: 1" in capsys.readouterr().err


def test_the_list_says_until_when_and_why(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["edition", "list", "--folder", str(folder)]) == 0

    said = capsys.readouterr().out
    assert "edition 1  issued 2031-09-15 by the lead builder" in said
    assert "valid until 2032-09-15: a life of 12 months" in said


def test_the_head_of_a_manifest_says_of_what_it_is(site: Path) -> None:
    head = (site / MANIFEST).read_text("utf-8").split("\n\n", 1)[0].splitlines()

    assert head[:5] == [
        "garboard manifest, form 1",
        "vessel: Skerry Light",
        "edition: 1",
        "issued: 2031-09-15",
        "valid until: 2032-09-15",
    ]
    assert head[-1] == f"files: {len(files_of(site)) - 1}"


def test_nothing_is_published_over_something_else_or_into_the_content(
    folder: Path, tmp_path: Path
) -> None:
    (tmp_path / "mine.txt").write_text("mine", "utf-8")

    with pytest.raises(GarboardError, match="is not empty"):
        publish(folder, 1, tmp_path, draw_edition)
    with pytest.raises(GarboardError, match="lies in the content folder"):
        publish(folder, 1, folder / "site", draw_edition)
    with pytest.raises(GarboardError, match="there is no edition 3"):
        publish(folder, 3, tmp_path / "new", draw_edition)

    assert [path.name for path in tmp_path.iterdir()] == ["mine.txt"]
    assert not (folder / "site").exists()


def test_an_edition_is_published_from_its_own_texts_whatever_the_folder_says_now(
    folder: Path, site: Path, tmp_path: Path
) -> None:
    own = Path(shutil.copytree(folder, tmp_path / "content"))
    change(own, "systems/starting-air/what-it-does.md", "gives", "no longer gives")
    change(own, "handbook.yml", "2031-09-15", "2032-02-01")

    publish(own, 1, tmp_path / "again", draw_edition)

    assert (tmp_path / "again" / MANIFEST).read_bytes() == (site / MANIFEST).read_bytes()


def test_a_photograph_that_was_exchanged_stops_it(folder: Path, tmp_path: Path) -> None:
    own = Path(shutil.copytree(folder, tmp_path / "content"))
    (own / "systems/starting-air/photos/plate.png").write_bytes(b"another")

    with pytest.raises(GarboardError, match="is not the photograph"):
        publish(own, 1, tmp_path / "again", draw_edition)


def test_the_published_site_is_that_edition_on_every_page(site: Path) -> None:
    for page in site.rglob("*.html"):
        text = page.read_text("utf-8")
        assert "WORKING COPY" not in text, page
        if (
            page.parent.name != "binder"
        ):  # a book says it on its cover and at the foot of each sheet
            assert "<title>EDITION 1: " in text, page
        assert "EDITION 1" in text, page
    assert '"valid_until": "2032-09-15"' in (site / "values.json").read_text("utf-8")
    assert "Effective pages" in (site / "editions/1-pages.html").read_text("utf-8")
