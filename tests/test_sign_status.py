"""How far a system is, signed from the command line."""

from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import read, read_book
from tests.golden_case import Case

SYSTEM = """\
# an invented system
title: Starting air
status: sketch
purpose: turns the engine
components:
  SA-AR-001: {kind: receiver, rated: 33 bar(g)}
"""
PATH = "systems/starting-air/system.yml"
SIGN = ("sign", "SA", "--as", "in charge", "--by", "lead", "--on", "2031-03-12")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small handbook with a system that is a sketch."""
    return Case("", "", "", {PATH: SYSTEM}, "").write(tmp_path / "content")


def run(folder: Path, *words: str) -> int:
    return main([*words, "--folder", str(folder)])


def test_a_status_is_moved_and_signed_in_one_go(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(folder, *SIGN, "--to", "building") == 0

    assert "status: sketch -> building" in capsys.readouterr().out
    text = (folder / PATH).read_text("utf-8")
    assert text.startswith(
        "# an invented system\ntitle: Starting air\nstatus: building\nsigned:\n"
        "  - {capacity: in charge, by: lead, on: 2031-03-12, to: building}\npurpose:"
    )
    codes = [one.code for one in read(folder).diagnostics]
    assert "illegal-state-move" not in codes
    assert "unreadable-record" not in codes


def test_a_second_line_stands_under_the_first(folder: Path) -> None:
    run(folder, *SIGN, "--to", "building")

    assert run(folder, *SIGN[:-1], "2031-04-02", "--to", "in test") == 0

    system = read_book(folder).systems["SA"]
    assert [(str(one.on), one.to) for one in system.signed] == [
        ("2031-03-12", "building"),
        ("2031-04-02", "in test"),
    ]
    assert system.status == "in test"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((*SIGN, "--to", "in service"), "SA is moved to in service as in charge, from sketch"),
        ((*SIGN, "--to", "bulding"), "there is no status 'bulding'; did you mean 'building'?"),
        (SIGN, "say with --to how far SA is: sketch, building, in test, in service"),
        ((*SIGN, "--to", "building", "--scope", "layout"), "is signed without --scope"),
        ((*SIGN[:5], "volunteer-1", "--to", "building"), "volunteer-1 may not act so"),
        ((*SIGN[:7], "2040-01-01", "--to", "building"), "nobody signs ahead of the day"),
    ],
)
def test_what_should_not_stand_is_refused_and_nothing_is_written(
    folder: Path, words: tuple[str, ...], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(folder, *words) == 2

    assert said in capsys.readouterr().err
    assert (folder / PATH).read_text("utf-8") == SYSTEM


def test_in_service_is_refused_while_a_grave_finding_is_open(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    finding = "---\nid: SA-FN-001\ntitle: Weeps\nsystem: SA\nclass: A\n---\nIt weeps.\n"
    (folder / "log").mkdir()
    (folder / "log" / "a.md").write_text(finding, "utf-8")
    run(folder, *SIGN, "--to", "building")
    run(folder, *SIGN, "--to", "in test")

    assert run(folder, *SIGN, "--to", "in service") == 2

    assert "SA is in service, SA-FN-001 open" in capsys.readouterr().err
    assert read_book(folder).systems["SA"].status == "in test"


def test_a_dry_run_writes_nothing(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(folder, *SIGN, "--to", "building", "--dry-run") == 0

    assert "Nothing was written." in capsys.readouterr().out
    assert (folder / PATH).read_text("utf-8") == SYSTEM


def test_a_file_without_a_status_is_told_to_write_one(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / PATH).write_text(SYSTEM.replace("status: sketch\n", ""), "utf-8")

    assert run(folder, *SIGN, "--to", "building") == 2

    assert "has no line status:; write status: sketch first" in capsys.readouterr().err
