"""Cases for the bore of bilge pipes."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["BILGE_PIPE_BORE"]

_EXERCISE: Final = partial(
    Proof, source="bilge-design-exercise", seen="secondary", basis="published"
)
_NEAR: Final = partial(Proof, source="46cfr56.50-57", seen="original", basis="rule")

BILGE_PIPE_BORE: Final = (
    _EXERCISE(
        name="bore-main-14x12",
        call={"L": "14 m", "B": "12 m", "D": "6.4 m"},
        result="d_main",
        value="51.96 mm",
        absolute="0.005 mm",
        independent="scipy 1.17.1: 51.9639 mm",
        note="an arithmetic check only: the ship in the exercise is longer than the L it typed",
    ),
    Proof(
        name="bore-main-83-m",
        call={"L": "83 m", "B": "14 m", "D": "7 m"},
        result="d_main",
        value="95.1387 mm",
        absolute="0.001 mm",
        source="bki-machinery-2016",
        seen="secondary",
        basis="published",
        independent="scipy 1.17.1: 95.13874 mm",
    ),
    _EXERCISE(
        name="bore-pump-151.63",
        call={"d": "151.63 mm"},
        result="Q",
        value="130 m3/h",
        absolute="0.5 m3/h",
        independent="scipy 1.17.1: 130.015 m3/h, 2 m/s through the bore",
    ),
    Proof(
        name="bore-branch-28",
        call={"c": "28 m", "B": "12 m", "D": "6.4 m", "L": "78 m"},
        result="d_branch",
        value="73.8 mm",
        absolute="0.01 mm",
        source="solas-ii-1-35-1",
        seen="secondary",
        basis="constructed",
        must_not_give=(("51.3 mm", "2.5 typed for 25, as one design exercise did"),),
        independent="scipy 1.17.1: 73.8007 mm",
    ),
    OWN(
        name="bore-compartment-too-long",
        call={"c": "30 m", "L": "24 m", "B": "6.5 m", "D": "3.2 m"},
        result="d_branch",
        value="a compartment cannot be longer than the vessel",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="bore-main-in-feet",
        call={"L": "45.93175853 ft", "B": "39.37007874 ft", "D": "20.99737533 ft"},
        result="d_main",
        value="51.96 mm",
        absolute="0.005 mm",
        must_not_give=(("113.46 mm", "feet typed into the metre form"),),
        note="the first case in feet",
    ),
    OWN(
        name="bore-pump-of-the-main",
        call={"L": "83 m", "B": "14 m", "D": "7 m"},
        result="Q",
        value="51.23 m3/h",
        absolute="0.005 m3/h",
        note="5.66 x 95.1387^2 / 1000",
    ),
    _NEAR(
        name="bore-six-under",
        call={"d": "57 mm", "bore": "51 mm"},
        result="accepted",
        value="1",
    ),
    _NEAR(
        name="bore-more-than-six-under",
        call={"d": "57.2 mm", "bore": "51 mm"},
        result="accepted",
        value="0",
        must_not_give=(("1", "a pipe more than a quarter inch under the rule bore"),),
    ),
    OWN(
        name="bore-no-breadth",
        call={"L": "24 m", "B": "0 m", "D": "3.2 m"},
        result="d_main",
        value="dimension missing",
        expect=Expect.REFUSE,
    ),
)
