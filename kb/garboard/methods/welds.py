"""Stresses in a simple bracket weld: an order of magnitude to send to a reviewer.

The sum knows one straight line of equal-leg fillet under a steady load. It says nothing about
strength: what the plate, the backing and a cracked root do is not in it.

By hand: 30 kN at 140 mm on 440 mm of 8 mm fillet, joint efficiency 0.7: throat 0.7 x 8 = 5.6 mm,
area 2464 mm2, section 5.6 x 440^2 / 6 = 180 693 mm3. Shear 30 000 / (2464 x 0.7) = 17.39 N/mm2,
bending 30 000 x 140 / (180 693 x 0.7) = 33.2 N/mm2, together 37.49 N/mm2.
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.welds import WELD_LOAD_ESTIMATE
from garboard.methods.publications import published

__all__ = ["WELD_LOAD_ESTIMATE_METHOD"]

_NOT_STEADY: Final = "it is not in this sum, which knows a steady load only"
_PEOPLE: Final = "lifting gear and what people hang from: competent person only"

WELD_LOAD_ESTIMATE_METHOD: Final = FormulaMethod(
    name="weld_load_estimate",
    title="Stresses in a bracket weld",
    purpose="Order of magnitude of the stress in a simple bracket weld, to send to a reviewer.",
    grade=Grade.B,
    parameters=(
        Parameter("P", "load", "N"),
        Parameter("e", "how far from the weld the load hangs", "mm"),
        Parameter("leg", "leg of the fillet", "mm"),
        Parameter("l", "length of weld that counts", "mm"),
        Parameter(
            "joint_eff",
            "joint efficiency, by how the weld is checked",
            missing="joint efficiency missing: say how the weld is checked",
        ),
        Parameter(
            "service",
            "what the bracket does",
            default="bracket",
            words=("bracket",),
            refused={
                "lifting": _PEOPLE,
                "man_riding": _PEOPLE,
                "fatigue": _NOT_STEADY,
                "impact": _NOT_STEADY,
                "slamming": _NOT_STEADY,
                "vibration": _NOT_STEADY,
            },
        ),
    ),
    results=(
        Result("f_s", "direct shear", "N/mm2"),
        Result("f_b", "bending", "N/mm2"),
        Result("resultant", "both together, as a vector sum", "N/mm2"),
        Result("max_normal", "largest normal stress", "N/mm2"),
        Result("max_shear", "largest shear stress", "N/mm2"),
    ),
    limits=(
        Limit("P > 0 N", "the load is missing"),
        Limit("e >= 0 mm", "a distance is not negative"),
        Limit("leg > 0 mm", "the leg of the fillet is missing"),
        Limit("l > 0 mm", "the length of weld is missing"),
        Limit("joint_eff > 0", "joint efficiency missing: say how the weld is checked"),
        Limit("joint_eff <= 1", "a weld is not better than the plate: efficiency is at most 1"),
    ),
    valid=(
        "an equal-leg fillet in one straight line, steady load, elastic",
        "fatigue, impact, slamming and vibration are refused",
        "lifting and man-riding are refused",
    ),
    sources=published("weld-sheet", "definition", "house-rule"),
    caution="Loads and stresses only. A bracket that can hurt somebody is checked by a competent "
    "person.",
    deferral="Surveyor or a qualified engineer; welders with the right approval.",
    do_not=("print pass or fail", "choose a weld size for a lifting point"),
    proofs=WELD_LOAD_ESTIMATE,
    body="""\
t = 0.7 * leg in mm  # throat of the fillet
area = t * l in mm2  # area of the throat
Z = t * l^2 / 6 in mm3  # section of the throat against bending
f_s = P / (area * joint_eff) in N/mm2  # direct shear
f_b = P * e / (Z * joint_eff) in N/mm2  # bending
resultant = sqrt(f_s^2 + f_b^2) in N/mm2  # both together, as a vector sum
max_normal = 0.5 * f_b + 0.5 * sqrt(f_b^2 + 4 * f_s^2) in N/mm2  # largest normal stress
max_shear = 0.5 * sqrt(f_b^2 + 4 * f_s^2) in N/mm2  # largest shear stress
""",
)
