"""Cases for what can close between a vessel and what must see it."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import HOUSE

__all__ = ["SENSING_LINE_CUT_OFF"]

_SWITCH: Final = {"device": "switch", "line": "traced"}
_RELIEF: Final = {"device": "relief", "line": "traced"}
_STOPS: Final = partial(HOUSE, result="verdict", value="does not pass", expect=Expect.ALARM)
_REFUSED: Final = partial(HOUSE, result="closing", expect=Expect.REFUSE)

SENSING_LINE_CUT_OFF: Final = (
    _STOPS(name="cutoff-switch-behind-stop", call={**_SWITCH, "ways": "[1]"}),
    HOUSE(
        name="cutoff-switch-behind-stop-alone",
        call={**_SWITCH, "ways": "[1]"},
        result="alone",
        value="1",
        expect=Expect.ALARM,
        independent="networkx: V1 alone cuts it off",
    ),
    HOUSE(
        name="cutoff-switch-direct",
        call={**_SWITCH, "ways": "[0]"},
        result="verdict",
        value="passes",
        independent="networkx: nothing cuts it off",
    ),
    Proof(
        name="cutoff-relief-behind-valve",
        call={**_RELIEF, "ways": "[1]"},
        result="verdict",
        value="does not pass",
        source="29cfr1917.155",
        seen="original",
        basis="rule",
        expect=Expect.ALARM,
        note="one section forbids it outright; three state rules say the same",
    ),
    _STOPS(
        name="cutoff-parallel-valves",
        call={**_SWITCH, "ways": "[1, 1]"},
        independent="networkx: no single valve cuts it off, both together do",
        note="no single valve cuts it off, yet both can be shut",
    ),
    HOUSE(
        name="cutoff-one-of-two-ways-is-open",
        call={**_SWITCH, "ways": "[2, 0]"},
        result="closing",
        value="0",
        must_not_give=(("2", "the first way taken instead of the best"),),
    ),
    Proof(
        name="cutoff-two-in-series",
        call={**_RELIEF, "ways": "[2]"},
        result="alone",
        value="2",
        source="wac-296-56-60241",
        seen="original",
        basis="rule",
        expect=Expect.ALARM,
        independent="networkx: V1 and V2 each alone",
    ),
    _STOPS(
        name="cutoff-gauge-behind-a-cock", call={"device": "gauge", "line": "traced", "ways": "[1]"}
    ),
    _STOPS(
        name="cutoff-alarm-behind-a-locked-valve",
        call={"device": "alarm", "line": "traced", "ways": "[1]", "locked": "1"},
        note="a locked valve is not passed: a named reviewer decides",
    ),
    _REFUSED(name="cutoff-no-way", call={**_SWITCH, "ways": "[]"}, value="cannot be traced"),
    _REFUSED(name="cutoff-half-a-valve", call={**_SWITCH, "ways": "[0.5]"}, value="whole number"),
    _REFUSED(
        name="cutoff-less-than-nothing", call={**_SWITCH, "ways": "[-1]"}, value="whole number"
    ),
    _REFUSED(
        name="cutoff-more-locked-than-there-are",
        call={**_SWITCH, "ways": "[1]", "locked": "2"},
        value="more locked valves",
    ),
    _REFUSED(
        name="cutoff-locked-below-none",
        call={**_SWITCH, "ways": "[1]", "locked": "-1"},
        value="less than no locked valve",
    ),
    _REFUSED(
        name="cutoff-not-walked",
        call={"device": "switch", "line": "drawn", "ways": "[0]"},
        value="nobody walked",
    ),
    _REFUSED(
        name="cutoff-unknown-connection",
        call={"device": "switch", "line": "unknown", "ways": "[0]"},
        value="no pass on an incomplete drawing",
    ),
    _REFUSED(
        name="cutoff-no-device", call={"line": "traced", "ways": "[0]"}, value="relief, gauge"
    ),
)
