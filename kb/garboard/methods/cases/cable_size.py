"""Cases for the size of a direct-current cable."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.conductors import CONDUCTORS, PUMP, SHORT, TABLE
from garboard.methods.cases.constructed import HOUSE, OWN

__all__ = ["DC_CABLE_SIZE"]

_GUIDE: Final = partial(
    Proof, source="marine-wire-guide", seen="original", basis="published", result="size"
)
_CFR: Final = partial(Proof, source="33cfr183.425", seen="original", basis="rule", result="size")


_PUBLISHED: Final = (
    _GUIDE(
        name="cable-bilge-pump-area",
        call=PUMP,
        result="area_cmil",
        value="6271 cmil",
        absolute="1 cmil",
        must_not_give=(
            ("3285 cmil", "one way only"),
            ("1881 cmil", "10 percent drop for a bilge pump"),
        ),
        independent="scipy 1.17.1: 6270.4 cmil, copper resistivity at 29.3 degC",
    ),
    _GUIDE(
        name="cable-bilge-pump-awg",
        call={**PUMP, "standard": "AWG"},
        value="12 AWG",
    ),
    _GUIDE(
        name="cable-bilge-pump-sae",
        call={**PUMP, "standard": "SAE"},
        value="10 SAE",
        must_not_give=(("12", "AWG area used for SAE wire"),),
        note="12 SAE would be the AWG area used for SAE wire",
    ),
    TABLE(
        name="cable-awg-12",
        call={"size": "12", "standard": "AWG"},
        result="awg_area",
        value="6530 cmil",
        absolute="1 cmil",
        independent="scipy 1.17.1: 6529.95 cmil",
    ),
    OWN(
        name="cable-awg-10",
        call={"size": "10", "standard": "AWG"},
        result="awg_area",
        value="10383 cmil",
        absolute="5 cmil",
        basis="table",
        independent="scipy 1.17.1: 10383.0 cmil",
    ),
    Proof(
        name="cable-45-a-40-ft",
        call={
            "I": "45 A",
            "L": "40 ft",
            "V": "12 V",
            "drop_fraction": "0.1",
            "standard": "AWG",
            "insulation_rating": "105 degC",
        },
        result="size",
        value="8 AWG",
        source="refrigeration-wire-note",
        seen="original",
        basis="published",
        note="16125 circular mils",
    ),
    OWN(
        name="cable-drop-12-awg",
        call={"I": "10 A", "L": "21 ft", "A": "3.309 mm2", "T": "29.28 degC"},
        result="drop",
        value="0.3457 V",
        relative=0.003,
        independent="scipy 1.17.1: 0.34567 V",
    ),
    HOUSE(
        name="cable-no-standard",
        call={**PUMP, "size": "12"},
        result="drop",
        value="the conductor standard is not stated",
        expect=Expect.REFUSE,
    ),
)

_EDGES: Final = (
    OWN(
        name="cable-one-way",
        call={name: text for name, text in PUMP.items() if name != "run_back"},
        result="area_cmil",
        value="say out and back",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="cable-length-said-twice",
        call={**PUMP, "L": "21 ft"},
        result="area_cmil",
        value="say out and back",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="cable-cranking",
        call={**PUMP, "circuit": "cranking"},
        result="area_cmil",
        value="a cranking circuit is not a continuous load",
        expect=Expect.REFUSE,
    ),
    _CFR(
        name="cable-current-wins",
        call={**SHORT, "standard": "AWG", "insulation_rating": "105 degC"},
        value="12 AWG",
        note="the drop alone would take 16 AWG, 2583 of 2419 circular mils",
    ),
    _CFR(
        name="cable-current-wins-in-the-engine-space",
        call={
            **SHORT,
            "standard": "AWG",
            "insulation_rating": "105 degC",
            "engine_space": "yes",
        },
        value="10 AWG",
        note="12 AWG carries 38.25 A there",
    ),
    _CFR(
        name="cable-insulation-not-said",
        call={**SHORT, "standard": "AWG"},
        value="8 AWG",
        note="the lowest column, 60 degC: 10 AWG carries 40 A, 8 AWG 55 A",
    ),
    OWN(
        name="cable-sae-has-less-copper",
        call={**SHORT, "I": "30 A", "standard": "SAE", "insulation_rating": "105 degC"},
        result="size",
        value="12 SAE",
        note="12 SAE has more copper than 14 AWG, which carries 35 A, and less than 12 AWG",
    ),
    OWN(
        name="cable-sae-ends",
        call={**SHORT, "standard": "SAE", "insulation_rating": "105 degC", "I": "50 A"},
        result="area_cmil",
        value="no SAE conductor held is thick enough for the current",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="cable-too-thick",
        call={**PUMP, "I": "400 A", "standard": "AWG"},
        result="area_cmil",
        value="no AWG conductor held is thick enough for the drop",
        expect=Expect.REFUSE,
    ),
    _CFR(
        name="cable-single-thin",
        call={**SHORT, "I": "5 A", "standard": "AWG"},
        value="16 AWG",
        note="laid singly nothing below 16 AWG",
    ),
    _CFR(
        name="cable-sheath-thin",
        call={**SHORT, "I": "5 A", "standard": "AWG", "separate": "no"},
        value="18 AWG",
    ),
    OWN(
        name="cable-chosen-area",
        call={**PUMP, "standard": "AWG"},
        result="chosen_area",
        value="3.3088 mm2",
        relative=0.0001,
        note="6530 circular mils",
    ),
    OWN(
        name="cable-drop-of-the-chosen",
        call={**PUMP, "standard": "AWG"},
        result="drop",
        value="0.34571 V",
        relative=0.0001,
        must_not_give=(("0.18109 V", "one way only"),),
    ),
    OWN(
        name="cable-drop-of-the-named",
        call={"I": "10 A", "L": "21 ft", "size": "12", "standard": "SAE"},
        result="drop",
        value="0.38702 V",
        relative=0.0001,
        must_not_give=(("0.34571 V", "AWG area used for SAE wire"),),
    ),
    OWN(
        name="cable-drop-warm",
        call={"I": "10 A", "L": "21 ft", "size": "12", "standard": "AWG", "T": "50 degC"},
        result="drop",
        value="0.37337 V",
        relative=0.001,
        note="8 percent more",
    ),
    OWN(
        name="cable-drop-cold",
        call={"I": "10 A", "L": "21 ft", "size": "12", "standard": "AWG", "T": "-10 degC"},
        result="drop",
        value="0.34571 V",
        relative=0.0001,
        note="nothing is taken off for cold copper",
    ),
    OWN(
        name="cable-area-warm",
        call={**PUMP, "T": "50 degC"},
        result="area_cmil",
        value="6772.5 cmil",
        relative=0.0001,
        note="8 percent more",
    ),
    OWN(
        name="cable-in-metres",
        call={**PUMP, "run_out": "3.3528 m", "run_back": "3.048 m"},
        result="area_cmil",
        value="6270.8 cmil",
        relative=0.0001,
        must_not_give=(("1911.3 cmil", "metres typed into the form for feet"),),
        note="the first case in metres",
    ),
    OWN(
        name="cable-48-v",
        call={**PUMP, "V": "48 V"},
        result="area_cmil",
        value="1567.7 cmil",
        relative=0.0001,
    ),
    OWN(
        name="cable-51-v",
        call={**PUMP, "V": "51 V"},
        result="area_cmil",
        value="at 50 V and above a qualified electrician",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="cable-drop-above-ten",
        call={**PUMP, "drop_fraction": "10.5 %"},
        result="area_cmil",
        value="no more than 10 percent drop",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="cable-no-current",
        call={"L": "21 ft", "A": "3.309 mm2"},
        result="drop",
        value="the current is missing",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="cable-no-share",
        call={name: text for name, text in PUMP.items() if name != "drop_fraction"},
        result="area_cmil",
        value="the share that may be lost is missing",
        expect=Expect.REFUSE,
    ),
    OWN(
        name="cable-no-sae-8",
        call={"size": "8", "standard": "SAE"},
        result="sae_area",
        value="no SAE area is held for size 8",
        expect=Expect.REFUSE,
    ),
    _GUIDE(
        name="cable-three-percent",
        call=PUMP,
        result="suits",
        value="pumps, navigation lights, electronics, feeders and any other load",
    ),
    _GUIDE(
        name="cable-above-three-percent",
        call={**PUMP, "drop_fraction": "3.1 %"},
        result="suits",
        value="no pump, navigation light, electronics or feeder",
    ),
    OWN(
        name="cable-length-alone",
        call={"L": "21 ft", "I": "10 A"},
        result="drop",
        value="say what is known of the conductor",
        expect=Expect.REFUSE,
    ),
)

DC_CABLE_SIZE: Final = _PUBLISHED + _EDGES + CONDUCTORS
