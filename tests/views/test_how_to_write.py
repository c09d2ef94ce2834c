"""What the manual gives as an example reads clean, and no kind, key or property is left out."""

from pathlib import Path

from garboard.handbook import read, read_book
from garboard.records.component_kinds import COMPONENT_KINDS
from garboard.records.kinds import KINDS
from garboard.views.how_to_write import LINES, RUNS, parts_draft, records_draft
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
    files = {
        **BASE,
        "systems/starting-air/system.yml": SYSTEM + runs,
        "systems/starting-air/SA-CL-001.md": f"{HEAD}```calc sums\n{lines}\n```\n",
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
