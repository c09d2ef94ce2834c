"""The receiver that carries a draw for a time, and the compressor that supplies and refills.

Free air is an amount of gas, so the flows carry their reference state in the unit: `m3(n)/h` at 0
degC, `m3(s)/h` at 15 degC, or `free_air(350 ft3/min, 14.7 psi(a), 20 degC)` for any other. A flow
that does not say its state is refused by the language. The volume found is water volume.

By hand: 100 ft3/min more than is delivered, for 5 min, counted at 14.7 psi(a) and at the
temperature of the receiver, between 100 and 60 psi(g): 5 x 100 x 14.7 / 40 = 183.75 ft3. And 50
m3(n)/h for 15 min in a receiver at 5 degC, 9 to 6 bar(g): 12.5 x 1.01325 / 3 x 278.15 / 273.15
= 4.299 m3. Refilled within 5 min, that takes 50 x (1 + 15 / 5) = 200 m3(n)/h.
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.surge import RECEIVER_SURGE_VOLUME
from garboard.methods.deck import deck_temperature
from garboard.methods.publications import published

__all__ = ["RECEIVER_SURGE_VOLUME_METHOD"]

_STATE: Final = (
    "free air without its reference state is no amount: write m3(n), m3(s) or free_air(...)"
)

RECEIVER_SURGE_VOLUME_METHOD: Final = FormulaMethod(
    name="receiver_surge_volume",
    title="Receiver for a known draw",
    purpose="Receiver volume that carries a known draw for a known time between two readings, "
    "and the compressor flow that supplies the draw and refills.",
    grade=Grade.B,
    parameters=(
        Parameter("t", "time the draw lasts", "min"),
        Parameter("q_out", "free air drawn", "m3(n)/h", missing=_STATE),
        Parameter("q_in", "free air delivered meanwhile", "m3(n)/h", missing=_STATE),
        Parameter("p_hi", "upper reading", "bar(g)", missing="the draw needs both readings"),
        Parameter("p_lo", "lower reading", "bar(g)", missing="the draw needs both readings"),
        Parameter(
            "T_receiver",
            "temperature of the air in the receiver",
            "K(a)",
            missing="a cold receiver holds more air at the same reading: measure it",
        ),
        Parameter("t_buffer", "time the receiver carries the draw alone", "min"),
        Parameter("t_refill", "time in which it is full again", "min"),
        Parameter("p_atm", "barometer", "bar(a)", default="site.atmosphere"),
    ),
    results=(
        Result("volume", "water volume of the receiver", "m3"),
        Result("q_total", "compressor flow that supplies and refills", "m3(n)/h"),
    ),
    limits=(
        Limit("p_hi > p_lo", "no usable pressure: the upper reading is not above the lower one"),
        Limit(
            "p_hi <= 40 bar(g)", "outside the ideal range, above 40 bar gauge air is no ideal gas"
        ),
        Limit("difference(p_lo) + p_atm > 0 bar(a)", "below a perfect vacuum"),
        Limit("q_in >= 0 m3(n)/h", "a compressor takes no air out"),
        Limit("q_out > q_in", "nothing is drawn down: what is delivered covers the draw"),
        *deck_temperature("T_receiver"),
        Limit("t > 0 min", "the time the draw lasts is missing"),
        Limit("t_buffer >= 0 min", "a time is not negative"),
        Limit("t_refill > 0 min", "the refill time is missing"),
    ),
    valid=(
        "ideal gas, a slow draw: the receiver stays at its temperature; after a fast one it is "
        "colder and the reading falls further",
        "upper reading not above 40 bar gauge",
        "free air and normal air are different amounts: the reference state is part of the "
        "input, and a plain volume flow is refused by the language itself",
    ),
    sources=published("srivastava-receiver", "cruz-receiver", "definition", "house-rule"),
    caution="The volume is the water volume of the bottles, not of the air in them.",
    deferral="Receiver and relief valve are bought stamped; no home-made vessels.",
    do_not=("size the wall of a pressure vessel",),
    proofs=RECEIVER_SURGE_VOLUME,
    body="""\
charged = free_air(1 m3, difference(p_hi) + p_atm, T_receiver) in m3(n)  # in a cubic metre, upper
kept = free_air(1 m3, difference(p_lo) + p_atm, T_receiver) in m3(n)  # in a cubic metre, lower
drawn = t * (q_out - q_in) in m3(n)  # what the receiver must give
volume = drawn / (charged - kept) * 1 m3 in m3  # water volume of the receiver
q_total = q_out * (1 + t_buffer / t_refill) in m3(n)/h  # the draw, and the refill on top
""",
)
