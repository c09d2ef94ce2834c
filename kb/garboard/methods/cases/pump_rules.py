"""Cases for the rows of bilge and fire pump rules, both printed columns looked at."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof

__all__ = ["BILGE_AND_FIRE_PUMP_RULES"]

_SMALL: Final = partial(Proof, source="46cfr182.520", seen="original", basis="rule")
_THIRD: Final = partial(Proof, source="gerr-boat-systems", seen="secondary", basis="rule")
_PIPE: Final = partial(Proof, source="46cfr182.510", seen="original", basis="rule")
_FIRE: Final = partial(Proof, source="46cfr181.300", seen="original", basis="rule")
_SCHOOL: Final = partial(Proof, source="46cfr169.654", seen="original", basis="rule")
_SCHOOL_FIRE: Final = partial(Proof, source="46cfr169.559", seen="original", basis="rule")
_CANADA: Final = partial(Proof, source="tc-sail-training", seen="original", basis="rule")

_LONG: Final = {"rule": "small_passenger_bilge", "length": "72 ft", "passengers": "30"}
_MANY: Final = {"rule": "small_passenger_bilge", "length": "60 ft", "passengers": "60"}
_FEW: Final = {
    "rule": "small_passenger_bilge",
    "length": "60 ft",
    "passengers": "49",
    "ferry": "no",
}
_FERRY: Final = {"rule": "small_passenger_fire", "ferry": "yes", "passengers": "40"}

_PUBLISHED: Final = (
    _SMALL(
        name="pump-over-65-ft",
        call=_LONG,
        result="pump_gpm",
        value="50 gal_us/min",
        note="two pumps, 190 L/min each",
    ),
    _SMALL(
        name="pump-60-passengers",
        call=_MANY,
        result="pump_l_min",
        value="95 L/min",
        note="plus a portable hand pump of 38 L/min",
    ),
    _SMALL(name="pump-hand-60-passengers", call=_MANY, result="hand_gpm", value="10 gal_us/min"),
    _PIPE(
        name="pump-pipe-18-m",
        call={"rule": "bilge_pipe", "length": "18 m"},
        result="pipe_nominal_mm",
        value="25 mm",
    ),
    _SCHOOL(
        name="pump-school-38-ft",
        call={"rule": "sailing_school_bilge", "length": "38 ft"},
        result="pump_gpm",
        value="10 gal_us/min",
    ),
    _FIRE(
        name="fire-small-passenger",
        call={"rule": "small_passenger_fire"},
        result="fire_psi",
        value="60 psi(g)",
        note="50 gpm and 414 kPa printed beside it",
    ),
    _SCHOOL_FIRE(
        name="fire-school-110-ft",
        call={"rule": "sailing_school_fire", "length": "110 ft"},
        result="fire_gpm",
        value="50 gal_us/min",
    ),
    _SCHOOL_FIRE(
        name="fire-school-130-ft-columns",
        call={"rule": "sailing_school_fire", "length": "130 ft"},
        result="fire_m3_h",
        value="14.3 m3/h",
        must_not_give=(("15.13 m3/h", "66.6 gpm converted into the metric column"),),
        note="prints 14.3 m3/h and 66.6 gpm side by side",
    ),
    _CANADA(
        name="pump-canada-18-m",
        call={"rule": "canada_sail_training_bilge", "length": "18 m"},
        result="hand_m3_h",
        value="1 m3/h",
    ),
    _SCHOOL_FIRE(
        name="fire-school-120-ft-gap",
        call={"rule": "sailing_school_fire", "length": "120 ft"},
        result="fire_m3_h",
        value="14.3 m3/h",
        expect=Expect.ALARM,
        note="the capacity table says under 120 and over 120: print the gap and the larger figure",
    ),
)

_COLUMNS: Final = (
    _SMALL(name="pump-over-65-ft-metric", call=_LONG, result="pump_l_min", value="190 L/min"),
    _SMALL(name="pump-over-65-ft-pumps", call=_LONG, result="pumps", value="2"),
    _SMALL(name="pump-60-passengers-gpm", call=_MANY, result="pump_gpm", value="25 gal_us/min"),
    _SMALL(name="pump-60-passengers-pumps", call=_MANY, result="pumps", value="1"),
    _SMALL(
        name="pump-hand-60-passengers-metric", call=_MANY, result="hand_l_min", value="38 L/min"
    ),
    _SMALL(
        name="pump-ferry",
        call={**_FEW, "ferry": "yes"},
        result="pump_gpm",
        value="25 gal_us/min",
        note="every ferry, however few her passengers",
    ),
    _SMALL(
        name="pump-50-passengers",
        call={**_FEW, "passengers": "50"},
        result="pump_gpm",
        value="25 gal_us/min",
    ),
    _SMALL(
        name="pump-20-m",
        call={**_FEW, "length": "20 m"},
        result="pump_gpm",
        value="50 gal_us/min",
    ),
    _SMALL(
        name="pump-65-ft-between-the-columns",
        call={**_FEW, "length": "65 ft"},
        result="pump_gpm",
        value="50 gal_us/min",
        expect=Expect.ALARM,
        note="65 ft is 19.812 m: over 19.8 m and not over 65 ft",
    ),
    _THIRD(name="pump-49-passengers", call=_FEW, result="pump_gpm", value="10 gal_us/min"),
    _THIRD(name="pump-49-passengers-metric", call=_FEW, result="pump_l_min", value="38 L/min"),
    _THIRD(name="pump-49-passengers-pumps", call=_FEW, result="pumps", value="1"),
    _THIRD(
        name="pump-8-m",
        call={**_FEW, "length": "8 m"},
        result="pump_gpm",
        value="10 gal_us/min",
    ),
    _THIRD(
        name="pump-too-short",
        call={**_FEW, "length": "7.5 m"},
        result="pump_gpm",
        value="no row is held for a length under 7.9 m",
        expect=Expect.REFUSE,
    ),
    _SMALL(
        name="pump-ferry-not-said",
        call={name: text for name, text in _FEW.items() if name != "ferry"},
        result="pump_gpm",
        value="every ferry has the larger row",
        expect=Expect.REFUSE,
    ),
    _SMALL(
        name="pump-passengers-not-said",
        call={"rule": "small_passenger_bilge", "length": "60 ft"},
        result="pump_gpm",
        value="the number of passengers chooses the row",
        expect=Expect.REFUSE,
    ),
    _PIPE(
        name="pump-pipe-18-m-inch",
        call={"rule": "bilge_pipe", "length": "18 m"},
        result="pipe_nominal_inch",
        value="1 inch",
    ),
    _PIPE(
        name="pump-pipe-20-m",
        call={"rule": "bilge_pipe", "length": "20 m"},
        result="pipe_nominal_mm",
        value="40 mm",
        must_not_give=(("38.1 mm", "the inch column converted"),),
    ),
    _PIPE(
        name="pump-pipe-20-m-inch",
        call={"rule": "bilge_pipe", "length": "20 m"},
        result="pipe_nominal_inch",
        value="1.5 inch",
    ),
    _PIPE(
        name="pump-pipe-strainer",
        call={"rule": "bilge_pipe", "length": "18 m"},
        result="strainer_open_area",
        value="3",
    ),
    *(
        _FIRE(
            name=f"fire-small-passenger-{result}",
            call={"rule": "small_passenger_fire"},
            result=result,
            value=value,
        )
        for result, value in (
            ("fire_l_min", "189 L/min"),
            ("fire_gpm", "50 gal_us/min"),
            ("fire_kpa", "414 kPa(g)"),
        )
    ),
    *(
        _FIRE(name=f"fire-ferry-{result}", call=_FERRY, result=result, value=value)
        for result, value in (
            ("fire_l_min", "38 L/min"),
            ("fire_gpm", "10 gal_us/min"),
            ("jet_m", "7.6 m"),
            ("jet_ft", "25 ft"),
        )
    ),
    _FIRE(
        name="fire-ferry-50-passengers",
        call={**_FERRY, "passengers": "50"},
        result="fire_gpm",
        value="50 gal_us/min",
    ),
)

_SCHOOLS: Final = (
    *(
        _SCHOOL(
            name=f"pump-school-{length.replace(' ', '-')}-{result}",
            call={"rule": "sailing_school_bilge", "length": length},
            result=result,
            value=value,
        )
        for length, result, value in (
            ("25 ft", "hand_gpm", "5 gal_us/min"),
            ("27 ft", "pump_gpm", "10 gal_us/min"),
            ("38 ft", "pumps", "1"),
            ("40 ft", "pump_gpm", "25 gal_us/min"),
            ("41 ft", "pump_gpm", "25 gal_us/min"),
            ("41 ft", "pumps", "1"),
            ("125 ft", "pumps", "2"),
        )
    ),
    *(
        _SCHOOL(
            name=f"pump-school-66-ft-{result}",
            call={"rule": "sailing_school_bilge", "length": "66 ft", "gross_tons": "90"},
            result=result,
            value=value,
        )
        for result, value in (("combined_gpm", "50 gal_us/min"), ("pumps", "2"))
    ),
    _SCHOOL(
        name="pump-school-capacity-not-held",
        call={"rule": "sailing_school_bilge", "length": "66 ft", "gross_tons": "105"},
        result="combined_gpm",
        value="holds no such figure",
        expect=Expect.REFUSE,
    ),
    _SCHOOL(
        name="pump-school-125-ft-not-held",
        call={"rule": "sailing_school_bilge", "length": "125 ft", "gross_tons": "90"},
        result="combined_gpm",
        value="holds no such figure",
        expect=Expect.REFUSE,
    ),
    _SCHOOL(
        name="pump-school-tons-not-said",
        call={"rule": "sailing_school_bilge", "length": "66 ft"},
        result="combined_gpm",
        value="say the gross tons",
        expect=Expect.REFUSE,
    ),
    *(
        _SCHOOL_FIRE(
            name=f"fire-school-{length.replace(' ', '-')}-{result}",
            call={"rule": "sailing_school_fire", "length": length},
            result=result,
            value=value,
            must_not_give=wrong,
        )
        for length, result, value, wrong in (
            ("80 ft", "fire_m3_h", "5.5 m3/h", ()),
            ("80 ft", "fire_gpm", "25 gal_us/min", ()),
            ("95 ft", "fire_m3_h", "11.0 m3/h", ()),
            ("125 ft", "fire_m3_h", "14.3 m3/h", ()),
            (
                "130 ft",
                "fire_gpm",
                "66.6 gal_us/min",
                (("62.96 gal_us/min", "14.3 m3/h converted into the US column"),),
            ),
            ("80 ft", "hand_m3_h", "1.1 m3/h", ()),
            ("80 ft", "hand_gpm", "5 gal_us/min", ()),
        )
    ),
    *(
        _CANADA(
            name=f"pump-canada-{length.replace(' ', '-')}-{result}",
            call={"rule": "canada_sail_training_bilge", "length": length},
            result=result,
            value=value,
        )
        for length, result, value in (
            ("18 m", "pump_m3_h", "5 m3/h"),
            ("20 m", "combined_m3_h", "10 m3/h"),
            ("21 m", "combined_m3_h", "10 m3/h"),
            ("21 m", "pumps", "2"),
        )
    ),
    _CANADA(
        name="pump-unknown-rule",
        call={"rule": "house_boats", "length": "18 m"},
        result="hand_m3_h",
        value="house_boats",
        expect=Expect.REFUSE,
    ),
)

BILGE_AND_FIRE_PUMP_RULES: Final = _PUBLISHED + _COLUMNS + _SCHOOLS
