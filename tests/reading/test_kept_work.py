"""What is kept beside the content: it saves work, and can never change a number."""

import json
import os
import random
import re
import shutil
import subprocess
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from garboard import handbook
from garboard.calc.engine import engine
from garboard.calc.known_units import recall_units, write_units
from garboard.calc.network import Network
from garboard.calc.store import Store
from garboard.calc.unit_names import LIBRARY_NAMES
from garboard.calc.units import RESOLVED, read_unit, resolve
from garboard.errors import GarboardError
from garboard.handbook import proofs, read, read_book
from garboard.methods import METHODS
from garboard.methods.kept_proofs import read_proofs, write_proofs
from garboard.reading.store_folder import StoreFolder
from tests.calc.edited_handbook import handbook as thirty_fences
from tests.calc.exactness import first_difference
from tests.demo_site import DEMO, THIS_TREE, replace_in
from tests.golden_case import BASE, Case

FENCES = """\
---
id: SA-CL-001
title: Bigger tank
system: SA
---
```calc tank
V = 2 * 250 L  # both [plate-R1]
p = 30 bar(g) +/- 0.5 bar  # full [plate-R1]
held = free_air(V, p, site.T_engine_room)  # all of it
```
```calc pump
t = tank.held / (20 m3(n)/h) in min  # to fill it
require t <= 90 min  # before the watch changes [plate-R1]
```
"""
RECORD = "systems/starting-air/sa-cl-001-tank.md"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small handbook of two blocks, read once."""
    made = Case("", "", "", {RECORD: FENCES}, "").write(tmp_path / "content")
    read_book(made)
    return made


def kept(folder: Path, name: str = "values.json") -> Path:
    return folder / ".garboard" / name


def network(folder: Path) -> Network:
    return read_book(folder).network


def clean(folder: Path) -> Network:
    """The network of a copy in which nothing is kept."""
    bare = folder.parent / "bare"
    shutil.rmtree(bare, ignore_errors=True)
    shutil.copytree(folder, bare, ignore=shutil.ignore_patterns(".garboard"))
    return network(bare)


def test_a_second_reading_takes_every_block_from_what_was_kept(folder: Path) -> None:
    found = network(folder)

    assert found.evaluated == ()
    assert first_difference(found, clean(folder)) == ""
    assert json.loads(kept(folder).read_text("utf-8"))["kept"]["blocks"].keys() >= {"tank", "pump"}


def test_an_edit_works_out_what_it_moves(folder: Path) -> None:
    replace_in(folder / RECORD, "20 m3(n)/h", "25 m3(n)/h")

    found = network(folder)

    assert found.evaluated == ("pump",)
    assert first_difference(found, clean(folder)) == ""


def test_nothing_is_written_where_nothing_has_changed(folder: Path) -> None:
    before = kept(folder).stat().st_mtime_ns, kept(folder).stat().st_ino

    network(folder)

    assert (kept(folder).stat().st_mtime_ns, kept(folder).stat().st_ino) == before


def test_the_folder_stays_out_of_the_history_and_out_of_the_book(folder: Path) -> None:
    assert (folder / ".garboard" / ".gitignore").read_text("utf-8") == "*\n"

    found = read_book(folder)

    assert not any(".garboard" in name for name in found.content.digests)
    assert not any(".garboard" in str(fault.where) for fault in found.content.diagnostics)


def test_a_folder_that_is_no_handbook_is_left_alone(tmp_path: Path) -> None:
    with pytest.raises(GarboardError):
        read_book(tmp_path)

    assert list(tmp_path.iterdir()) == []


SPOILT: dict[str, Callable[[bytes], bytes]] = {
    "cut short": lambda raw: raw[: len(raw) // 2],
    "empty": lambda _: b"",
    "no text": lambda _: bytes(range(256)) * 40,
    "other JSON": lambda _: b'{"values": [1, 2, 3]}',
    "very deep": lambda _: b"[" * 100_000,
    "very large numbers": lambda raw: raw.replace(b'"pool":', b'"pool":' + b"9" * 10_000),
    "a changed number": lambda raw: re.sub(rb"3000000\.0", b"3100000.0", raw),
    "a changed word": lambda raw: raw.replace(b"holds at the worst corner", b"fails"),
    "another seal": lambda raw: raw.replace(raw[10:14], b"0000", 1),
    "no end": lambda raw: raw.removesuffix(b"\n}\n"),
    "a longer end": lambda raw: raw + b" ",
}


@pytest.mark.parametrize("how", SPOILT)
def test_a_spoilt_store_is_passed_over_and_written_anew(folder: Path, how: str) -> None:
    right = kept(folder).read_bytes()
    spoilt = SPOILT[how](right)
    assert spoilt != right
    kept(folder).write_bytes(spoilt)

    found = network(folder)

    assert set(found.evaluated) == {"tank", "pump"}
    assert first_difference(found, clean(folder)) == ""
    assert network(folder).evaluated == ()


@pytest.mark.parametrize("name", ["units.json", "proofs.json"])
@pytest.mark.parametrize("how", ["cut short", "no text", "other JSON", "very deep"])
def test_spoilt_units_and_proofs_are_passed_over(folder: Path, name: str, how: str) -> None:
    first = read(folder)
    kept(folder, name).write_bytes(SPOILT[how](kept(folder, name).read_bytes()))

    assert read(folder).pages == first.pages


def test_what_another_engine_kept_is_passed_over(folder: Path) -> None:
    text = StoreFolder(folder, engine()).read("values.json")

    assert text is not None
    assert StoreFolder(folder, "another engine").read("values.json") is None
    assert StoreFolder(folder, "").read("values.json") is None


def test_what_came_with_a_copy_is_passed_over(folder: Path) -> None:
    """A pull request can bring a file with any seal; it cannot bring the folder's own number."""
    copy = folder.parent / "copy"
    shutil.copytree(folder, copy)

    assert StoreFolder(copy, engine()).read("values.json") is None
    assert set(network(copy).evaluated) == {"tank", "pump"}


def test_a_file_under_another_name_is_passed_over(folder: Path) -> None:
    shutil.copy(kept(folder, "units.json"), kept(folder))

    assert StoreFolder(folder, engine()).read("values.json") is None


def test_a_folder_that_cannot_be_written_keeps_nothing(tmp_path: Path) -> None:
    made = Case("", "", "", {RECORD: FENCES}, "").write(tmp_path / "content")
    (made / ".garboard").write_text("a file stands in the way", "utf-8")

    for _ in range(2):
        assert set(network(made).evaluated) == {"tank", "pump"}
        assert (made / ".garboard").read_text("utf-8") == "a file stands in the way"


def test_no_link_leads_out_of_the_content(tmp_path: Path) -> None:
    made = Case("", "", "", {RECORD: FENCES}, "").write(tmp_path / "content")
    outside = tmp_path / "outside"
    outside.mkdir()
    (made / ".garboard").symlink_to(outside, target_is_directory=True)

    network(made)

    assert list(outside.iterdir()) == []
    assert set(network(made).evaluated) == {"tank", "pump"}


def test_a_link_in_the_place_of_a_file_is_neither_read_nor_written_through(folder: Path) -> None:
    victim = folder.parent / "victim.json"
    victim.write_bytes(kept(folder).read_bytes())
    kept(folder).unlink()
    kept(folder).symlink_to(victim)
    replace_in(folder / RECORD, "20 m3(n)/h", "25 m3(n)/h")
    before = victim.read_bytes()

    assert set(network(folder).evaluated) == {"tank", "pump"}
    assert victim.read_bytes() == before
    assert not kept(folder).is_symlink()


def test_a_store_with_any_sign_changed_under_a_right_seal_raises_nothing() -> None:
    book, store = thirty_fences(), Store()
    book.blocks = book.blocks[:5]
    book.build(store)
    text = store.write()
    chance = random.Random(7)  # noqa: S311 - faults, no secrets

    for _ in range(150):
        at, width = chance.randrange(len(text)), chance.randrange(1, 30)
        put = chance.choice(
            ["", "9", "null", "[", '"', "]", "1e999", "-1", "{}", "true", "\n", "NaN"]
        )
        found = book.build(Store.read(text[:at] + put + text[at + width :]))
        assert len(list(found.sheets.values())) == 5


def run(folder: Path, program: str) -> str:
    """What a fresh process prints."""
    done = subprocess.run(
        [sys.executable, "-c", program, str(folder)], capture_output=True, text=True, check=True,
        env={**os.environ, "PYTHONPATH": THIS_TREE},
    )  # fmt: skip
    return done.stdout.strip()


LOADED = """
import sys
from pathlib import Path
from garboard.handbook import {door} as door
from garboard.rules import RULES
from garboard.rules.judge import judge
found = door(Path(sys.argv[1]))
book = getattr(found, "book", found)
judge(book, RULES)
print(len(book.network.evaluated), "pint" in sys.modules, "numpy" in sys.modules)
"""


def test_an_unchanged_handbook_loads_neither_the_units_library_nor_numpy(tmp_path: Path) -> None:
    demo = tmp_path / "demo"
    shutil.copytree(DEMO, demo, ignore=shutil.ignore_patterns(".garboard"))

    books = [run(demo, LOADED.format(door="read_book")) for _ in range(2)]
    whole = [run(demo, LOADED.format(door="read")) for _ in range(2)]  # compares editions as well

    assert books[0].endswith("True True")
    assert whole[0].endswith("True True")
    assert (books[1], whole[1]) == ("0 False False", "0 False False")


def test_the_demo_is_the_same_handbook_with_and_without_what_was_kept(tmp_path: Path) -> None:
    demo = tmp_path / "demo"
    shutil.copytree(DEMO, demo, ignore=shutil.ignore_patterns(".garboard"))

    first, second = read(demo), read(demo)

    assert len(first.book.network.evaluated) == len(first.book.network.sheets)
    assert second.book.network.evaluated == ()
    assert first_difference(first.book.network, second.book.network) == ""
    assert first.pages == second.pages
    assert first.diagnostics == second.diagnostics


def test_two_processes_that_write_at_once_leave_a_whole_store(folder: Path) -> None:
    program = """
import sys
from pathlib import Path
from garboard.calc.engine import engine
from garboard.reading.store_folder import StoreFolder
store = StoreFolder(Path(sys.argv[1]), engine())
missed = 0
for turn in range(150):
    store.write("values.json", f"{sys.argv[1][-1]}{turn}" * 40_000)
    missed += store.read("values.json") is None
print(missed)
"""
    with ThreadPoolExecutor() as pool:
        missed = list(pool.map(lambda _: run(folder, program), range(2)))

    assert missed == ["0", "0"]
    assert StoreFolder(folder, engine()).read("values.json") is not None
    assert not list((folder / ".garboard").glob("*.new"))
    assert set(network(folder).evaluated) == {"tank", "pump"}


def test_the_proofs_of_an_unchanged_engine_are_not_run_again(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = read(folder)

    def refuse() -> None:
        raise AssertionError("a proof was run")

    monkeypatch.setattr(handbook, "proofs", refuse)

    assert read(folder).pages == first.pages
    assert read_proofs(write_proofs(proofs()), METHODS) == proofs()


def test_proofs_of_other_methods_are_not_taken_for_these() -> None:
    text = write_proofs(proofs())
    fewer = {name: METHODS[name] for name in list(METHODS)[1:]}

    assert read_proofs(text, fewer) is None
    assert read_proofs(text.replace(proofs()[0].proof.name, "another case"), METHODS) is None
    assert read_proofs(text.replace('"reproduced"', '"holds"'), METHODS) is None
    assert read_proofs("", METHODS) is None


def test_units_are_recalled_as_exact_fractions_and_nothing_else_is() -> None:
    read_unit("psi(g)")
    text, factor = write_units(), RESOLVED["psi"]
    wrong = text.replace('"psi":', '"no_such_unit":')

    del RESOLVED["psi"]
    assert not recall_units(wrong)
    assert "psi" not in RESOLVED
    assert not recall_units("[" * 100_000)
    assert not recall_units('{"psi": ["1/0", ["0"]]}')
    assert recall_units(text)
    assert RESOLVED["psi"] == factor


def test_every_unit_of_the_handbook_can_be_recalled() -> None:
    for name in LIBRARY_NAMES:
        resolve(name)
    text = write_units()
    before = dict(RESOLVED)

    RESOLVED.clear()
    assert recall_units(text)
    assert before == RESOLVED


def test_a_known_unit_is_not_changed_by_what_was_kept() -> None:
    read_unit("bar(g)")
    factor = RESOLVED["bar"]

    assert recall_units(write_units().replace('"bar": ["100000"', '"bar": ["100001"'))
    assert RESOLVED["bar"] == factor


def test_the_base_of_the_cases_is_read_without_calculations(tmp_path: Path) -> None:
    for path, text in BASE.items():
        (tmp_path / path).write_text(text, "utf-8")

    assert read_book(tmp_path).network.evaluated == ()
