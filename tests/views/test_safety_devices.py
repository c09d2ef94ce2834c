"""What a surveyor reads of a safety device: its last test, its paper, and when it is due."""

from pathlib import Path

import pytest

from garboard.book import Book
from garboard.handbook import read_book
from garboard.rules import RULES
from garboard.views.asked import asked_line
from garboard.views.runs import plain
from garboard.views.safety_devices import safety_device_table
from tests.golden_case import BASE

SYSTEM = """\
system: SA
components:
  AR-001: {kind: receiver, rated: "33 bar(g) [plate-R1]"}
  RV-002:
    kind: relief valve
    set: "32 bar(g) [plate-R1]"
    protects: [AR-001]
    item: {serial: "7", certificate: plate-R1, tested: 2031-02-01, due: 2032-02-01}
connections:
  - AR-001.relief > RV-002
"""
TEST = """\
---
id: SA-TR-001
title: Lift of the relief valve
system: SA
on: 2031-06-01
did: volunteer-1
tested: [{tag: SA-RV-002}]
result: RESULT
---
Lifted.
"""


def book_of(folder: Path, *, result: str = "pass", system: str = SYSTEM) -> Book:
    """A receiver, its relief valve, and a test of it with this result."""
    files = {
        **BASE,
        "systems/starting-air/system.yml": system,
        "systems/starting-air/SA-TR-001.md": TEST.replace("RESULT", result),
    }
    for path, text in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, "utf-8")
    return read_book(folder)


def test_a_passed_test_leaves_the_day_of_the_item_and_names_its_certificate(tmp_path: Path) -> None:
    (row,) = safety_device_table(book_of(tmp_path), "SA").rows

    last, due = plain(row.cells[-2]), plain(row.cells[-1])

    assert last.startswith("SA-TR-001 1 June 2031: pass")
    assert last.endswith("; certificate plate-R1")
    assert due == "1 February 2032"


@pytest.mark.parametrize("result", ["fail", "incomplete"])
def test_after_a_test_that_did_not_pass_it_is_due_now(tmp_path: Path, result: str) -> None:
    (row,) = safety_device_table(book_of(tmp_path, result=result), "SA").rows

    assert plain(row.cells[-1]) == "now: the last test did not pass; was 1 February 2032"


@pytest.mark.parametrize("slip", ["AR-001.relief -> RV-002", "AR-001.relief > RV-009"])
def test_a_layout_with_a_connection_lost_is_said_to_have_holes(tmp_path: Path, slip: str) -> None:
    whole = asked_line(book_of(tmp_path), RULES, "SA")
    system = SYSTEM.replace("AR-001.relief > RV-002", slip) + "  - AR-001 > deck\n"

    holed = asked_line(book_of(tmp_path, system=system), RULES, "SA")

    assert "holes" not in whole
    assert "1 fault in system.yml, so it was asked with holes in it: mend that first" in holed
