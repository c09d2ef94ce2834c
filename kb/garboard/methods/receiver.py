"""What a receiver holds: gauge beside absolute, and the free air in it, all of it and usable.

A gauge reads zero at atmosphere, so a vessel is not empty at zero and its air is never counted
from zero down. Free air is an amount of gas: the same receiver at the same reading holds less of
it on a hot day, so the temperature of the receiver is asked for.

By hand: 500 L at 30 bar(g) and 15 degC under 1.01325 bar(a) is 31.01325 bar(a). Counted at 15
degC and one atmosphere that is 0.5 x 31.01325 / 1.01325 = 15.304 m3(s). Between 30 and 10 bar(g)
it gives 0.5 x 20 / 1.01325 = 9.869 m3(s). And 200 ft3 at 14.7 psi(a) taken to 90 psi(g), which
is 104.7 psi(a), fill 200 x 14.7 / 104.7 = 28.1 ft3.
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
from garboard.methods.cases.receiver import PRESSURE_DATUM
from garboard.methods.publications import published

__all__ = ["PRESSURE_DATUM_METHOD"]

_IDEAL: Final = "real air departs from the ideal gas by more than 1 percent above 40 bar gauge"
_VACUUM: Final = "below a perfect vacuum"
_COUNTED: Final = (
    "free air is an amount of gas, which depends on the temperature of the receiver: measure it"
)

PRESSURE_DATUM_METHOD: Final = FormulaMethod(
    name="pressure_datum",
    title="Gauge, absolute, and the free air in a receiver",
    purpose="Keep gauge, absolute and difference apart, and say how much free air a receiver "
    "holds and how much of it can be used.",
    grade=Grade.A,
    parameters=(
        Parameter("p_g", "reading", "bar(g)"),
        Parameter("p_found", "pressure counted from nothing, to be shown as a reading", "bar(a)"),
        Parameter("p_hi", "reading at start", "bar(g)", missing="usable air needs both readings"),
        Parameter("p_lo", "reading at end", "bar(g)", missing="usable air needs both readings"),
        Parameter("V", "water volume of the receiver", "m3"),
        Parameter("T", "temperature of the receiver", "K(a)", missing=_COUNTED),
        Parameter("V_before", "volume at the first pressure", "m3"),
        Parameter("p_before", "pressure before; a reading is made absolute first", "bar(a)"),
        Parameter("p_after", "pressure after; a reading is made absolute first", "bar(a)"),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
    ),
    results=(
        Result("p_abs", "the reading counted from nothing", "bar(a)"),
        Result("p_reading", "what a gauge shows of the pressure counted from nothing", "bar(g)"),
        Result("free_air_total", "all air in the vessel, an amount", "m3(n)"),
        Result("free_air_usable", "air between two readings, an amount", "m3(n)"),
        Result("V_after", "volume at the second pressure", "m3"),
    ),
    limits=(
        Limit("difference(p_g) + p_atm >= 0 bar(a)", _VACUUM),
        Limit("difference(p_lo) + p_atm >= 0 bar(a)", _VACUUM),
        Limit("p_found >= 0 bar(a)", _VACUUM),
        Limit("p_g <= 40 bar(g)", _IDEAL),
        Limit("p_hi <= 40 bar(g)", _IDEAL),
        Limit(
            "p_lo < p_hi",
            "no usable pressure: the reading at the end is not below the one at start",
        ),
        Limit("p_before > 0 bar(a)", _VACUUM),
        Limit("p_after > 0 bar(a)", _VACUUM),
        Limit("V > 0 m3", "the volume is missing"),
        Limit("V_before > 0 m3", "the volume is missing"),
    ),
    valid=(
        "ideal gas, the same temperature before and after",
        "readings not above 40 bar gauge",
        "two readings added, a gauge reading mixed with an absolute pressure, or a ratio of two "
        "gauge readings is refused by the language itself",
    ),
    sources=published("definition", "pneumatics-exam", "house-rule"),
    caution="A gauge reads zero at atmosphere; the vessel is not empty at zero.",
    deferral="None: definitions.",
    do_not=("convert a reading without saying which barometer was used",),
    proofs=PRESSURE_DATUM,
    contradictions=(
        Contradiction(
            topic="a receiver of 10 ft3 at 90 psi gauge, opened to 5 ft3 of pipe",
            printed=(
                Printed("55 psi gauge, marked right", "a self-study examination"),
                Printed("60 psi gauge", "the same sum, with the air that the pipe already holds"),
            ),
            effect="55 psi is right only for a pipe that was pumped empty first",
            handbook="counts the air already in the pipe",
            sources=("pneumatics-exam",),
        ),
    ),
    body="""\
p_abs = difference(p_g) + p_atm in bar(a)  # the reading counted from nothing
p_reading = 0 bar(g) + (p_found - p_atm) in bar(g)  # the same as a gauge shows it
free_air_total = free_air(V, difference(p_g) + p_atm, T) in m3(n)  # all air in the vessel
held = free_air(V, difference(p_hi) + p_atm, T) in m3(n)  # air at the reading at start
left = free_air(V, difference(p_lo) + p_atm, T) in m3(n)  # air still there at the reading at end
free_air_usable = held - left in m3(n)  # air between the two readings
V_after = V_before * p_before / p_after in m3  # the same air at the second pressure
""",
)
