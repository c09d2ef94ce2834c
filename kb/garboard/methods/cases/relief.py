"""Cases for the relief capacity of an air receiver."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["RELIEF_CAPACITY_CHECK"]

_REFUSED: Final = partial(OWN, expect=Expect.REFUSE)
_SET: Final = partial(Proof, source="30cfr57.13011", seen="original")
_CALIFORNIA: Final = partial(Proof, source="cal-t8-465", seen="original", basis="rule")

_VALVE: Final = {
    "stamped": "70 m3(n)/h",
    "compressors": "[29.6 m3(n)/h]",
    "setting": "32 bar(g)",
    "mawp": "33 bar(g)",
    "valve_between": "no",
}
_STANDARD: Final = {
    "W": "24270 kg/h",
    "T": "348 K(a)",
    "Z": "0.9",
    "M": "51 g/mol",
    "k": "1.11",
    "P1": "670 kPa(a)",
    "Kd": "0.975",
}
_AIR: Final = {
    "q": "0.982944 m3(s)/min",
    "setting": "30 bar(g)",
    "overpressure": "0.1",
    "T": "60 degC",
    "Kd": "0.975",
    "p_atm": "1.01325 bar(a)",
}
_LOW: Final = {"q": "1 m3(n)/min", "T": "20 degC", "Kd": "0.975", "P1": "200 kPa(a)"}

_PUBLISHED: Final = (
    Proof(
        name="relief-one-compressor",
        call=_VALVE,
        result="verdict",
        value="covers",
        source="29cfr1917.155",
        seen="original",
        basis="constructed",
    ),
    _SET(
        name="relief-p-max",
        call={"mawp": "33 bar(g)"},
        result="p_max",
        value="36.3 bar(g)",
        relative=1e-6,
        basis="rule",
        must_not_give=(("36.401 bar(g)", "110 percent taken of the absolute pressure"),),
    ),
    Proof(
        name="relief-valve-between",
        call={**_VALVE, "valve_between": "yes"},
        result="verdict",
        value="stop",
        source="oar-437-004-1505",
        seen="original",
        basis="rule",
        expect=Expect.ALARM,
    ),
    _CALIFORNIA(
        name="relief-california-small",
        call={**_VALVE, "water_volume": "1900 gal_us", "valves": "1"},
        result="verdict",
        value="covers",
    ),
    Proof(
        name="relief-area-api-1",
        call=_STANDARD,
        result="area",
        value="3699 mm2",
        relative=0.003,
        source="api-520-1",
        seen="secondary",
        basis="consistency",
        independent="fluids 1.3.1: 3699.05 mm2",
        note="the library's documentation says that it matches the example of the standard",
    ),
    OWN(
        name="relief-area-starting-air",
        call=_AIR,
        result="area",
        value="2.73 mm2",
        relative=0.01,
        independent="fluids 1.3.1: 2.733 mm2",
        note="1 m3/min at 20 degC, written as the same amount at 15 degC; 1.204 kg/m3",
    ),
    _SET(
        name="relief-set-above-mawp",
        call={**_VALVE, "setting": "33.5 bar(g)"},
        result="verdict",
        value="stop",
        basis="constructed",
        expect=Expect.ALARM,
    ),
)

_EDGES: Final = (
    OWN(
        name="relief-two-compressors",
        call={**_VALVE, "compressors": "[40 m3(n)/h, 29.6 m3(n)/h]"},
        result="together",
        value="69.6 m3(n)/h",
        must_not_give=(("40 m3(n)/h", "the largest compressor alone"),),
    ),
    OWN(
        name="relief-two-compressors-too-many",
        call={**_VALVE, "compressors": "[41 m3(n)/h, 29.6 m3(n)/h]"},
        result="verdict",
        value="stop",
        expect=Expect.ALARM,
        note="each of them alone is covered",
    ),
    OWN(
        name="relief-margin",
        call=_VALVE,
        result="margin",
        value="40.4 m3(n)/h",
    ),
    OWN(
        name="relief-exactly-covered",
        call={**_VALVE, "compressors": "[70 m3(n)/h]"},
        result="verdict",
        value="covers",
    ),
    OWN(
        name="relief-other-state",
        call={**_VALVE, "stamped": "31 m3(s)/h"},
        result="verdict",
        value="stop",
        expect=Expect.ALARM,
        note="31 m3(s)/h is 29.39 m3(n)/h: the figures alone would cover",
    ),
    _SET(
        name="relief-set-at-mawp",
        call={**_VALVE, "setting": "33 bar(g)"},
        result="verdict",
        value="covers",
        basis="constructed",
    ),
    _SET(
        name="relief-ten-percent-over",
        call={**_VALVE, "setting": "33 bar(g)", "overpressure": "10 %"},
        result="verdict",
        value="covers",
        basis="constructed",
    ),
    _SET(
        name="relief-too-far-over",
        call={**_VALVE, "setting": "33 bar(g)", "overpressure": "11 %"},
        result="verdict",
        value="stop",
        basis="constructed",
        expect=Expect.ALARM,
    ),
    _CALIFORNIA(
        name="relief-california-large",
        call={**_VALVE, "water_volume": "2100 gal_us", "valves": "1"},
        result="verdict",
        value="covers",
        expect=Expect.ALARM,
        note="one valve where two are asked for",
    ),
    _CALIFORNIA(
        name="relief-california-at-the-limit",
        call={**_VALVE, "water_volume": "2000 gal_us", "valves": "1"},
        result="verdict",
        value="covers",
    ),
    _CALIFORNIA(
        name="relief-california-two",
        call={**_VALVE, "water_volume": "2100 gal_us", "valves": "2", "smaller_share": "50 %"},
        result="verdict",
        value="covers",
    ),
    _CALIFORNIA(
        name="relief-california-small-second",
        call={**_VALVE, "water_volume": "2100 gal_us", "valves": "2", "smaller_share": "49 %"},
        result="verdict",
        value="covers",
        expect=Expect.ALARM,
    ),
    OWN(
        name="relief-area-choked",
        call={**_LOW, "P2": "104 kPa(a)"},
        result="area",
        value="46.789 mm2",
        relative=0.002,
        independent="fluids 1.3.1: 46.789 mm2",
        note="back pressure 0.52 of the relieving pressure, below the critical 0.528",
    ),
    _REFUSED(
        name="relief-area-not-choked",
        call={**_LOW, "P2": "108 kPa(a)"},
        result="area",
        value="the flow is not choked",
    ),
    OWN(
        name="relief-area-corrected",
        call={**_AIR, "Kb": "0.9", "Kc": "0.9"},
        result="area",
        value="3.3739 mm2",
        relative=0.002,
        independent="fluids 1.3.1: 3.37387 mm2",
    ),
    _REFUSED(
        name="relief-no-stamp",
        call={name: text for name, text in _VALVE.items() if name != "stamped"},
        result="margin",
        value="bore is not capacity",
    ),
    _REFUSED(
        name="relief-setting-alone",
        call={"setting": "34 bar(g)", "mawp": "33 bar(g)"},
        result="p_max",
        value="name the free air of every compressor",
        note="a setting is never passed over in silence",
    ),
    _REFUSED(
        name="relief-by-bore",
        call={**_VALVE, "bore": "12 mm"},
        result="margin",
        value="bore is not capacity",
    ),
    _REFUSED(
        name="relief-no-compressors",
        call={name: text for name, text in _VALVE.items() if name != "compressors"},
        result="margin",
        value="name the free air of every compressor",
    ),
    _REFUSED(
        name="relief-nothing-known",
        call={"overpressure": "10 %"},
        result="area",
        value="no stamped capacity",
    ),
    _REFUSED(
        name="relief-no-setting",
        call={name: text for name, text in _VALVE.items() if name != "setting"},
        result="margin",
        value="the set pressure is missing",
    ),
    _REFUSED(
        name="relief-no-rating",
        call={name: text for name, text in _VALVE.items() if name != "mawp"},
        result="margin",
        value="the lowest rating that the valve protects is missing",
    ),
    _REFUSED(
        name="relief-no-layout",
        call={name: text for name, text in _VALVE.items() if name != "valve_between"},
        result="margin",
        value="say valve_between = yes or no",
    ),
    _REFUSED(
        name="relief-dead-compressor",
        call={**_VALVE, "compressors": "[29.6 m3(n)/h, 0 m3(n)/h]"},
        result="margin",
        value="a compressor in the list delivers nothing",
    ),
    _REFUSED(
        name="relief-fire",
        call={**_VALVE, "service": "fire"},
        result="margin",
        value="liquid, two-phase and fire cases are not automated",
    ),
    _REFUSED(
        name="relief-plain-volume",
        call={**_VALVE, "stamped": "70 m3/h"},
        result="margin",
        value="`stamped` of relief_capacity_check is",
        note="a capacity without its reference state is no free air",
    ),
    _REFUSED(
        name="relief-no-valve-at-all",
        call={**_VALVE, "valves": "0"},
        result="margin",
        value="a receiver without a relief valve holds no pressure",
    ),
    OWN(
        name="relief-one-valve",
        call={**_VALVE, "valves": "1"},
        result="verdict",
        value="covers",
    ),
    _REFUSED(
        name="relief-coefficient-above-one",
        call={**_AIR, "Kd": "1.05"},
        result="area",
        value="a discharge coefficient is not above 1",
    ),
    _REFUSED(
        name="relief-heat-ratio",
        call={**_AIR, "k": "1"},
        result="area",
        value="a ratio of specific heats is above 1",
    ),
    OWN(
        name="relief-heat-ratio-near-one",
        call={**_AIR, "k": "1.05"},
        result="area",
        value="3.0295 mm2",
        relative=0.002,
        independent="fluids 1.3.1: 3.02955 mm2",
    ),
    _REFUSED(
        name="relief-no-coefficient",
        call={name: text for name, text in _AIR.items() if name != "Kd"},
        result="area",
        value="the discharge coefficient is missing",
    ),
    _REFUSED(
        name="relief-no-overpressure",
        call={name: text for name, text in _AIR.items() if name != "overpressure"},
        result="area",
        value="the share above the setting is missing",
    ),
    _REFUSED(
        name="relief-flow-said-twice",
        call={**_AIR, "W": "72 kg/h"},
        result="area",
        value="give the mass flow W, or the free air q",
    ),
    _REFUSED(
        name="relief-no-temperature",
        call={name: text for name, text in _AIR.items() if name != "T"},
        result="area",
        value="the temperature of the gas at the valve is missing",
    ),
)

RELIEF_CAPACITY_CHECK: Final = _PUBLISHED + _EDGES
