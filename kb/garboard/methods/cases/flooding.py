"""Cases for the water that a hole lets in."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect
from garboard.methods.cases.constructed import OWN

__all__ = ["FLOODING_RATE"]

_OWN: Final = partial(OWN, result="Q")
_HOLE: Final = {"d_hole": "50 mm", "h": "1 m", "Cd": "0.6"}

FLOODING_RATE: Final = (
    _OWN(
        name="flood-1-inch-1-foot",
        call={"d_hole": "25.4 mm", "h": "0.305 m", "Cd": "0.6"},
        value="11.8 gal_us/min",
        absolute="0.05 gal_us/min",
        must_not_give=(("19.6 gal_us/min", "the edge of the hole left out"),),
        independent="scipy 1.17.1: 11.786 gal_us/min",
    ),
    _OWN(
        name="flood-50-mm-1-m",
        call=_HOLE,
        value="313 L/min",
        absolute="0.5 L/min",
        independent="scipy 1.17.1: 313.05 L/min",
        note="more than one pump of 190 L/min delivers at no height",
    ),
    _OWN(
        name="flood-50-mm-1-m-pump-too-small",
        call={**_HOLE, "pump": "190 L/min"},
        value="313 L/min",
        absolute="0.5 L/min",
        expect=Expect.ALARM,
        note="more comes in than the pump moves",
    ),
    _OWN(
        name="flood-50-mm-1-m-two-pumps",
        call={**_HOLE, "pump": "380 L/min"},
        value="313 L/min",
        absolute="0.5 L/min",
        note="no alarm, and no word that the pumps hold it",
    ),
    _OWN(
        name="flood-square-hole",
        call={"A": "0.0025 m2", "h": "1 m", "Cd": "0.6"},
        value="398.582 L/min",
        relative=1e-5,
        note="0.6 x 0.0025 m2 x 4.428690 m/s, a hole of 50 mm by 50 mm",
    ),
    _OWN(
        name="flood-hole-above-water",
        call={**_HOLE, "h": "0 m"},
        value="hole above water",
        expect=Expect.REFUSE,
    ),
    _OWN(
        name="flood-no-coefficient",
        call={"d_hole": "50 mm", "h": "1 m"},
        value="a coefficient has a source",
        expect=Expect.REFUSE,
    ),
    _OWN(
        name="flood-coefficient-above-one",
        call={**_HOLE, "Cd": "1.05"},
        value="a discharge coefficient is a share",
        expect=Expect.REFUSE,
    ),
    _OWN(
        name="flood-no-size",
        call={**_HOLE, "d_hole": "0 mm"},
        value="the size of the hole is missing",
        expect=Expect.REFUSE,
    ),
)
