"""Cases for the movement of a hot pipe."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof

__all__ = ["THERMAL_MOVEMENT"]

_RANGE: Final = {"range_from": "32 degF", "range_to": "400 degF"}
"""Written in for the cases of the table, which prints none; the change lies well within it."""
_TABLE: Final = partial(Proof, result="dL", source="expansion-table", seen="original")
_OWN: Final = partial(
    Proof, result="dL", source="definition", seen="constructed", basis="constructed"
)
_HOUSE: Final = partial(_OWN, source="house-rule", expect=Expect.REFUSE)
_PIPE: Final = {
    "alpha": "12e-6 1/K",
    "L": "10 m",
    "T_cold": "20 degC",
    "T_hot": "180 degC",
    "range_from": "20 degC",
    "range_to": "200 degC",
}

THERMAL_MOVEMENT: Final = (
    _TABLE(
        name="expand-alloy-100-ft",
        call={"alpha": "8.0e-6 1/degF", "L": "100 ft", "dT": "180 degF(d)", **_RANGE},
        value="1.728 inch",
        relative=0.0001,
        basis="published",
        must_not_give=(("3.11 inch", "per degF coefficient times 1.8 once too often"),),
        independent="pint 0.25.3: 1.728 inch",
    ),
    _TABLE(
        name="expand-carbon-100-ft",
        call={"alpha": "6.5e-6 1/degF", "L": "100 ft", "dT": "100 degF(d)", **_RANGE},
        value="0.8 inch",
        absolute="0.05 inch",
        basis="table",
        independent="exact arithmetic: 0.78 inch",
    ),
    _HOUSE(
        name="expand-no-source",
        call={"L": "10 m", "dT": "160 K(d)", "material": "steel"},
        value="coefficient without source or range",
    ),
    _HOUSE(
        name="expand-no-range",
        call={"alpha": "12e-6 1/K", "L": "10 m", "dT": "160 K(d)", "material": "steel"},
        value="say the temperatures that its source gives it for",
    ),
    _OWN(
        name="expand-from-two-readings",
        call=_PIPE,
        value="19.2 mm",
        relative=1e-9,
        note="10 m x 12e-6 x 160",
    ),
    _OWN(
        name="expand-when-it-cools",
        call={**_PIPE, "T_cold": "180 degC", "T_hot": "20 degC"},
        value="-19.2 mm",
        relative=1e-9,
    ),
    _OWN(
        name="expand-a-change-typed-as-a-reading",
        call={"alpha": "8.0e-6 1/degF", "L": "100 ft", "dT": "180 degF", **_RANGE},
        value="thermometer reading",
        expect=Expect.REFUSE,
    ),
    _HOUSE(
        name="expand-hotter-than-the-range",
        call={**_PIPE, "T_hot": "201 degC"},
        value="outside the temperatures",
    ),
    _HOUSE(
        name="expand-colder-than-the-range",
        call={**_PIPE, "T_cold": "19 degC"},
        value="outside the temperatures",
    ),
    _HOUSE(
        name="expand-a-change-wider-than-the-range",
        call={
            "alpha": "12e-6 1/K",
            "L": "10 m",
            "dT": "181 K(d)",
            "range_from": "20 degC",
            "range_to": "200 degC",
        },
        value="outside the temperatures",
    ),
)
