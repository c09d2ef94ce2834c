"""The oracle notices each fault that is put into the searches on purpose."""

from itertools import islice

import pytest

from tests.systems.faulty_searches import FAULTS, SEQUENCES, Fault
from tests.systems.oracle import Answer, answers

SYSTEMS = range(400)


def noticed(fault: Fault, seeds: range = SYSTEMS) -> list[str]:
    """The first sentence that the oracle has to say."""
    exact = not fault.coupled or fault.questions == SEQUENCES
    found = answers(fault.questions, fault.lay, seeds, coupled=fault.coupled)
    return list(islice((said for answer in found for said in told(answer, exact=exact)), 1))


def told(answer: Answer, *, exact: bool) -> list[str]:
    return answer.wrong if exact else answer.unsafe


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.says)
def test_a_fault_in_the_searches_is_noticed(fault: Fault, monkeypatch: pytest.MonkeyPatch) -> None:
    fault.plant(monkeypatch)

    assert noticed(fault) != []


def test_without_a_fault_there_is_nothing_to_notice() -> None:
    asked = {(fault.questions, fault.lay, fault.coupled): fault for fault in FAULTS}

    found = [said for fault in asked.values() for said in noticed(fault, range(20))]

    assert found == []
