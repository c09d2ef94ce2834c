"""The numbers of a handbook in a program: `garboard.read`."""

import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

import garboard
from tests.views import receiver


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> garboard.OpenBook:
    """The receiver's handbook."""
    return garboard.read(receiver.write(Path(tmp_path_factory.mktemp("reader"))))


def test_a_number_keeps_its_unit_range_and_sources(book: garboard.OpenBook) -> None:
    one = book.values["SA-RV-001.set"]

    assert (one.text, one.value, one.unit, one.kind) == (
        "33 bar(g)", 33.0, "bar(g)", "gauge pressure",
    )  # fmt: skip
    assert (one.si, one.low, one.high) == (3.3e6, 32.0, 34.0)
    assert [(item.source, item.clause, item.edition) for item in one.sources] == [
        ("plate-R1", "line 3", "1961")
    ]
    assert one.page == "id/SA-RV-001.html#SA-RV-001.set"
    assert one.given
    assert float(one) == 33.0


def test_what_a_number_usually_lies_between_comes_in_its_own_unit(book: garboard.OpenBook) -> None:
    one = book.values["SA-RV-001.set"]
    row = replace(
        one.row, usual_low=32.3, usual_high=33.7, si_usual_low=3.23e6, si_usual_high=3.37e6
    )

    sure = replace(one, row=row)

    assert sure.usual == (32.3, 33.7)
    assert sure.in_unit("kPa(g)").usual == (3230.0, 3370.0)
    assert replace(one, row=replace(row, usual_low=None)).usual is None


def test_a_worked_number_says_how(book: garboard.OpenBook) -> None:
    one = book.values["sizing.n"]

    assert one.formula.startswith("n = (p_max - p_min) / each = ")
    assert one.value == pytest.approx(20.0)
    assert not one.given


def test_a_number_in_another_unit_takes_its_range_along(book: garboard.OpenBook) -> None:
    psi = book.values["SA-RV-001.set"].in_unit("psi(g)")

    # 1 psi is 6894.757 Pa (NIST SP 811, appendix B.8): 33 bar is 478.6 psi
    assert psi.text == "479 psi(g)"
    assert psi.value == pytest.approx(3.3e6 / 6894.757, rel=1e-6)
    assert psi.low == pytest.approx(3.2e6 / 6894.757, rel=1e-6)
    assert psi.si == 3.3e6
    assert repr(psi) == (
        "<SA-RV-001.set = 479 psi(g) | set of Relief 1 | 464 to 494 psi(g) at worst | plate-R1 line 3>"
    )
    assert psi.in_unit("bar(g)").value == 33.0


@pytest.mark.parametrize("unit", ["bar(a)", "m3", "nonsense"])
def test_a_unit_of_another_kind_is_refused(book: garboard.OpenBook, unit: str) -> None:
    with pytest.raises(ValueError, match=r"is 33 bar\(g\), a gauge pressure"):
        book.values["SA-RV-001.set"].in_unit(unit)


def test_a_misspelt_address_names_the_nearest(book: garboard.OpenBook) -> None:
    with pytest.raises(KeyError, match=r"no value 'sizing.nn'; did you mean sizing.n\?"):
        _ = book.values["sizing.nn"]


def test_the_numbers_are_a_mapping(book: garboard.OpenBook) -> None:
    assert len(book.values) == len(list(book.values))
    assert list(book.values) == sorted(book.values)
    assert "sizing.n" in book.values
    assert book.values.get("gone.x") is None


def test_plain_dicts_feed_a_table(book: garboard.OpenBook) -> None:
    rows = list(book.values.rows())

    assert len(rows) == len(book.values)
    assert all(isinstance(cell, str | float | None) for row in rows for cell in row.values())
    assert len({tuple(row) for row in rows}) == 1


def test_what_stands_against_the_record_comes_along(book: garboard.OpenBook) -> None:
    assert "measured-off-design" in {item.code for item in book.diagnostics}
    assert repr(book).startswith("<Skerry Light: ")


def test_what_an_author_wrote_is_escaped_in_a_notebook(tmp_path: Path) -> None:
    files = receiver.FILES["systems/starting-air/system.yml"].replace("Relief 1", "<b>&")
    book = garboard.read(receiver.write(tmp_path, **{"systems/starting-air/system.yml": files}))

    shown = book.values["SA-RV-001.set"]._repr_html_()

    assert "set of &lt;b&gt;&amp;" in shown


def test_what_is_not_computed_is_no_number(tmp_path: Path) -> None:
    text = receiver.FILES["systems/starting-air/SA-CL-001.md"].replace("least = 6", "least = gone")
    book = garboard.read(receiver.write(tmp_path, **{"systems/starting-air/SA-CL-001.md": text}))

    one = book.values["sizing.least"]

    assert one.value is None
    assert "gone" in one.fault
    with pytest.raises(ValueError, match=r"sizing\.least is not computed"):
        float(one)


def test_a_folder_that_is_no_handbook_is_said_to_be_none(tmp_path: Path) -> None:
    with pytest.raises(garboard.GarboardError):
        garboard.read(tmp_path)


def test_a_name_that_is_not_public_is_refused() -> None:
    with pytest.raises(AttributeError, match="garboard has no 'sizes'"):
        _ = garboard.sizes
    assert set(dir(garboard)) == set(garboard.__all__)
    assert all(getattr(garboard, name) for name in garboard.__all__)


def test_importing_garboard_loads_nothing_of_it() -> None:
    program = "import sys, garboard; print([m for m in sys.modules if m.startswith('garboard.') or m in ('numpy', 'pint', 'yaml')])"

    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )

    assert done.stdout.strip() == "[]"
