"""A finding of the layout binds by its level, and is waived by its own fingerprint and by nothing else."""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from types import ModuleType

import pytest

from garboard.book import Book
from garboard.errors import Diagnostic, Severity, Where
from garboard.handbook import read_book
from garboard.review.covers import Covers
from garboard.rules import fingerprint_lapsed
from garboard.rules.judge import judge
from garboard.rules.paths import GRADED, path_diagnostics
from garboard.systems.finding import About, Level, PathFinding
from garboard.systems.line_up import LineUp
from tests.golden_case import lay_out

CODE = "switch-cut-off"
SYSTEM = """\
status: in test
components:
  SA-AR-001: {kind: receiver}
  SA-HV-001: {kind: stop valve}
  SA-PI-001: {kind: gauge}
connections:
  - AR-001 > HV-001 > PI-001
"""
CONCESSION = """\
---
id: SA-CO-001
title: Gauge behind a root valve
system: SA
class: B
state: granted
author: lead
departs_from: switch-cut-off
why: the valve is needed to change the gauge
conditions: looked at on every round
where: [SA-PI-001]
until: 2031-12-31
fingerprint: FINGERPRINT
signed:
  - {capacity: approver, by: reviewer-1, on: 2031-05-02, to: granted, digest: DIGEST}
---
As seen.
"""
FOUND = PathFinding(
    code=CODE,
    level=Level.WARNING,
    of=About("SA", "SA-PI-001", Where("systems/starting-air/system.yml", 5, 3)),
    text="SA-PI-001 can be cut off from SA-AR-001 by SA-HV-001",
    help="tap it before SA-HV-001, or ask a concession",
    line=LineUp(shut=("SA-HV-001",)),
)
MOVED = replace(FOUND, line=LineUp(shut=("SA-HV-002",)))


def rule(*, waivable: bool = False) -> ModuleType:
    """A rule that reports what was found under the code."""
    made = ModuleType(CODE)
    made.CODE, made.SEVERITY = CODE, Severity.STOP  # type: ignore[attr-defined]
    made.BINDS_FROM, made.WAIVABLE = GRADED, waivable  # type: ignore[attr-defined]
    made.check = lambda book: path_diagnostics(book, CODE)  # type: ignore[attr-defined]
    return made


def book_with(folder: Path, found: PathFinding, concession: str = "", system: str = SYSTEM) -> Book:
    """A book in which one thing was found, beside a concession that an approver signed as it stands."""
    files: dict[str, str] = {"systems/starting-air/system.yml": system}
    if concession:
        lay_out(folder, {**files, "log/2031/co.md": concession})
        book = read_book(folder)
        cover = Covers(book.content, book.network).of(book.records["SA-CO-001"])
        files["log/2031/co.md"] = concession.replace("DIGEST", cover.own)
    lay_out(folder, files)
    book = read_book(folder)
    surveyed = {
        code: replace(one, findings=(found,) if code == "SA" else ())
        for code, one in book.surveys.items()
    }
    return replace(book, surveys=surveyed)


def waiving(fingerprint: str) -> str:
    """A concession that holds a fingerprint."""
    return CONCESSION.replace("FINGERPRINT", f'"{fingerprint}"')


def said(book: Book, *rules: ModuleType) -> list[Diagnostic]:
    """What rules say of a book."""
    return list(judge(book, rules))


def test_the_fingerprint_of_a_finding_waives_it(tmp_path: Path) -> None:
    book = book_with(tmp_path, FOUND, waiving(FOUND.fingerprint))

    found = said(book, rule(), fingerprint_lapsed)

    assert [(one.code, one.severity) for one in found] == [(CODE, Severity.NOTE)]
    assert found[0].text.endswith("; conceded by SA-CO-001 until 2031-12-31")
    assert found[0].conceded_by == "SA-CO-001"


def test_when_another_valve_can_do_it_the_waiver_is_over(tmp_path: Path) -> None:
    book = book_with(tmp_path, MOVED, waiving(FOUND.fingerprint))

    found = {one.code: one for one in said(book, rule(), fingerprint_lapsed)}

    assert {code: one.severity for code, one in found.items()} == {
        CODE: Severity.HOLD,
        "fingerprint-lapsed": Severity.HOLD,
    }
    assert MOVED.fingerprint in found["fingerprint-lapsed"].help
    assert FOUND.fingerprint in found["fingerprint-lapsed"].text


def test_a_concession_without_a_fingerprint_waives_no_finding_and_is_told_so(
    tmp_path: Path,
) -> None:
    book = book_with(tmp_path, FOUND, CONCESSION.replace("fingerprint: FINGERPRINT\n", ""))

    found = {one.code: one for one in said(book, rule(), fingerprint_lapsed)}

    assert found[CODE].severity is Severity.HOLD
    assert "waives nothing" in found["fingerprint-lapsed"].text
    assert found["fingerprint-lapsed"].help.endswith(FOUND.fingerprint)


def test_a_fingerprint_waives_nothing_about_another_part(tmp_path: Path) -> None:
    elsewhere = waiving(FOUND.fingerprint).replace("where: [SA-PI-001]", "where: [SA-HV-001]")
    book = book_with(tmp_path, FOUND, elsewhere)

    found = said(book, rule(), fingerprint_lapsed)

    assert [one.severity for one in found] == [Severity.HOLD, Severity.HOLD]


@pytest.mark.parametrize(("waivable", "severity"), [(False, Severity.STOP), (True, Severity.NOTE)])
def test_a_danger_is_waived_only_where_its_rule_lets_it(
    waivable: bool,  # noqa: FBT001 - what the case is about
    severity: Severity,
    tmp_path: Path,
) -> None:
    danger = replace(FOUND, level=Level.DANGER)
    book = book_with(tmp_path, danger, waiving(danger.fingerprint))

    assert [one.severity for one in said(book, rule(waivable=waivable))] == [severity]


@pytest.mark.parametrize(
    ("status", "binding"),
    [
        ("sketch", ["STOP", "NOTE", "NOTE", "NOTE"]),
        ("building", ["STOP", "HOLD", "NOTE", "NOTE"]),
        ("in test", ["STOP", "HOLD", "WARN", "NOTE"]),
        ("in service", ["STOP", "HOLD", "WARN", "NOTE"]),
    ],
)
def test_a_graver_level_binds_from_an_earlier_stage(
    status: str, binding: list[str], tmp_path: Path
) -> None:
    system = SYSTEM.replace("in test", status)

    found = [
        said(book_with(tmp_path, replace(FOUND, level=level), system=system), rule())
        for level in Level
    ]

    assert [str(one.severity) for each in found for one in each] == binding


@pytest.mark.parametrize(
    ("change", "same"),
    [
        ({"text": "said otherwise"}, True),
        ({"help": "tap it elsewhere"}, True),
        ({"of": replace(FOUND.of, where=Where("systems/starting-air/system.yml", 99, 1))}, True),
        ({"nodes": (1, 2, 3)}, True),
        ({"level": Level.DANGER}, False),
        ({"of": replace(FOUND.of, name="SA-PI-002")}, False),
        ({"of": replace(FOUND.of, system="BG")}, False),
        ({"line": replace(FOUND.line, open=("SA-HV-002",))}, False),
        ({"line": LineUp()}, False),
        ({"line": replace(FOUND.line, turned=(("SA-TV-001", "left"),))}, False),
        ({"locks": ("SA-HV-001",)}, False),
        ({"at_fault": ("SA-NV-001",)}, False),
        ({"endangers": ("SA-AR-001",)}, False),
        ({"numbers": ("SA-AR-001 rated 33 bar(g)",)}, False),
    ],
    ids=lambda value: next(iter(value)) if isinstance(value, dict) else "",
)
def test_a_fingerprint_is_of_what_decides_and_not_of_the_words(
    change: Mapping[str, object],
    same: bool,  # noqa: FBT001 - what the case is about
) -> None:
    other = replace(FOUND, **change)  # type: ignore[arg-type]

    assert (other.fingerprint == FOUND.fingerprint) is same


def test_the_fingerprint_stands_under_what_is_printed(tmp_path: Path) -> None:
    item = said(book_with(tmp_path, FOUND), rule())[0]

    assert item.in_full.splitlines()[-1] == f"  fingerprint: {FOUND.fingerprint}"
    assert item.in_full.splitlines()[:-1] == str(item).splitlines()
