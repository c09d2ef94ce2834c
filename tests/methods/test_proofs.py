"""Every published, tabled or constructed case comes out as it is printed."""

from dataclasses import replace

import pytest

from garboard.calc.method import Expect, Method, Proof
from garboard.methods import METHODS
from garboard.methods.proof import Outcome, prove, prove_all

CASES = [(method, proof) for method in METHODS.values() for proof in method.proofs]
NAMED = {proof.name: (method, proof) for method, proof in CASES}
WITH_MISTAKES = [(method, proof) for method, proof in CASES if proof.must_not_give]


@pytest.mark.parametrize(("method", "proof"), CASES, ids=NAMED)
def test_a_case_comes_out_as_it_is_printed(method: Method, proof: Proof) -> None:
    result = prove(method, proof)

    assert (result.outcome, result.why) == (Outcome.REPRODUCED, ""), result.ours


@pytest.mark.parametrize(
    ("method", "proof"), WITH_MISTAKES, ids=[proof.name for _, proof in WITH_MISTAKES]
)
def test_the_answer_of_a_known_mistake_would_be_caught(method: Method, proof: Proof) -> None:
    for wrong, _ in proof.must_not_give:
        result = prove(method, replace(proof, value=wrong, must_not_give=()))

        assert result.outcome is Outcome.DIFFERS, wrong


def test_all_cases_are_run_and_none_is_left_out() -> None:
    results = prove_all(METHODS)

    assert [result.proof.name for result in results] == list(NAMED)
    assert {result.outcome for result in results} == {Outcome.REPRODUCED}


def test_a_result_shows_both_figures_and_their_difference() -> None:
    result = prove(*NAMED["bore-main-14x12"])

    assert (result.ours, result.published) == ("51.964 mm", "51.96 mm")
    assert result.difference == pytest.approx(0.0075, abs=0.0002)


def test_an_answer_that_is_a_known_mistake_fails_within_any_tolerance() -> None:
    method, proof = NAMED["bore-main-14x12"]
    loose = replace(proof, relative=0.5, must_not_give=(("52 mm", "rounded up by habit"),))

    result = prove(method, loose)

    assert (result.outcome, result.why) == (Outcome.DIFFERS, "rounded up by habit")


def test_a_call_that_should_be_refused_and_is_not_fails() -> None:
    method, proof = NAMED["bore-main-14x12"]

    result = prove(method, replace(proof, expect=Expect.REFUSE, value="dimension missing"))

    assert (result.outcome, result.why) == (Outcome.DIFFERS, "it is not refused")


def test_a_refusal_for_another_reason_fails() -> None:
    method, proof = NAMED["start-no-minimum"]

    result = prove(method, replace(proof, value="above 40 bar gauge"))

    assert (result.outcome, result.why) == (
        Outcome.DIFFERS,
        "it is refused for another reason",
    )


def test_an_alarm_where_a_plain_value_is_expected_fails() -> None:
    method, proof = NAMED["fire-school-120-ft-gap"]

    result = prove(method, replace(proof, expect=Expect.VALUE))

    assert (result.outcome, result.why) == (Outcome.DIFFERS, "an alarm sounds")


def test_a_missing_alarm_fails() -> None:
    method, proof = NAMED["fire-school-110-ft"]

    result = prove(method, replace(proof, expect=Expect.ALARM))

    assert (result.outcome, result.why) == (Outcome.DIFFERS, "no alarm sounds")


def test_a_refused_call_where_a_value_is_expected_fails() -> None:
    method, proof = NAMED["start-no-minimum"]

    result = prove(method, replace(proof, expect=Expect.VALUE, value="12"))

    assert (result.outcome, result.why) == (Outcome.DIFFERS, "it gives no answer")


def test_a_number_of_another_kind_is_no_reproduction() -> None:
    method, proof = NAMED["datum-100psig-abs"]

    result = prove(method, replace(proof, value="7.90801 bar(g)", must_not_give=()))

    assert (result.outcome, result.why) == (
        Outcome.DIFFERS,
        "it is another kind of quantity",
    )


def test_another_word_is_no_reproduction() -> None:
    method, proof = NAMED["req-independent-share"]

    result = prove(method, replace(proof, value="below"))

    assert (result.outcome, result.ours) == (Outcome.DIFFERS, "within")


def test_a_single_result_is_found_under_the_name_of_the_call() -> None:
    result = prove(*NAMED["closed-30-bar-45-to-15"])

    assert result.outcome is Outcome.REPRODUCED
    assert result.number == pytest.approx(27.0756, abs=1e-4)


def test_how_often_a_pressure_went_into_a_number_does_not_make_it_another_kind() -> None:
    method, proof = NAMED["water-vapour-20"]

    assert prove(method, proof).outcome is Outcome.REPRODUCED
    assert prove(method, replace(proof, value="17.3 K(d)")).why == (
        "it is another kind of quantity"
    )
