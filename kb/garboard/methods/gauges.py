"""The scale of a pressure gauge, by two published habits that disagree, and the error it may have.

One habit keeps the working reading at 50 to 75 percent of the scale, the other at 25 to 75
percent. Both are shown; neither is called right. The accuracy class is a share of the full scale
and holds at every reading, so the error of a large gauge at a small pressure is large.

By hand: 30 bar(g) / 0.75 = 40 bar(g), 30 / 0.5 = 60 bar(g), 30 / 0.25 = 120 bar(g). A 1 % gauge
of 300 psi(g) may be 3 psi out wherever its needle stands.
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
from garboard.methods.cases.gauges import GAUGE_RANGE
from garboard.methods.publications import published

__all__ = ["GAUGE_RANGE_METHOD"]

GAUGE_RANGE_METHOD: Final = FormulaMethod(
    name="gauge_range",
    title="Scale of a pressure gauge",
    purpose="Choose a pressure gauge scale; two published habits disagree, so both are shown.",
    grade=Grade.C,
    parameters=(
        Parameter("working", "working reading", "bar(g)"),
        Parameter("gauge_class", "accuracy class, a share of full scale"),
        Parameter("full_scale", "full scale", "bar(g)"),
    ),
    results=(
        Result("scale_min_half", "smallest scale, 50 to 75 percent habit", "bar(g)"),
        Result("scale_max_half", "largest scale, the same habit", "bar(g)"),
        Result("scale_min_middle", "smallest scale, 25 to 75 percent habit", "bar(g)"),
        Result("scale_max_middle", "largest scale, the same habit", "bar(g)"),
        Result("error", "allowed error at any reading", "bar(d)"),
    ),
    limits=(
        Limit(
            "working > 0 bar(g)", "no working reading: the habits are for gauges above atmosphere"
        ),
        Limit("full_scale > 0 bar(g)", "the full scale is missing"),
        Limit("gauge_class > 0", "the accuracy class is missing"),
        Limit("gauge_class < 1", "an accuracy class is a share of full scale: write 1 %, not 1"),
    ),
    valid=(
        "steady pressure",
        "one single recommended scale is never given: the published habits disagree",
    ),
    sources=published("gauge-practice-half", "gauge-practice-middle", "definition"),
    caution="Accuracy is a share of full scale: a big gauge reads a small pressure badly.",
    deferral="Gauge maker; the surveyor for statutory gauges.",
    do_not=("name one right scale",),
    proofs=GAUGE_RANGE,
    contradictions=(
        Contradiction(
            topic="where on its scale a gauge should work",
            printed=(
                Printed("50 to 75 percent of the scale", "one published habit"),
                Printed("25 to 75 percent of the scale", "another"),
            ),
            effect="at 30 bar gauge the largest scale is 60 bar by the one and 120 bar by the other",
            handbook="gives the scales of both and calls neither right",
            sources=("gauge-practice-half", "gauge-practice-middle"),
        ),
    ),
    body="""\
scale_min_half = working / 0.75 in bar(g)  # needle at three quarters of the scale
scale_max_half = working / 0.5 in bar(g)  # needle at the middle
scale_min_middle = working / 0.75 in bar(g)  # needle at three quarters of the scale
scale_max_middle = working / 0.25 in bar(g)  # needle at one quarter
error = gauge_class * difference(full_scale) in bar(d)  # at every reading
""",
)
