"""A record takes the place of another: how it is started, where the old one is shown, what is renamed."""

from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import read
from garboard.views.page import Link, Page, Paragraph, Strong, Table
from tests.golden_case import lay_out

DECISION = """\
---
id: SA-DD-003
title: Low-air switch on the header
system: SA
class: A
state: approved
revision: 2
author: lead
drafted: 2031-03-10
question: Where is low starting air sensed?
options:
  - {option: leave it out, why_not: nobody reads the gauge}
chosen: on the header
reasons: one joint
sets: [SA-PS-001.set]
signed:
  - {capacity: checker, by: reviewer-1, on: 2031-03-12, to: checked}
  - {capacity: approver, by: reviewer-1, on: 2031-03-13, to: approved}
---
At the header.
"""
CALCULATION = """\
---
id: SA-CL-001
title: Starts in one charge
system: SA
class: B
state: drafted
author: lead
drafted: 2031-03-01
second: {by: volunteer-1, how: counted, result: ten}
---
There are [10](value:starts.n) of them, see `starts.n`; restarts.n is another.

```calc starts
V = 500 L  # both receivers [plate-R1]
n = floor(V / 50 L)  # starts in one charge
```
"""
PROCEDURE = """\
---
id: SA-PR-001
title: Fill the receivers
system: SA
class: B
state: issued
basis: SA-DD-003
steps:
  - {do: Look, see: {value: as SA-DD-003 says}}
---
Where the switch sits is told in SA-DD-003, and nowhere else.
"""
FINDING = """\
---
id: SA-FN-001
title: Header
system: SA
state: closed
words: SA-DD-003 reads the header.
against: [SA-DD-003]
---
Of SA-DD-003.
"""
FILES = {
    "log/2031/2031-03-10-header.md": DECISION,
    "log/2031/2031-03-11-header.md": FINDING,
    "systems/starting-air/sa-cl-001.md": CALCULATION,
    "systems/starting-air/sa-pr-001.md": PROCEDURE,
    "systems/starting-air/system.yml": "components:\n  SA-PS-001: {kind: pressure switch, set: 18 bar(g)}\n",
}
NEW = "log/2031/2031-10-01-low-air-switch-on-the-header.md"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    lay_out(tmp_path, FILES)
    return tmp_path


def run(folder: Path, *words: str) -> int:
    return main([*words, "--folder", str(folder)])


def superseded(folder: Path) -> None:
    """The old decision, as an approver would leave it, with its successor written."""
    run(folder, "supersede", "SA-DD-003", "--by", "lead")
    path = folder / "log/2031/2031-03-10-header.md"
    text = path.read_text("utf-8").replace("state: approved", "state: superseded")
    line = "  - {capacity: approver, by: reviewer-1, on: 2031-09-20, to: superseded}\n"
    path.write_text(text.replace("---\nAt the", f"{line}---\nAt the"), "utf-8")
    new = folder / NEW
    new.write_text(
        new.read_text("utf-8").replace("chosen: on the header", "chosen: one on each"), "utf-8"
    )


def page(folder: Path, key: str) -> Page:
    return next(one for one in read(folder).pages if one.key == key)


def test_the_new_record_has_the_fields_of_the_old_but_neither_its_state_nor_its_signatures(
    folder: Path,
) -> None:
    assert run(folder, "supersede", "SA-DD-003", "--by", "lead") == 0

    text = (folder / NEW).read_text("utf-8")
    new = read(folder).book.records["SA-DD-004"]
    assert new.supersedes == "SA-DD-003"
    assert (new.state, new.signed, new.revision, new.author) == (None, (), 0, "lead")
    assert str(new.drafted) == "2031-10-01"
    assert "question: Where is low starting air sensed?" in text
    assert "  - {option: leave it out, why_not: nobody reads the gauge}" in text
    assert text.endswith("---\nAt the header.\n")


def test_the_old_record_is_not_touched(folder: Path) -> None:
    before = (folder / "log/2031/2031-03-10-header.md").read_bytes()

    run(folder, "supersede", "SA-DD-003")

    assert (folder / "log/2031/2031-03-10-header.md").read_bytes() == before


def test_it_says_who_names_the_old_one_and_what_an_approver_has_to_do(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(folder, "supersede", "SA-DD-003")

    said = capsys.readouterr().out
    assert "Not copied: state, revision, author, signed." in said
    assert "SA-DD-003 is named in 6 places." in said
    assert "systems/starting-air/sa-pr-001.md:7:8: SA-PR-001\n" in said
    assert "systems/starting-air/sa-pr-001.md:11:34: SA-PR-001\n" in said
    assert (
        "log/2031/2031-03-11-header.md:7:11: SA-FN-001 (let be: `against` tells what was)" in said
    )
    assert (
        "log/2031/2031-03-11-header.md:9:4: SA-FN-001 (let be: a finding tells what happened)"
        in said
    )
    assert "garboard sign SA-DD-003 --as approver --by PERSON --to superseded" in said


def test_a_calculation_is_copied_under_another_name_and_without_its_second_way(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(folder, "supersede", "SA-CL-001", "--title", "Starts, counted anew")

    text = (folder / "systems/starting-air/sa-cl-002-starts-counted-anew.md").read_text("utf-8")
    assert "```calc starts-2\n" in text
    assert "[10](value:starts-2.n) of them, see `starts-2.n`; restarts.n is another" in text
    assert "second:" not in text
    assert "drafted: 2031-10-01" in text
    assert "The calculation starts is copied as starts-2" in capsys.readouterr().out
    assert read(folder).show("starts-2.n") == "10"
    assert not [one for one in read(folder).diagnostics if one.code == "identifier-used-twice"]


def test_a_dry_run_writes_nothing(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = sorted(folder.rglob("*.md"))

    assert run(folder, "supersede", "SA-DD-003", "--dry-run") == 0

    assert sorted(folder.rglob("*.md")) == before
    assert "id: SA-DD-004" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("name", "why"),
    [
        (
            "SA-FN-001",
            "a finding is not superseded; start one that follows it: garboard new finding SA",
        ),
        ("SA-DD-009", "there is no record or page 'SA-DD-009'; did you mean SA-DD-003?"),
        ("SA-PS-001", "SA-PS-001 is a part"),
    ],
)
def test_what_cannot_be_superseded_is_said(
    name: str, why: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(folder, "supersede", name) == 2

    assert why in capsys.readouterr().err


def test_a_record_that_has_a_successor_gets_no_second(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(folder, "supersede", "SA-DD-003")

    assert run(folder, "supersede", "SA-DD-003") == 2

    assert "SA-DD-004 supersedes SA-DD-003 already; go on from that one" in capsys.readouterr().err


def test_the_page_of_the_old_record_says_first_what_took_its_place_and_what_differs(
    folder: Path,
) -> None:
    superseded(folder)

    first, differs = page(folder, "SA-DD-003").blocks[:2]

    assert isinstance(first, Paragraph)
    assert first.runs[0] == Strong("Superseded by ")
    assert first.runs[1] == Link("SA-DD-004", "SA-DD-004")
    assert first.runs[2] == Strong(" on 20 September 2031: ")
    assert isinstance(differs, Table)
    assert [row.cells for row in differs.rows] == [
        (("chosen",), ("on the header",), ("one on each",))
    ]


def test_a_withdrawn_record_says_so_first(folder: Path) -> None:
    path = folder / "log/2031/2031-03-10-header.md"
    path.write_text(DECISION.replace("state: approved", "state: withdrawn"), "utf-8")

    first = page(folder, "SA-DD-003").blocks[0]

    assert isinstance(first, Paragraph)
    assert first.runs[0] == Strong("Withdrawn.")


def test_a_live_record_has_no_such_lines(folder: Path) -> None:
    assert page(folder, "SA-DD-003").blocks[0] == Paragraph(
        (Strong("Question: "), "Where is low starting air sensed?")
    )


def test_a_field_that_names_the_old_record_shows_the_successor_beside_it(folder: Path) -> None:
    superseded(folder)

    said = repr(page(folder, "SA-PR-001").blocks)

    old, new = (repr(Link(name, name)) for name in ("SA-DD-003", "SA-DD-004"))
    assert said.count(f"{old}, ' (superseded by ', {new}, ')'") == 2
    assert said.count(old) == 2
    assert read(folder).targets["SA-DD-003"].heir == "SA-DD-004"


def test_a_chain_of_successors_leads_to_the_live_one(folder: Path) -> None:
    superseded(folder)
    run(folder, "supersede", "SA-DD-004", "--title", "On each receiver")
    path = folder / NEW
    path.write_text(
        path.read_text("utf-8").replace("id: SA-DD-004", "id: SA-DD-004\nstate: superseded"),
        "utf-8",
    )

    book = read(folder).book

    assert book.heirs["SA-DD-003"] == ("SA-DD-004", "SA-DD-005")
    assert book.heirs["SA-DD-004"] == ("SA-DD-005",)


def test_refresh_offers_the_successor_and_writes_it_only_when_asked(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    superseded(folder)
    before = {path: path.read_bytes() for path in folder.rglob("*.md")}

    main(["refresh", str(folder)])

    said = capsys.readouterr().out
    assert "3 places name a superseded record; --names would write:" in said
    assert "  systems/starting-air/sa-pr-001.md:7:8: SA-DD-003 -> SA-DD-004\n" in said
    assert {path: path.read_bytes() for path in folder.rglob("*.md")} == before


def test_refresh_names_the_successor_where_things_are_told_as_they_are_and_nowhere_else(
    folder: Path,
) -> None:
    superseded(folder)
    before = {path: path.read_text("utf-8") for path in folder.rglob("*.md")}

    main(["refresh", str(folder), "--names"])

    after = {path: path.read_text("utf-8") for path in folder.rglob("*.md")}
    changed = [path for path, text in after.items() if before[path] != text]
    assert changed == [folder / "systems/starting-air/sa-pr-001.md"]
    assert after[changed[0]] == PROCEDURE.replace("SA-DD-003", "SA-DD-004")


@pytest.mark.parametrize(
    "line",
    ["follows: SA-PR-002", "sources: [SA-PR-002]\nfollows: SA-PR-002"],
)
def test_refresh_never_touches_what_tells_what_was(line: str, folder: Path) -> None:
    old = PROCEDURE.replace("SA-PR-001", "SA-PR-002").replace("state: issued", "state: superseded")
    old = old.replace("SA-DD-003", "nothing")
    heir = old.replace("SA-PR-002", "SA-PR-003").replace(
        "state: superseded", "supersedes: SA-PR-002"
    )
    text = PROCEDURE.replace("SA-DD-003", "nothing").replace("basis:", f"{line}\nbasis:")
    stem = "systems/starting-air"
    lay_out(folder, {**FILES, f"{stem}/sa-pr-002.md": old, f"{stem}/sa-pr-003.md": heir, f"{stem}/sa-pr-001.md": text})  # fmt: skip

    main(["refresh", str(folder), "--names"])

    kept = (folder / f"{stem}/sa-pr-001.md").read_text("utf-8")
    assert "follows: SA-PR-002" in kept
    assert ("sources: [SA-PR-003]" in kept) is ("sources" in line)
