"""What became of a finding, and which were refused and right after all."""

from datetime import date

from garboard.changes.finding_steps import refused_and_right, steps_of
from garboard.errors import Where
from garboard.records.base import Person
from garboard.records.finding import Finding, Found
from garboard.records.signoff import Capacity, SignOff


def line(day: int, to: str | None, capacity: Capacity = Capacity.APPROVER) -> SignOff:
    return SignOff(capacity=capacity, by="lead", on=date(2031, 5, day), to=to, words=f"on {day}")


def finding(*signed: SignOff) -> Finding:
    return Finding(
        where=Where(""), found=Found(by=Person("volunteer-1"), on=date(2031, 5, 1)), signed=signed
    )


REFUSED, AGAIN, TAKEN = line(3, "not accepted"), line(9, "raised"), line(10, "accepted")


def test_the_steps_stand_in_the_order_of_their_days_whatever_the_lines_order() -> None:
    found = steps_of(finding(TAKEN, line(5, None), REFUSED, AGAIN))

    assert [(one.on.day, one.what) for one in found] == [
        (1, "raised"),
        (3, "refused"),
        (9, "raised again"),
        (10, "accepted"),
    ]
    assert [one.words for one in found] == ["", "on 3", "on 9", "on 10"]


def test_refused_raised_again_and_accepted_is_right_after_all() -> None:
    found = refused_and_right(finding(REFUSED, AGAIN, TAKEN, line(20, "evaluated")))

    assert found is not None
    assert (found.refused, found.raised, found.accepted) == (REFUSED, AGAIN, TAKEN)


def test_refused_twice_and_then_accepted_counts_the_last_refusal() -> None:
    second = line(12, "not accepted")

    found = refused_and_right(
        finding(REFUSED, AGAIN, second, line(13, "raised"), line(14, "accepted"))
    )

    assert found is not None
    assert found.refused == second


def test_what_stays_refused_or_was_never_refused_is_not_in_it() -> None:
    assert refused_and_right(finding(REFUSED)) is None
    assert refused_and_right(finding(REFUSED, AGAIN)) is None
    assert refused_and_right(finding(REFUSED, AGAIN, line(11, "not accepted"))) is None
    assert refused_and_right(finding(TAKEN)) is None
