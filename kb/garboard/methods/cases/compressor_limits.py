"""Where the duty of a compressor is refused, and the calls that stand just inside."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect
from garboard.methods.cases.constructed import OWN
from garboard.methods.cases.deck import off_deck

__all__ = ["CLEARANCE", "COMPRESSOR_LIMITS", "EXAM", "MOTOR", "TWO"]

_REFUSED: Final = partial(OWN, expect=Expect.REFUSE)
EXAM: Final = {"p_1": "1.013 bar(a)", "p_2": "7 bar(a)"}
MOTOR: Final = {**EXAM, "v_1": "1 m3/min", "n": "1.35", "eta_m": "0.85", "eta_t": "0.9"}
CLEARANCE: Final = {"c": "0.05", "p_1": "100 kPa(a)", "p_2": "650 kPa(a)", "n": "1.25"}
TWO: Final = {
    "p_1": "1.013 bar(a)",
    "p_2": "31.013 bar(a)",
    "q_1": "free_air(1 m3/min, 1.013 bar(a), 288 K(a))",
    "n": "1.3",
    "T_1": "288 K(a)",
    "stages": "2",
}
"""To thirty bar in two stages."""

COMPRESSOR_LIMITS: Final = (
    _REFUSED(
        name="comp-ratio-over-8-no-temperature",
        call={"p_1": "1 bar(a)", "p_2": "8.3 bar(a)", "v_1": "1 m3/min", "n": "1.3"},
        result="P",
        value="too much for one stage",
    ),
    _REFUSED(
        name="comp-ratio-just-over-8",
        call={"p_1": "1 bar(a)", "p_2": "8.1 bar(a)", "T_1": "300 K(a)", "n": "1.25"},
        result="T_2",
        value="T_delivery = 183 degC",
        note="refused, with the temperature it would reach",
    ),
    _REFUSED(
        name="comp-exponent-too-low",
        call={**EXAM, "v_1": "1 m3/min", "n": "1.19"},
        result="P",
        value="outside the range of the exponent",
    ),
    _REFUSED(
        name="comp-exponent-too-high",
        call={**EXAM, "v_1": "1 m3/min", "n": "1.41"},
        result="P",
        value="outside the range of the exponent",
    ),
    _REFUSED(
        name="comp-gauge-ratio",
        call={**CLEARANCE, "p_2": "650 kPa"},
        result="eta_v",
        value="does not say what it is counted from",
    ),
    _REFUSED(
        name="comp-no-inlet-pressure",
        call={**CLEARANCE, "p_1": "0 bar(a)"},
        result="eta_v",
        value="no inlet pressure",
    ),
    _REFUSED(
        name="comp-no-compression",
        call={**CLEARANCE, "p_2": "1 bar(a)"},
        result="eta_v",
        value="no compression",
    ),
    _REFUSED(
        name="comp-no-stage",
        call={**TWO, "stages": "0"},
        result="P",
        value="there is at least one stage",
    ),
    _REFUSED(
        name="comp-half-a-stage",
        call={**TWO, "stages": "2.5"},
        result="P",
        value="stages are counted in whole numbers",
    ),
    OWN(
        name="comp-clearance-at-its-most",
        call={**CLEARANCE, "c": "0.3", "p_2": "200 kPa(a)"},
        result="eta_v",
        value="0.777670",
        relative=1e-5,
    ),
    _REFUSED(
        name="comp-clearance-in-percent",
        call={**CLEARANCE, "c": "0.31"},
        result="eta_v",
        value="the clearance is a share of the stroke",
    ),
    _REFUSED(
        name="comp-clearance-below-zero",
        call={**CLEARANCE, "c": "-0.01"},
        result="eta_v",
        value="the clearance is a share of the stroke",
    ),
    _REFUSED(
        name="comp-efficiency-in-percent",
        call={**MOTOR, "eta_m": "1.05"},
        result="P_motor",
        value="an efficiency is a share above 0 and not above 1",
    ),
    _REFUSED(
        name="comp-transmission-in-percent",
        call={**MOTOR, "eta_t": "1.05"},
        result="P_motor",
        value="an efficiency is a share above 0 and not above 1",
    ),
    _REFUSED(
        name="comp-no-efficiency",
        call={**MOTOR, "eta_m": "0"},
        result="P_motor",
        value="an efficiency is a share above 0 and not above 1",
    ),
    _REFUSED(
        name="comp-no-transmission",
        call={**MOTOR, "eta_t": "0"},
        result="P_motor",
        value="an efficiency is a share above 0 and not above 1",
    ),
    _REFUSED(
        name="comp-no-air",
        call={**MOTOR, "v_1": "0 m3/min"},
        result="P_motor",
        value="no air is taken in",
    ),
    _REFUSED(
        name="comp-without-inlet-pressure",
        call={name: text for name, text in CLEARANCE.items() if name != "p_1"},
        result="eta_v",
        value="give p_1: a ratio needs absolute pressures",
    ),
    _REFUSED(
        name="comp-without-delivery-pressure",
        call={name: text for name, text in CLEARANCE.items() if name != "p_2"},
        result="eta_v",
        value="give p_2: a ratio needs absolute pressures",
    ),
    *off_deck("comp", TWO, "P", "T_1"),
)
