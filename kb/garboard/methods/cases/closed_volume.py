"""Cases for the reading of a shut receiver that warms or cools."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.deck import off_deck

__all__ = ["CLOSED_VOLUME_TEMPERATURE"]

_OWN: Final = partial(
    Proof, result="p_2", source="definition", seen="constructed", basis="constructed"
)
_REFUSED: Final = partial(_OWN, expect=Expect.REFUSE)
_COOLS: Final = {
    "p_1": "30 bar(g)",
    "T_1": "45 degC",
    "T_2": "15 degC",
    "p_atm": "1.01325 bar(a)",
}

CLOSED_VOLUME_TEMPERATURE: Final = (
    _OWN(
        name="closed-30-bar-45-to-15",
        call=_COOLS,
        value="27.0756 bar(g)",
        absolute="0.001 bar(d)",
        must_not_give=(
            ("27.17 bar(g)", "gauge readings multiplied by the temperature ratio"),
            ("10.0 bar(g)", "Celsius figures divided"),
        ),
        independent="CoolProp 8.0.0: 26.8901 bar, real air",
    ),
    _OWN(
        name="closed-10-bar-20-to-15",
        call={"p_1": "10 bar(g)", "T_1": "20 degC", "T_2": "15 degC", "p_atm": "1.01325 bar(a)"},
        value="9.8122 bar(g)",
        absolute="0.001 bar(d)",
        independent="exact arithmetic: 9.81216 bar",
    ),
    _OWN(
        name="closed-barometer-of-the-vessel",
        call={
            "p_1": "2 bar(g)",
            "T_1": "300 K(a)",
            "T_2": "270 K(a)",
            "site.atmosphere": "0.95 bar(a)",
        },
        value="1.705 bar(g)",
        relative=1e-9,
        must_not_give=(("1.698675 bar(g)", "the standard atmosphere taken on a day that differs"),),
    ),
    Proof(
        name="closed-untyped-temperature",
        call={"p_1": "30 bar(g)", "T_1": "318 K", "T_2": "288 K"},
        result="p_2",
        value="does not say what it is counted from",
        source="house-rule",
        seen="constructed",
        basis="constructed",
        expect=Expect.REFUSE,
        note="temperature carries no kind",
    ),
    _REFUSED(
        name="closed-colder-than-any-deck",
        call={**_COOLS, "T_1": "229 K(a)"},
        value="colder than 230 K, outside any deck temperature",
    ),
    _OWN(
        name="closed-coldest-deck",
        call={**_COOLS, "T_1": "230 K(a)", "T_2": "230 K(a)"},
        value="30 bar(g)",
        relative=1e-9,
        note="the limit itself still answers",
    ),
    _REFUSED(
        name="closed-cools-below-any-deck",
        call={**_COOLS, "T_2": "229 K(a)"},
        value="colder than 230 K, outside any deck temperature",
    ),
    _REFUSED(
        name="closed-over-40-bar",
        call={**_COOLS, "p_1": "41 bar(g)", "T_2": "0 degC"},
        value="outside the ideal range",
        note="38 bar gauge after cooling would be inside: the first reading decides too",
    ),
    _REFUSED(
        name="closed-warms-over-40-bar",
        call={**_COOLS, "p_1": "39 bar(g)", "T_2": "60 degC"},
        value="outside the ideal range",
    ),
    _REFUSED(
        name="closed-below-vacuum",
        call={**_COOLS, "p_1": "-1.02 bar(g)"},
        value="below a perfect vacuum",
    ),
    _REFUSED(
        name="closed-no-temperature",
        call={name: text for name, text in _COOLS.items() if name != "T_2"},
        value="the temperature of the air at both readings is needed",
    ),
    _REFUSED(
        name="closed-first-temperature-missing",
        call={name: text for name, text in _COOLS.items() if name != "T_1"},
        value="give T_1: the temperature of the air at both readings is needed",
    ),
    _OWN(
        name="closed-hottest-receiver",
        call={**_COOLS, "p_1": "10 bar(g)", "T_1": "423 K(a)", "T_2": "423 K(a)"},
        value="10 bar(g)",
        relative=1e-9,
        note="the limit itself still answers",
    ),
    _REFUSED(
        name="closed-just-hotter",
        call={**_COOLS, "p_1": "10 bar(g)", "T_1": "424 K(a)", "T_2": "423 K(a)"},
        value="are these kelvin?",
    ),
    *off_deck("closed", _COOLS, "p_2", "T_1", "T_2"),
)
