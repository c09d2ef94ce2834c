"""The command that says what differs, as a person uses it."""

import json
from datetime import date
from pathlib import Path

import pytest

from garboard.cli import main
from tests.changes.pairs import FILES
from tests.golden_case import issue, lay_out

CALC = "systems/starting-air/sa-cl-001-starts.md"
HAZARD = "systems/starting-air/sa-hz-001-air.md"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Two editions and a working copy."""
    files = dict(FILES)
    editions = issue(tmp_path, files, date(2031, 3, 1))
    files[CALC] = files[CALC].replace("p_max = 30 bar(g)", "p_max = 28 bar(g)")
    editions |= issue(tmp_path, files | editions, date(2031, 4, 1))
    files[HAZARD] = files[HAZARD].replace("if_ignored: will", "if_ignored: could")
    lay_out(tmp_path, files | editions)
    return tmp_path


def said(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """What the command prints; it must end well."""
    assert main(["edition", "diff", *words]) == 0
    return capsys.readouterr().out


def test_two_editions_numbers_first_and_what_did_it(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = said(capsys, "1", "2", "--folder", str(folder))

    assert out.startswith("From edition 1 of 2031-03-01 to edition 2 of 2031-04-01.\n")
    assert "  8 -> 7, -1 (-12 %)\n" in out
    assert "  starts.p_max 30 bar(g) -> 28 bar(g), alone: 7 (-1)\n" in out
    assert out.rstrip().endswith("It is no approval.")
    assert "WARNINGS" not in out


def test_left_out_the_working_copy_is_meant(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = said(capsys, "2", "--folder", str(folder))

    assert "to the working copy of 2031-10-01" in out
    assert "WARNINGS AND GUARDS WEAKENED\n- SA-HZ-001 Stored air: signal word" in out
    assert "NUMBERS" not in out


def test_an_edition_against_itself_differs_in_nothing(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert "\nNothing differs.\n" in said(capsys, "2", "2", "--folder", str(folder))


def test_the_order_is_that_of_the_parts_a_reader_needs(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = said(capsys, "1", "--folder", str(folder))

    titles = [line for line in out.splitlines() if line.isupper() and line[0] != "-"]
    assert titles == [
        "LIMITS, THE MOST MARGIN LOST FIRST",
        "NUMBERS, THE MOST MARGIN LOST FIRST",
        "WHAT WAS WRITTEN OTHERWISE",
        "WARNINGS AND GUARDS WEAKENED",
        "PAGES THAT ARE TOUCHED",
        "RECORDS, PARTS AND LISTS",
    ]


def test_a_program_gets_the_same_as_json(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = json.loads(said(capsys, "1", "2", "--format", "json", "--folder", str(folder)))

    assert found["before"] == {"edition": 1, "on": "2031-03-01", "unread": 0}
    assert found["inputs"][0]["address"] == "starts.p_max"
    assert {one["address"] for one in found["numbers"]} >= {"starts.n", "starts.p_max"}


@pytest.mark.parametrize(
    ("typed", "cure"),
    [
        ("3", "there is no edition 3; did you mean 2? issued are 1, 2"),
        ("two", "there is no edition 'two'; write its number: issued are 1, 2"),
    ],
)
def test_a_number_that_no_edition_has_gets_the_nearest(
    folder: Path, capsys: pytest.CaptureFixture[str], typed: str, cure: str
) -> None:
    status = main(["edition", "diff", typed, "--folder", str(folder)])

    assert status == 2
    assert cure in capsys.readouterr().err


def test_before_the_first_edition_there_is_nothing_to_hold_against(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lay_out(tmp_path, dict(FILES))

    status = main(["edition", "diff", "1", "--folder", str(tmp_path)])

    assert status == 2
    assert "no edition was issued yet" in capsys.readouterr().err
