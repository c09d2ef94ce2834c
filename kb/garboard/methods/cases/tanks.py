"""Cases for the contents of a lying tank and how long it lasts."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["TANK_CONTENTS"]

_NO: Final = partial(OWN, expect=Expect.REFUSE)
_FLAT: Final = {"D": "1 m", "L": "2 m", "a": "0 m"}
_ENGINE: Final = {"P": "150 kW", "sfoc": "210 g/kWh", "rho": "0.84 kg/L"}
_FULL: Final = {"V": "800 L", "usable": "0.9", **_ENGINE}

TANK_CONTENTS: Final = (
    Proof(
        name="tank-ellipsoidal-us",
        call={"D": "108 inch", "L": "156 inch", "a": "42 inch", "h": "36 inch"},
        result="volume",
        value="2380.96 gal_us",
        absolute="0.01 gal_us",
        source="jones-tank",
        seen="secondary",
        basis="published",
        independent="fluids 1.3.1: 2380.95654 gal_us",
    ),
    OWN(
        name="tank-flat-quarter",
        call={**_FLAT, "h": "0.25 m"},
        result="volume",
        value="0.30709 m3",
        relative=2e-5,
        must_not_give=(("0.3927 m3", "a quarter of the height taken as a quarter of the volume"),),
        independent="fluids 1.3.1: 0.30709242 m3",
    ),
    OWN(
        name="tank-endurance",
        call=_FULL,
        result="hours",
        value="19.2 h",
        relative=0.001,
        must_not_give=(
            ("21.3 h", "the bottom of the tank counted as fuel"),
            ("22.9 h", "density left out"),
        ),
        independent="pint 0.25.3: 19.2 h",
    ),
    _NO(
        name="tank-depth-over-diameter",
        call={**_FLAT, "h": "1.05 m"},
        result="volume",
        value="above the diameter",
    ),
    OWN(
        name="tank-day-tank",
        call={**_ENGINE, "hours": "8 h"},
        result="day_tank",
        value="300 L",
        relative=0.001,
        must_not_give=(("252 L", "density left out"),),
        independent="exact arithmetic: 300 L",
    ),
    OWN(
        name="tank-empty",
        call={**_FLAT, "h": "0 m"},
        result="volume",
        value="0 L",
        absolute="1e-9 L",
    ),
    OWN(
        name="tank-full",
        call={**_FLAT, "h": "1 m"},
        result="volume",
        value="1570.796327 L",
        note="pi / 4 x 1 m2 x 2 m",
    ),
    OWN(
        name="tank-full-ellipsoidal",
        call={"D": "1 m", "L": "0 m", "a": "0.5 m", "h": "1 m"},
        result="volume",
        value="523.598776 L",
        note="two ends as deep as the radius are a sphere: 4 / 3 x pi x 0.5^3 m3",
    ),
    OWN(
        name="tank-nine-tenths",
        call={**_FLAT, "h": "0.9 m"},
        result="volume",
        value="1489.045772 L",
        relative=1e-8,
        independent="fluids 1.3.1: 1489.04577240 L",
    ),
    OWN(
        name="tank-endurance-at-a-depth",
        call={**_FLAT, "h": "0.5 m", "usable": "0.9", **_ENGINE},
        result="hours",
        value="18.8495559 h",
        relative=1e-8,
        note="half of 1570.796 L, 0.9 of it, at 37.5 L/h",
    ),
    _NO(
        name="tank-depth-below-zero",
        call={**_FLAT, "h": "-0.05 m"},
        result="volume",
        value="outside the tank",
    ),
    _NO(
        name="tank-no-usable-share",
        call={name: text for name, text in _FULL.items() if name != "usable"},
        result="hours",
        value="the bottom of the tank is not fuel",
    ),
    _NO(
        name="tank-usable-above-one",
        call={**_FULL, "usable": "1.05"},
        result="hours",
        value="a share of the tank, not above 1",
    ),
    _NO(
        name="tank-no-consumption",
        call={name: text for name, text in _FULL.items() if name != "sfoc"},
        result="hours",
        value="consumption without a source: measure it",
    ),
    _NO(
        name="tank-consumption-guessed",
        call={**_FULL, "sfoc_from": "guess"},
        result="hours",
        value="consumption without a source: measure it",
    ),
    _NO(
        name="tank-ends-not-said",
        call={"D": "1 m", "L": "2 m", "h": "0.25 m"},
        result="volume",
        value="say how deep each end is",
    ),
)
