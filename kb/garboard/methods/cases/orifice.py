"""Cases for air through a small hole: rows of the printed table, choked and below it."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN
from garboard.methods.cases.deck import off_deck

__all__ = ["ORIFICE_AIR_FLOW"]

_STATE: Final = {"C": "1.0", "T": "530 degR(a)", "p_atm": "14.7 psi(a)"}
_QUARTER: Final = {"p": "100 psi(g)", "d": "0.25 inch", **_STATE}
_TABLE: Final = partial(
    Proof,
    result="Q_printed",
    relative=0.005,
    source="moss-orifice-table",
    seen="secondary",
    basis="table",
)
_REFUSED: Final = partial(OWN, result="Q", expect=Expect.REFUSE)
_HIGHER: Final = "real-gas nozzle, up to 1 percent higher"

ORIFICE_AIR_FLOW: Final = (
    _TABLE(
        name="orifice-100-1_4",
        call=_QUARTER,
        value="104 ft3/min",
        independent=f"CoolProp 8.0.0: 104.5 ft3/min, {_HIGHER}",
    ),
    _TABLE(
        name="orifice-100-1_16",
        call={**_QUARTER, "d": "0.0625 inch"},
        value="6.49 ft3/min",
        independent=f"CoolProp 8.0.0: 6.53 ft3/min, {_HIGHER}",
    ),
    _TABLE(
        name="orifice-125-1_2",
        call={"p": "125 psi(g)", "d": "0.5 inch", **_STATE},
        value="506 ft3/min",
        independent=f"CoolProp 8.0.0: 509.3 ft3/min, {_HIGHER}",
    ),
    _TABLE(
        name="orifice-50-1",
        call={"p": "50 psi(g)", "d": "1 inch", **_STATE},
        value="938 ft3/min",
        independent=f"CoolProp 8.0.0: 941.6 ft3/min, {_HIGHER}",
    ),
    _TABLE(
        name="orifice-15-1_4",
        call={**_QUARTER, "p": "15 psi(g)"},
        value="26.9 ft3/min",
        independent=f"CoolProp 8.0.0: 26.99 ft3/min, {_HIGHER}",
        note="just above twice the barometer",
    ),
    _TABLE(
        name="orifice-5-1_4-subsonic",
        call={**_QUARTER, "p": "5 psi(g)"},
        value="15.9 ft3/min",
        must_not_give=(("17.8 ft3/min", "choked formula used below its limit"),),
        independent=f"CoolProp 8.0.0: 15.89 ft3/min, {_HIGHER}",
        note="below twice the barometer: subsonic formula",
    ),
    _TABLE(
        name="orifice-7-1_8-subsonic",
        call={**_QUARTER, "p": "7 psi(g)", "d": "0.125 inch"},
        value="4.68 ft3/min",
        independent=f"CoolProp 8.0.0: 4.678 ft3/min, {_HIGHER}",
    ),
    Proof(
        name="orifice-no-coefficient",
        call={"p": "100 psi(g)", "d": "0.25 inch"},
        result="Q",
        value="the edge of the hole is not described",
        source="moss-orifice-table",
        seen="secondary",
        basis="rule",
        expect=Expect.REFUSE,
        note="edge coefficient missing",
    ),
    _TABLE(
        name="orifice-80-3_8",
        call={"p": "80 psi(g)", "d": "0.375 inch", **_STATE},
        value="193 ft3/min",
        independent=f"CoolProp 8.0.0: 194.0 ft3/min, {_HIGHER}",
    ),
    _TABLE(
        name="orifice-1-1_4-subsonic",
        call={**_QUARTER, "p": "1 psi(g)"},
        value="7.18 ft3/min",
        must_not_give=(("14.2 ft3/min", "choked formula used below its limit"),),
        independent=f"CoolProp 8.0.0: 7.172 ft3/min, {_HIGHER}",
    ),
    OWN(
        name="orifice-100-1_4-amount",
        call={name: text for name, text in _QUARTER.items() if name != "T"},
        result="Q",
        value="163.809 m3(n)/h",
        relative=2e-5,
        must_not_give=(("176.47 m3(n)/h", "air at 70 degF counted as air at 0 degC"),),
        note="the upstream temperature left out is 530 degR",
    ),
    OWN(
        name="orifice-just-choked",
        call={**_QUARTER, "p": "14.7 psi(g)"},
        result="Q_printed",
        value="26.6157 ft3/min",
        relative=2e-5,
        note="at twice the barometer the choked formula answers",
    ),
    OWN(
        name="orifice-just-subsonic",
        call={**_QUARTER, "p": "14.6999 psi(g)"},
        result="Q_printed",
        value="26.6411 ft3/min",
        relative=2e-5,
        note="just below it the subsonic formula answers: a step of 0.1 percent",
    ),
    OWN(
        name="orifice-sharp-edge",
        call={**_QUARTER, "C": "0.65"},
        result="Q_printed",
        value="67.4944 ft3/min",
        relative=2e-5,
    ),
    OWN(
        name="orifice-starting-air",
        call={
            "p": "30 bar(g)",
            "d": "1 mm",
            "C": "0.65",
            "T": "25 degC",
            "p_atm": "1.01325 bar(a)",
        },
        result="Q",
        value="10.2909 m3(n)/h",
        relative=2e-5,
        note="a sharp hole of one millimetre in a charged receiver",
    ),
    _REFUSED(
        name="orifice-below-the-table",
        call={**_QUARTER, "p": "0.9 psi(g)"},
        value="below the published table",
    ),
    _REFUSED(
        name="orifice-over-40-bar",
        call={**_QUARTER, "p": "41 bar(g)"},
        value="outside the ideal range",
    ),
    _REFUSED(
        name="orifice-no-edge",
        call={**_QUARTER, "C": "0"},
        value="the edge of the hole is not described",
    ),
    _REFUSED(
        name="orifice-edge-above-one",
        call={**_QUARTER, "C": "1.05"},
        value="no edge passes more than the hole itself",
    ),
    _REFUSED(
        name="orifice-no-bore",
        call={**_QUARTER, "d": "0 inch"},
        value="the bore of the hole is missing",
    ),
    OWN(
        name="orifice-barometer-of-the-vessel",
        call={"p": "5 psi(g)", "d": "0.25 inch", "C": "1", "site.atmosphere": "0.95 bar(a)"},
        result="Q_printed",
        value="15.36215 ft3/min",
        relative=1e-6,
        must_not_give=(("15.878 ft3/min", "the standard atmosphere taken on a day that differs"),),
    ),
    *off_deck("orifice", _QUARTER, "Q", "T"),
)
