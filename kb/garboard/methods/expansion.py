"""How far a pipe moves when it gets hot.

The coefficient is the whole of the answer: four published figures for a steel pipe of 10 m are 28
percent apart. So it is never guessed from a material, and it comes with the temperatures it was
given for; outside those it is refused. Where it comes from stands in brackets behind the line, as
behind every number of a calculation.

By hand: 100 ft of alloy steel, 8e-6 per degF, through 180 degF: 1200 inch x 8e-6 x 180 = 1.728
inch. The coefficient counts per degree Fahrenheit, and so does the change; 1.8 has no place here.
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
from garboard.methods.cases.expansion import THERMAL_MOVEMENT
from garboard.methods.publications import published

__all__ = ["THERMAL_MOVEMENT_METHOD"]

_NO_SOURCE: Final = (
    "coefficient without source or range: published steel values spread by 30 percent, and none is "
    "guessed from the name of a material"
)
_RANGE: Final = (
    "coefficient without source or range: say the temperatures that its source gives it for"
)
_OUTSIDE: Final = "outside the temperatures that the coefficient is given for"

THERMAL_MOVEMENT_METHOD: Final = FormulaMethod(
    name="thermal_movement",
    title="Movement of a hot pipe",
    purpose="How far a hot or long pipe moves, so that a flexible connection and supports can be "
    "reviewed.",
    grade=Grade.B,
    parameters=(
        Parameter(
            "alpha",
            "expansion coefficient over the stated range",
            "1/K",
            missing=_NO_SOURCE,
            required=True,
        ),
        Parameter("L", "length", "m"),
        Parameter("dT", "change of temperature, a difference", "K(d)", default="T_hot - T_cold"),
        Parameter("T_cold", "temperature at which the pipe was fitted", "degC"),
        Parameter("T_hot", "hottest temperature in service", "degC"),
        Parameter(
            "range_from",
            "lowest temperature the coefficient is given for",
            "degC",
            missing=_RANGE,
            required=True,
        ),
        Parameter(
            "range_to",
            "highest temperature the coefficient is given for",
            "degC",
            missing=_RANGE,
            required=True,
        ),
        Parameter(
            "material",
            "name of the material; no coefficient is guessed from it",
            words=("steel", "stainless_steel", "copper", "cupronickel", "brass", "aluminium"),
        ),
    ),
    results=(Result("dL", "movement", "mm"),),
    limits=(
        Limit("alpha > 0 1/K", _NO_SOURCE),
        Limit("L > 0 m", "the length is missing"),
        Limit("range_from < range_to", _RANGE),
        Limit("abs(dT) <= range_to - range_from", _OUTSIDE),
        Limit("T_cold >= range_from", _OUTSIDE),
        Limit("T_cold <= range_to", _OUTSIDE),
        Limit("T_hot >= range_from", _OUTSIDE),
        Limit("T_hot <= range_to", _OUTSIDE),
    ),
    valid=(
        "a coefficient with its source, which stands in brackets behind the line, and its range",
        "a change typed as a thermometer reading is refused by the language itself",
    ),
    sources=published("expansion-table", "definition", "house-rule"),
    caution="The movement is real whether or not the supports allow it. Report it; do not choose "
    "a hose from it.",
    deferral="Exhaust and steam lines: maker and surveyor.",
    do_not=("choose a hose or bellows", "use one coefficient for all steels"),
    proofs=THERMAL_MOVEMENT,
    contradictions=(
        Contradiction(
            topic="movement of 10 m of steel pipe from 20 to 180 degC",
            printed=(
                Printed("24 mm", "a printed example"),
                Printed("18.7 mm, from 6.5e-6 per degF", "the same page"),
                Printed("22.4 mm, from 14e-6 per K", "the same page"),
                Printed("19.5 mm, from 12.2e-6 per K", "another sheet"),
            ),
            effect="four answers, 28 percent apart: a coefficient without a range is no data",
            handbook="holds no coefficient; it refuses one that has no source and no range of "
            "temperature",
            sources=("expansion-table",),
        ),
    ),
    body="""\
dL = alpha * L * dT in mm  # movement
""",
)
