"""Take each limit, alarm, default and reason of the methods for air away, and a proof must fail."""

from collections.abc import Iterator
from dataclasses import replace

import pytest

from garboard.calc.method import FormulaMethod
from garboard.methods import METHODS
from garboard.methods.proof import Outcome, prove
from tests.methods.said import AIR


def formula(name: str) -> FormulaMethod:
    """The method of this name."""
    method = METHODS[name]
    assert isinstance(method, FormulaMethod)
    return method


def weakened(method: FormulaMethod) -> Iterator[tuple[str, FormulaMethod]]:
    """The method with one of its guards taken away, and which."""
    for limit in method.limits:
        rest = tuple(each for each in method.limits if each is not limit)
        yield f"limit {limit.holds}", replace(method, limits=rest)
    for alarm in method.alarms:
        others = tuple(each for each in method.alarms if each is not alarm)
        yield f"alarm {alarm.when}", replace(method, alarms=others)
    for number, parameter in enumerate(method.parameters):
        before, after = method.parameters[:number], method.parameters[number + 1 :]
        if parameter.missing:
            silent = replace(parameter, missing="")
            changed = replace(method, parameters=(*before, silent, *after))
            yield f"reason of {parameter.name}", changed
        if parameter.default is not None:
            bare = replace(parameter, default=None)
            changed = replace(method, parameters=(*before, bare, *after))
            yield f"default of {parameter.name}", changed


def is_noticed(method: FormulaMethod) -> bool:
    """Whether a proof fails; refusals stand last and are tried first, because they are quick."""
    return any(prove(method, proof).outcome is Outcome.DIFFERS for proof in method.proofs[::-1])


@pytest.mark.parametrize("name", AIR)
def test_a_guard_taken_away_fails_a_proof(name: str) -> None:
    method = formula(name)
    assert not is_noticed(method)

    assert [which for which, weak in weakened(method) if not is_noticed(weak)] == []


def test_more_than_a_hundred_guards_are_tried() -> None:
    assert sum(1 for name in AIR for _ in weakened(formula(name))) > 100
