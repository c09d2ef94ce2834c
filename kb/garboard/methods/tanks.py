"""What a lying tank holds at a depth, how long a tank lasts, and what a day tank must hold.

The wetted end of a lying cylinder is the sector up to its half angle less a triangle; two ends
dished as half an ellipsoid add pi x a x h^2 x (1 - h / (3 x R)). The half angle is the one whose
cosine is (R - h) / R. The language has no function for it, so it is found by putting the last
answer in again: what is missing is nearly the sine of what is missing. Three steps from a straight
line through empty and full leave less than 1e-14, held by a test against another library.

By hand: D 1 m, L 2 m, h 0.25 m: the half angle is arc cos(0.5) = 1.0472, the end 0.25 x (1.0472 -
0.5 x 0.8660) = 0.15355 m2, so flat ends hold 0.3071 m3; a quarter of the height is less than a
fifth of the whole. 150 kW at 210 g/kWh and 0.84 kg/L burn 37.5 L/h: 800 L with 0.9 usable last 19.2
h, and 8 hours ask for 300 L.
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.tanks import TANK_CONTENTS
from garboard.methods.publications import published

__all__ = ["TANK_CONTENTS_METHOD"]

_OUTSIDE: Final = "outside the tank: depth below zero or above the diameter"
_MEASURE: Final = "consumption without a source: measure it, or read the maker's sheet"

TANK_CONTENTS_METHOD: Final = FormulaMethod(
    name="tank_contents",
    title="Contents of a lying tank, and how long it lasts",
    purpose="Sounding tables for lying cylinders and hours on the day tank.",
    grade=Grade.B,
    parameters=(
        Parameter("D", "inside diameter", "mm"),
        Parameter("L", "length of the straight part", "mm"),
        Parameter(
            "a", "depth of each end; 0 mm where flat", "mm", missing="say how deep each end is"
        ),
        Parameter("h", "depth of the liquid", "mm"),
        Parameter("V", "contents; those at the depth h where left out", "L", default="volume"),
        Parameter(
            "usable",
            "share above the lowest suction",
            missing="the bottom of the tank is not fuel: say what share stands above the suction",
        ),
        Parameter("P", "power", "kW"),
        Parameter("sfoc", "specific fuel consumption", "g/kWh", missing=_MEASURE),
        Parameter(
            "sfoc_from",
            "where the consumption comes from",
            default="measured",
            words=("measured", "maker", "guess"),
            missing=_MEASURE,
        ),
        Parameter("rho", "density of the fuel", "kg/L"),
        Parameter("hours", "time that a day tank must last", "h"),
    ),
    results=(
        Result("volume", "contents", "L"),
        Result("hours", "how long it lasts, down to the suction", "h"),
        Result("day_tank", "contents of a day tank for those hours, above its suction", "L"),
    ),
    limits=(
        Limit("h <= D", _OUTSIDE),
        Limit("h >= 0 mm", _OUTSIDE),
        Limit("D > 0 mm", "the diameter is missing"),
        Limit("L >= 0 mm", "a length below zero"),
        Limit("a >= 0 mm", "an end dished inwards: other formula"),
        Limit("V >= 0 L", "contents below zero"),
        Limit("usable > 0", "the usable share is missing"),
        Limit("usable <= 1", "a share of the tank, not above 1"),
        Limit("P > 0 kW", "the power is missing"),
        Limit("sfoc > 0 g/kWh", _MEASURE),
        Limit("rho > 0 kg/L", "the density is missing"),
        Limit("hours > 0 h", "the time is missing"),
    ),
    valid=(
        "level tank: no trim, no heel, nothing inside it",
        "a lying cylinder, with flat ends or ends of half an ellipsoid, both alike",
        "steady power; the consumption measured, or the maker's at that power",
    ),
    sources=published("jones-tank", "definition"),
    caution="Sounding, trim and heel change the volume. The last part of a tank is water and "
    "sludge.",
    deferral="Stability and tank approval: stability book and surveyor.",
    do_not=("approve a tank", "give endurance without a reserve"),
    proofs=TANK_CONTENTS,
    only={"burn": ("sfoc_from", "measured", "maker")},
    body="""\
R = D / 2 in mm  # inside radius
up = (R - h) / R  # cosine of the half angle that is wet
across = sqrt(2 * R * h - h^2) / R  # its sine
t_0 = pi * h / D  # the half angle, first guess: straight from empty to full
t_1 = t_0 + across * cos(t_0) - up * sin(t_0)  # the sine of what is missing is put on
t_2 = t_1 + across * cos(t_1) - up * sin(t_1)  # and again
wet = t_2 + across * cos(t_2) - up * sin(t_2)  # the half angle, right to the last digit
segment = R^2 * wet - (R - h) * sqrt(2 * R * h - h^2) in m2  # wet part of a flat end
ends = pi * a * h^2 * (1 - h / (3 * R)) in L  # both dished ends together
volume = segment * L + ends in L  # contents
burn = P * sfoc / rho in L/h  # fuel used in an hour
hours = V * usable / burn in h  # how long it lasts
day_tank = burn * hours in L  # day tank for those hours, above its suction
""",
)
