"""Cases for the conductor that is there already, and the copper of every one that is listed."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["CONDUCTORS", "PUMP", "SHORT", "TABLE"]

TABLE: Final = partial(Proof, source="marine-wire-guide", seen="original", basis="table")
PUMP: Final = {
    "I": "10 A",
    "run_out": "11 ft",
    "run_back": "10 ft",
    "V": "12 V",
    "drop_fraction": "0.03",
}
SHORT: Final = {"I": "45 A", "L": "6 ft", "V": "12 V", "drop_fraction": "0.1"}

_THERE: Final = (
    OWN(
        name="cable-there-and-thin",
        call={**PUMP, "size": "14", "standard": "AWG"},
        result="drop",
        value="0.54967 V",
        relative=0.0001,
        expect=Expect.ALARM,
        note="14 AWG has less copper than the drop asks for",
    ),
    OWN(
        name="cable-there-and-thick-enough",
        call={**PUMP, "size": "12", "standard": "AWG"},
        result="drop",
        value="0.34571 V",
        relative=0.0001,
    ),
    OWN(
        name="cable-there-and-overloaded",
        call={**SHORT, "I": "26 A", "size": "12", "standard": "AWG"},
        result="drop",
        value="0.25681 V",
        relative=0.001,
        expect=Expect.ALARM,
        note="12 AWG with insulation that is not stated carries 25 A",
    ),
    OWN(
        name="cable-there-and-at-its-limit",
        call={**SHORT, "I": "25 A", "size": "12", "standard": "AWG"},
        result="drop",
        value="0.24694 V",
        relative=0.001,
    ),
    OWN(
        name="cable-copper-there",
        call={**PUMP, "A": "4 mm2"},
        result="drop",
        value="0.28598 V",
        relative=0.0001,
        note="7894 circular mils",
    ),
    OWN(
        name="cable-copper-there-and-thin",
        call={**PUMP, "A": "2.5 mm2"},
        result="drop",
        value="0.45757 V",
        relative=0.0001,
        expect=Expect.ALARM,
    ),
    OWN(
        name="cable-said-twice",
        call={**PUMP, "A": "4 mm2", "size": "12", "standard": "AWG"},
        result="drop",
        value="say the conductor once",
        expect=Expect.REFUSE,
    ),
)

_AREAS: Final = """
AWG 18 1624      AWG 16 2583      AWG 14 4107      AWG 12 6530     AWG 10 10383
AWG 8 16510      AWG 6 26251      AWG 4 41741      AWG 2 66371     AWG 1 83693
AWG 0 105535     AWG 00 133077    AWG 000 167806   AWG 0000 211600
SAE 18 1537      SAE 16 2336      SAE 14 3702      SAE 12 5833     SAE 10 9343
"""

_LISTED: Final = tuple(
    TABLE(
        name=f"cable-area-{size}-{standard.lower()}",
        call={"size": size, "standard": standard},
        result=f"{standard.lower()}_area",
        value=f"{cmil} cmil",
    )
    for standard, size, cmil in zip(*[iter(_AREAS.split())] * 3, strict=True)
)

CONDUCTORS: Final = _THERE + _LISTED
