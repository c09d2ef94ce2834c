"""Each rule fires where it should, says what it should, and keeps quiet beside it."""

from pathlib import Path

import pytest

from garboard.handbook import read
from garboard.rules import RULES
from tests.golden_case import Case, cases

CASES = cases()


@pytest.mark.parametrize("case", CASES, ids=str)
def test_a_golden_case_finds_exactly_what_it_says(case: Case, tmp_path: Path) -> None:
    folder = case.write(tmp_path)

    found = [str(item) for item in read(folder).diagnostics if item.code == case.code]

    assert "\n".join(found) == case.finds.rstrip("\n")


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.CODE)
def test_every_rule_has_a_case_that_fires_and_a_quiet_twin(rule: object) -> None:
    code = rule.CODE  # type: ignore[attr-defined]
    mine = [case for case in CASES if case.code == code]

    assert any(case.name.startswith("fires_") and case.finds for case in mine)
    assert any(case.name.startswith("quiet_") and not case.finds for case in mine)


def test_every_case_belongs_to_a_rule() -> None:
    assert {case.code for case in CASES} <= {rule.CODE for rule in RULES}


def test_every_case_is_a_firing_or_a_quiet_one() -> None:
    assert [str(case) for case in CASES if not case.name.startswith(("fires_", "quiet_"))] == []
