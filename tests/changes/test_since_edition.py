"""What became of records since the last edition: one line of the check, two lines of a page."""

from datetime import date
from pathlib import Path

import pytest

from garboard.cli import main
from garboard.handbook import Handbook, read
from garboard.views.page import Cell, Facts, Link
from tests.golden_case import issue, lay_out

FOLDER = "systems/starting-air"


def calculation(number: int, state: str = "checked", revision: int = 0, words: str = "Air.") -> str:
    return f"""\
---
id: SA-CL-00{number}
title: Sum {number}
system: SA
class: B
state: {state}
revision: {revision}
author: lead
signed:
  - {{capacity: checker, by: reviewer-1, on: 2031-03-12, to: checked}}
---
{words}
"""


FILES = {f"{FOLDER}/{number}.md": calculation(number) for number in range(1, 5)}
FILES[f"{FOLDER}/5.md"] = calculation(5, "drafted").replace(
    "signed:\n  - {capacity: checker, by: reviewer-1, on: 2031-03-12, to: checked}\n", ""
)


def facts(handbook: Handbook, key: str) -> dict[str, Cell]:
    """The lines under `This record`."""
    page = next(one for one in handbook.pages if one.key == key)
    rows = [block.rows for block in page.blocks if isinstance(block, Facts)]
    return dict(rows[-1])


def test_the_check_says_in_one_line_what_became_of_the_records(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    kept = issue(tmp_path, FILES, date(2031, 5, 1))
    now = dict(FILES)
    now[f"{FOLDER}/1.md"] = calculation(1, "withdrawn")
    now[f"{FOLDER}/2.md"] = calculation(2, "withdrawn", 1, "More air.")
    now[f"{FOLDER}/3.md"] = calculation(3, revision=1, words="More air.")
    now[f"{FOLDER}/4.md"] = calculation(4, words="Air.  <!-- ask -->")
    now[f"{FOLDER}/5.md"] = FILES[f"{FOLDER}/5.md"].replace("Air.", "More air.")
    now[f"{FOLDER}/6.md"] = calculation(6)
    lay_out(tmp_path, {**now, **kept})

    main(["check", str(tmp_path)])

    lines = capsys.readouterr().out.split("\n")
    assert (
        "compared with edition 1 of 2031-05-01: 1 record new, 2 changed (revision raised), "
        "2 moved state, 1 changed as drafts"
    ) in lines


def test_the_check_says_nothing_of_editions_where_there_is_none(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lay_out(tmp_path, FILES)

    main(["check", str(tmp_path)])

    assert "edition" not in capsys.readouterr().out


def test_the_page_of_a_record_says_how_it_was_issued_and_what_became_of_it(tmp_path: Path) -> None:
    kept = issue(tmp_path, {f"{FOLDER}/1.md": calculation(1)}, date(2031, 5, 1))
    kept |= issue(
        tmp_path,
        {f"{FOLDER}/1.md": calculation(1, "checked", 1, "More."), **kept},
        date(2031, 6, 1),
    )
    lay_out(tmp_path, {**FILES, f"{FOLDER}/1.md": calculation(1, "approved", 2, "Less."), **kept})

    handbook = read(tmp_path)

    first = facts(handbook, "SA-CL-001")
    assert first["first issued"][1:] == (" of 1 May 2031", ", revision 0, checked")
    assert first["since edition 2"] == (
        "its words have changed, revision 1 then and 2 now; it was checked, and is approved",
    )
    assert not any("edition" in name or "issued" in name for name in facts(handbook, "SA-CL-002"))


def test_a_record_that_stands_as_it_was_issued_says_so(tmp_path: Path) -> None:
    kept = issue(tmp_path, FILES, date(2031, 5, 1))
    lay_out(
        tmp_path, {**FILES, f"{FOLDER}/1.md": calculation(1, words="Air. <!-- ask -->"), **kept}
    )

    assert facts(read(tmp_path), "SA-CL-001")["since edition 1"] == ("its words are as issued",)


def test_a_link_to_an_edition_stands_only_where_the_edition_has_a_page(tmp_path: Path) -> None:
    kept = issue(tmp_path, FILES, date(2031, 5, 1))
    lay_out(tmp_path, {**FILES, **kept})

    handbook = read(tmp_path)

    has_page = handbook.find("editions/1") is not None
    first = facts(handbook, "SA-CL-001")["first issued"][0]
    assert first == (Link("editions/1", "edition 1") if has_page else "edition 1")
