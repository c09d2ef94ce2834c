"""Rule bore of bilge mains and branches, the pump that goes with them, and a pipe near enough.

The rule's formula is printed for metres and gives millimetres, so its constants carry mm/m here:
a length in feet is then converted by the units and cannot be typed into the metre form.

By hand: 14 m x (12 m + 6.4 m) gives 25 + 1.68 x sqrt(257.6) = 51.96 mm for the main; a
compartment of 28 m gives 25 + 2.15 x sqrt(28 x 18.4) = 73.80 mm for its branch; 151.63 mm takes
5.66 x 151.63^2 / 1000 = 130.1 m3/h.
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
from garboard.methods.cases.bilge import BILGE_PIPE_BORE
from garboard.methods.publications import published

__all__ = ["BILGE_PIPE_BORE_METHOD"]

_MISSING: Final = "dimension missing: zero or negative"

BILGE_PIPE_BORE_METHOD: Final = FormulaMethod(
    name="bilge_pipe_bore",
    title="Bore of bilge main and branch",
    purpose="Rule bore of the bilge main and of a branch, the pump capacity that goes with it, "
    "and the commercial pipe that is near enough.",
    grade=Grade.B,
    parameters=(
        Parameter("L", "length between perpendiculars", "m"),
        Parameter("B", "moulded breadth", "m"),
        Parameter("D", "moulded depth to the bulkhead deck", "m"),
        Parameter("c", "length of the compartment drained", "m"),
        Parameter(
            "d", "bore wanted; the rule bore of the main where left out", "mm", default="d_main"
        ),
        Parameter("bore", "inside diameter of the pipe offered", "mm"),
    ),
    results=(
        Result("d_main", "bore of the main", "mm"),
        Result("d_branch", "bore of the branch", "mm"),
        Result("Q", "pump capacity at 2 m/s in the main", "m3/h"),
        Result("accepted", "1: pipe bore near enough, 0: too small"),
    ),
    limits=(
        Limit("c <= L", "a compartment cannot be longer than the vessel"),
        Limit("L > 0 m", _MISSING),
        Limit("B > 0 m", _MISSING),
        Limit("D > 0 m", _MISSING),
        Limit("c > 0 m", _MISSING),
        Limit("d > 0 mm", _MISSING),
        Limit("bore > 0 mm", _MISSING),
    ),
    valid=(
        "dimensions as the rule defines them",
        "a length without a unit is refused by the language itself; feet are converted before use",
    ),
    sources=published(
        "solas-ii-1-35-1",
        "bki-machinery-2016",
        "gerr-boat-systems",
        "46cfr56.50-57",
        "hsc-code-10.3",
        "bilge-design-exercise",
        "definition",
    ),
    caution="Take the larger of the rule bore and what the pump and head need. A strainer, hose "
    "or bend can undo the bore.",
    deferral="Class or flag; small vessels follow their own tables.",
    do_not=("choose the pump", "accept a pipe more than a quarter inch under the rule bore"),
    proofs=BILGE_PIPE_BORE,
    contradictions=(
        Contradiction(
            topic="bore of a branch: compartment of 28 m, breadth 12 m, depth 6.4 m",
            printed=(
                Printed("51.3 mm, with 2.5 typed for 25", "a student design exercise"),
                Printed("73.8 mm, by the formula", "the convention, regulation II-1/35-1"),
            ),
            effect="a dropped digit makes the pipe 30 percent too narrow",
            handbook="works the formula out and gives 73.8 mm; 51.3 mm is never reproduced",
            sources=("bilge-design-exercise", "solas-ii-1-35-1"),
        ),
    ),
    body="""\
d_main = 25 mm + 1.68 mm/m * sqrt(L * (B + D)) in mm  # bore of the main
d_branch = 25 mm + 2.15 mm/m * sqrt(c * (B + D)) in mm  # bore of the branch
Q = 0.00566 m3/(h.mm2) * d^2 in m3/h  # pump capacity at 2 m/s
accepted = 1 if round((d - bore) / 0.001 mm) <= 6000 else 0  # at most 6 mm under, to a thousandth
""",
)
