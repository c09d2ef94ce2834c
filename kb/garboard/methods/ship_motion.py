"""Loads on a bracket or lashing from a stated motion: its angle, its period, its heave.

No forecast for this hull: the sum knows the motion it is told and nothing else. Heave is taken
both ways, because the one presses a thing down and the other lets it slide.

By hand: a roll of 25 deg in 10 s with a heave of 0.2 gives (2 pi / 10)^2 x 25 = 9.87 deg/s2, 1.2 x
sin 25 = 0.507 g0 along the deck and 1.2 x cos 25 = 1.088 g0 into it; with the heave the other way
0.8 x cos 25 = 0.725 g0.
"""

from typing import Final

from garboard.calc.method import (
    Contradiction,
    FormulaMethod,
    Grade,
    Limit,
    Parameter,
    Printed,
    Result,
)
from garboard.methods.cases.ship_motion import SHIP_MOTION_LOAD
from garboard.methods.publications import published

__all__ = ["SHIP_MOTION_LOAD_METHOD"]

_SHORT: Final = (
    "the class length and speed factor is not held: it is published for 50 m and over, and below "
    "50 m it turns over, so that a shorter hull would get a lower load"
)

SHIP_MOTION_LOAD_METHOD: Final = FormulaMethod(
    name="ship_motion_load",
    title="Loads from a stated motion",
    purpose="Loads on a bracket or lashing from a stated standard motion, not a forecast for this "
    "hull.",
    grade=Grade.B,
    parameters=(
        Parameter("theta", "roll or pitch angle", "deg"),
        Parameter("T", "period", "s", missing="no acceleration without a period"),
        Parameter("heave", "share of gravity added by heave; it is taken both ways"),
        Parameter("length", "hull length; no factor is made of it", "m"),
        Parameter("speed", "speed; no factor is made of it", "knot"),
        Parameter(
            "question",
            "what the author asks for",
            default="standard_motion",
            words=("standard_motion",),
            refused={
                "class_length_and_speed_factor": _SHORT,
                "forecast": "a forecast for this hull needs a seakeeping calculation",
            },
        ),
    ),
    results=(
        Result("alpha", "angular acceleration", "deg/s2"),
        Result("lateral", "load along the deck", "g0"),
        Result("normal", "load into the deck", "g0"),
        Result("lateral_other", "load along the deck, heave the other way", "g0"),
        Result("normal_other", "load into the deck, heave the other way", "g0"),
    ),
    limits=(
        Limit("theta <= 45 deg", "outside the criterion: above 45 degrees"),
        Limit("theta > 0 deg", "the angle is missing"),
        Limit("T > 0 s", "no acceleration without a period"),
        Limit("abs(heave) <= 1", "outside the criterion: heave above one gravity"),
    ),
    valid=(
        "the motion that is stated, nothing else; what the distance from the roll axis adds is "
        "added by the user",
        "the class length and speed factor is refused, and so is a forecast for this hull",
    ),
    sources=published("transport-motion-sheet", "definition", "house-rule"),
    caution="Slamming, shipping green water and vibration are not in these numbers.",
    deferral="Surveyor; lashing and securing by the applicable code.",
    do_not=(
        "state that a foundation is strong enough",
        "extrapolate class factors below 50 m",
    ),
    proofs=SHIP_MOTION_LOAD,
    contradictions=(
        Contradiction(
            topic="the cargo-securing factor for length and speed, below 50 m",
            printed=(
                Printed("1.28 at 24 m and 9 knots", "its formula, published for 50 m and over"),
                Printed("1.43 at 30 m and 10 knots", "the same formula"),
            ),
            effect="below 50 m the factor turns over: a shorter hull would get a lower load",
            handbook="holds no such factor, and refuses to be asked for one",
            sources=("house-rule",),
        ),
    ),
    body="""\
alpha = (2 * pi / T)^2 * theta in deg/s2  # angular acceleration
lateral = (1 + heave) * sin(theta) * 1 g0 in g0  # load along the deck
normal = (1 + heave) * cos(theta) * 1 g0 in g0  # load into the deck
lateral_other = (1 - heave) * sin(theta) * 1 g0 in g0  # load along the deck, heave the other way
normal_other = (1 - heave) * cos(theta) * 1 g0 in g0  # load into the deck, heave the other way
""",
)
