"""The numbers as files: what goes in comes out, and a spreadsheet runs none of it."""

import csv
import io
import json
from dataclasses import asdict, fields, replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.handbook import Handbook, read
from garboard.views.numbers import NumberRow
from garboard.views.values_data import GUARDED, SCHEMA, columns, flat, values_csv, values_json
from tests.views import receiver


@pytest.fixture(scope="module")
def handbook(tmp_path_factory: pytest.TempPathFactory) -> Handbook:
    """The receiver's handbook, with a number that cannot be worked out."""
    text = receiver.FILES["systems/starting-air/SA-CL-001.md"]
    broken = text.replace("least = 6", "lost = gone * 2\nleast = 6")
    folder = receiver.write(
        Path(tmp_path_factory.mktemp("data")), **{"systems/starting-air/SA-CL-001.md": broken}
    )
    return read(folder)


@pytest.fixture
def row(handbook: Handbook) -> NumberRow:
    """The relief setting."""
    return next(one for one in handbook.numbers if one.address == "SA-RV-001.set")


def from_csv(text: str) -> list[dict[str, str]]:
    return [
        {name: cell.removeprefix("'") for name, cell in line.items()}
        for line in csv.DictReader(io.StringIO(text, newline=""))
    ]


def test_a_row_says_what_where_from_and_how_far_to_trust(row: NumberRow) -> None:
    said = dict(flat(row))
    usual = [
        said.pop(name) for name in ("usual_low", "usual_high", "si_usual_low", "si_usual_high")
    ]

    assert usual in ([None] * 4, [32.0, 34.0, 3.2e6, 3.4e6])
    assert said.pop("review") == "NOT REVIEWED. Relief valve SA-RV-001 wants place."
    assert said == {
        "address": "SA-RV-001.set", "label": "set of Relief 1", "text": "33 bar(g)", "unit": "bar(g)",
        "kind": "gauge pressure", "value": 33.0, "low": 32.0, "high": 34.0,
        "si": 3.3e6, "si_low": 3.2e6, "si_high": 3.4e6, "origin": "given", "tolerance": "1 bar",
        "sources": "plate-R1 line 3 (plate of receiver 1, 1961, original)", "uses": "", "written": "",
        "worked": "", "page": "id/SA-RV-001.html#SA-RV-001.set", "block": "", "record": "SA-RV-001",
        "fault": "",
    }  # fmt: skip


def test_a_worked_number_has_its_line_as_written_and_as_worked(handbook: Handbook) -> None:
    found = next(one for one in handbook.numbers if one.address == "sizing.n")

    assert found.written == "n = (p_max - p_min) / each"
    assert found.worked.startswith("n = (p_max - p_min) / each = (30 bar(g) - 12 bar(g)) / 0.9 bar")
    assert (found.origin, found.block, found.record) == ("worked out", "sizing", "SA-CL-001")
    assert found.uses == ("sizing.p_max", "sizing.p_min", "sizing.each")


def test_what_is_not_computed_has_no_number_and_says_why(handbook: Handbook) -> None:
    found = next(one for one in handbook.numbers if one.address == "sizing.lost")

    assert found.text == "not computed"
    assert (found.value, found.si, found.low, found.worked) == (None, None, None, "")
    assert "gone" in found.fault


def test_json_gives_every_row_back_to_the_last_bit(handbook: Handbook) -> None:
    text = values_json(handbook.numbers, handbook.vessel)
    data = json.loads(text)

    assert data["schema"] == SCHEMA
    assert data["vessel"] == "Skerry Light"
    assert data["edition"] == "working copy"
    assert list(data["fields"]) == [one.name for one in fields(NumberRow)]
    assert data["values"] == json.loads(json.dumps([asdict(one) for one in handbook.numbers]))
    assert data["values"][0]["si"] == handbook.numbers[0].si
    assert text == values_json(handbook.numbers, handbook.vessel)


def test_csv_gives_every_row_back_and_numbers_stay_numbers(handbook: Handbook) -> None:
    read_back = from_csv(values_csv(handbook.numbers))

    for line, one in zip(read_back, handbook.numbers, strict=True):
        for name, known in flat(one).items():
            if isinstance(known, float):
                assert float(line[name]) == known
            else:
                assert line[name] == (known or "")


@pytest.mark.parametrize("text", ["=1+1", "+1", "-0.5 bar(d)", "@SUM(A1)", "'quoted", "\tx", "\rx"])
def test_text_that_a_spreadsheet_would_run_is_held_back(row: NumberRow, text: str) -> None:
    written = values_csv([replace(row, label=text)])

    (line,) = csv.DictReader(io.StringIO(written, newline=""))
    assert line["label"] == f"'{text}"
    assert from_csv(written)[0]["label"] == text


def test_a_number_below_nothing_is_no_formula(row: NumberRow) -> None:
    (line,) = csv.DictReader(io.StringIO(values_csv([replace(row, value=-0.5)]), newline=""))

    assert line["value"] == "-0.5"


@given(st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\x00"), max_size=40))
def test_any_text_comes_back_and_no_cell_begins_like_a_formula(text: str) -> None:
    blank = NumberRow(
        "a.b", text, "1", "", "plain number", *(None,) * 10, "given", "", (), (), *("",) * 7
    )
    written = values_csv([blank])
    (line,) = csv.DictReader(io.StringIO(written, newline=""))

    assert from_csv(written)[0]["label"] == text
    assert not line["label"].startswith(tuple(set(GUARDED) - {"'"}))


def test_every_field_is_explained_in_the_manual(handbook: Handbook) -> None:
    names = [name for name, meaning in columns() if meaning]

    assert names == [one.name for one in fields(NumberRow)]
    assert any(page.key == "manual/numbers-as-data" for page in handbook.pages)
