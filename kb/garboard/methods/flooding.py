"""What a hole below the water lets in, beside what a pump moves.

Water comes in with the speed it would have fallen from the level outside, less what the edge of
the hole holds back. Once the level inside covers the hole less comes in; that is not counted on.

By hand: a round hole of 50 mm one metre down is 0.0019635 m2 and the water comes at sqrt(2 x 9.80665
x 1) = 4.4287 m/s; with a sharp edge, 0.6, that is 0.6 x 0.0019635 x 4.4287 = 0.0052175 m3/s or 313
L/min. A pump of 190 L/min, rated at no height at all, does not keep up with it.
"""

from typing import Final

from garboard.calc.method import Alarm, FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.flooding import FLOODING_RATE
from garboard.methods.publications import published

__all__ = ["FLOODING_RATE_METHOD"]

FLOODING_RATE_METHOD: Final = FormulaMethod(
    name="flooding_rate",
    title="Water that comes in through a hole",
    purpose="Show what a hole really lets in, beside the pump capacity.",
    grade=Grade.C,
    parameters=(
        Parameter("d_hole", "diameter of a round hole", "mm"),
        Parameter(
            "A", "area of the hole, where it is not round", "m2", default="pi / 4 * d_hole^2"
        ),
        Parameter("h", "depth of the hole below the water outside", "m"),
        Parameter(
            "Cd",
            "discharge coefficient; 0.6 for a sharp edge",
            missing="a coefficient has a source: 0.6 is common practice for a sharp edge",
        ),
        Parameter("pump", "capacity of the pump at no height, to be held beside it", "L/min"),
    ),
    results=(Result("Q", "inflow", "L/min"),),
    limits=(
        Limit("h > 0 m", "hole above water: nothing comes in through it while she lies like this"),
        Limit("A > 0 m2", "the size of the hole is missing"),
        Limit("Cd > 0", "a discharge coefficient is a share above 0"),
        Limit("Cd <= 1", "a discharge coefficient is a share, not above 1"),
    ),
    valid=(
        "water outside at a steady level, water inside below the hole",
        "a hole in a thin plate; a long pipe or hose lets in less",
    ),
    sources=published("definition"),
    caution="Pumps are rated at no height. Stop the hole before counting on the pump.",
    deferral="Damage stability belongs to the stability book and the surveyor.",
    do_not=("state that a pump can hold a leak",),
    proofs=FLOODING_RATE,
    alarms=(Alarm("Q > pump", "more comes in than the pump moves even at no height"),),
    body="""\
Q = Cd * A * sqrt(2 * 9.80665 m/s^2 * h) in L/min  # inflow
""",
)
