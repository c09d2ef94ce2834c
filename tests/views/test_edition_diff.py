"""The pages that say what changed: one since the last edition, one for each edition after the first."""

from datetime import date
from pathlib import Path

import pytest

from garboard.handbook import Handbook, read
from garboard.reading.thaw import thaw
from garboard.views.page import Page, Table
from tests.changes.pairs import FILES
from tests.golden_case import issue, lay_out

CALC = "systems/starting-air/sa-cl-001-starts.md"
PROCEDURE = "systems/starting-air/sa-pr-001-empty.md"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Two editions, and a working copy that differs from the second."""
    content = tmp_path / "content"
    files = dict(FILES)
    editions = issue(content, files, date(2031, 3, 1))
    files[CALC] = files[CALC].replace("p_max = 30 bar(g)", "p_max = 28 bar(g)")
    editions |= issue(content, files | editions, date(2031, 4, 1))
    files[PROCEDURE] = files[PROCEDURE].replace("message: SA-HZ-001, ", "")
    lay_out(content, files | editions)
    return content


def page(handbook: Handbook, key: str) -> Page:
    """A page by its key."""
    return next(one for one in handbook.pages if one.key == key)


def cells(found: Page, column: int) -> list[str]:
    """One column of every table of a page, as text."""
    return [
        "".join(str(getattr(run, "text", run)) for run in row.cells[column])
        for block in found.blocks
        if isinstance(block, Table)
        for row in block.rows
        if len(row.cells) > column
    ]


def test_each_pair_has_a_page_in_a_section_of_its_own(folder: Path) -> None:
    handbook = read(folder)

    section = next(one for one in handbook.contents if one.title == "Editions")
    assert section.pages[:2] == ("editions/since-2", "editions/2-changes")
    assert page(handbook, "editions/since-2").title == "What changed since edition 2"


def test_the_page_tells_what_moved_by_how_much_and_what_did_it(folder: Path) -> None:
    found = page(read(folder), "editions/2-changes")

    assert "-2 bar" in cells(found, 3)
    assert any(one.endswith("starts.p_max, alone: 7 (-1)") for one in cells(found, 3))


def test_the_page_since_the_last_edition_puts_the_lost_warning_before_its_reader(
    folder: Path,
) -> None:
    found = page(read(folder), "editions/since-2")

    assert "warnings or guards weakened: 1" in str(found.blocks[1])
    assert "safety message at step 2" in cells(found, 1)
    assert not any("bar" in one for one in cells(found, 0))


def test_without_an_edition_there_is_no_such_page(tmp_path: Path) -> None:
    lay_out(tmp_path, dict(FILES))

    assert not [one.key for one in read(tmp_path).pages if one.key.startswith("editions/")]


def test_an_edition_laid_out_again_tells_what_changed_and_lists_no_such_page(
    folder: Path, tmp_path: Path
) -> None:
    handbook = read(folder)
    editions = handbook.book.content.editions
    second = editions.numbered(2)
    assert second

    thaw(editions, second, tmp_path / "again")
    again = read(tmp_path / "again", second)

    told = page(again, "editions/since-1")
    assert "-2 bar" in cells(told, 3)
    assert not [one.key for one in second.pages if one.key.startswith("editions")]
