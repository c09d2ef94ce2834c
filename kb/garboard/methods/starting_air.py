"""Starts left in a starting-air receiver, the volume for a number of starts, and the filling rate.

Two models bound the truth: slow starts, with the receiver back at room temperature before each,
and starts one after another, where the air left behind goes cold and falls further in pressure.
The lowest starting pressure and the air of one start are measured on the engine itself; there is
no default for either.

By hand, everything at 15 degC and 1.01325 bar(a): 500 L from 30 to 10 bar(g) holds 0.5 x 20 /
1.01325 = 9.869 m3(s); at 0.8 m3(s) a start that is 12.34, so 12 slow starts. In quick succession
0.5 x 31.01325 / 1.01325 x (1 - (11.01325 / 31.01325)^(1 / 1.4)) = 8.00 m3(s), 9.998 starts, so
print 9 to 12. Six starts need 6 x 0.8 x 1.01325 / 20 = 0.2432 m3. Filling 1 m3 to 30 bar(g) in
an hour takes 30 / 1.01325 = 29.6 m3(s)/h.
"""

from typing import Final

from garboard.calc.method import Alarm, FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.starting_air import STARTING_AIR_RECEIVER
from garboard.methods.publications import published

__all__ = ["STARTING_AIR_RECEIVER_METHOD"]

_IDEAL: Final = "above 40 bar gauge, the range where air behaves ideally"
_TEMPERATURE: Final = (
    "free air is an amount of gas, which depends on the temperature of the receiver: measure it"
)

STARTING_AIR_RECEIVER_METHOD: Final = FormulaMethod(
    name="starting_air_receiver",
    title="Starts left in a starting-air receiver",
    purpose="Size the receivers and tell the watch how many starts a gauge reading is still "
    "worth, as a range.",
    grade=Grade.B,
    parameters=(
        Parameter("V", "water volume of all bottles in use", "m3"),
        Parameter("p_reading", "reading now", "bar(g)"),
        Parameter(
            "p_min",
            "lowest reading at which this engine still starts, measured",
            "bar(g)",
            missing="the lowest starting pressure must be measured, never taken as zero",
        ),
        Parameter(
            "v_start",
            "free air used by one start, measured on this engine",
            "m3(n)",
            missing="air per start must be measured",
        ),
        Parameter("N", "number of starts asked for"),
        Parameter("p_hi", "reading when charged", "bar(g)"),
        Parameter(
            "p_lo",
            "lowest reading allowed",
            "bar(g)",
            missing="the lowest reading allowed must be measured, never taken as zero",
        ),
        Parameter("p_full", "reading when filled from atmosphere", "bar(g)"),
        Parameter("t", "time to fill", "h"),
        Parameter("T", "temperature of the receiver", "K(a)", missing=_TEMPERATURE),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
    ),
    results=(
        Result("starts", "whole starts left, slow: the upper end of the range"),
        Result("starts_unrounded", "the same before rounding down"),
        Result("starts_fast", "lower bound: fast consecutive starts, unrounded"),
        Result("starts_least", "whole starts left, fast: the lower end of the range"),
        Result("volume", "water volume needed", "m3"),
        Result("fill_rate", "free air the compressors must deliver", "m3(n)/h"),
    ),
    limits=(
        Limit("p_reading <= 40 bar(g)", _IDEAL),
        Limit("p_hi <= 40 bar(g)", _IDEAL),
        Limit("p_full <= 40 bar(g)", _IDEAL),
        Limit(
            "p_lo < p_hi",
            "no usable pressure: the lowest reading allowed is not below the charged one",
        ),
        Limit("p_full > 0 bar(g)", "no usable pressure: nothing is filled"),
        Limit("v_start > 0 m3(n)", "air per start must be measured"),
        Limit("V > 0 m3", "the volume is missing"),
        Limit("t > 0 h", "the time to fill is missing"),
    ),
    valid=(
        "dry air; receiver back at room temperature between starts for the slow figure",
        "readings not above 40 bar gauge",
        "air of a start and lowest starting pressure measured on this engine, with the source said",
    ),
    sources=published("definition", "iacs-ur-m61", "house-rule"),
    caution="Print a range: slow starts (receiver at room temperature) down to fast consecutive "
    "starts (the air left behind goes cold). Prove it with a counted start test.",
    deferral="The number of starts and of receivers is set by the flag or the certifying "
    "authority; class rules are for classed ships.",
    do_not=(
        "claim a number of starts without a counted test",
        "use a catalogue air consumption as if measured",
    ),
    proofs=STARTING_AIR_RECEIVER,
    alarms=(
        Alarm("p_reading <= p_min", "zero starts: do not rely on this receiver"),
        Alarm("starts < N", "HOLD: fewer starts than required"),
    ),
    body="""\
stored = free_air(V, difference(p_reading) + p_atm, T) in m3(n)  # all air in the receivers
left = free_air(V, difference(p_min) + p_atm, T) in m3(n)  # air still there after the last start
starts_unrounded = max((stored - left) / v_start, 0)  # slow starts before rounding down
starts = floor(starts_unrounded)  # whole starts left, slow
p_start = difference(p_reading) + p_atm in bar(a)  # before the first start
p_end = difference(p_min) + p_atm in bar(a)  # after the last start
used = max(1 - (p_end / p_start)^(1 / 1.4), 0)  # share let out when the air left behind goes cold
starts_fast = used * stored / v_start  # fast consecutive starts, unrounded
starts_least = floor(starts_fast)  # whole starts left, fast
charged = free_air(1 m3, difference(p_hi) + p_atm, T) in m3(n)  # air in a cubic metre when charged
kept = free_air(1 m3, difference(p_lo) + p_atm, T) in m3(n)  # the same at the lowest reading
volume = N * v_start / (charged - kept) * 1 m3 in m3  # water volume needed
full = free_air(V, difference(p_full) + p_atm, T) in m3(n)  # air in the filled receiver
open = free_air(V, p_atm, T) in m3(n)  # air already in it when open to the atmosphere
fill_rate = (full - open) / t in m3(n)/h  # free air the compressors must deliver
""",
)
