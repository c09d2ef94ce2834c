"""Cases for the stresses in a bracket weld."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import HOUSE, OWN

__all__ = ["WELD_LOAD_ESTIMATE"]

_BRACKET: Final = {
    "P": "30 kN",
    "e": "140 mm",
    "leg": "8 mm",
    "l": "440 mm",
    "joint_eff": "0.7",
}
_SHEET: Final = partial(
    Proof,
    call=_BRACKET,
    source="weld-sheet",
    seen="secondary",
    basis="published",
    relative=1e-5,
)
_HOUSE: Final = partial(HOUSE, expect=Expect.REFUSE)

WELD_LOAD_ESTIMATE: Final = (
    _SHEET(
        name="weld-direct",
        result="f_s",
        value="17.39332 N/mm2",
        independent="scipy 1.17.1: 17.39332 N/mm2",
    ),
    _SHEET(
        name="weld-resultant",
        result="resultant",
        value="37.48504 N/mm2",
        must_not_give=(("26.2395 N/mm2", "joint efficiency left out"),),
        independent="scipy 1.17.1: 37.48504 N/mm2",
    ),
    _SHEET(
        name="weld-bending",
        result="f_b",
        value="33 N/mm2",
        relative=0,
        absolute="0.5 N/mm2",
        independent="scipy 1.17.1: 33.205 N/mm2",
    ),
    _HOUSE(
        name="weld-lifting",
        call={**_BRACKET, "service": "lifting"},
        result="resultant",
        value="competent person only",
    ),
    OWN(
        name="weld-largest-normal",
        call=_BRACKET,
        result="max_normal",
        value="40.64804 N/mm2",
        relative=1e-5,
        note="33.2054 / 2 + sqrt(33.2054^2 / 4 + 17.3933^2)",
    ),
    OWN(
        name="weld-largest-shear",
        call=_BRACKET,
        result="max_shear",
        value="24.04533 N/mm2",
        relative=1e-5,
        note="sqrt(33.2054^2 / 4 + 17.3933^2)",
    ),
    _HOUSE(
        name="weld-man-riding",
        call={**_BRACKET, "service": "man_riding"},
        result="resultant",
        value="competent person only",
    ),
    _HOUSE(
        name="weld-vibration",
        call={**_BRACKET, "service": "vibration"},
        result="resultant",
        value="not in this sum",
    ),
    _HOUSE(
        name="weld-no-joint-efficiency",
        call={name: text for name, text in _BRACKET.items() if name != "joint_eff"},
        result="resultant",
        value="joint efficiency missing: say how the weld is checked",
    ),
    OWN(
        name="weld-better-than-plate",
        call={**_BRACKET, "joint_eff": "1.05"},
        result="resultant",
        value="a weld is not better than the plate",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="weld-as-good-as-plate",
        call={**_BRACKET, "joint_eff": "1"},
        result="f_s",
        value="12.17532 N/mm2",
        relative=1e-6,
        note="30 000 / 2464",
    ),
)
