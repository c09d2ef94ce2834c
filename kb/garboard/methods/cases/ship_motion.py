"""Cases for the loads of a stated motion."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import HOUSE, OWN

__all__ = ["SHIP_MOTION_LOAD"]

_ROLL: Final = {"theta": "25 deg", "T": "10 s", "heave": "0.2"}
_MOTION: Final = partial(
    Proof,
    call=_ROLL,
    source="transport-motion-sheet",
    seen="secondary",
    basis="published",
    absolute="0.0001 g0",
)
_HOUSE: Final = partial(HOUSE, expect=Expect.REFUSE)

SHIP_MOTION_LOAD: Final = (
    _MOTION(
        name="motion-roll-25-alpha",
        result="alpha",
        value="9.87 deg/s2",
        absolute="0.001 deg/s2",
        must_not_give=(("0.17226 deg/s2", "radians"),),
        independent="scipy 1.17.1: 9.8696 deg/s2",
    ),
    _MOTION(
        name="motion-roll-25-lateral",
        result="lateral",
        value="0.5071 g0",
        independent="scipy 1.17.1: 0.507142 g0",
    ),
    _MOTION(
        name="motion-roll-25-normal",
        result="normal",
        value="1.0876 g0",
        independent="scipy 1.17.1: 1.08757 g0",
    ),
    _MOTION(
        name="motion-roll-25-down-lateral",
        call={**_ROLL, "heave": "-0.2"},
        result="lateral",
        value="0.3381 g0",
        independent="scipy 1.17.1: 0.338095 g0",
    ),
    _HOUSE(
        name="motion-short-hull-factor",
        call={
            "length": "24 m",
            "speed": "9 knot",
            "question": "class_length_and_speed_factor",
        },
        result="lateral",
        value="below 50 m",
    ),
    _MOTION(
        name="motion-pitch-15-lateral",
        call={**_ROLL, "theta": "15 deg"},
        result="lateral",
        value="0.3106 g0",
        independent="scipy 1.17.1: 0.310583 g0",
    ),
    OWN(
        name="motion-roll-25-other-way-lateral",
        call=_ROLL,
        result="lateral_other",
        value="0.338095 g0",
        absolute="0.000001 g0",
        note="the other way is what the printed case with a heave of -0.2 gives",
    ),
    OWN(
        name="motion-roll-25-other-way-normal",
        call=_ROLL,
        result="normal_other",
        value="0.725046 g0",
        absolute="0.000001 g0",
        note="0.8 x cos 25",
    ),
    _HOUSE(
        name="motion-forecast",
        call={**_ROLL, "question": "forecast"},
        result="lateral",
        value="a forecast for this hull needs a seakeeping calculation",
    ),
    _HOUSE(
        name="motion-no-period",
        call={"theta": "25 deg", "heave": "0.2"},
        result="alpha",
        value="no acceleration without a period",
    ),
    OWN(
        name="motion-above-45-degrees",
        call={**_ROLL, "theta": "46 deg"},
        result="lateral",
        value="above 45 degrees",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="motion-at-45-degrees",
        call={**_ROLL, "theta": "45 deg"},
        result="alpha",
        value="17.7653 deg/s2",
        absolute="0.0001 deg/s2",
    ),
    OWN(
        name="motion-heave-above-gravity",
        call={**_ROLL, "heave": "1.05"},
        result="lateral",
        value="heave above one gravity",
        expect=Expect.REFUSE,
    ),
)
