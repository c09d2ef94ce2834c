"""Cases for the force of a cylinder and the power of its pump."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect
from garboard.methods.cases.constructed import OWN

__all__ = ["HYDRAULIC_FORCE_AND_POWER"]

_NO: Final = partial(OWN, expect=Expect.REFUSE)
_CYLINDER: Final = {"p": "160 bar(g)", "D": "50 mm"}

HYDRAULIC_FORCE_AND_POWER: Final = (
    OWN(
        name="hyd-push-50",
        call=_CYLINDER,
        result="F_push",
        value="31.416 kN",
        relative=1e-4,
        must_not_give=(("31.615 kN", "the reading counted from nothing"),),
        independent="pint 0.25.3: 31.4159 kN",
    ),
    OWN(
        name="hyd-power-40",
        call={"p": "160 bar(g)", "Q": "40 L/min"},
        result="P_oil",
        value="10.667 kW",
        relative=1e-4,
        independent="pint 0.25.3: 10.6667 kW",
    ),
    _NO(
        name="hyd-rod-too-big",
        call={**_CYLINDER, "d_rod": "50 mm"},
        result="F_pull",
        value="rod not smaller than the bore",
    ),
    OWN(
        name="hyd-pull-50-28",
        call={**_CYLINDER, "d_rod": "28 mm"},
        result="F_pull",
        value="21.5639 kN",
        relative=1e-5,
        must_not_give=(("31.416 kN", "the rod left out"),),
        note="16 MPa x pi / 4 x (2500 - 784) mm2",
    ),
    OWN(
        name="hyd-shaft-40",
        call={"p": "160 bar(g)", "Q": "40 L/min", "eta": "85 %"},
        result="P_shaft",
        value="12.5490 kW",
        relative=1e-5,
        must_not_give=(("9.0667 kW", "multiplied by the efficiency instead of divided"),),
        note="10.6667 / 0.85",
    ),
    OWN(
        name="hyd-below-relief",
        call={**_CYLINDER, "p_relief": "160 bar(g)"},
        result="F_push",
        value="31.4159 kN",
        relative=1e-5,
        note="at the setting itself the valve does not lift yet",
    ),
    _NO(
        name="hyd-above-relief",
        call={**_CYLINDER, "p_relief": "150 bar(g)"},
        result="F_push",
        value="above the setting of the relief valve",
    ),
    _NO(
        name="hyd-efficiency-above-one",
        call={"p": "160 bar(g)", "Q": "40 L/min", "eta": "1.05"},
        result="P_shaft",
        value="efficiency is a share, not above 1",
    ),
    _NO(
        name="hyd-no-rod",
        call=_CYLINDER,
        result="F_pull",
        value="the rod takes its share of the bore",
    ),
    _NO(
        name="hyd-no-pressure",
        call={**_CYLINDER, "p": "0 bar(g)"},
        result="F_push",
        value="no pressure",
    ),
)
