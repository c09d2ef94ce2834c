"""Cases for the suction head left at a pump."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["SUCTION_HEAD_AVAILABLE"]

_OWN: Final = partial(OWN, result="head")
_NO: Final = partial(_OWN, source="house-rule", expect=Expect.REFUSE)
_COLUMNS: Final = {
    "h_atm": "34 ft",
    "h_static": "15 ft",
    "h_vapour": "0.6 ft",
    "h_entry": "0.4 ft",
    "h_friction": "2 ft",
}
_WATER: Final = {
    "h_static": "10 ft",
    "h_friction": "3.2 ft",
    "h_entry": "0 ft",
    "T": "68 degF",
    "p_atm": "101325 Pa(a)",
    "fluid": "water",
}
_HOT: Final = {
    "lift": "-3 m",
    "h_friction": "0.6 m",
    "h_entry": "0.4 m",
    "T": "60 degC",
    "p_atm": "1.01325 bar(a)",
    "fluid": "water",
}
_GAUGE: Final = {
    "p_gauge": "-0.4 bar(g)",
    "p_atm": "1.01325 bar(a)",
    "v": "1.5 m/s",
    "Y": "0.3 m",
    "T": "20 degC",
    "fluid": "water",
}

SUCTION_HEAD_AVAILABLE: Final = (
    Proof(
        name="suction-flooded-15-ft",
        call=_COLUMNS,
        result="head",
        value="46 ft",
        absolute="0.05 ft",
        source="spellman-water",
        seen="secondary",
        basis="published",
        independent="CoolProp 8.0.0: 45.94 ft, atmosphere and vapour pressure from 60 degF water",
    ),
    Proof(
        name="suction-flooded-6-ft",
        call={
            "h_atm": "33.9 ft",
            "h_static": "6 ft",
            "h_vapour": "0.839 ft",
            "h_friction": "2 ft",
            "h_entry": "2 ft",
        },
        result="head",
        value="35.061 ft",
        absolute="0.001 ft",
        source="bachus-custodio",
        seen="secondary",
        basis="published",
        independent="exact arithmetic: 35.061 ft",
    ),
    Proof(
        name="suction-flooded-68F",
        call=_WATER,
        result="head",
        value="40 ft",
        absolute="0.1 ft",
        source="elsey-npsh",
        seen="original",
        basis="published",
        independent="CoolProp 8.0.0: 39.975 ft",
        note="vapour pressure found from the temperature",
    ),
    _NO(
        name="suction-no-temperature",
        call={
            "h_atm": "34 ft",
            "h_static": "5 ft",
            "h_friction": "2 ft",
            "h_entry": "0.4 ft",
        },
        value="liquid temperature or vapour pressure missing",
    ),
    _OWN(
        name="suction-hot-lift",
        call=_HOT,
        value="4.318114 m",
        relative=1e-6,
        must_not_give=(("10.318114 m", "the lift added instead of taken away"),),
        note="2.31 ft/psi x (101325 Pa - 149.37 mmHg) - 3 m - 1 m",
    ),
    _OWN(
        name="suction-fuel",
        call={
            **{name: text for name, text in _HOT.items() if name != "T"},
            "fluid": "fuel",
            "p_vapour": "20 mbar(a)",
            "rho_relative": "0.84",
        },
        value="8.075003 m",
        relative=1e-6,
        note="a lighter liquid has a taller column",
    ),
    _OWN(
        name="suction-barometer-of-the-vessel",
        call={
            **{name: text for name, text in _WATER.items() if name != "p_atm"},
            "site.atmosphere": "950 mbar(a)",
        },
        value="37.84804 ft",
        relative=1e-6,
        must_not_give=(("40 ft", "the standard atmosphere taken on a day that differs"),),
    ),
    _OWN(
        name="suction-by-gauge",
        call=_GAUGE,
        result="head_by_gauge",
        value="6.439291 m",
        relative=1e-6,
        must_not_give=(("14.608838 m", "a vacuum taken for a pressure"),),
    ),
    _OWN(
        name="suction-boils",
        call={**_HOT, "T": "99 degC"},
        value="-3.635738 m",
        relative=1e-6,
        expect=Expect.ALARM,
        note="no head is left",
    ),
    _OWN(
        name="suction-less-than-required",
        call={**_COLUMNS, "required": "46.5 ft"},
        value="46 ft",
        relative=1e-6,
        expect=Expect.ALARM,
    ),
    _OWN(
        name="suction-by-gauge-less-than-required",
        call={**_GAUGE, "required": "7 m"},
        result="head_by_gauge",
        value="6.439291 m",
        relative=1e-6,
        expect=Expect.ALARM,
    ),
    _NO(
        name="suction-lift-written-positive",
        call={**_HOT, "lift": "3 m"},
        value="a lift is negative",
    ),
    _NO(
        name="suction-fuel-without-vapour-pressure",
        call={**_HOT, "fluid": "fuel"},
        value="hot fuel boils early",
    ),
    _NO(
        name="suction-liquid-not-said",
        call={name: text for name, text in _HOT.items() if name != "fluid"},
        value="vapour pressure and density are held for water alone",
    ),
    _NO(
        name="suction-too-hot",
        call={**_HOT, "T": "103 degC"},
        value="water from 0 to 100 degC",
    ),
    _NO(
        name="suction-ice",
        call={**_HOT, "T": "-1 degC"},
        value="water from 0 to 100 degC",
    ),
    _NO(
        name="suction-level-not-said",
        call={name: text for name, text in _HOT.items() if name != "lift"},
        value="say how the liquid stands",
    ),
    _NO(
        name="suction-loss-written-negative",
        call={**_HOT, "h_friction": "-0.6 m"},
        value="a loss is given as a positive head",
    ),
    _NO(
        name="suction-below-vacuum",
        call={**_GAUGE, "p_gauge": "-1.1 bar(g)"},
        result="head_by_gauge",
        value="below a perfect vacuum",
    ),
)
