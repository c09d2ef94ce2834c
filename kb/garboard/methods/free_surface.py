"""The free-surface figure of one slack tank, for the stability book.

The tank is counted by its whole breadth; divisions across that breadth cut the moment of each part by
the cube of its share, and there are as many parts, so the figure falls with the square.

By hand: 15 m x (10 m)^3 / 12 = 1250 m4; 1250 x 1.025 / 8000 = 0.16016 m, and 0.04004 m with one
wall down the middle, which makes two divisions.
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.free_surface import FREE_SURFACE_INFORMATION
from garboard.methods.publications import published

__all__ = ["FREE_SURFACE_INFORMATION_METHOD"]

_OTHER: Final = "not rectangular: another moment of area, worked by the naval architect"

FREE_SURFACE_INFORMATION_METHOD: Final = FormulaMethod(
    name="free_surface_information",
    title="Free surface of a slack tank",
    purpose="Give the stability book its free-surface figure for a slack tank.",
    grade=Grade.C,
    parameters=(
        Parameter("l", "length of the tank", "m"),
        Parameter("b", "breadth of the tank, over all its divisions", "m"),
        Parameter("rho", "density of the liquid", "t/m3"),
        Parameter("displacement", "displacement of the ship", "t"),
        Parameter("n", "equal divisions across the breadth; 1 where it is open", default="1"),
        Parameter(
            "shape",
            "shape of the tank seen from above",
            default="rectangular",
            words=("rectangular", "other"),
            missing=_OTHER,
        ),
    ),
    results=(Result("FSC", "virtual rise of the centre of gravity", "m"),),
    limits=(
        Limit("n >= 1", "divisions below 1: an open tank is one division"),
        Limit("n <= floor(n)", "divisions are counted: a whole number"),
        Limit("l > 0 m", "the length is missing"),
        Limit("b > 0 m", "the breadth is missing"),
        Limit("rho > 0 t/m3", "the density is missing"),
        Limit("displacement > 0 t", "the displacement is missing"),
    ),
    valid=(
        "rectangular tank, small heel, equal divisions that are tight",
        "the displacement with the liquid as it lies now",
    ),
    sources=published("ship-stability-masters", "definition"),
    caution="Information for the stability book, never a stability judgement.",
    deferral="Naval architect and surveyor.",
    do_not=("judge stability", "add or allow weight"),
    proofs=FREE_SURFACE_INFORMATION,
    only={"i": ("shape", "rectangular")},
    body="""\
i = l * b^3 / 12 in m4  # moment of area of the open surface
FSC = i * rho / (displacement * n^2) in m  # virtual rise of the centre of gravity
""",
)
