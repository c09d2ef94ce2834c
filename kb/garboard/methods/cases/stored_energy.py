"""Cases for the energy stored in a pressure test."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["GAS_TEST_STORED_ENERGY"]

_TEN: Final = {"V": "50 L", "p_test": "10 bar(g)", "Pa": "1.01325 bar(a)"}
_TEN_101: Final = {**_TEN, "Pa": "101 kPa(a)"}
_THIRTY_THREE: Final = {"V": "0.5 m3", "p_test": "33 bar(g)", "Pa": "1.01325 bar(a)"}
_REFUSED: Final = partial(OWN, result="E_isentropic", expect=Expect.REFUSE)

GAS_TEST_STORED_ENERGY: Final = (
    Proof(
        name="energy-50L-isothermal",
        call=_TEN,
        result="E_isothermal",
        value="132 kJ",
        relative=0.006,
        source="energy-teaching-note",
        seen="secondary",
        basis="published",
        independent="scipy 1.17.1, work integral: 131.38 kJ",
    ),
    Proof(
        name="energy-50L-isentropic",
        call=_TEN_101,
        result="E_isentropic",
        value="68.08 kJ",
        relative=0.001,
        source="asme-pcc-2",
        seen="original",
        basis="constructed",
        must_not_give=(("99 kJ", "a web page printed this as adiabatic"),),
        independent="CoolProp 8.0.0, real gas, 1 percent lower: 67.361 kJ",
    ),
    Proof(
        name="energy-500L-33-bar",
        call={**_THIRTY_THREE, "Pa": "101 kPa(a)"},
        result="E_isentropic",
        value="2694.7 kJ",
        relative=0.0005,
        source="asme-pcc-2",
        seen="original",
        basis="constructed",
        independent="scipy 1.17.1, work integral: 2694.749 kJ",
    ),
    OWN(
        name="energy-500L-isothermal",
        call=_THIRTY_THREE,
        result="E_isothermal",
        value="5975 kJ",
        relative=0.001,
        independent="scipy 1.17.1: 5975.43 kJ",
    ),
    OWN(
        name="energy-500L-water-39-bar",
        call={"V": "0.5 m3", "dP": "39 bar(d)", "K_bulk": "2.201 GPa(d)"},
        result="E_liquid",
        value="1.7277 kJ",
        relative=0.001,
        independent="CoolProp 8.0.0: 1.723 kJ",
        note="about one fifteen-hundredth of the gas figure at 33 bar",
    ),
    Proof(
        name="energy-stand-off",
        call={"V": "50 L", "p_test": "10 bar(g)", "question": "safe_distance"},
        result="E_isentropic",
        value="no stand-off distance is printed",
        expect=Expect.REFUSE,
        source="house-rule",
        seen="constructed",
        basis="constructed",
    ),
    OWN(
        name="energy-50L-brode",
        call=_TEN,
        result="E_brode",
        value="125.0 kJ",
        relative=0.001,
        independent="exact arithmetic: 125.0 kJ",
    ),
    Proof(
        name="energy-400-gallons",
        call={"V": "400 gal_us", "P": "404.7 psi(a)", "Pa": "14.696 psi(a)", "k": "1.41"},
        result="E_isentropic",
        value="4702000 ft.lbf",
        relative=0.002,
        source="asme-pcc-2",
        seen="original",
        basis="constructed",
        must_not_give=(("27574000 ft.lbf", "a maker's article: wrong power, slipped point"),),
    ),
    OWN(
        name="energy-times-water",
        call={"V": "0.5 m3", "p_test": "33 bar(g)", "dP": "39 bar(d)", "Pa": "101 kPa(a)"},
        result="times_water",
        value="1559.0",
        absolute="0.5",
        note="2694.7 kJ by 39 bar squared x 0.5 m3 / (2 x 2.2 GPa), 1.7284 kJ",
    ),
    OWN(
        name="energy-water-at-the-same-reading",
        call=_TEN,
        result="E_liquid",
        value="0.011364 kJ",
        relative=0.0001,
        note="1000 kPa squared x 0.05 m3 / (2 x 2.2 GPa)",
    ),
    _REFUSED(
        name="energy-go-or-no-go",
        call={**_TEN, "question": "go_or_no_go"},
        value="for the certifying authority, in writing",
    ),
    _REFUSED(
        name="energy-above-45-bar",
        call={**_TEN, "p_test": "45.1 bar(g)", "Pa": "0.95 bar(a)"},
        value="above 45 bar gauge",
    ),
    _REFUSED(
        name="energy-above-45-bar-absolute",
        call={"V": "50 L", "P": "46.2 bar(a)", "Pa": "1.01325 bar(a)"},
        value="above 45 bar gauge",
    ),
    OWN(
        name="energy-at-45-bar",
        call={**_TEN, "p_test": "45 bar(g)"},
        result="E_brode",
        value="562.5 kJ",
        relative=1e-6,
    ),
    _REFUSED(
        name="energy-nothing-stored",
        call={**_TEN, "P": "1.01325 bar(a)", "p_test": "0 bar(g)"},
        value="nothing stored",
    ),
    OWN(
        name="energy-of-a-heavy-gas",
        call={**_TEN, "k": "1.05"},
        result="E_brode",
        value="1000 kJ",
        relative=1e-6,
        note="1000 kPa x 0.05 m3 / 0.05",
    ),
    _REFUSED(
        name="energy-exponent-of-one",
        call={**_TEN, "k": "1"},
        value="no gas has an exponent of 1 or less",
    ),
    _REFUSED(
        name="energy-exponent-above-five-thirds",
        call={**_TEN, "k": "1.7"},
        value="no gas has an exponent above 5/3",
    ),
)
