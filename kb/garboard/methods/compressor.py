"""Power, stages and delivery temperature of a compressor.

All pressures count from nothing: a ratio of gauge readings is refused by the language, and a
reading handed over is made absolute first. Stages share the ratio equally and the air is cooled
back to the inlet temperature between them. Air taken in is an amount (`q_1`), the same as a volume
at the inlet (`v_1`), or what one single-acting cylinder sweeps (`D`, `stroke`, `rpm`); one of the
three is given.

By hand: 0.3 m3/min from 1.013 to 7 bar(a) without cooling, ratio 6.9102: 3.5 x 101300 x 0.005 x
(6.9102^0.285714 - 1) = 1307 W; the least possible is 101300 x 0.005 x ln 6.9102 = 979 W. From 300
K by a ratio of 8 at n = 1.25 the air leaves at 300 x 8^0.2 = 454.7 K, which is 181.6 degC and an
alarm. To 31.013 bar(a) in one stage it would leave at 288 x 30.615^(0.3 / 1.3) = 634 K, 361 degC:
refused; in two stages the pressure between them is sqrt(1.013 x 31.013) = 5.605 bar(a).
"""

from typing import Final

from garboard.calc.method import Alarm, FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.compressor import COMPRESSOR_DUTY
from garboard.methods.deck import deck_temperature
from garboard.methods.publications import published

__all__ = ["COMPRESSOR_DUTY_METHOD"]

_RATIO: Final = "too much for one stage, which takes a ratio of 8 at most: take more stages"
_EXPONENT: Final = "outside the range of the exponent, 1.2 to 1.4"
_SHARE: Final = "an efficiency is a share above 0 and not above 1: write 85 %, not 85"
_CLEARANCE: Final = "the clearance is a share of the stroke, from 0 and well below 1"

COMPRESSOR_DUTY_METHOD: Final = FormulaMethod(
    name="compressor_duty",
    title="Power and delivery temperature of a compressor",
    purpose="Motor power, delivery temperature and number of stages for a starting-air compressor.",
    grade=Grade.B,
    parameters=(
        Parameter("p_1", "inlet pressure", "bar(a)", missing="a ratio needs absolute pressures"),
        Parameter("p_2", "delivery pressure", "bar(a)", missing="a ratio needs absolute pressures"),
        Parameter("n", "exponent of the compression, 1.4 for no cooling at all"),
        Parameter("T_1", "inlet temperature", "K(a)"),
        Parameter("stages", "number of stages, one where left out", default="1"),
        Parameter("D", "bore of a single-acting cylinder", "mm"),
        Parameter("stroke", "its stroke", "mm"),
        Parameter("rpm", "its speed", "rpm"),
        Parameter(
            "q_1",
            "free air taken in; left out, what the cylinder sweeps",
            "m3(n)/h",
            default="free_air(swept, p_1, T_1)",
        ),
        Parameter(
            "v_1",
            "the same as a volume at p_1 and T_1; left out, from q_1",
            "m3/min",
            default="q_1 / free_air(1 m3, p_1, T_1) * 1 m3",
        ),
        Parameter("c", "clearance as a share of the stroke"),
        Parameter("eta_m", "mechanical efficiency"),
        Parameter("eta_t", "efficiency of motor or transmission"),
        Parameter(
            "T_receiver", "air as it enters the receiver, after the cooler, measured", "K(a)"
        ),
    ),
    results=(
        Result("T_2", "delivery temperature of each stage, before its cooler", "K(a)"),
        Result("T_delivery", "the same as a thermometer shows it", "degC"),
        Result("P", "power given to the air", "kW"),
        Result("P_motor", "motor power", "kW"),
        Result("P_isothermal", "least possible power", "kW"),
        Result("p_between", "pressure after the first stage; of two, between them", "bar(a)"),
        Result("eta_v", "volumetric efficiency of the first stage", ""),
        Result("m_dot", "mass flow", "kg/min"),
    ),
    limits=(
        Limit("n >= 1.2", _EXPONENT),
        Limit("n <= 1.4", _EXPONENT),
        *deck_temperature("T_1"),
        Limit("p_1 > 0 bar(a)", "no inlet pressure"),
        Limit("p_2 > p_1", "no compression: the delivery pressure is not above that of the inlet"),
        Limit("stages >= 1", "there is at least one stage"),
        Limit("abs(stages - round(stages)) <= 0", "stages are counted in whole numbers"),
        Limit("absolute(T_delivery) <= T_1 * 8^((n - 1) / n)", _RATIO),
        Limit("ratio <= 8", _RATIO),
        Limit("c >= 0", _CLEARANCE),
        Limit("c <= 0.3", _CLEARANCE),
        Limit("eta_m > 0", _SHARE),
        Limit("eta_m <= 1", _SHARE),
        Limit("eta_t > 0", _SHARE),
        Limit("eta_t <= 1", _SHARE),
        Limit("v_1 > 0 m3/min", "no air is taken in"),
    ),
    valid=(
        "ideal gas, dry, steady",
        "ratio of absolute pressures in a stage not above 8; exponent from 1.2 to 1.4",
        "stages share the ratio equally, with cooling back to the inlet temperature between them",
        "a ratio of gauge readings is refused by the language itself; a reading handed over is "
        "counted from nothing with the barometer of the vessel, and shown",
    ),
    sources=published(
        "arasu-thermal",
        "bhatt-mehta",
        "gtu-2019-3c",
        "class-rule-discharge-temp",
        "definition",
    ),
    caution="Oil mist, compressed air and heat make an explosion. The temperature here is before "
    "the cooler.",
    deferral="Compressor, cooler and relief valves by the maker; alarm settings by class or the "
    "surveyor.",
    do_not=("choose or modify a compressor", "raise a relief or alarm setting"),
    proofs=COMPRESSOR_DUTY,
    alarms=(
        Alarm(
            "T_delivery > 121 degC",
            "delivery above 121 degC, the alarm temperature of a compressor: what follows each "
            "stage must cool it",
        ),
        Alarm("T_receiver > absolute(93 degC)", "above 93 degC: too hot to enter the receiver"),
    ),
    body="""\
wanted = (p_2 / p_1)^(1 / stages)  # ratio of pressures that falls to each stage
T_2 = T_1 * wanted^((n - 1) / n) in K(a)  # temperature at which it leaves each stage
T_delivery = T_2 in degC  # the same as a thermometer shows it
ratio = wanted  # not above 8
swept = pi / 4 * D^2 * stroke * rpm / (1 rev) in m3/min  # what the cylinder sweeps
work = (p_1 - 0 bar(a)) * v_1 in kW  # inlet pressure times the volume taken in
P = stages * n / (n - 1) * work * (ratio^((n - 1) / n) - 1) in kW  # power given to the air
P_motor = P / (eta_m * eta_t) in kW  # motor power
P_isothermal = stages * work * log(ratio) in kW  # least possible power
p_between = p_1 * ratio in bar(a)  # pressure after the first stage
eta_v = 1 - c * (ratio^(1 / n) - 1)  # volumetric efficiency of the first stage
m_dot = p_1 * v_1 / (287.05 J/(kg.K) * T_1) in kg/min  # mass flow
""",
)
