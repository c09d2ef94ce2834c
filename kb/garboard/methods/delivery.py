"""What a compressor really delivers, by pumping up a known volume, and how long a recharge takes.

What came in is an amount: the air held at the end less the air held at the start, both at the
temperature of the receiver at the end. A receiver still hot from the pumping holds less air than
its gauge says, so its temperature is asked for and never taken as that of the room.

By hand: 0.5 m3 from 10 to 20 bar(g) in 8 min under 1.01325 bar(a), air taken in at 293 K, receiver
at 323 K: 0.5 x 10 / (1.01325 x 8) x 293 / 323 = 0.5595 m3/min at the intake, which is 0.5595 x
273.15 / 293 = 0.5216 m3(n)/min. 25 US gallons from 85 to 102 psi(g) in 35 s: 6.63 ft3/min. 1 m3
from 10 to 30 bar(g) at 0.5 m3/min takes 20 / 1.01325 / 0.5 = 39.5 min.
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.delivery import FREE_AIR_DELIVERY
from garboard.methods.deck import deck_temperature
from garboard.methods.publications import published

__all__ = ["FREE_AIR_DELIVERY_METHOD"]

_IDEAL: Final = "outside the ideal range, above 40 bar gauge air is no ideal gas"

FREE_AIR_DELIVERY_METHOD: Final = FormulaMethod(
    name="free_air_delivery",
    title="Free air a compressor delivers, and the time of a recharge",
    purpose="Prove what the compressor really delivers by pumping up a known volume, and say how "
    "long a recharge takes.",
    grade=Grade.C,
    parameters=(
        Parameter("V", "water volume of receiver and piping, drains shut", "m3"),
        Parameter("p_1", "reading at the start", "bar(g)"),
        Parameter("p_2", "reading at the end", "bar(g)"),
        Parameter("t", "time the pump-up took", "min"),
        Parameter("T_intake", "temperature of the air taken in", "K(a)"),
        Parameter(
            "T_2",
            "temperature of the air in the receiver at the end",
            "K(a)",
            missing="a hot receiver overstates the delivery: wait until it is cool, or measure",
        ),
        Parameter("delivery", "free air delivered, where a recharge is asked for", "m3(n)/h"),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
    ),
    results=(
        Result("FAD", "free air delivered, an amount", "m3(n)/h"),
        Result(
            "FAD_intake", "the same as a volume at the barometer and the intake temperature", "m3/h"
        ),
        Result("t_recharge", "time of a recharge between the two readings", "min"),
    ),
    limits=(
        Limit("t > 0 min", "the time of the pump-up is missing"),
        Limit("p_2 > p_1", "no rise: the reading at the end is not above the one at the start"),
        Limit("p_1 >= 0 bar(g)", "the receiver starts below the atmosphere"),
        Limit("p_2 <= 40 bar(g)", _IDEAL),
        *deck_temperature("T_2"),
        *deck_temperature("T_intake"),
        Limit("V > 0 m3", "the volume is missing"),
        Limit("delivery > 0 m3(n)/h", "no delivery: the receiver is never recharged"),
    ),
    valid=(
        "a leak-tight receiver with its drains shut and nothing drawn meanwhile",
        "reading at the start not below the atmosphere, gauge within 1 percent, not above 40 bar",
        "a recharge is reckoned for a receiver that is at T_2 at the end: falling back as it "
        "cools, it needs topping up",
    ),
    sources=published("fad-practice", "kinch-compressors", "definition", "house-rule"),
    caution="A pump-up with a hot receiver flatters the compressor.",
    deferral="A shortfall goes to the engineer in charge; valves and rings are opened with the "
    "system drained and tagged.",
    do_not=("raise the cut-out to make up for a weak compressor",),
    proofs=FREE_AIR_DELIVERY,
    body="""\
held = free_air(V, difference(p_2) + p_atm, T_2) in m3(n)  # air in the volume at the end
before = free_air(V, difference(p_1) + p_atm, T_2) in m3(n)  # at the start, no colder than then
FAD = (held - before) / t in m3(n)/h  # free air delivered
FAD_intake = FAD / free_air(1 m3, p_atm, T_intake) * 1 m3 in m3/h  # as a volume taken in
t_recharge = (held - before) / delivery in min  # time of a recharge
""",
)
