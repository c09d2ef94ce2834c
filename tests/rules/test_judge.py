"""What silences a rule, what does not, and when a warning becomes a hold."""

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from types import ModuleType

import pytest

from garboard.errors import Diagnostic, Severity, Where
from garboard.handbook import read_book
from garboard.records.base import Mention
from garboard.records.change import Concession
from garboard.review.covers import Covers
from garboard.rules import RULES
from garboard.rules.judge import judge
from tests.golden_case import found_in, issue, lay_out

HOSE = """\
status: in test
components:
  SA-HS-001: {kind: hose, fitted: 2021-03-02, expires: 2031-03-02}
"""
PEOPLE = """\
lead: {role: lead builder, may: [author, doer, in charge]}
reviewer-1: {role: remote reviewer, may: [author, checker, approver], class: A}
reviewer-2: {role: remote reviewer, may: [checker, approver], class: B}
"""
CONCESSION = """\
---
id: SA-CO-001
title: Windlass hose past its date
system: SA
class: B
state: granted
author: lead
departs_from: hose-out-of-date
why: return side
conditions: on every round
where: [SA-HS-001]
until: 2031-12-31
signed:
  - {capacity: approver, by: reviewer-1, on: 2031-05-02, to: granted, digest: DIGEST}
---
Never left running.
"""
PATH = "log/2031/2031-05-01-hose.md"
VAGUE = """\
---
id: SA-PR-001
title: Drain the receivers
system: SA
class: B
steps:
  - {do: Check the drain}
---
Two people.
"""


def standing(folder: Path, code: str) -> list[Diagnostic]:
    """What a rule says."""
    return [one for one in found_in(folder) if one.code == code]


def with_concession(folder: Path, text: str, **files: str) -> list[Diagnostic]:
    """What is said of the hose beside a concession, whose signatures cover it as it stands."""
    base = {"people.yml": PEOPLE, "systems/starting-air/system.yml": HOSE, **files}
    lay_out(folder, {**base, PATH: text})
    book = read_book(folder)
    cover = Covers(book.content, book.network).of(book.records["SA-CO-001"])
    lay_out(folder, {**base, PATH: text.replace("DIGEST", cover.own)})
    return standing(folder, "hose-out-of-date")


def test_a_granted_concession_makes_a_note_of_it_that_names_the_concession(tmp_path: Path) -> None:
    found = with_concession(tmp_path, CONCESSION)

    assert [one.severity for one in found] == [Severity.NOTE]
    assert "conceded by SA-CO-001 until 2031-12-31" in found[0].text


@pytest.mark.parametrize(
    ("was", "now"),
    [
        ("until: 2031-12-31", "until: 2031-09-30"),
        ("until: 2031-12-31\n", ""),
        ("class: B\nstate: granted", "class: A\nstate: granted"),
        ("state: granted", "state: asked"),
        ("state: granted", "state: expired"),
        ("state: granted", "state: void"),
        ("where: [SA-HS-001]", "where: [SA-HS-002]"),
        ("departs_from: hose-out-of-date", "departs_from: test-overtaken"),
        ("DIGEST", "0123456789abcdef"),
        (", digest: DIGEST", ""),
        ("to: granted, ", ""),
        ("to: granted", "to: granted, verdict: object, words: no"),
        ("capacity: approver", "capacity: checker"),
        ("by: reviewer-1", "by: lead"),
        ("by: reviewer-1", "by: nobody-1"),
        ("author: lead", "author: reviewer-1"),
        ("until: 2031-12-31", "until: 2031-12-31\nfingerprint: 77c0a915"),
    ],
    ids=lambda text: text.strip().replace("\n", " ") or "nothing",
)
def test_a_concession_that_does_not_stand_silences_nothing(
    was: str, now: str, tmp_path: Path
) -> None:
    text = CONCESSION.replace(was, now)
    if "class: A" in text:
        text = text.replace("until: 2031-12-31", "until: when the hose has come")
    assert text != CONCESSION

    found = with_concession(tmp_path, text)

    assert [one.severity for one in found] == [Severity.HOLD]


def test_a_concession_of_a_lower_class_may_run_until_an_event(tmp_path: Path) -> None:
    text = CONCESSION.replace("until: 2031-12-31", "until: when the hose has come")

    assert [one.severity for one in with_concession(tmp_path, text)] == [Severity.NOTE]


def test_a_concession_whose_approval_lapsed_silences_nothing(tmp_path: Path) -> None:
    with_concession(tmp_path, CONCESSION)
    path = tmp_path / PATH
    path.write_text(path.read_text("utf-8").replace("on every round", "once a week"), "utf-8")

    found = standing(tmp_path, "hose-out-of-date")

    assert [one.severity for one in found] == [Severity.HOLD]


def test_neither_a_comment_nor_a_gap_nor_another_key_silences_a_rule(tmp_path: Path) -> None:
    hushed = HOSE.replace("status", "gaps: [hose-out-of-date SA-HS-001]  # hose-out-of-date: off\nstatus")  # fmt: skip
    lay_out(tmp_path, {"people.yml": PEOPLE, "systems/starting-air/system.yml": hushed})

    found = standing(tmp_path, "hose-out-of-date")

    assert [one.severity for one in found] == [Severity.HOLD]


def test_a_concession_waives_only_what_a_rule_lets_be_waived(tmp_path: Path) -> None:
    with_concession(tmp_path, CONCESSION)
    book = read_book(tmp_path)
    granted = book.records["SA-CO-001"]
    assert isinstance(granted, Concession)

    waived = {}
    for rule in RULES:
        named = {"SA-CO-001": replace(granted, departs_from=Mention(rule.CODE))}
        conceded = replace(book, content=replace(book.content, records=named))
        said = Diagnostic(Where("a.md"), rule.SEVERITY, "it is so", "", rule.CODE, "SA-HS-001")
        firing = ModuleType(rule.CODE)
        vars(firing).update(
            vars(rule) | {"BINDS_FROM": "sketch", "check": lambda _, one=said: [one]}
        )
        waived[rule.CODE] = judge(conceded, [firing])[0].severity is Severity.NOTE

    assert waived == {rule.CODE: rule.WAIVABLE or rule.SEVERITY is Severity.NOTE for rule in RULES}
    assert set(waived.values()) == {True, False}


def judged(folder: Path, files: dict[str, str], *days: date) -> list[Diagnostic]:
    """What is said of a vague step, after editions on these days; today is 2031-10-01."""
    kept: dict[str, str] = {}
    base = {"people.yml": PEOPLE, "systems/starting-air/system.yml": "status: in test\n"}
    for day in days:
        kept |= issue(folder, {**base, **files, **kept}, day)
    lay_out(folder, {**base, **files, **kept})
    return standing(folder, "vague-step")


TODAY = date(2031, 10, 1)
FILES = {"systems/starting-air/sa-pr-001.md": VAGUE}


def test_a_warning_holds_thirty_days_after_an_edition_first_carried_it(tmp_path: Path) -> None:
    on_time = judged(tmp_path, FILES, TODAY - timedelta(days=30))
    too_late = judged(tmp_path, FILES, TODAY - timedelta(days=31))

    assert [one.severity for one in on_time] == [Severity.WARN]
    assert [one.severity for one in too_late] == [Severity.HOLD]
    assert too_late[0].text.endswith("; a warning since edition 1 of 2031-08-31")


def test_a_warning_that_no_edition_carried_stays_a_warning(tmp_path: Path) -> None:
    kept = issue(tmp_path, {"people.yml": PEOPLE}, TODAY - timedelta(days=90))

    found = judged(tmp_path, {**FILES, **kept})

    assert [one.severity for one in found] == [Severity.WARN]


def test_an_edition_between_does_not_make_a_warning_young_again(tmp_path: Path) -> None:
    days = (TODAY - timedelta(days=90), TODAY - timedelta(days=45), TODAY - timedelta(days=1))

    found = judged(tmp_path, FILES, *days)

    assert found[0].text.endswith("; a warning since edition 1 of 2031-07-03")
    assert found[0].severity is Severity.HOLD


def test_what_was_mended_meanwhile_is_a_new_warning(tmp_path: Path) -> None:
    kept = issue(tmp_path, {"people.yml": PEOPLE, "systems/starting-air/system.yml": "status: in test\n", **FILES}, TODAY - timedelta(days=90))  # fmt: skip
    kept |= issue(tmp_path, {"people.yml": PEOPLE, **kept}, TODAY - timedelta(days=60))

    found = judged(tmp_path, {**FILES, **kept})

    assert [one.severity for one in found] == [Severity.WARN]


def test_what_an_edition_carried_as_a_note_is_young_when_it_becomes_a_warning(
    tmp_path: Path,
) -> None:
    sketch = {"people.yml": PEOPLE, "systems/starting-air/system.yml": "status: sketch\n", **FILES}
    kept = issue(tmp_path, sketch, TODAY - timedelta(days=90))

    found = judged(tmp_path, {**FILES, **kept})

    assert [one.severity for one in found] == [Severity.WARN]


def test_a_graver_or_lighter_word_of_another_rule_does_not_age(tmp_path: Path) -> None:
    hose = {"systems/starting-air/system.yml": "status: in test\ncomponents:\n  SA-HS-001: {kind: hose}\n"}  # fmt: skip
    kept = issue(tmp_path, {"people.yml": PEOPLE, **hose}, TODAY - timedelta(days=90))
    lay_out(tmp_path, {"people.yml": PEOPLE, **hose, **kept})

    found = standing(tmp_path, "hose-out-of-date")

    assert [one.severity for one in found] == [Severity.WARN]


RELIEVED = """\
title: Starting air
medium: air
components:
  CP-001: {kind: compressor, type: piston, makes: 42 bar(g)}
  AR-001: {kind: receiver, rated: 33 bar(g)}
  RV-001: {kind: relief valve, set: 32 bar(g), protects: [SA-AR-001]}
connections:
  - CP-001 > AR-001
  - AR-001.relief > RV-001
"""
FILE = "systems/starting-air/system.yml"


@pytest.mark.parametrize(
    ("was", "now", "code"),
    [
        ("relief > RV", "relief -> RV", "unreadable-record"),
        ("relief > RV-001", "relief > RV-OO1", "reference-to-nothing"),
        ("relief > RV-001", "relief > RV-002", "reference-to-nothing"),
        ("relief > RV-001", "relief > RV-001.side", "port-unknown"),
        ("kind: relief valve", "kind: relieve valve", "unknown-kind"),
    ],
)
def test_a_slip_in_a_layout_is_told_first_and_what_follows_from_it_says_so(
    tmp_path: Path, was: str, now: str, code: str
) -> None:
    lay_out(tmp_path, {FILE: RELIEVED.replace(was, now), "people.yml": f"{PEOPLE}x: {{}}\n"})

    found = found_in(tmp_path)
    lacking = [one for one in found if one.code in ("relief-cut-off", "joined-to-nothing")]

    line = RELIEVED[: RELIEVED.index(was)].count("\n") + 1
    assert (found[0].code, found[0].where.path, found[0].where.line) == (code, FILE, line)
    assert lacking
    assert all(one.help.startswith(f"mend line {line} of {FILE} first") for one in lacking)


def test_a_slip_that_is_none_of_the_layout_leaves_what_is_found_of_it_as_it_is(
    tmp_path: Path,
) -> None:
    bare = RELIEVED.replace("  - AR-001.relief > RV-001\n", "")
    lay_out(tmp_path, {FILE: bare.replace("title: Starting air", "status: bilding")})

    found = [one for one in found_in(tmp_path) if one.code == "relief-cut-off"]

    assert found
    assert not any("mend line" in one.help for one in found)
