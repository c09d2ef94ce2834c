"""Cases for the hours on the batteries."""

from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["BATTERY_AUTONOMY"]

_BANK: Final = {"C": "400 Ah", "DoD": "0.5", "eta": "1", "I": "12 A"}
_DAY: Final = {"loads": "3 A * 24 h + 8 A * 4 h", "DoD": "0.5", "eta": "0.8"}

BATTERY_AUTONOMY: Final = (
    OWN(
        name="battery-400-ah",
        call=_BANK,
        result="hours",
        value="16.667 h",
        relative=0.001,
        must_not_give=(("33.3 h", "counted to empty"),),
        independent="exact arithmetic: 16.6667 h",
    ),
    OWN(
        name="battery-needed",
        call=_DAY,
        result="C_needed",
        value="260 Ah",
        relative=0.001,
        must_not_give=(("104 Ah", "the loads alone, counted to empty and as new"),),
        independent="exact arithmetic: 260 Ah",
    ),
    Proof(
        name="battery-no-depth",
        call={"C": "400 Ah", "I": "12 A"},
        result="hours",
        value="depth of discharge missing",
        source="house-rule",
        seen="constructed",
        basis="constructed",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="battery-in-per-cent",
        call={**_BANK, "DoD": "50 %", "eta": "80 %"},
        result="hours",
        value="13.333 h",
        relative=0.0001,
        note="a fifth lost to age and cold",
    ),
    OWN(
        name="battery-at-the-deepest",
        call={**_BANK, "DoD": "80 %"},
        result="hours",
        value="26.667 h",
        relative=0.0001,
    ),
    OWN(
        name="battery-too-deep",
        call={**_BANK, "DoD": "0.81"},
        result="hours",
        value="deeper than this page allows",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="battery-needed-too-deep",
        call={**_DAY, "DoD": "100 %"},
        result="C_needed",
        value="deeper than this page allows",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="battery-no-age",
        call={name: text for name, text in _BANK.items() if name != "eta"},
        result="hours",
        value="the fraction left for age and cold is missing",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="battery-better-than-new",
        call={**_BANK, "eta": "1.05"},
        result="hours",
        value="age and cold leave no more than the whole",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="battery-no-load",
        call={**_BANK, "I": "0 A"},
        result="hours",
        value="the load is missing",
        expect=Expect.REFUSE,
    ),
)
