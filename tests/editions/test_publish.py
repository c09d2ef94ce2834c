"""What is published is what was issued: other numbers stop it, other looks are named, the outside is refused."""

import json
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from garboard.cli import main
from garboard.editions.publish import publish
from garboard.errors import GarboardError
from garboard.handbook import Handbook
from garboard.reading.edition_file import sealed, write_edition
from garboard.reading.edition_folder import editions_in
from garboard.records.edition import Edition
from mkdocs_garboard.publisher import draw_edition
from mkdocs_garboard.site_check import off_site
from tests.editions.small_handbook import write


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    place = write(tmp_path / "content")
    assert main(["edition", "issue", "--by", "lead", str(place)]) == 0
    return place


def reissue(folder: Path, forge: Callable[[Edition], Edition]) -> None:
    """Put another edition in place of the first, sealed like it."""
    (edition,) = editions_in(folder).issued
    (folder / "editions/1.json").write_text(write_edition(sealed(forge(edition))), "utf-8")


def drawn(handbook: Handbook, content: Path, site: Path, settings: Path | None) -> tuple[str, ...]:
    """A publisher that draws one line."""
    assert content.is_dir()
    assert settings is None
    site.mkdir()
    (site / "index.html").write_text(handbook.copy.line, "utf-8")
    return ()


def leaky(handbook: Handbook, content: Path, site: Path, settings: Path | None) -> tuple[str, ...]:
    """One whose site is not whole."""
    drawn(handbook, content, site, settings)
    return ("index.html loads https://fonts.invalid/a.css [needs-network]",)


def test_who_draws_is_handed_the_edition_laid_out(folder: Path, tmp_path: Path) -> None:
    done = publish(folder, 1, tmp_path / "sea", drawn)

    assert (tmp_path / "sea/index.html").read_text() == "EDITION 1 - VALID UNTIL 2032-09-15"
    assert (done.files, done.otherwise) == (1, ())


def test_numbers_that_come_out_otherwise_stop_it(folder: Path, tmp_path: Path) -> None:
    def other(edition: Edition) -> Edition:
        values = dict(edition.values)
        values["sizing.n"] = replace(values["sizing.n"], text="9.33")
        return replace(edition, values=values)

    reissue(folder, other)

    with pytest.raises(GarboardError, match=r"sizing\.n was 9\.33, now 8\.33"):
        publish(folder, 1, tmp_path / "sea", drawn)
    assert not (tmp_path / "sea").exists()


def test_pages_laid_out_otherwise_with_the_same_numbers_are_named(
    folder: Path, tmp_path: Path
) -> None:
    def other(edition: Edition) -> Edition:
        first, *rest = edition.pages
        return replace(edition, pages=(replace(first, digest="0" * 64), *rest))

    reissue(folder, other)

    assert publish(folder, 1, tmp_path / "sea", drawn).otherwise == ("index",)


def test_a_site_that_loads_from_elsewhere_is_not_handed_out(folder: Path, tmp_path: Path) -> None:
    with pytest.raises(GarboardError, match=r"nothing was written: index\.html loads .*needs-net"):
        publish(folder, 1, tmp_path / "sea", leaky)

    assert not (tmp_path / "sea").exists()


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("a.html", '<img src="https://pics.invalid/a.png" alt="a">'),
        ("a.html", '<script src="//code.invalid/a.js"></script>'),
        ("a.html", '<link rel="stylesheet" href="https://fonts.invalid/a.css">'),
        ("a.html", "<style>body{background:url(https://pics.invalid/b.png)}</style>"),
        ("a.css", '@import "https://fonts.invalid/a.css";'),
        ("a.css", "a{background:url('http://pics.invalid/b.png')}"),
    ],
)
def test_whatever_a_page_or_style_loads_from_elsewhere_is_seen(
    tmp_path: Path, name: str, text: str
) -> None:
    (tmp_path / name).write_text(text, "utf-8")

    (found,) = off_site(tmp_path)

    assert found.startswith(f"{name} loads ")
    assert ".invalid/" in found


@pytest.mark.parametrize(
    "text",
    [
        '<a href="https://rules.invalid/">the rule</a>',
        '<img src="data:image/png;base64,AAAA" alt="a">',
        '<link rel="icon" href="data:,">',
        '<img src="../photos/a.webp" alt="a">',
    ],
)
def test_a_link_and_what_lies_in_the_folder_load_nothing_from_elsewhere(
    tmp_path: Path, text: str
) -> None:
    (tmp_path / "a.html").write_text(text, "utf-8")

    assert list(off_site(tmp_path)) == []


def test_the_settings_beside_the_content_give_name_and_looks(folder: Path, tmp_path: Path) -> None:
    settings = folder.parent / "mkdocs.yml"
    text = "site_name: Our own name\ndocs_dir: elsewhere\ntheme: {name: garboard}\nplugins: [garboard]\n"
    settings.write_text(text, "utf-8")

    publish(folder, 1, tmp_path / "sea", draw_edition, settings)

    page = (tmp_path / "sea/index.html").read_text("utf-8")
    assert "<title>EDITION 1: Skerry Light handbook - Our own name</title>" in page


def test_settings_without_the_plugin_are_refused(folder: Path, tmp_path: Path) -> None:
    settings = folder.parent / "mkdocs.yml"
    settings.write_text("site_name: Our own name\ntheme: {name: garboard}\n", "utf-8")

    with pytest.raises(GarboardError, match="does not list garboard under plugins"):
        publish(folder, 1, tmp_path / "sea", draw_edition, settings)


def test_the_command_finds_who_draws_by_what_is_installed(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    to = tmp_path / "sea"

    status = main(["edition", "publish", "1", "--to", str(to), "--folder", str(folder)])

    assert status == 0
    assert "edition 1 of 2031-09-15, valid until 2032-09-15" in capsys.readouterr().out
    assert main(["edition", "verify", str(to)]) == 0
    assert json.loads((to / "values.json").read_text("utf-8"))["edition"] == "edition 1"


def test_where_nobody_draws_the_command_says_what_to_install(
    folder: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("garboard.cli.drawers.entry_points", lambda **_: ())

    status = main(["edition", "publish", "1", "--to", str(tmp_path / "x"), "--folder", str(folder)])

    assert status == 2
    assert "nothing is installed that draws a site" in capsys.readouterr().err
