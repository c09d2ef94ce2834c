"""Each rule fires where it should, says what it should, and keeps quiet beside it."""

from pathlib import Path

import pytest

from garboard.handbook import read
from garboard.rules import ISSUE_RULES, RULES
from tests.golden_case import Case, cases

CASES = cases()
ALL = (*RULES, *ISSUE_RULES)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_a_golden_case_finds_exactly_what_it_says(case: Case, tmp_path: Path) -> None:
    folder = case.write(tmp_path)

    found = case.found(folder)

    assert "\n".join(found) == case.finds.rstrip("\n")


FIRST = {case.code: case for case in reversed(CASES) if case.name.startswith("fires_")}


@pytest.mark.parametrize("case", FIRST.values(), ids=str)
def test_a_handbook_with_a_fault_has_all_its_pages(case: Case, tmp_path: Path) -> None:
    handbook = read(case.write(tmp_path))

    assert f"manual/rules/{case.code}" in handbook.targets
    assert handbook.book.records.keys() <= handbook.targets.keys()
    assert handbook.book.components.keys() <= handbook.targets.keys()


@pytest.mark.parametrize("rule", ALL, ids=lambda rule: rule.CODE)
def test_every_rule_has_a_case_that_fires_and_a_quiet_twin(rule: object) -> None:
    code = rule.CODE  # type: ignore[attr-defined]
    mine = [case for case in CASES if case.code == code]

    assert any(case.name.startswith("fires_") and case.finds for case in mine)
    assert any(case.name.startswith("quiet_") and not case.finds for case in mine)


def test_every_case_belongs_to_a_rule() -> None:
    assert {case.code for case in CASES} <= {rule.CODE for rule in ALL}


def test_the_rules_of_an_issue_say_so_and_are_asked_at_no_other_time() -> None:
    assert all(rule.AT_ISSUE for rule in ISSUE_RULES)
    assert [rule.CODE for rule in RULES if hasattr(rule, "AT_ISSUE")] == []
    asked = {case.code for case in CASES if case.at_issue}
    assert asked == {rule.CODE for rule in ISSUE_RULES}


def test_every_case_is_a_firing_or_a_quiet_one() -> None:
    assert [str(case) for case in CASES if not case.name.startswith(("fires_", "quiet_"))] == []
