"""Cases for the scale of a gauge."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof

__all__ = ["GAUGE_RANGE"]

_HALF: Final = partial(
    Proof, source="gauge-practice-half", seen="original", basis="rule", relative=1e-6
)
_MIDDLE: Final = partial(
    Proof, source="gauge-practice-middle", seen="original", basis="rule", relative=1e-6
)
_WORKING: Final = {"working": "30 bar(g)"}

GAUGE_RANGE: Final = (
    _HALF(
        name="gauge-30-half-min",
        call=_WORKING,
        result="scale_min_half",
        value="40 bar(g)",
    ),
    _HALF(
        name="gauge-30-half-max",
        call=_WORKING,
        result="scale_max_half",
        value="60 bar(g)",
    ),
    _MIDDLE(
        name="gauge-30-middle-min",
        call=_WORKING,
        result="scale_min_middle",
        value="40 bar(g)",
    ),
    _MIDDLE(
        name="gauge-30-middle-max",
        call=_WORKING,
        result="scale_max_middle",
        value="120 bar(g)",
    ),
    Proof(
        name="gauge-error-300-psi",
        call={"gauge_class": "1 %", "full_scale": "300 psi(g)"},
        result="error",
        value="3 psi(d)",
        relative=1e-6,
        source="gauge-practice-half",
        seen="original",
        basis="published",
        must_not_give=(("1.0 psi(d)", "percent of the reading at 100 psi"),),
    ),
    Proof(
        name="gauge-class-not-a-share",
        call={"gauge_class": "1", "full_scale": "300 psi(g)"},
        result="error",
        value="an accuracy class is a share of full scale",
        expect=Expect.REFUSE,
        source="definition",
        seen="constructed",
        basis="constructed",
    ),
)
