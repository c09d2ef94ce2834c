"""Cases for the leak from a timed fall of pressure.

The printed leaks are volumes at the barometer and at the even temperature of the air, so they are
compared as such; the amounts beside them are our own arithmetic.
"""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN
from garboard.methods.cases.deck import off_deck

__all__ = ["LEAK_BY_PRESSURE_DECAY"]

_REFUSED: Final = partial(OWN, expect=Expect.REFUSE)
_TABLE: Final = partial(
    Proof,
    result="Q_volume",
    absolute="0.1 ft3/min",
    source="navfac-mo-209",
    seen="original",
    basis="published",
)
_VOLUME: Final = {"V": "629 ft3", "T_1": "294 K(a)", "T_2": "294 K(a)", "p_atm": "14.7 psi(a)"}
_HOLD: Final = {
    "V": "0.5 m3",
    "p_1": "30 bar(g)",
    "p_2": "29.4 bar(g)",
    "t_1": "0 min",
    "t_2": "45 min",
    "T_1": "290 K(a)",
    "T_2": "290 K(a)",
    "p_atm": "1.01325 bar(a)",
}
_PAIRS: Final = {
    "p_working": "100 psi(g)",
    "p_mid_1": "85 psi(g)",
    "leak_1": "40 ft3(s)/min",
    "p_mid_2": "75 psi(g)",
    "leak_2": "34 ft3(s)/min",
}
_REST: Final = {
    "p_mid_3": "55 psi(g)",
    "leak_3": "21 ft3(s)/min",
    "p_mid_4": "45 psi(g)",
    "leak_4": "15 ft3(s)/min",
    "p_mid_5": "35 psi(g)",
    "leak_5": "9 ft3(s)/min",
}


def _without(*names: str) -> dict[str, str]:
    return {name: text for name, text in _HOLD.items() if name not in names}


LEAK_BY_PRESSURE_DECAY: Final = (
    _TABLE(
        name="leak-90-80-psi",
        call={
            **_VOLUME,
            "p_1": "90 psi(g)",
            "p_2": "80 psi(g)",
            "t_1": "0 min",
            "t_2": "10.7 min",
        },
        value="40 ft3/min",
        independent="scipy 1.17.1: 39.99 ft3/min",
        note="the volume is not printed; all seven rows give 629 ft3 within 0.3",
    ),
    _TABLE(
        name="leak-80-70-psi",
        call={
            **_VOLUME,
            "p_1": "80 psi(g)",
            "p_2": "70 psi(g)",
            "t_1": "10.7 min",
            "t_2": "23.2833 min",
        },
        value="34 ft3/min",
        must_not_give=(("18.38 ft3/min", "cumulative time used as the interval"),),
        independent="scipy 1.17.1: 34.005 ft3/min",
    ),
    _TABLE(
        name="leak-60-50-psi",
        call={
            **_VOLUME,
            "p_1": "60 psi(g)",
            "p_2": "50 psi(g)",
            "t_1": "38.5667 min",
            "t_2": "58.9333 min",
        },
        value="21 ft3/min",
        must_not_give=(("7.26 ft3/min", "cumulative time used as the interval"),),
        independent="scipy 1.17.1: 21.009 ft3/min",
    ),
    _TABLE(
        name="leak-50-40-psi",
        call={
            **_VOLUME,
            "p_1": "50 psi(g)",
            "p_2": "40 psi(g)",
            "t_1": "58.9333 min",
            "t_2": "87.4667 min",
        },
        value="15 ft3/min",
        must_not_give=(("4.89 ft3/min", "cumulative time used as the interval"),),
        independent="scipy 1.17.1: 14.996 ft3/min",
    ),
    _TABLE(
        name="leak-40-30-psi",
        call={
            **_VOLUME,
            "p_1": "40 psi(g)",
            "p_2": "30 psi(g)",
            "t_1": "87.4667 min",
            "t_2": "135.0167 min",
        },
        value="9 ft3/min",
        must_not_give=(("3.17 ft3/min", "cumulative time used as the interval"),),
        independent="scipy 1.17.1: 8.9988 ft3/min",
    ),
    OWN(
        name="leak-si",
        call=_HOLD,
        result="Q_volume",
        value="6.5795 L/min",
        relative=0.002,
        independent="exact arithmetic: 6.57949 L/min",
    ),
    OWN(
        name="leak-si-amount",
        call=_HOLD,
        result="Q",
        value="6.1972 L(n)/min",
        relative=2e-5,
        must_not_give=(("6.57949 L(n)/min", "air at 290 K counted as air at 0 degC"),),
        independent="exact arithmetic: 6.57949 x 273.15 / 290 = 6.19720",
    ),
    OWN(
        name="leak-that-is-cooling",
        call={**_HOLD, "p_2": "28.93058 bar(g)", "T_2": "280 K(a)"},
        result="Q",
        value="0 L(n)/min",
        absolute="0.01 L(n)/min",
        must_not_give=(("11.06 L(n)/min", "a cooling receiver taken for a leak"),),
        note="(30 + 1.01325) x 280 / 290 - 1.01325 = 28.93058 bar gauge without any leak",
    ),
    OWN(
        name="leak-at-working-pressure",
        call={**_PAIRS, **_REST},
        result="Q_at_working_pressure",
        value="49.4012 ft3(s)/min",
        relative=1e-5,
        must_not_give=(("40 ft3(s)/min", "the leak of the highest interval taken for it"),),
        independent="scipy 1.17.1, linregress: 49.40116 ft3/min",
        note="the five printed leaks; the line and its reading are ours",
    ),
    OWN(
        name="leak-line-of-two",
        call=_PAIRS,
        result="Q_at_working_pressure",
        value="49 ft3(s)/min",
        relative=1e-9,
        note="40 + 15 x 0.6; the three pairs left out move nothing",
    ),
    OWN(
        name="leak-line-of-three",
        call={**_PAIRS, "p_mid_3": "55 psi(g)", "leak_3": "21 ft3(s)/min"},
        result="Q_at_working_pressure",
        value="49.6786 ft3(s)/min",
        relative=1e-5,
        independent="scipy 1.17.1, linregress: 49.67857 ft3/min",
    ),
    OWN(
        name="leak-line-of-four",
        call={
            name: text
            for name, text in {**_PAIRS, **_REST}.items()
            if name not in ("p_mid_5", "leak_5")
        },
        result="Q_at_working_pressure",
        value="49.55 ft3(s)/min",
        relative=1e-5,
        independent="scipy 1.17.1, linregress: 49.55 ft3/min",
    ),
    Proof(
        name="leak-no-temperature",
        call=_without("T_1", "T_2"),
        result="Q",
        value="a cooling receiver looks like a leak: read the temperature at both ends",
        source="house-rule",
        seen="constructed",
        basis="constructed",
        expect=Expect.REFUSE,
        note="temperatures missing",
    ),
    _REFUSED(
        name="leak-one-temperature",
        call=_without("T_2"),
        result="Q",
        value="give T_2: a cooling receiver looks like a leak",
    ),
    _REFUSED(
        name="leak-no-volume",
        call=_without("V"),
        result="Q",
        value="volume under test unknown: find it",
    ),
    _REFUSED(
        name="leak-time-runs-backwards",
        call={**_HOLD, "t_1": "45 min", "t_2": "0 min"},
        result="Q",
        value="time runs backwards",
    ),
    _REFUSED(
        name="leak-no-time",
        call={**_HOLD, "t_2": "0 min"},
        result="Q",
        value="cumulative times are read as differences",
    ),
    _REFUSED(
        name="leak-over-40-bar",
        call={**_HOLD, "p_1": "41 bar(g)"},
        result="Q",
        value="outside the ideal range",
    ),
    _REFUSED(
        name="leak-ends-over-40-bar",
        call={**_HOLD, "p_2": "41 bar(g)"},
        result="Q",
        value="outside the ideal range",
    ),
    _REFUSED(
        name="leak-below-vacuum",
        call={**_HOLD, "p_2": "-1.02 bar(g)"},
        result="Q",
        value="below a perfect vacuum",
    ),
    _REFUSED(
        name="leak-starts-below-vacuum",
        call={**_HOLD, "p_1": "-1.02 bar(g)"},
        result="Q",
        value="below a perfect vacuum",
    ),
    _REFUSED(
        name="leak-line-of-one-pressure",
        call={**_PAIRS, "p_mid_2": "85 psi(g)"},
        result="Q_at_working_pressure",
        value="two intervals at one and the same pressure make no line",
    ),
    _REFUSED(
        name="leak-line-of-one-interval",
        call={name: text for name, text in _PAIRS.items() if not name.endswith("_2")},
        result="Q_at_working_pressure",
        value="a straight line needs at least two intervals",
    ),
    _REFUSED(
        name="leak-without-volume-flow-state",
        call={**_PAIRS, "leak_2": "34 ft3/min"},
        result="Q_at_working_pressure",
        value="is a volume flow; give it in a unit such as L(n)/min",
    ),
    _REFUSED(
        name="leak-empty-volume",
        call={**_HOLD, "V": "0 m3"},
        result="Q",
        value="is outside leak_by_pressure_decay: volume under test unknown",
    ),
    _REFUSED(
        name="leak-first-temperature-missing",
        call=_without("T_1"),
        result="Q",
        value="give T_1: a cooling receiver looks like a leak",
    ),
    _REFUSED(
        name="leak-line-without-p-mid-1",
        call={name: text for name, text in _PAIRS.items() if name != "p_mid_1"},
        result="Q_at_working_pressure",
        value="give p_mid_1: a straight line needs at least two intervals",
    ),
    _REFUSED(
        name="leak-line-without-leak-1",
        call={name: text for name, text in _PAIRS.items() if name != "leak_1"},
        result="Q_at_working_pressure",
        value="give leak_1: a straight line needs at least two intervals",
    ),
    _REFUSED(
        name="leak-line-without-p-mid-2",
        call={name: text for name, text in _PAIRS.items() if name != "p_mid_2"},
        result="Q_at_working_pressure",
        value="give p_mid_2: a straight line needs at least two intervals",
    ),
    _REFUSED(
        name="leak-line-without-leak-2",
        call={name: text for name, text in _PAIRS.items() if name != "leak_2"},
        result="Q_at_working_pressure",
        value="give leak_2: a straight line needs at least two intervals",
    ),
    OWN(
        name="leak-barometer-of-the-vessel",
        call={**_without("p_atm"), "site.atmosphere": "0.95 bar(a)"},
        result="Q_volume",
        value="7.01754 L/min",
        relative=2e-6,
        must_not_give=(("6.57949 L/min", "the standard atmosphere taken on a day that differs"),),
    ),
    *off_deck("leak", _HOLD, "Q", "T_1", "T_2"),
)
