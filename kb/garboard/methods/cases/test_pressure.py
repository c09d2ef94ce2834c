"""Cases for test pressures by code."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["TEST_PRESSURE_BY_CODE"]

_VIII: Final = partial(
    Proof, source="asme-viii-1", seen="secondary", basis="rule", absolute="0.001 bar(d)"
)
_PED: Final = partial(
    Proof, source="ped-annex-i", seen="secondary", basis="rule", absolute="0.001 bar(d)"
)
_WATER: Final = partial(
    Proof, source="46cfr56.97-40", seen="original", basis="rule", absolute="0.001 bar(d)"
)
_GAS: Final = partial(
    Proof, source="46cfr56.97-35", seen="original", basis="rule", absolute="0.001 bar(d)"
)
_TANK: Final = partial(Proof, source="46cfr182.435", seen="original", basis="rule")
_COOKING: Final = partial(Proof, source="46cfr58.16-19", seen="original", basis="rule")
_OWN: Final = partial(OWN, expect=Expect.REFUSE)

_PIPE_GAS: Final = {"code": "cfr46_pipe_pneumatic", "mawp": "30 bar(g)"}
_PIPE_WATER: Final = {
    "code": "cfr46_pipe_hydro",
    "mawp": "30 bar(g)",
    "service": "class_i_compressed_air",
}
_VIII_WATER: Final = {"code": "asme_viii_1_hydro", "mawp": "30 bar(g)", "stress_ratio": "1"}
_VIII_GAS: Final = {**_VIII_WATER, "code": "asme_viii_1_pneumatic"}
_PED_CALL: Final = {"code": "ped", "mawp": "30 bar(g)", "loading_ratio": "1"}

_PUBLISHED: Final = (
    _VIII(name="test-viii-hydro", call=_VIII_WATER, result="p_test", value="39.0 bar(g)"),
    _VIII(
        name="test-viii-ratio",
        call={
            "code": "asme_viii_1_hydro",
            "mawp": "200 psi(g)",
            "stress_ratio": "1.06382978723404",
        },
        result="p_test",
        value="276.6 psi(g)",
        absolute="0.05 psi(d)",
        basis="constructed",
        must_not_give=(("260.0 psi(g)", "stress ratio left out"),),
    ),
    _VIII(name="test-viii-pneumatic", call=_VIII_GAS, result="p_test", value="33.0 bar(g)"),
    _PED(name="test-ped", call=_PED_CALL, result="p_test", value="42.9 bar(g)"),
    _WATER(name="test-pipe-hydro", call=_PIPE_WATER, result="p_test", value="45.0 bar(g)"),
    _GAS(
        name="test-pipe-pneumatic-max",
        call=_PIPE_GAS,
        result="p_test_max",
        value="37.5 bar(g)",
        note="lower end 36.0 bar gauge",
    ),
    _GAS(name="test-pipe-pneumatic-min", call=_PIPE_GAS, result="p_test_min", value="36.0 bar(g)"),
    _WATER(
        name="test-fire-main-floor",
        call={"code": "cfr46_pipe_hydro", "service": "fire_main", "mawp": "80 psi(g)"},
        result="p_test",
        value="150 psi(g)",
        absolute="",
        must_not_give=(("120 psi(g)", "floor left out"),),
    ),
    _TANK(
        name="test-fuel-tank",
        call={"code": "cfr46_fuel_tank", "head": "2 m"},
        result="p_test",
        value="35 kPa(g)",
        note="the 3.5 m standpipe is printed beside it; 3.5 m of fresh water is 34.3 kPa",
    ),
    _GAS(
        name="test-steps-36",
        call={"code": "cfr46_pipe_pneumatic", "p_test": "36 bar(g)"},
        result="steps",
        value="18.0 21.6 25.2 28.8 32.4 36.0 bar(g)",
        absolute="0.01 bar(d)",
    ),
    _GAS(
        name="test-pneumatic-1.5",
        call={**_PIPE_GAS, "factor": "1.5"},
        result="p_test_max",
        value="pneumatic factor above 1.25",
        expect=Expect.REFUSE,
        note="a training manual tests air piping at 150 percent; no rule held allows it",
    ),
)

_ALSO: Final = (
    _PED(
        name="test-ped-loading",
        call={**_PED_CALL, "loading_ratio": "1.2"},
        result="p_test",
        value="45.0 bar(g)",
        must_not_give=(("42.9 bar(g)", "the smaller of the two pressures"),),
        note="1.25 x 1.2 x 30, the larger of the two",
    ),
    _WATER(
        name="test-burner-floor",
        call={
            "code": "cfr46_pipe_hydro",
            "service": "fuel_discharge_to_burners",
            "mawp": "80 psi(g)",
        },
        result="p_test",
        value="500 psi(g)",
    ),
    _WATER(
        name="test-gas-cargo-floor",
        call={"code": "cfr46_pipe_hydro", "service": "compressed_gas_cargo", "mawp": "80 psi(g)"},
        result="p_test",
        value="150 psi(g)",
    ),
    _WATER(
        name="test-fire-main-above-the-floor",
        call={"code": "cfr46_pipe_hydro", "service": "fire_main", "mawp": "120 psi(g)"},
        result="p_test",
        value="180 psi(g)",
        absolute="0.01 psi(d)",
        must_not_give=(("150 psi(g)", "the floor taken for the rule"),),
    ),
    _WATER(
        name="test-fire-main-just-above-the-floor",
        call={"code": "cfr46_pipe_hydro", "service": "fire_main", "mawp": "104 psi(g)"},
        result="p_test",
        value="156 psi(g)",
        absolute="0.01 psi(d)",
    ),
    _TANK(
        name="test-fuel-tank-deep",
        call={"code": "cfr46_fuel_tank", "head": "4 m"},
        result="p_test",
        value="39.156 kPa(g)",
        absolute="0.001 kPa(d)",
        note="4 m of fresh water at 998.2 kg/m3 is more than 35 kPa",
    ),
    *(
        _TANK(
            name=f"test-fuel-tank-{result}",
            call={"code": "cfr46_fuel_tank", "head": "2 m"},
            result=result,
            value=value,
        )
        for result, value in (
            ("p_test_psi", "5 psi(g)"),
            ("standpipe_m", "3.5 m"),
            ("standpipe_ft", "11.5 ft"),
        )
    ),
    _COOKING(
        name="test-cooking-gas",
        call={"code": "cfr46_lpg_cooking"},
        result="p_test_min",
        value="5 psi(g)",
    ),
    _GAS(
        name="test-pipe-pneumatic-hold", call=_PIPE_GAS, result="hold", value="10 min", absolute=""
    ),
    _GAS(
        name="test-pipe-pneumatic-factor",
        call={**_PIPE_GAS, "factor": "1.22"},
        result="p_test",
        value="36.6 bar(g)",
    ),
    _GAS(
        name="test-steps-viii",
        call=_VIII_GAS,
        result="steps",
        value="16.5 19.8 23.1 26.4 29.7 33.0 bar(g)",
        absolute="0.01 bar(d)",
        source="asme-viii-1",
        seen="secondary",
    ),
    _GAS(
        name="test-pneumatic-1.3",
        call={**_PIPE_GAS, "factor": "1.3"},
        result="p_test_max",
        value="pneumatic factor above 1.25",
        expect=Expect.REFUSE,
    ),
    _GAS(
        name="test-pneumatic-below-the-band",
        call={**_PIPE_GAS, "p_test": "34 bar(g)"},
        result="p_test",
        value="outside the band",
        expect=Expect.REFUSE,
    ),
    _GAS(
        name="test-pneumatic-above-the-band",
        call={**_PIPE_GAS, "p_test": "38 bar(g)"},
        result="p_test",
        value="outside the band",
        expect=Expect.REFUSE,
    ),
    _VIII(
        name="test-one-factor-for-all",
        call={**_VIII_WATER, "factor": "1.5"},
        result="p_test",
        value="not interchangeable",
        expect=Expect.REFUSE,
    ),
    _OWN(
        name="test-code-not-stated",
        call={"mawp": "30 bar(g)"},
        result="p_test",
        value="the code is not stated",
    ),
    _OWN(
        name="test-weak-part",
        call={**_PIPE_WATER, "component_limit": "44 bar(g)"},
        result="p_test",
        value="a part in the line would be over its own limit",
    ),
    _OWN(
        name="test-weak-part-with-gas",
        call={**_PIPE_GAS, "component_limit": "37 bar(g)"},
        result="p_test_max",
        value="a part in the line would be over its own limit",
    ),
    _VIII(
        name="test-part-strong-enough",
        call={**_VIII_WATER, "component_limit": "39 bar(g)"},
        result="p_test",
        value="39.0 bar(g)",
    ),
    _OWN(
        name="test-service-not-said",
        call={"code": "cfr46_pipe_hydro", "mawp": "80 psi(g)"},
        result="p_test",
        value="say the service",
    ),
    _OWN(
        name="test-ratio-not-said",
        call={"code": "asme_viii_1_hydro", "mawp": "30 bar(g)"},
        result="p_test",
        value="ratio of stress",
    ),
    _OWN(
        name="test-ratio-upside-down",
        call={**_VIII_WATER, "stress_ratio": "0.94"},
        result="p_test",
        value="not below 1",
    ),
    _OWN(
        name="test-loading-not-said",
        call={"code": "ped", "mawp": "30 bar(g)"},
        result="p_test",
        value="loading ratio",
    ),
    _OWN(
        name="test-loading-upside-down",
        call={**_PED_CALL, "loading_ratio": "0.9"},
        result="p_test",
        value="not below 1",
    ),
)

TEST_PRESSURE_BY_CODE: Final = _PUBLISHED + _ALSO
