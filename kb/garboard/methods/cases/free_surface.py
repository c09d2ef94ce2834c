"""Cases for the free surface of a slack tank."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof

__all__ = ["FREE_SURFACE_INFORMATION"]

_BOOK: Final = partial(
    Proof,
    result="FSC",
    source="ship-stability-masters",
    seen="original",
    basis="consistency",
    relative=0.001,
)
_NO: Final = partial(
    Proof,
    result="FSC",
    source="definition",
    seen="constructed",
    basis="constructed",
    expect=Expect.REFUSE,
)
_TANK: Final = {"l": "15 m", "b": "10 m", "rho": "1.025 t/m3", "displacement": "8000 t"}

FREE_SURFACE_INFORMATION: Final = (
    _BOOK(
        name="fsc-double-bottom",
        call=_TANK,
        value="0.16016 m",
        independent="scipy 1.17.1: 0.16016 m, moment of area by integration 1250 m4",
        note="tank and displacement after half the water is out are published inputs; the printed "
        "answer was not seen",
    ),
    _BOOK(
        name="fsc-divided",
        call={**_TANK, "n": "2"},
        value="0.04004 m",
        must_not_give=(("0.0801 m", "divided by n instead of n squared"),),
        independent="exact arithmetic: 0.0400391 m",
    ),
    _NO(name="fsc-no-divisions", call={**_TANK, "n": "0"}, value="divisions below 1"),
    _NO(name="fsc-half-a-division", call={**_TANK, "n": "1.05"}, value="a whole number"),
    _NO(name="fsc-not-rectangular", call={**_TANK, "shape": "other"}, value="not rectangular"),
    _NO(
        name="fsc-no-displacement",
        call={**_TANK, "displacement": "0 t"},
        value="the displacement is missing",
    ),
)
