"""The look at the finished site for what would be looked for in vain, broken on purpose."""

import shutil
from pathlib import Path

import pytest

from mkdocs_garboard.index_check import A_TO_Z, in_vain
from mkdocs_garboard.search import INDEX
from tests.demo_site import Built, demo_handbook

NAMES = ("SA-RV-001", "START AIR LOW", "won't turn over", "SK-AIR-101", "SA-LN-001", "air bottle", "hose rack")  # fmt: skip


@pytest.fixture
def own(demo_built: Built, tmp_path: Path) -> Path:
    """The list and the page from A to Z of the demo, to be spoilt."""
    for name in (INDEX, A_TO_Z):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(demo_built.site / name, tmp_path / name)
    return tmp_path


def test_nothing_of_the_demo_is_looked_for_in_vain(own: Path) -> None:
    assert len(demo_handbook().looked_up) > 700
    assert list(in_vain(own, demo_handbook().looked_up)) == []


@pytest.mark.parametrize("name", NAMES)
def test_a_name_that_is_missing_from_the_list_is_told(own: Path, name: str) -> None:
    text = (own / INDEX).read_text("utf-8")
    assert f'"{name}"' in text
    (own / INDEX).write_text(text.replace(f'"{name}"', '"gone"'), "utf-8")

    found = list(in_vain(own, demo_handbook().looked_up))

    assert [line for line in found if f" {name} is not in the list" in line]
    assert not [line for line in found if line.startswith("registers/")]


@pytest.mark.parametrize("name", NAMES)
def test_a_name_that_is_missing_from_a_to_z_is_told(own: Path, name: str) -> None:
    text = (own / A_TO_Z).read_text("utf-8")
    written = name.replace("'", "&#39;")
    assert f">{written}<" in text
    (own / A_TO_Z).write_text(text.replace(f">{written}<", ">gone<"), "utf-8")

    found = list(in_vain(own, demo_handbook().looked_up))

    assert [line for line in found if f" {name} does not stand there" in line]
    assert not [line for line in found if line.startswith("Find:")]
