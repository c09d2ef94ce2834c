"""Cases for the air of an engine room."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["ENGINE_ROOM_AIR"]

_NO: Final = partial(OWN, expect=Expect.REFUSE)
_VOLVO: Final = partial(
    Proof, source="volvo-marine-install", seen="original", basis="consistency", relative=0.001
)
_CATERPILLAR: Final = partial(
    Proof, source="cat-lebv0915", seen="original", basis="consistency", relative=0.002
)
_ROOM: Final = {
    "heat": "10 kW",
    "rho": "1.1 kg/m3",
    "cp": "1.02 kJ/(kg.K)",
    "dT": "5.6 K(d)",
    "combustion": "0 m3/min",
}
_AIR: Final = {"T": "35 degC", "phi": "0.7", "p": "101325 Pa(a)"}
_DUCT: Final = {"power": "150 kW", "T": "40 degC", "maker": "volvo_penta"}
_RULE: Final = {"power": "100 kW", "maker": "caterpillar"}

ENGINE_ROOM_AIR: Final = (
    _CATERPILLAR(
        name="room-10-kw",
        call=_ROOM,
        result="air",
        value="95.5 m3/min",
        independent="exact arithmetic: 95.493 m3/min; the guide constant 0.017 kW min/(kg K) is a "
        "specific heat of 1.02",
    ),
    OWN(
        name="room-air-density",
        call=_AIR,
        result="rho",
        value="1.129 kg/m3",
        relative=0.001,
        must_not_give=(("1.1455 kg/m3", "dry air"),),
        independent="PsychroLib 2.5.0: 1.1287 kg/m3",
    ),
    _VOLVO(
        name="room-duct-maker",
        call=_DUCT,
        result="duct_area",
        value="346.5 cm2",
        must_not_give=(("247.5 cm2", "the factor for a hot day left out"),),
        independent="exact arithmetic: 346.5 cm2",
    ),
    OWN(
        name="room-air-density-to-the-digit",
        call=_AIR,
        result="rho",
        value="1.1287258 kg/m3",
        relative=1e-6,
    ),
    OWN(
        name="room-10-kw-on-a-hot-day",
        call={
            "heat": "10 kW",
            "dT": "10 K(d)",
            "combustion": "8 m3/min",
            "heat_from": "measured",
            **_AIR,
        },
        result="air",
        value="60.892822 m3/min",
        relative=1e-6,
        must_not_give=(("52.892822 m3/min", "the air that the engines burn left out"),),
        note="8 + 60 x 10 / (1.12872 x 1.005 x 10)",
    ),
    _VOLVO(
        name="room-duct-mild",
        call={**_DUCT, "T": "20 degC"},
        result="duct_area",
        value="173.25 cm2",
    ),
    OWN(
        name="room-duct-hotter-row",
        call={**_DUCT, "T": "21 degC"},
        result="duct_area",
        value="247.5 cm2",
        must_not_give=(("173.25 cm2", "the cooler row read above its temperature"),),
    ),
    OWN(
        name="room-duct-hottest-row",
        call={**_DUCT, "T": "31 degC"},
        result="duct_area",
        value="346.5 cm2",
        must_not_give=(("247.5 cm2", "the cooler row read above its temperature"),),
    ),
    _VOLVO(
        name="room-fan-volvo-penta",
        call={**_RULE, "maker": "volvo_penta"},
        result="fan_air",
        value="7 m3/min",
        must_not_give=(("30.4 m3/min", "the rule of another maker"),),
    ),
    _CATERPILLAR(
        name="room-fan-caterpillar-low",
        call=_RULE,
        result="fan_air_low",
        value="30.4 m3/min",
        must_not_give=(("7 m3/min", "the rule of another maker"),),
        note="8 ft3/min for each hp, 0.304 m3/min for each kW",
    ),
    _CATERPILLAR(
        name="room-fan-caterpillar-high",
        call=_RULE,
        result="fan_air_high",
        value="35.1 m3/min",
        note="9.25 ft3/min for each hp, 0.351 m3/min for each kW",
    ),
    _NO(
        name="room-no-heat",
        call={name: text for name, text in _ROOM.items() if name != "heat"},
        result="air",
        value="a heat figure has its maker",
    ),
    _NO(
        name="room-heat-by-rule-of-thumb",
        call={**_ROOM, "heat_from": "rule_of_thumb"},
        result="air",
        value="a heat figure has its maker",
    ),
    _NO(
        name="room-no-rise",
        call={**_ROOM, "dT": "0 K(d)"},
        result="air",
        value="no rise allowed",
    ),
    _NO(
        name="room-maker-not-named",
        call={"power": "150 kW", "T": "40 degC"},
        result="duct_area",
        value="name the maker",
    ),
    _NO(
        name="room-duct-above-40",
        call={**_DUCT, "T": "41 degC"},
        result="duct_area",
        value="no factor is printed above 40 degC",
    ),
    _NO(
        name="room-duct-of-another-maker",
        call={**_DUCT, "maker": "caterpillar"},
        result="duct_area",
        value="name the maker",
    ),
    _NO(
        name="room-too-hot",
        call={**_AIR, "T": "62 degC"},
        result="rho",
        value="air from 0 to 60 degC",
    ),
    _NO(
        name="room-humidity-not-a-share",
        call={**_AIR, "phi": "1.05"},
        result="rho",
        value="humidity is a share",
    ),
    _NO(
        name="room-humidity-missing",
        call={"T": "35 degC", "p": "101325 Pa(a)"},
        result="rho",
        value="measure it, or state a worst case",
    ),
)
