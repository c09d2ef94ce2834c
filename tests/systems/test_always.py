"""What always reaches what, asked more than once of one plant."""

from garboard.systems.enquiry import Enquiry
from tests.systems.pieces import plant_of
from tests.systems.written import written


def test_one_question_leaves_the_next_as_it_was() -> None:
    plant = plant_of(
        written(
            [
                "AR-001: {kind: receiver}",
                "TV-001: {kind: three-way valve, positions: {one: [common-a], two: [common-b]}}",
                "RV-001: {kind: relief valve, set: 32 bar(g)}",
                "RV-002: {kind: relief valve, set: 32 bar(g)}",
            ],
            ["AR-001.r > TV-001.common", "TV-001.a > RV-001", "TV-001.b > RV-002"],
        )
    )
    enquiry = Enquiry(plant)
    receiver, one, two = (plant.node(f"SA-{tag}") for tag in ("AR-001", "RV-001", "RV-002"))

    answers = [receiver in enquiry.always(targets) for targets in ([one], [two], [one, two])]

    assert answers == [False, False, True]
