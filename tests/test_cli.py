"""The command line as a person uses it: what it prints, and the status it leaves."""

import io
import json
import re
import time
from pathlib import Path

import pytest

from garboard import cli
from garboard.cli import main
from garboard.handbook import read, read_book
from garboard.records.kinds import KINDS
from tests.demo_site import DEMO, HOUSE
from tests.golden_case import BASE, Case
from tests.traced_plant import traced

CALC = """\
---
id: SA-CL-001
title: Bigger tank
system: SA
---
```calc tank
V = 2 * 250 L  # both [plate-R1]
p = 30 bar(g) +/- 0.5 bar  # full [plate-R1]
need = 400 L  # asked for [plate-R1]
require V >= need  # enough [plate-R1]
```
It holds [2 L](value:tank.V) at [30 bar(g)](value:tank.p).
"""

COMMANDS = set(
    "binder check edition intake isolate new pack refresh sign supersede trace value".split()
)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small handbook with one stale quotation."""
    files = {"systems/starting-air/sa-cl-001-tank.md": CALC}
    return Case("", "", "", files, "").write(tmp_path / "content")


def test_a_clean_run_leaves_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = Case("", "", "", {}, "").write(tmp_path)

    status = main(["check", str(folder)])

    assert status == 0
    assert capsys.readouterr().out.startswith("0 STOP, 0 HOLD, ")


def test_a_stop_leaves_one_and_names_its_place(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status = main(["check", str(folder)])

    said = capsys.readouterr().out
    assert status == 1
    assert (
        "systems/starting-air/sa-cl-001-tank.md:12:11: STOP: text says 2 L, tank.V is 500 L [stale-number]"
        in said
    )
    assert "approval" in said


def test_a_check_ends_with_what_each_layout_was_asked(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    traced(tmp_path)

    main(["check", str(tmp_path)])

    last = [line for line in capsys.readouterr().out.splitlines() if " to the layout, " in line]
    assert [line[:17] for line in last] == ["SA Starting air: "]
    assert "lines traced by two people on 26 April 2031 (SA-TR-013)" in last[0]


def test_faults_are_given_as_data(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    main(["check", str(folder), "--format", "json"])

    first = next(
        one for one in json.loads(capsys.readouterr().out) if one["code"] == "stale-number"
    )
    assert (first["path"], first["line"], first["severity"]) == (
        "systems/starting-air/sa-cl-001-tank.md",
        12,
        "STOP",
    )


def test_refresh_shows_what_it_would_write_and_writes_nothing(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = (folder / "systems/starting-air/sa-cl-001-tank.md").read_bytes()

    assert main(["refresh", str(folder), "--dry-run"]) == 0

    assert "'2 L' -> '500 L'" in capsys.readouterr().out
    assert (folder / "systems/starting-air/sa-cl-001-tank.md").read_bytes() == before


def test_refresh_writes_the_number_and_nothing_else(folder: Path) -> None:
    path = folder / "systems/starting-air/sa-cl-001-tank.md"

    assert main(["refresh", str(folder)]) == 0

    assert path.read_text("utf-8") == CALC.replace("[2 L]", "[500 L]")
    assert [item for item in read(folder).diagnostics if item.code == "stale-number"] == []


def test_a_value_is_shown_with_range_source_and_what_is_required_of_it(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["value", "tank.p", "--folder", str(folder)]) == 0
    pressure = capsys.readouterr().out
    assert main(["value", "tank.V", "--in", "m3", "--folder", str(folder)]) == 0
    volume = capsys.readouterr().out

    assert "tank.p = 30 bar(g)" in pressure
    assert "29.5 to 30.5 bar(g) at worst" in pressure
    assert "plate-R1" in pressure
    assert "tank.V = 0.500 m3" in volume
    assert "must hold: V >= need: holds at the worst corner" in volume


def test_a_value_says_what_it_usually_is_and_what_moves_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["value", "receiver-sizing.n", "--folder", str(DEMO)]) == 0
    said = capsys.readouterr().out

    assert "range: 8 to 10 at worst, usually 8 to 9\n" in said
    movers = re.findall(r"moved by: (\S+), (\d+) % of the usual range, alone 8 to 9", said)
    assert [address for address, _ in movers] == [
        "receiver-sizing.v_start",
        "site.T_engine_room",
        "receiver-sizing.p_max",
    ]
    assert 99 <= sum(int(share) for _, share in movers) <= 101


def test_a_trace_names_what_feeds_and_what_quotes(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["trace", "tank.V", "--folder", str(folder)]) == 0

    said = capsys.readouterr().out
    assert "require V >= need" in said
    assert "SA-CL-001 at systems/starting-air/sa-cl-001-tank.md:12:10" in said


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["value", "tank.W"], "there is no value 'tank.W'; did you mean tank.V?"),
        (["value", "tank.V", "--in", "bar(g)"], "cannot be shown in 'bar(g)'"),
        (["trace", "nothing.at-all"], "there is no value"),
        (["new", "findin", "SA"], "did you mean 'finding'?"),
        (["new", "finding", "SB"], "there is no system 'SB'"),
        (["new", "finding"], "name the system"),
        (["new", "handbook"], "name the new folder"),
    ],
)
def test_wrong_use_is_one_line_and_status_two(
    folder: Path, capsys: pytest.CaptureFixture[str], words: list[str], said: str
) -> None:
    status = main([*words, "--folder", str(folder)])

    caught = capsys.readouterr()
    assert status == 2
    assert said in caught.err
    assert len(caught.err.splitlines()) == 1


@pytest.mark.parametrize("command", ["check", "refresh"])
def test_a_folder_that_is_no_handbook_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], command: str
) -> None:
    assert main([command, str(tmp_path / "nowhere")]) == 2
    assert "there is no folder" in capsys.readouterr().err

    assert main([command, str(tmp_path)]) == 2
    assert "handbook.yml" in capsys.readouterr().err


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_new_record_of_each_kind_lands_in_its_place_and_reads_clean(
    folder: Path, capsys: pytest.CaptureFixture[str], kind: object
) -> None:
    name: str = kind.name  # type: ignore[attr-defined]

    assert main(["new", name, "SA", "--title", "Second look", "--folder", str(folder)]) == 0

    path = Path(capsys.readouterr().out.strip())
    assert path.is_file()
    found = read_book(folder)
    mine = [one for one in found.content.diagnostics if one.where.path in path.as_posix()]
    assert mine == []
    assert any(record.title == "Second look" for record in found.records.values())


def test_a_new_record_never_takes_a_number_that_was_given_before(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "retired.yml").write_text("SA-FN-007: {why: raised twice}\n", "utf-8")

    main(["new", "finding", "SA", "--title", "Weeping flange", "--folder", str(folder)])

    assert "SA-FN-008" in Path(capsys.readouterr().out.strip()).read_text("utf-8")


def test_a_new_handbook_reads_clean_and_is_never_written_over(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    target = tmp_path / "our-vessel"

    assert main(["new", "handbook", str(target)]) == 0
    assert (target / "mkdocs.yml").is_file()
    assert main(["check", str(target / "content")]) == 0
    assert main(["edition", "issue", "--by", "lead", "--dry-run", str(target / "content")]) == 0
    assert main(["new", "handbook", str(target)]) == 2

    assert "is not empty" in capsys.readouterr().err


def test_an_edition_that_is_refused_names_no_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    content = tmp_path / "our-vessel" / "content"
    main(["new", "handbook", str(content.parent)])
    handbook = content / "handbook.yml"
    handbook.write_text(handbook.read_text("utf-8").partition("holders:")[0], "utf-8")
    capsys.readouterr()

    status = main(["edition", "issue", "--by", "lead", str(content)])

    said = capsys.readouterr()
    assert status == 1
    assert "file:" not in said.out
    assert "write holders: [{copy:" in said.err


def test_the_commands_are_those_of_the_readme() -> None:
    readme = (HOUSE / "README.md").read_text("utf-8")
    named = set(re.findall(r"^\| `garboard ([a-z]+)", readme, re.MULTILINE))

    assert named == COMMANDS
    for name in named:
        assert callable(getattr(cli, name))


def test_help_of_every_command_says_what_it_does(capsys: pytest.CaptureFixture[str]) -> None:
    for command in sorted(COMMANDS):
        with pytest.raises(SystemExit) as stop:
            main([command, "--help"])
        assert stop.value.code == 0
    assert "content folder" in capsys.readouterr().out


def test_no_colours_where_nobody_is_looking(capsys: pytest.CaptureFixture[str]) -> None:
    main(["check", str(DEMO)])

    assert "\033[" not in capsys.readouterr().out


def test_the_base_of_the_golden_cases_is_itself_quiet(tmp_path: Path) -> None:
    folder = Case("", "", "", {}, "").write(tmp_path)

    assert read_book(folder).content.diagnostics == ()
    assert set(BASE) == {"handbook.yml", "people.yml", "sources.yml"}


def test_the_calculation_of_the_readme_works_as_it_stands(tmp_path: Path) -> None:
    readme = (HOUSE / "README.md").read_text("utf-8")
    fence = re.search(r"```calc bilge-pump\n(.*?)```", readme, re.DOTALL)
    assert fence
    lines = "\n".join(line.strip() for line in fence[1].splitlines())
    record = f"---\ntitle: Pump\nsystem: BG\nid: BG-CL-001\n---\n```calc bilge-pump\n{lines}\n```\n"
    folder = Case("", "", "", {"systems/bilge-fire/cl.md": record}, "").write(tmp_path)

    book = read_book(folder)

    assert book.values["bilge-pump.flow"].text == "48.0 L/min"
    assert [str(one.verdict) for one in book.network.requirements] == ["holds at the worst corner"]


class Terminal(io.StringIO):
    """A stream that somebody looks at."""

    def isatty(self) -> bool:
        return True


def test_a_terminal_sees_the_severity_in_colour_unless_it_asks_not_to(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setattr("sys.stdout", seen := Terminal())
    main(["check", str(folder)])
    monkeypatch.setenv("NO_COLOR", "1")
    monkeypatch.setattr("sys.stdout", plain := Terminal())
    main(["check", str(folder)])

    assert "\033[1;31mSTOP\033[0m" in seen.getvalue()
    assert "\033[" not in plain.getvalue()


def test_work_that_takes_long_says_so_to_whoever_looks(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stderr", seen := Terminal())
    monkeypatch.setattr(cli, "PATIENCE", 0.01)

    with cli._progress():
        time.sleep(0.2)

    assert seen.getvalue() == "working ...\n"
