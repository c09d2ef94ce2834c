"""What the manual gives as an example reads clean, and no kind, key or property is left out."""

import json
from pathlib import Path

from garboard.handbook import read, read_book
from garboard.records.component_kinds import COMPONENT_KINDS
from garboard.records.kinds import KINDS
from garboard.views.how_to_write import LINES, RUNS, WORDS, parts_draft
from garboard.views.kinds_of_records import records_draft
from garboard.views.page import Heading, Table
from tests.golden_case import BASE

SYSTEM = """\
system: SA
components:
  CP-001: {kind: compressor, makes: "42 bar(g) [assumed]"}
  NV-001: {kind: check valve}
  AR-001: {kind: receiver, rated: "33 bar(g) [assumed]", volume: "250 L [assumed]"}
  PS-003: {kind: pressure switch, stops: [CP-001]}
  RV-002: {kind: relief valve, set: "32 bar(g) [assumed]"}
  HV-003: {kind: drain valve, usual: shut}
headers: {filling line: {}}
connections:
"""
HEAD = "---\nid: SA-CL-001\ntitle: Sums\nsystem: SA\n---\nSums.\n\n"


def _written(folder: Path) -> Path:
    runs = "".join(f"  - {run}\n" for run, _ in RUNS)
    lines = "\n".join(line for line, _ in LINES)
    texts = "\n".join(written for written, _ in WORDS[:-1])
    files = {
        **BASE,
        "systems/starting-air/system.yml": SYSTEM + runs,
        "systems/starting-air/SA-CL-001.md": f"{HEAD}```{WORDS[-1][0]}\n{lines}\n```\n\n{texts}\n",
    }
    for path, text in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, "utf-8")
    return folder


def test_every_example_of_the_manual_reads_and_works_out(tmp_path: Path) -> None:
    book = read_book(_written(tmp_path))

    assert [str(one) for one in book.content.diagnostics] == []
    assert book.values["sums.n"].text == "24"
    assert len(book.systems["SA"].runs) == len(RUNS)
    opened = json.loads(book.network.sheets["sums"].what_if)
    assert [one["name"] for one in opened["inputs"]] == ["p"]
    body = next(one for one in book.content.texts if one.owner == "SA-CL-001" and one.links)
    assert [str(one.address) for one in body.links] == ["sums.n", "sums.air"]
    assert [str(one.name) for one in body.names] == ["SA-RV-002", "SA-CL-001"]


def test_what_stands_inside_a_key_is_told_and_what_the_command_writes_is_not(
    tmp_path: Path,
) -> None:
    tables = [
        one for one in records_draft(read_book(_written(tmp_path))).blocks if isinstance(one, Table)
    ]
    told = {one.caption: [str(row.cells[0][0]) for row in one.rows] for one in tables}

    steps = [one for one in told["What a procedure says"] if one.startswith("steps")]
    assert steps[:4] == ["steps", "steps: do", "steps: tag", "steps: to"]
    assert {"steps: see: tag", "steps: see: value"} < set(steps)
    assert "values: NAME: after" in told["What a change says"]
    assert [one for one in told["What any record may say"] if "signed" in one] == ["signed"]
    assert "What an alarm says" in told


def test_the_manual_tells_how_each_kind_moves(tmp_path: Path) -> None:
    blocks = records_draft(read_book(_written(tmp_path))).blocks
    moves = {one.caption: one for one in blocks if isinstance(one, Table)}

    for kind in KINDS:
        told = next(one for name, one in moves.items() if name.endswith(f" {kind.name} moves"))
        assert [row.cells[0][0] for row in told.rows] == list(kind.machine.moves)
    plan = {str(row.cells[0][0]): row.cells[1][0] for row in moves["How a plan line moves"].rows}
    assert plan["planned"] == "called, doer; released, named party where it is point R or S"


def test_the_manual_lists_every_kind_of_part_and_of_record(tmp_path: Path) -> None:
    book = read_book(_written(tmp_path))

    parts = next(one for one in parts_draft(book).blocks if isinstance(one, Table))
    heads = [one.text for one in records_draft(book).blocks if isinstance(one, Heading)]

    assert [row.cells[0] for row in parts.rows] == [(name,) for name in COMPONENT_KINDS]
    assert heads == [*(f"{kind.letters} {kind.name}" for kind in KINDS), "Every record"]


def test_the_pages_for_writers_stand_in_the_manual(tmp_path: Path) -> None:
    handbook = read(_written(tmp_path))

    pages = {"manual/how-to-write", "manual/kinds-of-parts", "manual/kinds-of-records"}

    assert pages <= handbook.targets.keys()


def test_a_switch_stands_on_or_off_and_a_valve_open_or_shut(tmp_path: Path) -> None:
    table = next(
        one for one in parts_draft(read_book(_written(tmp_path))).blocks if isinstance(one, Table)
    )
    usual = {row.cells[0][0]: "".join(map(str, row.cells[4])) for row in table.rows}

    assert usual["breaker"] == usual["switch"] == "on or off"
    assert usual["stop valve"] == "open or shut"
