"""The command that writes binders: what it writes, and what it refuses."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader

from garboard.cli import main
from garboard.editions.binder import bind
from garboard.errors import GarboardError
from garboard.handbook import Handbook
from garboard.views.binder_plan import BinderOrder
from garboard.views.page import Page
from mkdocs_garboard import print_pdf
from mkdocs_garboard.binder import write_binder
from tests.demo_site import DEMO, demo_handbook


def with_cards(handbook: Handbook, cards: tuple[Page, ...]) -> Handbook:
    """A handbook whose binders have these cards and no other."""
    return replace(handbook, binders=tuple(replace(one, cards=cards) for one in handbook.binders))


def run(*words: str, folder: Path = DEMO) -> int:
    return main(["binder", *words, "--folder", str(folder)])


def test_the_book_of_a_system_is_one_document(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("FO", "--to", str(tmp_path / "out")) == 0

    written = list((tmp_path / "out").iterdir())
    assert [path.name for path in written] == ["fuel-oil-a4.html"]
    assert capsys.readouterr().out.startswith(f"{written[0]}: ")
    assert "WORKING COPY" in written[0].read_text("utf-8")


def test_a_system_is_known_by_its_folder_and_in_small_letters(tmp_path: Path) -> None:
    assert run("fuel-oil", "--to", str(tmp_path / "one")) == 0
    assert run("fo", "--size", "a5", "--to", str(tmp_path / "two")) == 0

    assert (tmp_path / "two" / "fuel-oil-a5.html").is_file()


def test_an_unknown_system_is_told_with_those_there_are(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("fuel-oill", "--to", str(tmp_path / "out")) == 2

    said = capsys.readouterr().err
    assert "there is no system 'fuel-oill'; did you mean fuel-oil? known: SA (starting-air)" in said
    assert not (tmp_path / "out").exists()


def test_nothing_is_written_over(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "kept.txt").write_text("kept", "utf-8")

    assert run("FO", "--to", str(tmp_path)) == 2

    assert "is not empty; name a folder that is not there yet" in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["kept.txt"]


def test_the_content_is_no_place_for_a_binder(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "content"
    shutil.copytree(DEMO, folder)

    assert run("FO", "--to", str(folder / "binder"), folder=folder) == 2
    assert "lies in the content folder" in capsys.readouterr().err


def test_a_place_that_cannot_be_written_is_told_in_a_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "file").write_text("", "utf-8")

    assert run("FO", "--to", str(tmp_path / "file" / "out")) == 2

    said = capsys.readouterr().err
    assert "cannot be written" in said
    assert said.count("\n") == 1


def test_an_unknown_edition_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("FO", "--edition", "99", "--to", str(tmp_path / "out")) == 2
    assert "99" in capsys.readouterr().err


def test_without_a_browser_the_document_is_there_and_the_way_to_a_pdf_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(print_pdf, "browser", lambda: None)

    assert run("FO", "--pdf", "--to", str(tmp_path / "out")) == 2

    said = capsys.readouterr().err
    assert "is written, but not the PDF: no Chromium was found" in said
    assert "apt-get install chromium" in said
    assert "open the file in any browser and print it" in said
    assert (tmp_path / "out" / "fuel-oil-a4.html").is_file()


def test_a_browser_that_fails_is_told_with_its_last_words(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    broken = tmp_path / "chromium"
    broken.write_text("#!/bin/sh\necho out of paper >&2\nexit 3\n", "utf-8")
    broken.chmod(0o755)
    monkeypatch.setattr(print_pdf, "browser", lambda: str(broken))

    assert run("FO", "--pdf", "--to", str(tmp_path / "out")) == 2
    assert "did not print it: out of paper" in capsys.readouterr().err


def test_without_cards_it_is_said_how_to_make_one(tmp_path: Path) -> None:
    with pytest.raises(GarboardError, match="there is no quick card of 'Fuel oil'"):
        write_binder(
            with_cards(demo_handbook(), ()),
            DEMO,
            tmp_path,
            BinderOrder("FO", cards=True),
        )


@pytest.mark.browser
def test_cards_are_printed_by_themselves(tmp_path: Path) -> None:
    demo = demo_handbook()
    cards = tuple(
        replace(page, kind="quick card", key=f"cards/{page.key}")
        for page in demo.pages
        if page.kind == "hazard" and page.system == "SA"
    )

    said = write_binder(
        with_cards(demo, cards), DEMO, tmp_path, BinderOrder("SA", pdf=True, cards=True)
    )

    text = (tmp_path / "starting-air-cards.html").read_text("utf-8")
    assert text.count("<article") == len(cards)
    assert "Contents" not in text
    assert len(PdfReader(tmp_path / "starting-air-cards.pdf").pages) >= len(cards)
    assert said[0].endswith("starting-air-cards.html")


def test_the_binder_of_an_edition_says_which(tmp_path: Path) -> None:
    said = bind(DEMO, BinderOrder("FO"), tmp_path / "out", write_binder, 2)

    text = (tmp_path / "out" / "fuel-oil-a4.html").read_text("utf-8")
    assert len(said) == 1
    assert "EDITION 2 - VALID UNTIL" in text
    assert "NOT FOR USE AT SEA" not in text
