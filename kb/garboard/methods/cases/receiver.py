"""Cases for what a receiver holds.

Free air counted at one atmosphere and at the temperature of the receiver is written m3(s), with
the receiver at 15 degC: the reference state of m3(s) is then that very air.
"""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import HOUSE, OWN

__all__ = ["PRESSURE_DATUM"]

_HOUSE: Final = partial(HOUSE, expect=Expect.REFUSE)
_TANK: Final = {"V": "500 L", "T": "15 degC", "p_atm": "1.01325 bar(a)"}

PRESSURE_DATUM: Final = (
    OWN(
        name="datum-100psig-abs",
        call={"p_g": "100 psi(g)", "p_atm": "101325 Pa(a)"},
        result="p_abs",
        value="7.90801 bar(a)",
        relative=1e-5,
        must_not_give=(("6.8948 bar(a)", "gauge reading reported as absolute"),),
        independent="scipy 1.17.1: 7.9080073 bar",
    ),
    OWN(
        name="datum-abs-back-to-gauge",
        call={"p_found": "7.9080073 bar(a)", "p_atm": "101325 Pa(a)"},
        result="p_reading",
        value="100 psi(g)",
        relative=1e-6,
        must_not_give=(("114.696 psi(g)", "absolute pressure reported as a reading"),),
        note="the case before it, the other way round",
    ),
    OWN(
        name="datum-free-air-total",
        call={"p_g": "30 bar(g)", **_TANK},
        result="free_air_total",
        value="15.3039 m3(s)",
        relative=1e-4,
        must_not_give=(("14.8038 m3(s)", "atmosphere left out"),),
        independent="CoolProp 8.0.0: 15.437 m3, real air at 20 degC",
    ),
    OWN(
        name="datum-free-air-usable",
        call={"p_hi": "30 bar(g)", "p_lo": "10 bar(g)", **_TANK},
        result="free_air_usable",
        value="9.86923 m3(s)",
        relative=1e-4,
        must_not_give=(("15.3039 m3(s)", "whole content counted as usable"),),
        independent="CoolProp 8.0.0: 9.9836 m3, real air at 20 degC",
    ),
    Proof(
        name="datum-compress-200ft3",
        call={
            "V_before": "200 ft3",
            "p_before": "14.7 psi(a)",
            "p_after": "90 psi(g)",
            "site.atmosphere": "14.7 psi(a)",
        },
        result="V_after",
        value="28.1 ft3",
        absolute="0.05 ft3",
        source="pneumatics-exam",
        seen="secondary",
        basis="published",
        must_not_give=(
            (
                "32.7 ft3",
                "90 psi gauge used as absolute; the examination offers this as a wrong answer",
            ),
        ),
        independent="scipy 1.17.1: 28.0802 ft3",
    ),
    OWN(
        name="datum-barometer-of-the-vessel",
        call={"p_g": "100 psi(g)", "site.atmosphere": "14.7 psi(a)"},
        result="p_abs",
        value="114.7 psi(a)",
        relative=1e-9,
        must_not_give=(("114.696 psi(a)", "the standard atmosphere taken on a day that differs"),),
    ),
    _HOUSE(
        name="datum-add-two-gauges",
        call={"p_g": "25 bar(g) + 5 bar(g)"},
        result="p_abs",
        value="a gauge pressure added to another counts the starting point twice",
    ),
    _HOUSE(
        name="datum-ratio-of-gauges",
        call={
            "V_before": "1 m3 * (30 bar(g) / 10 bar(g))",
            "p_before": "1 bar(a)",
            "p_after": "2 bar(a)",
        },
        result="V_after",
        value="a ratio with a gauge pressure has no meaning",
    ),
    OWN(
        name="datum-below-vacuum",
        call={"p_g": "-1.02 bar(g)", "p_atm": "1.01325 bar(a)"},
        result="p_abs",
        value="below a perfect vacuum",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="datum-over-40-bar",
        call={"p_g": "41 bar(g)", **_TANK},
        result="free_air_total",
        value="above 40 bar gauge",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="datum-start-over-40-bar",
        call={"p_hi": "41 bar(g)", "p_lo": "10 bar(g)", **_TANK},
        result="free_air_usable",
        value="above 40 bar gauge",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="datum-nothing-usable",
        call={"p_hi": "10 bar(g)", "p_lo": "10 bar(g)", **_TANK},
        result="free_air_usable",
        value="no usable pressure",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="datum-no-temperature",
        call={"V": "500 L", "p_g": "30 bar(g)"},
        result="free_air_total",
        value="temperature of the receiver",
        expect=Expect.REFUSE,
        note="500 L at 30 bar gauge is an amount only at a stated temperature",
    ),
)
