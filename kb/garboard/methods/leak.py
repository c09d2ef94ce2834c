"""A leak from a timed fall of pressure, corrected for the temperature at both ends.

What is lost is an amount: the air held at the start less the air held at the end. Air that only
cools loses pressure and nothing else, so without both temperatures there is no answer. Several
intervals of one fall make a straight line of leak over pressure, from which the leak at the
working pressure is read. A pair left out is put at the middle of those before it, where it moves
neither the slope nor the line.

By hand: 629 ft3 from 90 to 80 psi(g) in 10.7 min at an even temperature under 14.7 psi(a) is 629 x
10 / (14.7 x 10.7) = 39.99 ft3/min; from 80 to 70 between 10.7 and 23.2833 min it is 629 x 10 /
(14.7 x 12.5833) = 34.0. The five printed leaks 40 34 21 15 9 ft3/min at 85 75 55 45 35 psi(g) have
the mean 23.8 at 59; the slope is 1074 / 1720 = 0.62442, so at 100 psi(g) 23.8 + 41 x 0.62442 =
49.40 ft3/min.
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
from garboard.methods.cases.leak import LEAK_BY_PRESSURE_DECAY
from garboard.methods.deck import deck_temperature
from garboard.methods.publications import published

__all__ = ["LEAK_BY_PRESSURE_DECAY_METHOD"]

_COOLING: Final = "a cooling receiver looks like a leak: read the temperature at both ends"
_IDEAL: Final = "outside the ideal range, above 40 bar gauge air is no ideal gas"
_VACUUM: Final = "below a perfect vacuum"
_LINE: Final = "a straight line needs at least two intervals, each with its pressure and its leak"

LEAK_BY_PRESSURE_DECAY_METHOD: Final = FormulaMethod(
    name="leak_by_pressure_decay",
    title="Leak from a timed fall of pressure",
    purpose="Put a number on a leak from a timed fall of pressure, and read a hold test honestly.",
    grade=Grade.B,
    parameters=(
        Parameter("V", "volume under test", "m3", missing="volume under test unknown: find it"),
        Parameter("p_1", "reading at the start of the interval", "bar(g)"),
        Parameter("p_2", "reading at the end", "bar(g)"),
        Parameter("t_1", "clock or elapsed time at the start", "min"),
        Parameter("t_2", "clock or elapsed time at the end", "min"),
        Parameter("T_1", "air temperature at the start", "K(a)", missing=_COOLING),
        Parameter("T_2", "air temperature at the end", "K(a)", missing=_COOLING),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
        Parameter("p_working", "working pressure", "bar(g)"),
        Parameter("p_mid_1", "middle pressure of one interval", "bar(g)", missing=_LINE),
        Parameter("leak_1", "leak found in it", "L(n)/min", missing=_LINE),
        Parameter("p_mid_2", "middle pressure of a second one", "bar(g)", missing=_LINE),
        Parameter("leak_2", "leak found in it", "L(n)/min", missing=_LINE),
        Parameter(
            "p_mid_3",
            "middle pressure of a third one; left out, the middle of those before",
            "bar(g)",
            default="p_mid_1 + (p_mid_2 - p_mid_1) / 2",
        ),
        Parameter("leak_3", "leak found in it", "L(n)/min", default="(leak_1 + leak_2) / 2"),
        Parameter(
            "p_mid_4",
            "middle pressure of a fourth one; left out, the middle of those before",
            "bar(g)",
            default="p_mid_1 + ((p_mid_2 - p_mid_1) + (p_mid_3 - p_mid_1)) / 3",
        ),
        Parameter(
            "leak_4", "leak found in it", "L(n)/min", default="(leak_1 + leak_2 + leak_3) / 3"
        ),
        Parameter(
            "p_mid_5",
            "middle pressure of a fifth one; left out, the middle of those before",
            "bar(g)",
            default="p_mid_1"
            " + ((p_mid_2 - p_mid_1) + (p_mid_3 - p_mid_1) + (p_mid_4 - p_mid_1)) / 4",
        ),
        Parameter(
            "leak_5",
            "leak found in it",
            "L(n)/min",
            default="(leak_1 + leak_2 + leak_3 + leak_4) / 4",
        ),
    ),
    results=(
        Result("Q", "leak, an amount of free air", "L(n)/min"),
        Result("Q_volume", "the same as a volume at the barometer and at T_1", "L/min"),
        Result("Q_at_working_pressure", "leak read off the straight line", "L(n)/min"),
    ),
    limits=(
        Limit(
            "t_2 > t_1",
            "time runs backwards; cumulative times are read as differences, start before end",
        ),
        *deck_temperature("T_1"),
        *deck_temperature("T_2"),
        Limit("V > 0 m3", "volume under test unknown"),
        Limit("p_1 <= 40 bar(g)", _IDEAL),
        Limit("p_2 <= 40 bar(g)", _IDEAL),
        Limit("difference(p_1) + p_atm >= 0 bar(a)", _VACUUM),
        Limit("difference(p_2) + p_atm >= 0 bar(a)", _VACUUM),
        Limit(
            "abs(p_mid_2 - p_mid_1) > 0 bar(d)",
            "two intervals at one and the same pressure make no line",
        ),
    ),
    valid=(
        "volume known; interval short against the fall",
        "temperature recorded at both ends, of the air and not of the room",
        "a leak below zero says that air came in or that a reading is wrong",
        "the straight line is of up to five intervals; past the last of them it is a guess",
        "it gives a leak and no verdict: whether a hold test is passed is for who signs it",
    ),
    sources=published("navfac-mo-209", "leak-training-example", "definition", "house-rule"),
    caution="Never look for a leak with a hand or a flame. Soap and a gauge.",
    deferral="A failed hold test goes to the person who signs the test, not to a spanner on a "
    "fitting under pressure.",
    do_not=("call a hold test passed", "correct a test that has no temperatures"),
    proofs=LEAK_BY_PRESSURE_DECAY,
    contradictions=(
        Contradiction(
            topic=(
                "a leak by loading time: 8 min on, 48 min off, 900 ft3/min, 6.25 ft3/min a kilowatt"
            ),
            printed=(
                Printed(
                    "127.8 ft3/min and 20.45 kW, with 0.142 rounded first",
                    "a maker's training example",
                ),
                Printed("128.57 ft3/min and 20.57 kW", "the same sum, not rounded on the way"),
            ),
            effect="0.6 percent by rounding in the middle",
            handbook="never rounds inside a sum",
            sources=("leak-training-example",),
        ),
    ),
    body="""\
held = free_air(V, difference(p_1) + p_atm, T_1) in m3(n)  # air in the volume at the start
left = free_air(V, difference(p_2) + p_atm, T_2) in m3(n)  # air in it at the end
Q = (held - left) / (t_2 - t_1) in L(n)/min  # leak
Q_volume = Q / free_air(1 m3, p_atm, T_1) * 1 m3 in L/min  # at the barometer and at T_1
d_2 = p_mid_2 - p_mid_1 in bar(d)  # pressures counted from the first of them
d_3 = p_mid_3 - p_mid_1 in bar(d)  # the third
d_4 = p_mid_4 - p_mid_1 in bar(d)  # the fourth
d_5 = p_mid_5 - p_mid_1 in bar(d)  # the fifth
d = (d_2 + d_3 + d_4 + d_5) / 5 in bar(d)  # their mean, the first being none
leak = (leak_1 + leak_2 + leak_3 + leak_4 + leak_5) / 5 in L(n)/min  # mean of the leaks
across = d_2 * leak_2 + d_3 * leak_3 + d_4 * leak_4 + d_5 * leak_5 - 5 * d * leak  # together
wide = d_2^2 + d_3^2 + d_4^2 + d_5^2 - 5 * d^2  # how far the pressures lie apart
slope = across / wide  # leak for each step of pressure
Q_at_working_pressure = leak + slope * (p_working - p_mid_1 - d) in L(n)/min  # off the line
""",
)
